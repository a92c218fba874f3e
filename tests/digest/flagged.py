"""Invented answers for flags: many at a time, each with what a test plants in it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from itertools import count

from drills.core.gestures import Tick
from drills.core.items import Foil, Kind, Target
from drills.core.kinds import Side
from drills.core.records import Trial
from tests.measures.made import MONDAY, asked, trial

_numbers = count(1)


def answered(
    right: bool,
    *,
    name: str = "active",
    kind: Kind = Kind.MATCH,
    days: float = 0,
    wanted: int = 0,
    options: int = 2,
    side: Side | None = None,
    words: Sequence[str] = (),
    latency_ms: int = 3000,
    cue_level: int = 0,
    session: str = "",
    chosen: int | None = None,
    ticks: tuple[Tick, ...] = (),
) -> Trial:
    """One trial; the right option stands in place `wanted`, a wrong one turns the roles round."""
    at = MONDAY + timedelta(days=days)
    made = trial("right", at=at, target=Target(kind=kind, name=name), latency_ms=latency_ms)
    first = made.attempts[0]
    choice = chosen if chosen is not None else wanted if right else (wanted + 1) % options
    shown = tuple(
        {
            "text": words[place] if words else f"{name} {place}",
            "foil": None if place == wanted else Foil.REVERSAL.value,
            "why_wrong": None,
        }
        for place in range(options)
    )
    gesture = kind is Kind.GESTURE
    base = asked(Target(kind=kind, name=name))
    return replace(
        made,
        session=session or f"day {days:.0f}",
        trial=f"t{next(_numbers)}",
        asked=replace(
            base,
            options=() if gesture else shown,
            answer=None if gesture else wanted,
            effective_k=1 if gesture else options,
            side=side,
        ),
        attempts=(
            replace(
                first,
                right=right,
                choice=None if gesture else choice,
                score=(3 if right else 1) if gesture else None,
                cue_level=cue_level,
                ticks=ticks,
            ),
        ),
    )


def sittings(trials: Sequence[Trial]) -> list[list[Trial]]:
    found: dict[str, list[Trial]] = {}
    for each in trials:
        found.setdefault(each.session, []).append(each)
    return list(found.values())
