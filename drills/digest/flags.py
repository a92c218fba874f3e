"""Every flag of a digest, the most urgent first."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from itertools import chain

from drills.core.plans import Plan
from drills.core.progress import Progress
from drills.core.records import Entry, Trial
from drills.digest.alerts import alerts_of, in_order
from drills.digest.flag_grounds import Named
from drills.digest.flag_states import (
    adherence_flags,
    ceiling_flags,
    cue_flags,
    flat_flags,
    record_flags,
    score_flags,
)
from drills.digest.flag_tests import tested_flags
from drills.digest.flag_values import Alert
from drills.digest.raters import Agreement
from drills.digest.spans import CueWeeks, DoseWeek
from drills.digest.values import Quality, SittingLine


@dataclass(frozen=True, slots=True, kw_only=True)
class Grounds:
    """What flags are raised on.

    entries: of the range.   sittings, trials_of_sittings: of practice in it, one for one.
    past: trials of practice from `drop_weeks` before the range on at least, oldest first.
    begun: the first day with practice of all, None for never.
    practised_before: the last day with practice before `first`, None for never.
    until: no later than today, else days to come would count as days without practice.
    """

    entries: Sequence[Entry]
    sittings: Sequence[SittingLine]
    trials_of_sittings: Sequence[Sequence[Trial]]
    past: Sequence[Trial]
    begun: date | None
    practised_before: date | None
    first: date
    until: date
    dose_weeks: Sequence[DoseWeek]
    cue_weeks: Sequence[CueWeeks]
    progress: Sequence[Progress]
    agreement: Agreement | None
    quality: Quality


def flags_of(grounds: Grounds, plan: Plan, labels: Named) -> tuple[Alert, ...]:
    """What was noted, what stands out beyond chance, and how things stand."""
    turns = plan.sitting.day_turns_at_hour
    tested = tested_flags(
        grounds.trials_of_sittings,
        grounds.past,
        labels,
        plan.flags,
        first=grounds.first,
        turns_at_hour=turns,
    )
    stands = [
        *adherence_flags(grounds.dose_weeks, plan.flags, begun=grounds.begun, until=grounds.until),
        *cue_flags(grounds.cue_weeks, plan.flags),
        *ceiling_flags(grounds.progress, plan, labels),
        *flat_flags(grounds.progress, grounds.past, plan, labels),
        *score_flags(grounds.agreement, chain.from_iterable(grounds.trials_of_sittings), plan),
        *record_flags(grounds.quality),
    ]
    noted = alerts_of(
        grounds.entries,
        grounds.sittings,
        practised_before=grounds.practised_before,
        first=grounds.first,
        last=grounds.until,
        turns_at_hour=turns,
        tired_rise=plan.sitting.tired_rise,
        days_without_practice=plan.flags.days_without_practice,
    )
    return in_order([*noted, *tested, *stands])
