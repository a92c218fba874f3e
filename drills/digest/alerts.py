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
from drills.digest.flag_values import Alert, AlertKind
from drills.digest.values import SittingLine

_TIRED = "tiredness rose by {} of 5, or a session ended because of it"
_RULES = {
    AlertKind.NEW_SIGNS: "any word of new signs that may be a stroke",
    AlertKind.UNWELL: "any session that ended because of feeling unwell",
    AlertKind.PAIN: "any word of pain",
    AlertKind.HINDERED: "any gesture that pain, weakness or reach hindered",
    AlertKind.HELPED: "any session in which somebody helped with answers",
}
_TIMES = {
    AlertKind.NEW_SIGNS: "Times noted",
    AlertKind.UNWELL: "Sessions",
    AlertKind.PAIN: "Times noted",
    AlertKind.HINDERED: "Gestures",
    AlertKind.TIRED: "Sessions",
    AlertKind.HELPED: "Times noted",
}


def alerts_of(
    entries: Sequence[Entry],
    sittings: Sequence[SittingLine],
    *,
    practised_before: date | None,
    first: date,
    last: date,
    turns_at_hour: int,
    tired_rise: int,
    days_without_practice: int,
) -> tuple[Alert, ...]:
    """What was noted in the range and what is missing from it, the most urgent kind first.

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

    tired = _tired_days(sittings, tired_rise)
    hindered = days(trial for trial in latest_trials(entries) if is_hindered(trial))
    kinds = {
        AlertKind.NEW_SIGNS: noted(lambda entry: entry.new_signs),
        AlertKind.UNWELL: ended(CloseReason.UNWELL),
        AlertKind.PAIN: noted(lambda entry: entry.pain),
        AlertKind.HINDERED: hindered,
        AlertKind.TIRED: tired,
        AlertKind.HELPED: noted(lambda entry: entry.helped),
    }
    rules = {**_RULES, AlertKind.TIRED: _TIRED.format(tired_rise)}
    found = [
        Alert(
            kind=kind,
            days=tuple(dict.fromkeys(on)),
            count=len(on),
            rule=rules[kind],
            evidence=f"{_TIMES[kind]}: {len(on)}.",
        )
        for kind, on in kinds.items()
        if on
    ]
    found += _pauses(
        [line.day for line in sittings], practised_before, first, last, days_without_practice
    )
    return in_order(found)


def in_order(alerts: Iterable[Alert]) -> tuple[Alert, ...]:
    """The most urgent kind first."""
    order = list(AlertKind)
    return tuple(sorted(alerts, key=lambda alert: order.index(alert.kind)))


def _tired_days(sittings: Sequence[SittingLine], tired_rise: int) -> list[date]:
    """The days on which tiredness rose enough, or ended a session.

    A rule ends one as well for fewer right answers, which once in a range is luck where nobody
    says that they are more tired.
    """
    surely: list[date] = []
    perhaps: list[date] = []
    for line in sittings:
        before, after = line.tired_before, line.tired_after
        rise = None if before is None or after is None else after - before
        if rise is not None and rise >= tired_rise:
            surely.append(line.day)
        elif line.reason is CloseReason.TIRED:
            (perhaps if rise == 0 else surely).append(line.day)
    return sorted([*surely, *perhaps]) if surely or len(perhaps) > 1 else []


def is_hindered(trial: Trial) -> bool:
    """Pain, weakness or reach spoilt a try."""
    return any(Tick.BODY in attempt.ticks for attempt in trial.attempts)


def _pauses(
    practised: Iterable[date],
    practised_before: date | None,
    first: date,
    last: date,
    least: int,
) -> list[Alert]:
    """Stretches without practice that reach into the range.

    Before anybody's first session there is nothing to miss, unless no session came at all.
    """
    days = sorted(set(practised))
    start = practised_before or (days[0] if days else first - timedelta(days=1))
    found = []
    for before, after in zip([start, *days], [*days, last + timedelta(days=1)], strict=True):
        idle = (after - before).days - 1
        if idle >= least:
            found.append(
                Alert(
                    kind=AlertKind.NO_PRACTICE,
                    days=(before + timedelta(days=1), after - timedelta(days=1)),
                    count=idle,
                    rule=f"{least} days running without practice",
                    evidence=f"Days without practice: {idle}.",
                )
            )
    return found
