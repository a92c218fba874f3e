"""What the therapist should see first."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from datetime import date, timedelta

from drills.core.gestures import Tick
from drills.core.records import (
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    Trial,
    latest_trials,
    practice_day,
)
from drills.digest.values import Alert, AlertKind, SittingLine

# A setting of the brief that plans do not carry yet.
DAYS_WITHOUT_PRACTICE = 5


def alerts_of(
    entries: Sequence[Entry],
    sittings: Sequence[SittingLine],
    *,
    practised_before: date | None,
    first: date,
    last: date,
    turns_at_hour: int,
    tired_rise: int,
) -> tuple[Alert, ...]:
    """Every alert of the range, the most urgent kind first.

    practised_before: the last day with practice before `first`, None for never.
    last: no later than today, else days to come would count as days without practice.
    """

    def days(moments: Iterable[Entry]) -> list[date]:
        return [practice_day(entry.at, turns_at_hour=turns_at_hour) for entry in moments]

    def noted(says: Callable[[Observation], bool | None]) -> list[date]:
        return days(entry for entry in entries if isinstance(entry, Observation) and says(entry))

    def ended(reason: CloseReason) -> list[date]:
        return days(
            entry
            for entry in entries
            if isinstance(entry, SessionClosed) and entry.reason is reason
        )

    tired = [
        line.day
        for line in sittings
        if line.reason is CloseReason.TIRED
        or (
            line.tired_before is not None
            and line.tired_after is not None
            and line.tired_after - line.tired_before >= tired_rise
        )
    ]
    hindered = days(trial for trial in latest_trials(entries) if is_hindered(trial))
    kinds = {
        AlertKind.NEW_SIGNS: noted(lambda entry: entry.new_signs),
        AlertKind.UNWELL: ended(CloseReason.UNWELL),
        AlertKind.PAIN: noted(lambda entry: entry.pain),
        AlertKind.HINDERED: hindered,
        AlertKind.TIRED: tired,
        AlertKind.HELPED: noted(lambda entry: entry.helped),
    }
    found = [
        Alert(kind=kind, days=tuple(dict.fromkeys(on)), count=len(on))
        for kind, on in kinds.items()
        if on
    ]
    found += _pauses([line.day for line in sittings], practised_before, first, last)
    order = list(AlertKind)
    return tuple(sorted(found, key=lambda alert: order.index(alert.kind)))


def is_hindered(trial: Trial) -> bool:
    """Pain, weakness or reach spoilt a try."""
    return any(Tick.BODY in attempt.ticks for attempt in trial.attempts)


def _pauses(
    practised: Iterable[date], practised_before: date | None, first: date, last: date
) -> list[Alert]:
    """Stretches without practice that reach into the range.

    Before anybody's first session there is nothing to miss, unless no session came at all.
    """
    days = sorted(set(practised))
    start = practised_before or (days[0] if days else first - timedelta(days=1))
    found = []
    for before, after in zip([start, *days], [*days, last + timedelta(days=1)], strict=True):
        idle = (after - before).days - 1
        if idle >= DAYS_WITHOUT_PRACTICE:
            found.append(
                Alert(
                    kind=AlertKind.NO_PRACTICE,
                    days=(before + timedelta(days=1), after - timedelta(days=1)),
                    count=idle,
                )
            )
    return found
