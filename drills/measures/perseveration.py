"""How often an error repeats a response that was given shortly before."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from drills.core.gestures import Tick
from drills.core.kinds import Kind
from drills.core.records import Trial
from drills.measures.accuracy import Share
from drills.measures.chance import upper_tail
from drills.measures.missing import FEWEST_FOR_PERCENT, Lack, Missing, too_few

BACK = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Response:
    """One first response.   wrong: the wrong options that were on offer.

    Raises: ValueError for a wrong response that was not on offer.
    """

    chosen: str
    right: bool
    wrong: tuple[str, ...]

    def __post_init__(self) -> None:
        if not self.right and self.chosen not in self.wrong:
            raise ValueError(f"{self.chosen!r} was not among the wrong options {self.wrong}")


@dataclass(frozen=True, slots=True, kw_only=True)
class Perseveration:
    """share: errors that repeat one of the last responses, of all errors.

    expected: the share to be expected of somebody who errs in the same trials and takes each wrong
    option as often as this person takes it anyway, 0 to 1.
    p: chance of so many repeats or more for such a person.
    """

    share: Share
    expected: float
    p: float


def perseveration(
    sessions: Iterable[Sequence[Response]], *, back: int = BACK, fewest: int = FEWEST_FOR_PERCENT
) -> Perseveration | Missing:
    """Repeats of the last `back` responses of the same session among the errors.

    sessions: responses in the order in which they came.   Missing: fewer than `fewest` errors.
    Definition ours, no source.
    """
    kept = [tuple(responses) for responses in sessions]
    taken = Counter(response.chosen for responses in kept for response in responses)
    chances: list[float] = []
    repeats = 0
    for responses in kept:
        for place, response in enumerate(responses):
            if response.right:
                continue
            recent = {before.chosen for before in responses[max(0, place - back) : place]}
            repeats += response.chosen in recent
            offered = dict.fromkeys(response.wrong)
            weight = sum(taken[option] for option in offered)
            chances.append(sum(taken[option] for option in offered if option in recent) / weight)
    lacking = too_few(Lack.ERRORS, len(chances), max(fewest, 1))
    if lacking is not None:
        return lacking
    return Perseveration(
        share=Share(right=repeats, of=len(chances)),
        expected=sum(chances) / len(chances),
        p=upper_tail(repeats, chances),
    )


def responses_of(trials: Iterable[Trial]) -> list[Response]:
    """The first responses of one session among words; a picture seldom comes twice."""
    found = []
    for trial in trials:
        first = trial.first
        if first is None or first.choice is None:
            continue
        texts = [option.get("text") for option in trial.asked.options]
        if any(text is None for text in texts):
            continue
        found.append(
            Response(
                chosen=str(texts[first.choice]),
                right=first.choice == trial.asked.answer,
                wrong=tuple(
                    str(text) for place, text in enumerate(texts) if place != trial.asked.answer
                ),
            )
        )
    return found


def old_acts(trials: Iterable[Trial]) -> Share:
    """Gestures in which an earlier act came again, of first tries that were not right."""
    missed = [
        trial.first
        for trial in trials
        if trial.asked.kind is Kind.GESTURE
        and trial.counts
        and trial.first is not None
        and not trial.first.right
    ]
    return Share(right=sum(Tick.OLD_ACT in attempt.ticks for attempt in missed), of=len(missed))
