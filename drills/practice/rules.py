"""What the trials so far change about the rest of a session.

Pure: trials in, a decision with its reason out. The thresholds are settings of the plan; their
defaults are common practice, no source.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from statistics import median

from drills.core.gestures import Tick
from drills.core.plans import SessionRules
from drills.core.records import Trial

# A median of fewer waits is chance.
FEWEST_WAITS = 3


class Rule(StrEnum):
    FULL_HELP = "full help"
    EASIER = "easier"
    CHANGE_TASK = "change task"
    REST = "rest"
    END = "end"


@dataclass(frozen=True, slots=True, kw_only=True)
class Decision:
    """why: one sentence for the therapist.   helper: the same for the caregiver, in plain words."""

    rule: Rule
    why: str
    helper: str


def decide(
    trials: Sequence[Trial],
    rules: SessionRules,
    *,
    has_easier: Callable[[], bool],
    block_goes_on: bool = True,
    rested_after: int | None = None,
) -> Decision | None:
    """What the last of `trials` brings about; None for nothing.

    trials: those of this sitting that are over, in order.
    has_easier: tells whether the plan holds an easier name than the last one's.
    block_goes_on: the next trial is of the same block.
    rested_after: how many trials were over when a rest was given for a decline, None before one.
    """
    if not trials or trials[-1].first is None:
        return None
    last = trials[-1]
    block = [trial for trial in trials if trial.block == last.block]
    if decline := decline_of(trials, rules, rested_after=rested_after):
        return _of_decline(decline, is_rested=rested_after is not None)
    if (
        is_perseveration(block, rules)
        and (count := perseverations(block, rules))
        and (count % rules.perseverations_to_change == 0)
    ):
        return Decision(
            rule=Rule.CHANGE_TASK,
            why=f"{count} old answers came again in one block, so the task changes.",
            helper="The same answer came back. Now another task.",
        )
    if not block_goes_on:
        return None
    return _of_errors(errors_running(block), rules, has_easier=has_easier)


def errors_running(trials: Sequence[Trial]) -> int:
    """Wrong first responses without help, in a row up to the last trial.

    0 when the last trial is none. Trials that began with help, or that nobody answered, neither
    count nor break the row.
    """
    unaided = [trial for trial in trials if _is_unaided(trial)]
    if not unaided or unaided[-1] is not trials[-1]:
        return 0
    count = 0
    for trial in reversed(unaided):
        if trial.unaided_right:
            break
        count += 1
    return count


def perseverations(trials: Sequence[Trial], rules: SessionRules) -> int:
    """How many errors in `trials` repeat an old response."""
    return sum(is_perseveration(trials[: end + 1], rules) for end in range(len(trials)))


def is_perseveration(trials: Sequence[Trial], rules: SessionRules) -> bool:
    """Whether the last first response is an error that repeats one of those just before it.

    A gesture: the helper ticked that an earlier one came again. A choice: the same word or picture
    was chosen before, and another wrong option was there that was not: where every wrong option
    is an old one, an error cannot be told from any other.
    """
    if not rules.perseverations_to_change:
        return False
    answered = [trial for trial in trials if trial.counts]
    if not answered or answered[-1] is not trials[-1]:
        return False
    last = answered[-1]
    first = last.first
    if first is None or first.right:
        return False
    if first.choice is None:
        return Tick.OLD_ACT in first.ticks
    before = answered[-1 - rules.perseveration_look_back : -1]
    old = {_chosen(trial) for trial in before} - {None}
    wrong = [
        _shown(option)
        for number, option in enumerate(last.asked.options)
        if number != last.asked.answer
    ]
    return _chosen(last) in old and any(option not in old for option in wrong)


@dataclass(frozen=True, slots=True, kw_only=True)
class Decline:
    """From the first to the last third: points of a hundred fewer right, and times slower.

    times: None where too few waits were measured.
    """

    points: float
    times: float | None
    fell: bool


def decline_of(
    trials: Sequence[Trial], rules: SessionRules, *, rested_after: int | None = None
) -> Decline | None:
    """The decline over the trials of the last one's kind, None for none or too few of them.

    Only trials answered without help are compared, so that kinds and help are not mistaken for
    tiredness. After a rest the whole last third must lie behind it.
    """
    kind = trials[-1].asked.kind if trials else None
    rested = rested_after or 0
    judged = [
        (number, trial)
        for number, trial in enumerate(trials)
        if trial.asked.kind is kind and _is_unaided(trial)
    ]
    if len(judged) < max(3, rules.fewest_trials) or judged[-1][0] != len(trials) - 1:
        return None
    third = len(judged) // 3
    first = [trial for _, trial in judged[:third]]
    last = [trial for _, trial in judged[-third:]]
    if judged[-third][0] < rested:
        return None
    fallen = sum(trial.unaided_right for trial in first) - sum(
        trial.unaided_right for trial in last
    )
    times = _times_slower(first, last)
    fell = bool(rules.fall_points) and 100 * fallen >= rules.fall_points * third
    slowed = bool(rules.slower_times) and times is not None and times >= rules.slower_times
    if not fell and not slowed:
        return None
    return Decline(points=100 * fallen / third, times=times, fell=fell)


def _of_decline(decline: Decline, *, is_rested: bool) -> Decision:
    if decline.fell:
        what = f"{decline.points:.0f} points of 100 fewer were right in the last third"
        plain = "Fewer are right than at the start."
    else:
        what = f"answers in the last third took {decline.times:.1f} times as long as in the first"
        plain = "Answers take longer than at the start."
    then = "after a rest too, so the session ends" if is_rested else "so a rest is offered"
    does = "We stop soon." if is_rested else "Rest now."
    return Decision(
        rule=Rule.END if is_rested else Rule.REST,
        why=f"{what[0].upper()}{what[1:]}, {then}.",
        helper=f"{plain} {does}",
    )


def _of_errors(
    count: int, rules: SessionRules, *, has_easier: Callable[[], bool]
) -> Decision | None:
    if not count:
        return None
    is_for_easier = rules.errors_to_easier and count % rules.errors_to_easier == 0
    if is_for_easier and has_easier():
        return Decision(
            rule=Rule.EASIER,
            why=f"{count} unaided errors came in a row, so the block goes on with an easier name.",
            helper=f"{count} in a row were not right. Easier ones come now.",
        )
    if rules.errors_to_full_help and count % rules.errors_to_full_help == 0:
        return Decision(
            rule=Rule.FULL_HELP,
            why=f"{count} unaided errors came in a row, "
            f"so the next {rules.full_help_trials} begin with full help.",
            helper=f"{count} in a row were not right. "
            f"Full help for the next {rules.full_help_trials}.",
        )
    return None


def _is_unaided(trial: Trial) -> bool:
    return trial.counts and trial.first is not None and trial.first.cue_level == 0


def _times_slower(first: Sequence[Trial], last: Sequence[Trial]) -> float | None:
    """Of right answers alone, where both thirds have enough measured waits."""
    before, after = _waits(first), _waits(last)
    if min(len(before), len(after)) < FEWEST_WAITS or median(before) <= 0:
        return None
    return median(after) / median(before)


def _waits(trials: Sequence[Trial]) -> list[int]:
    return [
        trial.first.latency_ms
        for trial in trials
        if trial.unaided_right and trial.first is not None and trial.first.latency_ms is not None
    ]


def _chosen(trial: Trial) -> str | None:
    """What was chosen first, as it looks; None for no choice."""
    choice = None if trial.first is None else trial.first.choice
    return None if choice is None else _shown(trial.asked.options[choice])


def _shown(option: object) -> str:
    """A word as it reads, a picture by what happens in it, whichever side it is drawn on."""
    if not isinstance(option, dict):
        return str(option)
    text = option.get("text")
    return str(text).lower() if text else json.dumps(option.get("meaning"), sort_keys=True)
