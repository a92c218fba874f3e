"""One invented session, and a folder to keep it in."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta, timezone
from pathlib import Path

import pytest

from drills.core.items import ItemSet, Kind, Target
from drills.core.kinds import Side
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

HERE = timezone(timedelta(hours=-5))
START = datetime(2026, 11, 25, 8, 4, 20, 250_000, tzinfo=HERE)


def _session(name: str = "s1", *, start: datetime = START, trials: int = 3) -> list[Entry]:
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
    first = Trial(
        session=name,
        trial=f"{name}-0",
        started_at=start + timedelta(seconds=30),
        at=start + timedelta(seconds=36),
        block=0,
        asked=asked,
        attempts=(Attempt(right=True, cue_level=0, at=start + timedelta(seconds=36), choice=0),),
        ended=True,
        words_per_minute=120,
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
    entries += [
        replace(
            first,
            trial=f"{name}-{number}",
            started_at=first.started_at + timedelta(seconds=20 * number),
            at=first.at + timedelta(seconds=20 * number),
        )
        for number in range(trials)
    ]
    entries.append(
        SessionClosed(session=name, at=start + timedelta(minutes=20), reason=CloseReason.FINISHED)
    )
    return entries


@pytest.fixture(scope="session")
def session() -> Callable[..., list[Entry]]:
    return _session


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "practice"
