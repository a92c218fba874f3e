"""What the therapist adds at the home machine: decisions, second scores, notes."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from enum import StrEnum

from drills.core.gestures import Tick


class Answer(StrEnum):
    """What the therapist made of a suggestion.

    CHANGED: a plan was written, but another one than suggested.
    """

    ACCEPTED = "accepted"
    CHANGED = "changed"
    IGNORED = "ignored"


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """One suggestion answered.

    suggestion: its id.   says, rule, evidence: as they were shown, since records go on; `says` is
    empty for a change that nothing suggested, and in old records.
    by: who decided, as they call themselves.   why: in their words, may be empty.
    plan_version_before, plan_version_after: the same when it was ignored.
    """

    at: datetime
    by: str
    suggestion: str
    answer: Answer
    rule: str
    evidence: str
    why: str
    plan_name: str
    plan_version_before: int
    plan_version_after: int
    says: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondScore:
    """The therapist's own score of a gesture that the caregiver scored as well.

    session, trial: of the trial in the records.   score: 0 to 3.
    """

    at: datetime
    by: str
    session: str
    trial: str
    score: int
    ticks: tuple[Tick, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class TherapistNote:
    """about: the practice day it is about."""

    at: datetime
    by: str
    about: date
    text: str


TherapistEntry = Decision | SecondScore | TherapistNote
