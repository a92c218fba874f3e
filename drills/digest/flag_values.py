"""What the therapist should see first, each with the rule that fired."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum


class AlertKind(StrEnum):
    """In order of urgency.

    BELOW_CHANCE: most often the first noun is taken for the doer.   SIDE: answers differ with the
    side of the picture.   PLACE: with the place of the right option.   YES: with what is true.
    UNTRUSTED: stands until caregiver and therapist have scored enough together.
    """

    NEW_SIGNS = "new signs"
    UNWELL = "ended unwell"
    PAIN = "pain"
    SUDDEN_DROP = "sudden drop"
    HINDERED = "gestures hindered"
    NO_PRACTICE = "no practice"
    ADHERENCE = "few sessions"
    TIRED = "tired"
    DECLINE = "worse within sessions"
    BELOW_CHANCE = "below guessing"
    SIDE = "one side of the picture"
    PLACE = "one place of the options"
    YES = "liking for yes or no"
    PERSEVERATION = "earlier answers again"
    CUES = "help does not fade"
    NO_RISE = "no rise"
    CEILING = "ceiling"
    HELPED = "help given"
    UNTRUSTED = "scores not yet trusted"
    CLOCK = "clock went back"
    DATA = "records damaged"


@dataclass(frozen=True, slots=True, kw_only=True)
class Alert:
    """days: those it was noted on; for no practice, the first and the last without.

    count: how often; for no practice, how many days; else how many trials, weeks or scores it
    rests on.   subject, label: the name it is about and its plain name; empty for all names.
    rule: which rule of which numbers, of the plan.   evidence: the numbers it fired on.
    """

    kind: AlertKind
    days: tuple[date, ...] = ()
    count: int
    subject: str = ""
    label: str = ""
    rule: str = ""
    evidence: str = ""
