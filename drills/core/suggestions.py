"""A change of the plan that the records speak for; only the therapist makes it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from drills.core.plans import CueDirection


class Part(StrEnum):
    """What of the plan would change.

    NAME_OFF: the name leaves the block.   NAME_ON: a name joins the block.
    """

    NAME_OFF = "take a name out of block"
    NAME_ON = "add a name to block"
    CUES = "direction of help in block"
    OPTIONS = "options of block"
    TRIALS = "trials of block"
    MINUTES = "minutes of a session"
    SESSIONS = "sessions in a week"
    LAYOUT = "where options stand"


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanChange:
    """block: its number in the plan, from 1; None for what is no block's.

    value: the name, the direction, the layout, or the number that is new.
    label: of a name, in plain words; empty for none.
    """

    part: Part
    value: str | int
    block: int | None = None
    label: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Suggestion:
    """id: the same for the same rule, subject and evidence, so that an answer is remembered.

    says: one sentence to the therapist.   rule: which rule of which numbers fired.
    evidence: the numbers it fired on.   changes: made together; none where only the therapist can
    say what to change.
    """

    id: str
    says: str
    rule: str
    evidence: str
    changes: tuple[PlanChange, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class CueAdvice:
    """The direction of help that `right` of `of` first responses without help speak for.

    block: its number in the plan, from 1.
    """

    block: int
    direction: CueDirection
    right: int
    of: int
