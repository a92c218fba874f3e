"""Which gestures are to be scored twice, and how far caregiver and therapist agree on them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from hashlib import sha256
from typing import TYPE_CHECKING

from drills.core.kinds import Kind
from drills.core.records import Trial
from drills.core.therapist import SecondScore
from drills.measures.missing import Lack, Missing

if TYPE_CHECKING:
    from drills.digest.raters import Agreement


@dataclass(frozen=True, slots=True, kw_only=True)
class PickedTry:
    """A gesture to be scored twice.   own: the therapist's newest score, None before it."""

    trial: Trial
    own: SecondScore | None


def is_picked(trial: Trial, *, one_in: int) -> bool:
    """By a fixed hash of its id: neither the score nor anybody's wish decides."""
    name = f"{trial.session}/{trial.trial}"
    return int.from_bytes(sha256(name.encode()).digest()[:8]) % one_in == 0


def picked(
    trials: Sequence[Trial], second: Sequence[SecondScore], *, one_in: int
) -> tuple[PickedTry, ...]:
    """Gestures that the caregiver scored and that are picked, newest first.

    A try that has a second score stays, also where the plan now picks fewer.
    """
    own = {(each.session, each.trial): each for each in sorted(second, key=lambda each: each.at)}
    found = [
        PickedTry(trial=trial, own=own.get((trial.session, trial.trial)))
        for trial in trials
        if trial.asked.kind is Kind.GESTURE
        and trial.counts
        and trial.first is not None
        and trial.first.score is not None
    ]
    return tuple(
        each
        for each in reversed(found)
        if each.own is not None or is_picked(each.trial, one_in=one_in)
    )


def agreement_told(agreement: Agreement | None) -> tuple[str, ...]:
    """The same score, kappa, and who scores higher; what is lacking where a number is not given."""
    if agreement is None or not agreement.pairs:
        return ("Nothing is scored twice yet.",)
    scores = agreement.scores
    exact = scores.exact
    return (
        f"The same score: {exact.right} of {exact.of} ({100 * exact.right / exact.of:.0f}%).",
        f"Kappa, linear weights: {_number(scores.linear)} Scored twice: {agreement.pairs}.",
        _lenience(scores.lenience),
    )


def _number(value: float | Missing) -> str:
    if not isinstance(value, Missing):
        return f"{value:.2f}."
    if value.lack is Lack.PAIRS:
        return f"not given before {value.need} are scored twice."
    return f"not given, because {value}."


def _lenience(lenience: float | None) -> str:
    if lenience is None or round(lenience, 2) == 0:
        return "Neither scores higher on the whole."
    who = "caregiver" if lenience > 0 else "therapist"
    return f"The {who} scores higher, by {abs(lenience):.2f} on the whole."
