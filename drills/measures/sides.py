"""Whether one place on the screen is preferred, or one side of the picture overlooked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from drills.core.kinds import Side
from drills.core.records import Trial
from drills.measures.accuracy import Share
from drills.measures.chance import two_sided
from drills.measures.comparing import Difference, difference
from drills.measures.missing import FEWEST_FOR_PERCENT, Lack, Missing, too_few


@dataclass(frozen=True, slots=True, kw_only=True)
class PlaceBias:
    """chosen, wanted: how often each place was chosen, and held the right option; first first.

    p: for each place, exact and two-sided, against all places alike. With several places the
    least of them is small by chance more often: multiply it by the number of places.
    """

    chosen: tuple[int, ...]
    wanted: tuple[int, ...]
    p: tuple[float, ...]

    @property
    def of(self) -> int:
        return sum(self.chosen)


@dataclass(frozen=True, slots=True, kw_only=True)
class SideDifference:
    """accuracy: of trials with the doer on the left less those with it on the right.

    omitted_left, omitted_right: ended without an answer, of the trials with the doer there.
    omissions: right less left.
    """

    accuracy: Difference | Missing
    omitted_left: Share
    omitted_right: Share
    omissions: Difference | Missing


def place_bias(
    choices: Sequence[tuple[int, int]], places: int, *, fewest: int = FEWEST_FOR_PERCENT
) -> PlaceBias | Missing:
    """Choices by place against all places alike.

    choices: (chosen place, place of the right option), each 0 to `places` - 1.
    Source: exact binomial, as in `chance`; the measure is common practice, no source.
    Missing: fewer than `fewest` choices.   Raises: ValueError for a place outside.
    """
    lacking = too_few(Lack.TRIALS, len(choices), max(fewest, 1))
    if lacking is not None:
        return lacking
    chosen, wanted = [0] * places, [0] * places
    for choice, answer in choices:
        if not (0 <= choice < places and 0 <= answer < places):
            raise ValueError(f"{choice} and {answer} are not both within 0 to {places - 1}")
        chosen[choice] += 1
        wanted[answer] += 1
    return PlaceBias(
        chosen=tuple(chosen),
        wanted=tuple(wanted),
        p=tuple(two_sided(count, len(choices), 1 / places) for count in chosen),
    )


def choices_of(trials: Iterable[Trial]) -> Mapping[int, list[tuple[int, int]]]:
    """First choices and right places, by the number of options that were shown."""
    found: dict[int, list[tuple[int, int]]] = {}
    for trial in trials:
        first, answer = trial.first, trial.asked.answer
        # After a cue an option may be gone, and its place with it.
        if first is None or first.choice is None or answer is None or first.cue_level:
            continue
        found.setdefault(len(trial.asked.options), []).append((first.choice, answer))
    return dict(sorted(found.items()))


def side_difference(
    trials: Iterable[Trial], *, fewest: int = FEWEST_FOR_PERCENT, confidence: float = 0.95
) -> SideDifference:
    """Left against right, of trials whose picture has a side.

    Source: intervals as in `comparing`; the measure is common practice, no source.
    """
    right, judged, omitted, given = (dict.fromkeys(Side, 0) for _ in range(4))
    for trial in trials:
        side = trial.asked.side
        if side is None:
            continue
        judged[side] += trial.could_be_alone
        right[side] += trial.could_be_alone and trial.unaided_right
        if trial.counts or trial.ended:
            given[side] += 1
            omitted[side] += not trial.attempts
    omitted_left, omitted_right = (
        Share(right=omitted[side], of=given[side]) for side in (Side.LEFT, Side.RIGHT)
    )
    accuracy = difference(
        Share(right=right[Side.LEFT], of=judged[Side.LEFT]),
        Share(right=right[Side.RIGHT], of=judged[Side.RIGHT]),
        fewest=fewest,
        confidence=confidence,
    )
    return SideDifference(
        accuracy=accuracy,
        omitted_left=omitted_left,
        omitted_right=omitted_right,
        omissions=difference(omitted_right, omitted_left, fewest=fewest, confidence=confidence),
    )
