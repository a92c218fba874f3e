"""A digest reads no more than it needs, and tells what it would with everything read."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from random import Random

import pytest

from drills.core.material import Material
from drills.core.records import Entry, Observation, SessionOpened, Trial
from drills.core.sessions import SessionSpan
from drills.digest import Digest
from drills.ledger import disk
from drills.practice import digesting
from drills.practice.home import Home
from tests.ledger.made import START, keep, made_session
from tests.practice.test_past import home_in, varied

LAST = START.date()
FIRST = LAST - timedelta(days=6)
LONG_AGO = 4000


def course(at_days: Sequence[int]) -> list[list[Entry]]:
    """Sessions so many days before START: broken off, gone on with, checks, a clock gone back."""
    found = []
    for number, days in enumerate(at_days):
        start = START - timedelta(days=days, hours=3)
        entries = varied(made_session(f"s{days}", start=start, trials=6), Random(days))
        opened = entries[0]
        assert isinstance(opened, SessionOpened)
        if number % 6 == 1:
            entries = entries[:-1]
            on = made_session(f"s{days}on", start=start + timedelta(hours=1), trials=4)
            assert isinstance(on[0], SessionOpened)
            on[0] = replace(on[0], continues=opened.session)
            found.append(varied(on, Random(-days)))
        elif number % 6 == 2:
            entries[0] = replace(opened, check="A")
        elif number % 6 == 3:
            # In the middle the clock goes back, and later somebody goes away.
            noted = entries[1]
            assert isinstance(noted, Observation)
            entries.insert(4, replace(noted, at=noted.at - timedelta(minutes=9)))
            entries.insert(7, replace(noted, at=noted.at + timedelta(minutes=31)))
        found.append(entries)
    return found


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    place = tmp_path_factory.mktemp("course") / "practice"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(disk, "sync_file", lambda file: None)
        patch.setattr(disk, "sync_folder", lambda folder: None)
        recent = range(0, 150, 2)
        for entries in course([*recent, *range(LONG_AGO, LONG_AGO + 80, 4)]):
            keep(place, entries)
    return place


def all_read(
    home: Home, first: date, looks_back_to: date | None
) -> tuple[Sequence[Entry], Sequence[SessionSpan]]:
    assert looks_back_to is not None
    return home.entries_of(looks_back_to, first - timedelta(days=1)), ()


def both(
    home: Home, monkeypatch: pytest.MonkeyPatch, first: date, last: date
) -> tuple[Digest, Digest]:
    quick = home.digest(first, last)
    with monkeypatch.context() as patch:
        patch.setattr(digesting, "_earlier", all_read)
        return quick, home.digest(first, last)


@pytest.mark.parametrize("weeks", [0, 1, 3, 9])
@pytest.mark.parametrize("days", [7, 1, 70])
def test_a_digest_is_the_same_as_with_all_entries_read(
    folder: Path, material: Material, monkeypatch: pytest.MonkeyPatch, weeks: int, days: int
) -> None:
    home = home_in(folder, material)
    last = LAST - timedelta(weeks=weeks)
    quick, whole = both(home, monkeypatch, last - timedelta(days=days - 1), last)
    home.close()
    assert quick == whole
    assert sum(week.sessions > 0 for week in quick.dose_weeks) >= 8
    assert days < 7 or any(line.change is not None for line in quick.lines)


def test_the_weeks_before_are_told_without_reading_their_files(
    folder: Path, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    home = home_in(folder, material)
    home.digest(FIRST, LAST)
    home.close()
    read: list[str] = []
    whole = Path.read_bytes

    def noted(path: Path) -> bytes:
        if path.parent.name == "records":
            read.append(path.name)
        return whole(path)

    monkeypatch.setattr(Path, "read_bytes", noted)
    home = home_in(folder, material)
    found = home.digest(FIRST, LAST)
    home.close()
    assert sum(week.trials for week in found.dose_weeks) > found.dose.trials > 0
    assert read
    # Those of the range, and of a day of slack beside it.
    assert min(read) >= f"{FIRST - timedelta(days=1)}"


def test_weeks_of_long_ago_are_told_though_no_history_holds_them(
    folder: Path, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    home = home_in(folder, material)
    last = LAST - timedelta(days=LONG_AGO)
    first = last - timedelta(days=6)
    assert not any(
        isinstance(trial, Trial) and trial.started_at.date() < first for trial in home.history()
    )
    quick, whole = both(home, monkeypatch, first, last)
    home.close()
    assert quick == whole
    assert sum(week.sessions > 0 for week in quick.dose_weeks) >= 8
