"""Trials made by hand, one first response each."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from drills.core.gestures import Tick
from drills.core.items import Foil, ItemSet, Kind, Target
from drills.core.records import Asked, Attempt, Trial
from tests.edges import MORNING

WORDS = ("in", "on", "under", "behind")


def trial(
    number: int,
    *,
    right: bool,
    cue_level: int = 0,
    name: str = "C3",
    kind: Kind = Kind.CLOZE,
    words: Sequence[str] = WORDS,
    answer: int = 0,
    choice: int | None = None,
    block: int = 0,
    top_level: int = 5,
    latency_ms: int | None = 3000,
    ticks: tuple[Tick, ...] = (),
    item_set: ItemSet = ItemSet.TREATED,
    is_answered: bool = True,
) -> Trial:
    """The `number`th trial; a wrong word is the one after the right one, unless `choice` says."""
    at = MORNING + timedelta(minutes=number)
    is_gesture = kind is Kind.GESTURE
    if choice is None and not is_gesture:
        choice = answer if right else (answer + 1) % len(words)
    attempt = Attempt(
        right=right,
        cue_level=cue_level,
        at=at,
        choice=choice,
        score=(3 if right else 1) if is_gesture else None,
        ticks=ticks,
        latency_ms=None if is_gesture else latency_ms,
    )
    options = tuple(
        {"text": word, "foil": None if place == answer else Foil.WORD.value, "why_wrong": None}
        for place, word in enumerate(words)
    )
    return Trial(
        session="s",
        trial=f"s-{number:03d}",
        started_at=at,
        at=at,
        block=block,
        asked=Asked(
            item_id="i",
            kind=kind,
            target=Target(kind=kind, name=name),
            construction="",
            level="",
            sentence="",
            words=(),
            options=() if is_gesture else options,
            answer=None if is_gesture else answer,
            effective_k=max(2, len(words)),
            top_level=top_level,
            side=None,
            item_set=item_set,
            content_hash="",
        ),
        attempts=(attempt,) if is_answered else (),
        ended=True,
        skipped=not is_answered,
    )


def row(pattern: str, **what: object) -> list[Trial]:
    """One trial a letter: r right, w wrong, both alone; R and W with all help; - left out."""
    return [
        trial(
            number,
            right=letter in "rR",
            cue_level=5 if letter in "RW" else 0,
            is_answered=letter != "-",
            **what,  # type: ignore[arg-type]
        )
        for number, letter in enumerate(pattern)
    ]
