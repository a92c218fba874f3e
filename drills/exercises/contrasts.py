"""Which word of each contrast is right in a batch, which stand against it, and where they stand."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Sequence
from random import Random

from drills.core.material import ClozeSet, ClozeWords
from drills.core.problems import Problem
from drills.exercises.balance import runs, spread, without_runs
from drills.exercises.frames.bound import heads_for
from drills.exercises.frames.pictured import AUXILIARIES
from drills.exercises.frames.table import FRAMES
from drills.exercises.rules import LONGEST_ANSWER_RUN, OMISSION, near_faults

_DEALS = 8


def right_words(
    rng: Random, groups: Sequence[str], contrasts: Sequence[Sequence[str]]
) -> list[str]:
    """The right word of each item: each of a contrast equally often, none three times running.

    Of several such deals the one that is most even over the whole batch, since a batch may hold
    one item of each contrast.
    """

    places: dict[str, list[int]] = {}
    for index, group in enumerate(groups):
        places.setdefault(group, []).append(index)

    def deal() -> list[str]:
        words = [""] * len(groups)
        for group, indices in places.items():
            dealt = spread(rng, [group] * len(indices), contrasts[indices[0]])
            for index, word in zip(indices, dealt, strict=True):
                words[index] = word
        return words

    deals = [without_runs(rng, groups, deal, longest=LONGEST_ANSWER_RUN) for _ in range(_DEALS)]
    return min(
        deals,
        key=lambda words: (
            len(runs(words, longest=LONGEST_ANSWER_RUN)),
            _unevenness(words, contrasts),
        ),
    )


def _unevenness(words: Sequence[str], contrasts: Sequence[Sequence[str]]) -> int:
    """How far words, and one against many, are from being right as often as they are offered.

    In whole numbers, so that no machine rounds otherwise than another.
    """
    scale = math.lcm(*(len(contrast) for contrast in contrasts)) if contrasts else 1
    lead: Counter[str] = Counter()
    for word, contrast in zip(words, contrasts, strict=True):
        lead[word] += scale
        for other in contrast:
            lead[other] -= scale // len(contrast)
    number = sum(lead[word] if one else -lead[word] for word, (_, _, one) in AUXILIARIES.items())
    return sum(value * value for value in lead.values()) + number * number


def positions_of(
    rng: Random, groups: Sequence[str], words: Sequence[str], counts: Sequence[int]
) -> list[int]:
    """Where the right word stands: each place equally often, for each word too."""
    positions = [0] * len(groups)
    for count in dict.fromkeys(counts):
        indices = [index for index, other in enumerate(counts) if other == count]
        dealt = spread(
            rng,
            [groups[index] for index in indices],
            range(count),
            crossed=[words[index] for index in indices],
        )
        for index, position in zip(indices, dealt, strict=True):
            positions[index] = position
    return positions


def foils_of(rng: Random, word: str, contrast: Sequence[str], count: int) -> tuple[str, ...]:
    """Words to stand against `word`; the bare form is always among them where it is a foil."""
    foils = [other for other in contrast if other != word]
    rng.shuffle(foils)
    foils.sort(key=lambda other: other != OMISSION)
    chosen = foils[: count - 1]
    rng.shuffle(chosen)
    return tuple(chosen)


def contrast_faults(
    where: str, words: Sequence[str], of: ClozeSet, material_words: ClozeWords
) -> tuple[Problem, ...]:
    """What is wrong with a contrast before any item is made of it."""
    frame = FRAMES.get(of.frame)
    if frame is None:
        known = ", ".join(FRAMES)
        return (
            Problem(where=where, message=f"there is no frame {of.frame!r}.", mend=f"Use: {known}."),
        )
    if len(words) < 2 or len(dict.fromkeys(words)) < len(words):
        return (
            Problem(
                where=where,
                message=f"{', '.join(words)} offers no choice.",
                mend="Name two different words or more.",
            ),
        )
    problems = list(near_faults(where, words))
    if strange := [word for word in words if word not in frame.words]:
        problems.append(
            Problem(
                where=where,
                message=f"{', '.join(strange)} is not of the closed class of {frame.name!r}.",
                mend=f"Use words of: {', '.join(frame.words)}.",
            )
        )
    elif frame.name in ("bound", "particle"):
        problems += _unbound(where, words, material_words, particle=frame.name == "particle")
    return tuple(problems)


def _unbound(
    where: str, words: Sequence[str], material_words: ClozeWords, *, particle: bool
) -> list[Problem]:
    """Words that no head asks for so that all the others are surely wrong."""
    return [
        Problem(
            where=where,
            message=f"nothing asks for {word!r} alone.",
            mend="Add a head to the words, or take the word out.",
        )
        for word in words
        if not heads_for(
            material_words.bound,
            word,
            tuple(other for other in words if other != word),
            particle=particle,
        )
    ]
