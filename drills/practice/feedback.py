"""What is told after a response, and at the end."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Item
from drills.core.records import CloseReason, Trial
from drills.core.utterances import Utterance
from drills.practice.asking import Asking
from drills.practice.steps import Feedback, Finish

RIGHT = "Yes."
RIGHT_WITH_HELP = "Yes. That was with help."
CONFIRMED = "This is the one."
NOT_THIS_ONE = "Not this one. Look again."
SHOWN = "Not this one. Here is the answer."
SCORED = "Noted."
THANKS = "Thank you."
"""All that is said to an answer in a check."""
NOT_SCORED = "Stop. Rest the arm. No more gestures today."


def after_choice(before: Asking, after: Asking) -> Feedback:
    """Feedback on a choice: `before` it and `after` it."""
    item = after.item
    if item.is_probe:
        return Feedback(right=None, text=THANKS, spoken=Utterance(phrases=(THANKS,)), over=True)
    if not after.over:
        text = SHOWN if after.is_answer_shown else NOT_THIS_ONE
        return Feedback(right=False, text=text, spoken=Utterance(phrases=(text,)), over=False)
    if before.is_answer_shown:
        text = CONFIRMED
    elif before.cue_level:
        text = RIGHT_WITH_HELP
    else:
        text = RIGHT
    return Feedback(
        right=True, text=text, spoken=_with_restatement(text, item), over=True, answer=item.answer
    )


def after_score(after: Asking) -> Feedback:
    """What is shown once the caregiver has scored a gesture."""
    text = NOT_SCORED if after.skipped else SCORED
    return Feedback(right=None, text=text, spoken=None, over=True)


def _with_restatement(text: str, item: Item) -> Utterance:
    """The verdict, then the sentence once more in plain words."""
    return Utterance(phrases=(text, *item.restated.phrases))


def ending(
    trials: Sequence[Trial], reason: CloseReason, *, by_rule: bool = False, is_check: bool = False
) -> Finish:
    """The end of a sitting in which `trials` were over."""
    counted = [trial for trial in trials if trial.counts]
    if reason is CloseReason.FINISHED and not trials:
        # Pain left nothing to ask.
        reason = CloseReason.STOPPED
    return Finish(
        reason=reason,
        is_check=is_check,
        done=len(counted),
        right_alone=sum(trial.unaided_right for trial in counted),
        right_helped=sum(trial.aided_right and not trial.unaided_right for trial in counted),
        by_rule=by_rule,
    )
