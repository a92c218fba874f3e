"""How much help was needed."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from drills.core.records import Trial
from drills.measures.accuracy import Share


@dataclass(frozen=True, slots=True, kw_only=True)
class CueUse:
    """of: trials gone through to the end that could have had help.

    dependence: 0 without help, 1 always shown.
    mean_level: of the cue at which the answer came, the top one where it never did.
    mean_level and dependence: None without trials.
    """

    of: int
    mean_level: float | None
    dependence: float | None


def summarise(trials: Iterable[Trial]) -> CueUse:
    """The help that trials took; one that was left out had not all that it could have had."""
    used = [
        (trial.asked.top_level if level is None else level, trial.asked.top_level)
        for trial in trials
        if trial.counts and trial.ended and not trial.skipped and trial.asked.top_level > 0
        for level in (trial.level_at_success,)
    ]
    if not used:
        return CueUse(of=0, mean_level=None, dependence=None)
    return CueUse(
        of=len(used),
        mean_level=sum(level for level, _ in used) / len(used),
        dependence=sum(level / top for level, top in used) / len(used),
    )


def right_by_level(trials: Iterable[Trial]) -> Mapping[int, Share]:
    """Of the responses given after each level of help, how many were right; lowest level first.

    Level 0 is without help. Ladders differ: give trials of one kind. The top level shows the
    answer, so that it is left out where there is a ladder. Definition ours, no source.
    """
    right: dict[int, int] = {}
    asked: dict[int, int] = {}
    for trial in trials:
        if not trial.counts:
            continue
        top = trial.asked.top_level
        for attempt in trial.attempts:
            if top == 0 or attempt.cue_level < top:
                asked[attempt.cue_level] = asked.get(attempt.cue_level, 0) + 1
                right[attempt.cue_level] = right.get(attempt.cue_level, 0) + attempt.right
    return {level: Share(right=right[level], of=asked[level]) for level in sorted(asked)}
