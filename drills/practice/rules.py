"""What the trials so far change about the rest of a session.

Pure: trials in, a decision with its reason out. The thresholds are settings of the plan; their
defaults are common practice, no source.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum

from drills.core.plans import SessionRules
from drills.core.records import Trial
from drills.measures.decline import Decline, answers_of, decline
from drills.measures.missing import Missing
from drills.measures.perseveration import old_acts, responses_of


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
    if found := decline_of(trials, rules, rested_after=rested_after):
        return _of_decline(found, rules, is_rested=rested_after is not None)
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

    A gesture: the helper ticked that an earlier one came again. A word: it was chosen before, and
    another wrong word was there that was not: where every wrong word is an old one, an error
    cannot be told from any other. Pictures are made fresh and do not come again.
    """
    if not rules.perseverations_to_change or not trials:
        return False
    if old_acts(trials[-1:]).right:
        return True
    if not responses_of(trials[-1:]):
        return False
    *before, last = responses_of(trials)
    old = {response.chosen for response in before[-rules.perseveration_look_back :]}
    return not last.right and last.chosen in old and any(word not in old for word in last.wrong)


def decline_of(
    trials: Sequence[Trial], rules: SessionRules, *, rested_after: int | None = None
) -> Decline | None:
    """The decline over the trials of the last one's kind, None for none or too few of them.

    Only trials answered without help are compared, so that kinds and help are not mistaken for
    tiredness. After a rest the whole last third must lie behind it.
    """
    kind = trials[-1].asked.kind if trials else None
    judged = [
        (number, trial)
        for number, trial in enumerate(trials)
        if trial.asked.kind is kind and _is_unaided(trial)
    ]
    if len(judged) < max(3, rules.fewest_trials) or judged[-1][0] != len(trials) - 1:
        return None
    third = len(judged) // 3
    if judged[-third][0] < (rested_after or 0):
        return None
    found = decline([answers_of(trial for _, trial in judged)], fewest=third)
    if isinstance(found, Missing):
        return None
    return found if _fell(found, rules) or _slowed(found, rules) else None


def _fell(found: Decline, rules: SessionRules) -> bool:
    first, last = found.first, found.last
    # In whole numbers, so that exactly the points of the plan count.
    fallen = 100 * (first.right * last.of - last.right * first.of)
    return bool(rules.fall_points) and fallen >= rules.fall_points * first.of * last.of


def _slowed(found: Decline, rules: SessionRules) -> bool:
    ratio = found.latency_ratio
    if isinstance(ratio, Missing) or not rules.slower_times:
        return False
    return ratio >= rules.slower_times


def _of_decline(found: Decline, rules: SessionRules, *, is_rested: bool) -> Decision:
    if _fell(found, rules):
        what = (
            f"{found.last.right} of {found.last.of} were right in the last third, "
            f"{found.first.right} of {found.first.of} in the first"
        )
        plain = "Fewer are right than at the start."
    else:
        what = f"answers in the last third took {found.latency_ratio:.1f} times as long as before"
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
