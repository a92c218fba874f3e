from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.core.plans import SpacingSettings
from drills.core.records import Trial, latest_trials
from drills.ledger import open_ledger, rebuild, verify
from drills.ledger.lines import line_of
from drills.ledger.sessions import understand
from drills.ledger.slim import slimmed
from drills.ledger.summaries import summarise
from drills.schedule import standings
from tests.ledger.made import START, keep, made_session, session_files, written
from tests.ledger.test_rows import trials

SPACING = SpacingSettings()


def kept_years(folder: Path, *, sessions: int = 40) -> None:
    """Sessions four days apart, the newest on the day of START."""
    for number in range(sessions):
        start = START - timedelta(days=4 * (sessions - 1 - number))
        entries = made_session(f"s{number}", start=start, trials=2 + number % 5)
        # Every fifth was broken off.
        keep(folder, entries[:-1] if number % 5 == 0 else entries)


def standings_from(history: tuple[Trial, ...]) -> object:
    targets = sorted({trial.asked.target for trial in history})
    return standings(
        *(targets, history),
        settings=SPACING,
        day_turns_at_hour=4,
        today=START.date(),
    )


def test_history_is_what_the_records_say_and_the_schedule_cannot_tell_them_apart(
    folder: Path, unsynced: None
) -> None:
    kept_years(folder)
    ledger = open_ledger(folder, elsewhere=())
    for since in (None, START - timedelta(days=60), START, START + timedelta(days=1)):
        whole = latest_trials(ledger.entries(since=since))
        history = ledger.history(since=since)
        assert history == tuple(map(slimmed, whole))
        assert standings_from(tuple(history)) == standings_from(whole)
    ledger.close()


def test_history_reads_no_session_that_has_its_summary(
    folder: Path, unsynced: None, monkeypatch: pytest.MonkeyPatch
) -> None:
    kept_years(folder)
    read: list[str] = []
    whole = Path.read_bytes

    def noted(path: Path) -> bytes:
        if path.parent.name == "records":
            read.append(path.name)
        return whole(path)

    ledger = open_ledger(folder, elsewhere=())
    monkeypatch.setattr(Path, "read_bytes", noted)
    first = ledger.history()
    # Only those that were broken off; they are summarised now as well.
    assert len(read) == 8
    read.clear()
    assert ledger.history() == first
    assert read == []
    ledger.close()


@pytest.mark.parametrize("loss", ["all", "one month", "damage", "newer", "not a file"])
def test_summaries_that_are_lost_are_made_again(folder: Path, unsynced: None, loss: str) -> None:
    kept_years(folder)
    ledger = open_ledger(folder, elsewhere=())
    expected = ledger.history()
    ledger.close()
    months = sorted((folder / "summaries").iterdir())
    assert len(months) > 4
    if loss == "all":
        for month in months:
            month.unlink()
    elif loss == "one month":
        months[2].unlink()
    elif loss == "damage":
        data = bytearray(months[2].read_bytes())
        data[len(data) // 2] ^= 1
        months[2].write_bytes(data)
    elif loss == "newer":
        months[2].write_bytes(line_of({"format": 9, "month": months[2].stem}, 1))
    else:
        months[2].unlink()
        months[2].mkdir()
    for _ in range(2):
        ledger = open_ledger(folder, elsewhere=())
        assert ledger.history() == expected
        assert ledger.notices == ()
        ledger.close()
    assert loss == "not a file" or verify(folder) == ()


def test_rebuilding_gives_the_same_as_growing(folder: Path, unsynced: None) -> None:
    kept_years(folder)
    ledger = open_ledger(folder, elsewhere=())
    expected = ledger.history()
    ledger.close()
    (folder / "summaries" / "2019-01.jsonl").write_text("left over")
    grown = {path.name: path.read_bytes() for path in (folder / "summaries").iterdir()}
    assert rebuild(folder) == 40
    rebuilt = {path.name: path.read_bytes() for path in (folder / "summaries").iterdir()}
    assert set(grown) - set(rebuilt) == {"2019-01.jsonl"}
    assert sum(data.count(b"\n") - 1 for data in rebuilt.values()) == 40
    assert verify(folder) == ()
    ledger = open_ledger(folder, elsewhere=())
    assert ledger.history() == expected
    ledger.close()


def test_a_session_that_is_gone_is_told_until_it_is_given_up(folder: Path, unsynced: None) -> None:
    kept_years(folder, sessions=4)
    gone = session_files(folder)[1]
    kept = gone.read_bytes()
    gone.unlink()
    (problem,) = verify(folder)
    assert problem.where == str(gone)
    assert "is gone, with its" in problem.message
    gone.write_bytes(kept)
    assert verify(folder) == ()
    gone.unlink()
    rebuild(folder)
    assert verify(folder) == ()


def test_a_session_that_grows_after_its_summary_is_summarised_again(folder: Path) -> None:
    entries = made_session(trials=4)
    keep(folder, entries[:4])
    ledger = open_ledger(folder, elsewhere=())
    assert len(ledger.history()) == 2
    for entry in entries[4:]:
        ledger.append(entry)
    assert ledger.history() == tuple(map(slimmed, latest_trials(entries)))
    ledger.close()
    assert verify(folder) == ()


@given(kept=st.lists(trials(), max_size=4))
@settings(max_examples=60, deadline=None)
def test_a_summary_gives_back_any_trial_but_for_its_words_and_pictures(kept: list[Trial]) -> None:
    opened, *_ = made_session("s")
    session = [opened, *(_of(trial, "s", number) for number, trial in enumerate(kept))]
    read = understand(Path("2026-11-25T130420-s.jsonl"), written(session))
    assert summarise(read).trials == tuple(map(slimmed, latest_trials(session)))


def _of(trial: Trial, session: str, number: int) -> Trial:
    return replace(trial, session=session, trial=f"{session}-{number}")


def test_the_same_trials_are_found_whatever_the_order_of_the_files(
    tmp_path: Path, unsynced: None
) -> None:
    sessions = [
        made_session(f"s{number}", start=datetime(2026, 1, 1, 10, tzinfo=UTC) + timedelta(number))
        for number in range(20)
    ]
    found = []
    for seed in (1, 2):
        Random(seed).shuffle(sessions)
        folder = tmp_path / str(seed)
        for entries in sessions:
            keep(folder, entries)
        ledger = open_ledger(folder, elsewhere=())
        found.append((ledger.history(), ledger.entries()))
        ledger.close()
    assert found[0] == found[1]
