"""How long sessions took, as summaries hold it, is what their entries say."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta
from itertools import pairwise
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.core.records import (
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    Topic,
    Trial,
    latest_trials,
    practice_day,
)
from drills.core.sessions import spans_of
from drills.ledger import disk, open_ledger, rebuild, verify
from drills.ledger.lines import lines_of
from drills.measures.dose import Sitting, active_seconds, joined, sittings
from tests.ledger.made import START, keep, made_session, session_files

OPENED, _, TRIAL, *_ = made_session("s")
assert isinstance(OPENED, SessionOpened)
assert isinstance(TRIAL, Trial)
BEGIN, END = START - timedelta(days=900), START + timedelta(days=900)

# Seconds: the clock gone back, an answer, a rest, somebody away for more than ten minutes.
WAITS = st.sampled_from([-4000.25, -3.0, 0.0, 0.1, 7.3, 59.9, 61.0, 599.5, 600.0, 601.7, 30_000.0])
STEPS = st.lists(
    st.tuples(st.sampled_from(["noted", "answered", "again", "left out"]), WAITS), max_size=8
)
SESSION = st.fixed_dictionaries(
    {
        "later": st.floats(-20, 60).map(lambda hours: timedelta(hours=round(hours, 4))),
        "steps": STEPS,
        "wait": WAITS,
        "reason": st.none() | st.sampled_from(CloseReason),
        "continues": st.none() | st.sampled_from(["s0", "s1", "s2", "s3", "gone"]),
        "check": st.sampled_from([None, None, "A"]),
        "simulated": st.booleans(),
    }
)


def session_of(number: int, at: datetime, drawn: dict) -> list[Entry]:
    name = f"s{number}"
    shared = {key: drawn[key] for key in ("continues", "check", "simulated")}
    entries: list[Entry] = [replace(OPENED, session=name, at=at, **shared)]
    last: Trial | None = None
    for place, (what, wait) in enumerate(drawn["steps"]):
        before, at = at, at + timedelta(seconds=wait)
        if what == "noted":
            entries.append(Observation(session=name, at=at, topic=Topic.REST))
            continue
        first = replace(TRIAL.attempts[0], at=at)
        if what == "again" and last is not None:
            last = replace(last, at=at, attempts=(*last.attempts, first))
        else:
            last = replace(
                TRIAL,
                session=name,
                trial=f"{name}-{place}",
                started_at=before,
                at=at,
                attempts=() if what == "left out" else (first,),
            )
        entries.append(last)
    if drawn["reason"] is not None:
        at += timedelta(seconds=drawn["wait"])
        entries.append(SessionClosed(session=name, at=at, reason=drawn["reason"]))
    return entries


def plainly(entries: tuple[Entry, ...]) -> tuple[Sitting, ...]:
    """The rules of sittings, each written out for entries alone."""
    sessions = list(dict.fromkeys(entry.session for entry in entries))
    openings = {entry.session: entry for entry in entries if isinstance(entry, SessionOpened)}
    ends = {entry.session: entry.reason for entry in entries if isinstance(entry, SessionClosed)}
    chains: dict[str, list[str]] = {}
    for session in sessions:
        root, seen = session, [session]
        while (before := openings[root].continues) in openings and before not in seen:
            root = before
            seen.append(root)
        chains.setdefault(root, []).append(session)
    found = []
    for root, chain in chains.items():
        trials = [
            trial
            for session in chain
            for trial in latest_trials(entries)
            if trial.session == session and trial.attempts
        ]
        minutes = 0.0
        for session in chain:
            moments = [entry.at for entry in entries if entry.session == session]
            waits = [(after - before).total_seconds() for before, after in pairwise(moments)]
            minutes += sum(0.0 if wait < 0 else 600.0 if wait > 600 else wait for wait in waits)
        if trials:
            found.append(
                Sitting(
                    sessions=tuple(chain),
                    day=practice_day(openings[root].at, turns_at_hour=4),
                    trials=len(trials),
                    minutes=minutes / 60,
                    active_minutes=sum(active_seconds(trial) for trial in trials) / 60,
                    reason=ends.get(chain[-1]),
                )
            )
    return tuple(found)


@pytest.fixture(scope="module", autouse=True)
def _unsynced() -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(disk, "sync_file", lambda file: None)
        patch.setattr(disk, "sync_folder", lambda folder: None)
        yield


def told(folder: Path) -> tuple[Sitting, ...]:
    """The sittings from what summaries hold, held against those from all entries."""
    ledger = open_ledger(folder, elsewhere=())
    spans = ledger.spans(since=BEGIN, until=END)
    entries = tuple(ledger.entries(since=BEGIN, until=END))
    assert spans == spans_of(entries)
    found = joined(spans, ledger.history(since=BEGIN), day_turns_at_hour=4)
    assert found == sittings(entries, day_turns_at_hour=4) == plainly(entries)
    ledger.close()
    return found


@given(drawn=st.lists(SESSION, min_size=1, max_size=4))
@settings(max_examples=80, deadline=None)
def test_sittings_from_summaries_are_those_from_entries(drawn: list[dict]) -> None:
    with TemporaryDirectory() as place:
        folder, at = Path(place) / "practice", START
        for number, each in enumerate(drawn):
            at += each["later"]
            keep(folder, session_of(number, at, each))
        # The second time those that were broken off have their summaries too.
        assert told(folder) == told(folder)


def test_a_range_of_spans_is_that_of_entries(folder: Path) -> None:
    for number in range(6):
        keep(folder, made_session(f"s{number}", start=START + timedelta(hours=number / 3)))
    ledger = open_ledger(folder, elsewhere=())
    for since, until in ((0, 1), (1 / 3, 2 / 3), (0.1, 1.2), (5, 6)):
        of = {"since": START + timedelta(hours=since), "until": START + timedelta(hours=until)}
        assert ledger.spans(**of) == spans_of(ledger.entries(**of))
    ledger.close()


def as_before(folder: Path) -> None:
    """Summaries as they were when how long a session took was not yet kept."""
    for month in (folder / "summaries").glob("*.jsonl"):
        rows = [json.loads(line)["row"] for line in month.read_text().splitlines()]
        for row in rows[1:]:
            del row["span"]
        month.write_bytes(lines_of(rows))


def test_older_summaries_are_made_again_one_by_one(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    for number in range(12):
        keep(folder, made_session(f"s{number}", start=START - timedelta(days=9 * number)))
    expected = told(folder)
    as_before(folder)
    read: list[str] = []
    whole = Path.read_bytes

    def noted(path: Path) -> bytes:
        if path.parent.name == "records":
            read.append(path.name)
        return whole(path)

    ledger = open_ledger(folder, elsewhere=())
    monkeypatch.setattr(Path, "read_bytes", noted)
    ledger.history()
    # The schedule asks nothing that they lack.
    assert read == []
    newest = {"since": START - timedelta(days=30), "until": END}
    assert len(ledger.spans(**newest)) == 4
    # The newest was read when the folder was opened.
    assert len(read) == 3
    ledger.close()
    ledger = open_ledger(folder, elsewhere=())
    read.clear()
    assert len(ledger.spans(**newest)) == 4
    assert read == []
    ledger.close()
    assert told(folder) == expected
    assert verify(folder) == ()


def test_what_older_summaries_alone_know_is_kept(folder: Path) -> None:
    for number in range(4):
        keep(folder, made_session(f"s{number}", start=START - timedelta(days=number)))
    as_before(folder)
    gone, cut, other, _ = session_files(folder)
    gone.unlink()
    cut.write_bytes(b"".join(cut.read_bytes().splitlines(keepends=True)[:-1]))
    # As long as it was, and whole, but another one.
    changed = made_session("s1", start=START - timedelta(days=1))
    changed[1] = replace(changed[1], tiredness=3)
    aside = folder.parent / "aside"
    keep(aside, changed)
    other.write_bytes(session_files(aside)[0].read_bytes())
    before = [problem.message for problem in verify(folder)]
    assert len(before) == 3
    told(folder)
    assert [problem.message for problem in verify(folder)] == before
    rebuild(folder)
    assert verify(folder) == ()
