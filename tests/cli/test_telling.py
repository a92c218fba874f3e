"""Which days `drills digest` tells of."""

from __future__ import annotations

import json
from datetime import date, timedelta
from pathlib import Path

import pytest

from drills import wiring
from drills.cli.parser import parse
from drills.cli.run import run
from drills.core.problems import BadInput


def today(folder: Path) -> date:
    home = wiring.home(wiring.practice_folder(str(folder)), speak=False)
    try:
        return home.day()
    finally:
        home.close()


def test_without_a_choice_it_is_the_last_seven_practice_days(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = today(tmp_path)
    assert run(["digest", "--format", "json", "--folder", str(tmp_path)]) == 0
    after = today(tmp_path)
    told = json.loads(capsys.readouterr().out)
    first, last = date.fromisoformat(told["first"]), date.fromisoformat(told["last"])
    assert before <= last <= after
    assert last - first == timedelta(days=6)
    assert told["over"] is True
    assert told["dose"]["sessions_planned"] == 5


def test_a_range_with_days_to_come_is_not_over(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    ahead = today(tmp_path) + timedelta(days=2)
    days = ["--from", str(ahead - timedelta(days=6)), "--to", str(ahead)]
    assert run(["digest", *days, "--folder", str(tmp_path)]) == 0
    assert "not over yet" in capsys.readouterr().out


@pytest.mark.parametrize("day", ["0001-01-01", "1999-12-31", "2200-01-01", "9999-12-31"])
def test_a_day_too_far_off_to_reckon_around_is_refused(day: str) -> None:
    for days in (("--from", day, "--to", "2026-11-25"), ("--from", "2026-11-25", "--to", day)):
        with pytest.raises(BadInput, match="years 2000 to 2199"):
            parse(["digest", *days])


@pytest.mark.parametrize(
    "days", [("2000-01-01", "2000-01-01"), ("2199-12-31", "2199-12-31")], ids=str
)
def test_the_first_and_the_last_day_can_be_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], days: tuple[str, str]
) -> None:
    arguments = ["digest", "--from", days[0], "--to", days[1], "--folder", str(tmp_path)]
    assert run(arguments) == 0
    assert "PRACTICE DIGEST" in capsys.readouterr().out
