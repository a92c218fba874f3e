"""Invented records for tests: small factories with plain defaults."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from itertools import count

from drills.core.gestures import Tick
from drills.core.items import ItemSet, Kind, Target
from drills.core.records import Asked, Attempt, Trial

MONDAY = datetime(2026, 11, 23, 10, 0, tzinfo=UTC)
PASSIVE = Target(kind=Kind.MATCH, name="full_passive", group="contact")
ACTIVE = Target(kind=Kind.MATCH, name="active", group="contact")
WAVE = Target(kind=Kind.GESTURE, name="wave")

_numbers = count(1)


def asked(
    target: Target = PASSIVE,
    *,
    options: int = 2,
    effective_k: int | None = None,
    foils: tuple[str, ...] = ("reversal", "verb", "noun"),
    item_set: ItemSet = ItemSet.TREATED,
    top_level: int = 7,
    sentence: str = "The nurse was pushed by the baker.",
) -> Asked:
    """The right option is always the first."""
    gesture = target.kind is Kind.GESTURE
    rows = [{"text": "right", "foil": None, "why_wrong": None}] + [
        {"text": f"wrong {foil}", "foil": foil, "why_wrong": "told"} for foil in foils
    ]
    return Asked(
        item_id=f"item-{next(_numbers)}",
        kind=target.kind,
        target=target,
        construction=target.name,
        level=target.name,
        sentence=sentence,
        words=("nurse", "baker"),
        options=() if gesture else tuple(rows[:options]),
        answer=None if gesture else 0,
        effective_k=(1 if gesture else options) if effective_k is None else effective_k,
        top_level=6 if gesture else top_level,
        side=None,
        item_set=item_set,
        content_hash="c0ffee",
    )


def trial(
    *responses: str | int,
    at: datetime = MONDAY,
    of: Asked | None = None,
    target: Target = PASSIVE,
    seconds: float = 20,
    latency_ms: int | None = 4000,
    ticks: tuple[Tick, ...] = (),
    ended: bool = True,
    skipped: bool = False,
    session: str = "s1",
    block: int = 0,
    levels: tuple[int, ...] | None = None,
) -> Trial:
    """A trial with one response a word: `right`, `wrong` (the first foil), or an option's index.

    For a gesture each response is a score from 0 to 3. Cue levels go up one a response. Like the
    program, a gesture ticked `Tick.BODY` is kept without a score and as skipped.
    """
    of = of or asked(target)
    gesture = of.kind is Kind.GESTURE
    hindered = Tick.BODY in ticks
    attempts = []
    for level, response in enumerate(responses):
        choice = {"right": 0, "wrong": 1}.get(str(response), response)
        attempts.append(
            Attempt(
                right=int(choice) >= 2 and not hindered if gesture else choice == 0,
                cue_level=level if levels is None else levels[level],
                at=at + timedelta(seconds=seconds * (level + 1) / len(responses)),
                choice=None if gesture else int(choice),
                score=int(choice) if gesture and not hindered else None,
                ticks=ticks if level == 0 else (),
                latency_ms=latency_ms,
            )
        )
    number = next(_numbers)
    return Trial(
        session=session,
        trial=f"{session}-{number}",
        started_at=at,
        at=at + timedelta(seconds=seconds),
        block=block,
        asked=of,
        attempts=tuple(attempts),
        ended=ended,
        skipped=skipped or hindered,
        words_per_minute=120,
    )
