"""Invented sessions, and the bytes of their files."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta, timezone
from pathlib import Path

from drills.core.kinds import ItemSet, Kind, Side, Target
from drills.core.records import (
    Asked,
    Attempt,
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    Topic,
    Trial,
)
from drills.ledger import open_ledger
from drills.ledger.lines import lines_of
from drills.ledger.rows import row_of
from drills.ledger.sessions import header_of

HERE = timezone(timedelta(hours=-5))
START = datetime(2026, 11, 25, 8, 4, 20, 250_000, tzinfo=HERE)


def made_session(name: str = "s1", *, start: datetime = START, trials: int = 3) -> list[Entry]:
    """A session as it is kept: every third trial took a second response, and so was kept twice."""
    opened = SessionOpened(
        session=name,
        at=start,
        plan_name="first weeks",
        plan_version=2,
        program="0.1",
        content_hash="c0ffee",
        seed=7,
    )
    asked = Asked(
        item_id="m-1",
        kind=Kind.MATCH,
        target=Target(kind=Kind.MATCH, name="active", group="push"),
        construction="active",
        level="two",
        sentence="The nurse pushed the man.",
        words=("nurse", "push", "man"),
        options=(
            {"meaning": {"verb": "push", "doer": "nurse", "done_to": "man"}, "foil": None},
            {"meaning": {"verb": "push", "doer": "man", "done_to": "nurse"}, "foil": "reversal"},
        ),
        answer=0,
        effective_k=2,
        top_level=4,
        side=Side.LEFT,
        item_set=ItemSet.TREATED,
        content_hash="c0ffee",
    )
    entries: list[Entry] = [
        opened,
        Observation(
            session=name,
            at=start + timedelta(seconds=10),
            topic=Topic.CHECK_IN,
            tiredness=2,
            pain=False,
            note='Slept badly. "Café" \u2028 {"crc32":"',
        ),
    ]
    for number in range(trials):
        begun = start + timedelta(seconds=30 + 4 * number)
        wrong = number % 3 == 2
        first = Attempt(
            right=not wrong,
            cue_level=0,
            at=begun + timedelta(seconds=2),
            choice=int(wrong),
            latency_ms=1500 + number,
        )
        trial = Trial(
            session=name,
            trial=f"{name}-{number}",
            started_at=begun,
            at=first.at,
            block=number // 10,
            asked=replace(
                asked,
                item_id=f"m-{number}",
                target=replace(asked.target, group=("push", "pull")[number % 2]),
            ),
            attempts=(first,),
            ended=not wrong,
            words_per_minute=120,
        )
        entries.append(trial)
        if wrong:
            later = begun + timedelta(seconds=3)
            second = Attempt(right=True, cue_level=1, at=later, choice=0, latency_ms=900)
            entries.append(replace(trial, at=later, attempts=(first, second), ended=True))
    entries.append(
        SessionClosed(session=name, at=start + timedelta(minutes=20), reason=CloseReason.FINISHED)
    )
    return entries


def written(entries: Sequence[Entry]) -> bytes:
    """The file of one session, the bytes that the ledger writes."""
    opened = entries[0]
    assert isinstance(opened, SessionOpened)
    return lines_of([header_of(opened), *map(row_of, entries)])


def keep(folder: Path, entries: Sequence[Entry]) -> None:
    """Through the ledger, as practice does."""
    ledger = open_ledger(folder, elsewhere=())
    first, *rest = entries
    assert isinstance(first, SessionOpened)
    ledger.open_session(first)
    for entry in rest:
        ledger.append(entry)
    ledger.close()


def session_files(folder: Path) -> list[Path]:
    return sorted((folder / "records").glob("*.jsonl"))
