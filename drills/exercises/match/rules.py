"""What every match item must hold, one function a rule, and what a batch must."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from drills.core.items import Foil, Item
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.problems import Problem
from drills.exercises.balance import runs
from drills.exercises.choices import CHOICE_RULES, Rule, fault, fits_words
from drills.exercises.match.truth import is_true_of
from drills.exercises.showing import alike

LONGEST_RUN = 3
"""Most times that the right picture may stand in one place running. Common practice."""


def only_the_answer_is_true(item: Item, material: Material) -> tuple[Problem, ...]:
    """The sentence is true of the right picture and of no other."""
    told = item.meaning
    if told is None:
        return fault(item, "it has no meaning.")
    for index, option in enumerate(item.options):
        if option.scene is None:
            return fault(item, f"option {index} is no picture.")
        shown = option.scene.meaning
        true = is_true_of(told, item.construction, shown, material.lexicon)
        if true != (index == item.answer):
            says = "is true of" if true else "is not true of"
            return fault(item, f"{item.sentence!r} {says} option {index}.")
    return ()


def twin_offered(item: Item, _material: Material) -> tuple[Problem, ...]:
    """A foil shows the same words with other grammar, so that the words do not answer."""
    told = item.meaning
    for option in item.options:
        if option.scene is not None and told is not None:
            words_fit = fits_words(told, option.scene.meaning, item.construction)
            if words_fit and option.foil in (Foil.REVERSAL, Foil.WORD):
                return ()
    return fault(item, "no foil shows the same words with other grammar.")


def twin_stays(item: Item, _material: Material) -> tuple[Problem, ...]:
    """No step of help but the top one leaves the words alone to answer."""
    told = item.meaning
    for cue in item.cues:
        left = [
            option.scene.meaning
            for index, option in enumerate(item.options)
            if option.scene is not None and index not in cue.removes
        ]
        fitting = [shown for shown in left if told and fits_words(told, shown, item.construction)]
        if cue.removes and len(fitting) < 2:
            return fault(item, "a cue takes away what only grammar tells from the right picture.")
    return ()


def foils_are_of_their_kind(item: Item, _material: Material) -> tuple[Problem, ...]:
    """A reversal and a false small word keep the content words; a verb or noun foil does not."""
    told = item.meaning
    for index, option in enumerate(item.options):
        if option.scene is None or option.foil is None or told is None:
            continue
        keeps = fits_words(told, option.scene.meaning, item.construction)
        if keeps != (option.foil in (Foil.REVERSAL, Foil.WORD)):
            return fault(item, f"option {index} is no {option.foil.value} foil.")
    return ()


def told_apart(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Each foil differs enough from the right picture at the size they are shown."""
    scenes = [option.scene for option in item.options if option.scene is not None]
    if item.answer is None or len(scenes) < len(item.options):
        return ()
    foils = [index for index in range(len(scenes)) if index != item.answer]
    short = alike(scenes[item.answer], [scenes[index] for index in foils])
    if short:
        return fault(item, f"option {foils[short[0]]} looks too like the right picture.")
    return ()


MATCH_RULES: tuple[Rule, ...] = (
    *CHOICE_RULES,
    only_the_answer_is_true,
    twin_offered,
    twin_stays,
    foils_are_of_their_kind,
    told_apart,
)


# Rules of a batch.


def answers_stand_everywhere(items: Sequence[Item]) -> tuple[Problem, ...]:
    """In each construction every place is right equally often, within one; no long runs."""
    for name in dict.fromkeys(item.construction for item in items):
        here = [item for item in items if item.construction == name]
        counts = Counter(item.answer for item in here)
        shares = [counts[place] for place in range(len(here[0].options))]
        if max(shares) - min(shares) > 1:
            return fault(here[0], f"the right picture stands unevenly: {shares}.")
    if late := runs([item.answer for item in items], longest=LONGEST_RUN):
        return fault(items[late[0]], "the right picture stands in one place too often running.")
    return ()


def sides_are_even(items: Sequence[Item]) -> tuple[Problem, ...]:
    """In each construction the doer is on the left as often as on the right, within one."""
    for name in dict.fromkeys(item.construction for item in items):
        here = [item for item in items if item.construction == name]
        lefts = sum(_side(item) is Side.LEFT for item in here)
        if abs(2 * lefts - len(here)) > 1:
            return fault(here[0], f"the doer is on the left in {lefts} of {len(here)}.")
    return ()


def _side(item: Item) -> Side | None:
    scene = None if item.answer is None else item.options[item.answer].scene
    return None if scene is None else scene.side


BATCH_RULES = (answers_stand_everywhere, sides_are_even)
