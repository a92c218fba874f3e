"""`drills picture --item`: what was shown, found again in the records."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from drills.cli import run
from drills.core.records import Trial
from tests.ledger.made import START, keep, made_session


def keep_days(folder: Path, days: int, **shown: Any) -> None:
    """A session a day, each with an item `m-0-DAY` that showed two pictures."""
    for day in range(days):
        entries = made_session(f"s{day}", start=START + timedelta(days=day), trials=1)
        keep(folder, [given(e, day, shown) if isinstance(e, Trial) else e for e in entries])


def given(trial: Trial, day: int, shown: Mapping[str, Any]) -> Trial:
    options = tuple({**option, "side": "left", **shown} for option in trial.asked.options)
    return replace(trial, asked=replace(trial.asked, item_id=f"m-0-{day}", options=options))


def test_both_pictures_of_an_item_are_drawn(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    keep_days(tmp_path / "practice", 3)
    options = ["--cells", "24x8", "--folder", str(tmp_path / "practice")]
    assert run(["picture", "--item", "m-0-1", *options]) == 0
    said = [line for line in capsys.readouterr().out.splitlines() if "\x1b" not in line]
    assert len(said) == 2
    assert said[0] != said[1]


def test_sessions_before_the_one_that_is_looked_for_are_not_read(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    keep_days(tmp_path / "practice", 8)
    read: list[str] = []
    whole = Path.read_bytes

    def noted(path: Path) -> bytes:
        if path.parent.name == "records":
            read.append(path.name[:10])
        return whole(path)

    monkeypatch.setattr(Path, "read_bytes", noted)
    options = ["--cells", "24x8", "--folder", str(tmp_path / "practice")]
    assert run(["picture", "--item", "m-0-5", *options]) == 0
    assert sorted(read) == ["2026-11-30", "2026-12-01", "2026-12-02"]
    read.clear()
    assert run(["picture", "--item", "m-0-99", *options]) == 2
    assert len(read) == 8
    assert "No item 'm-0-99' was given" in capsys.readouterr().err


@pytest.mark.parametrize("meaning", [None, [], "push", {}, {"verb": 3}, {"kind": "\x1b[2J"}])
def test_a_record_whose_pictures_make_no_sense_is_told(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], meaning: object
) -> None:
    keep_days(tmp_path / "practice", 1, meaning=meaning)
    options = ["--folder", str(tmp_path / "practice")]
    assert run(["picture", "--item", "m-0-0", *options]) == 2
    said = capsys.readouterr().err
    assert "holds no pictures to draw" in said
    assert "Traceback" not in said
