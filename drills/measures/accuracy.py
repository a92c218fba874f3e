"""How many were right, alone and with help."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from drills.core.records import Trial
from drills.measures.missing import FEWEST_FOR_PERCENT, Lack, Missing, too_few


@dataclass(frozen=True, slots=True, kw_only=True)
class Share:
    """`right` of `of`."""

    right: int
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Accuracy:
    """unaided: right at the first response, no cue before.   aided: right below the top cue.

    unaided leaves out the trials that began with help: nobody could be right alone in them.
    """

    unaided: Share
    aided: Share


def count(trials: Iterable[Trial]) -> Accuracy:
    """Right alone and right with help, of the trials that count.

    One left out after a wrong response counts on both sides: it never came to be right.
    """
    judged = [trial for trial in trials if trial.counts]
    alone = [trial for trial in judged if trial.could_be_alone]
    # A trial left in the middle has its first response, but not all the help it could have had.
    ended = [trial for trial in judged if trial.ended]
    return Accuracy(
        unaided=Share(right=sum(trial.unaided_right for trial in alone), of=len(alone)),
        aided=Share(right=sum(trial.aided_right for trial in ended), of=len(ended)),
    )


def percent(share: Share, *, fewest: int = FEWEST_FOR_PERCENT) -> float | Missing:
    """0 to 100, unrounded.   Missing: fewer than `fewest` trials."""
    lacking = too_few(Lack.TRIALS, share.of, max(fewest, 1))
    return lacking if lacking is not None else 100 * share.right / share.of
