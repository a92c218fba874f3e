"""What every item must hold, one function a rule; an item that breaks one is never given.

The rules by which exactly one word of a cloze is right are rules.py.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from drills.core.items import CueKind, Foil, Item, Kind, Option
from drills.core.material import Material
from drills.core.meanings import Act, Link, Meaning, Place, State
from drills.core.problems import BadInput, Problem
from drills.core.words import Lexicon
from drills.exercises.reasons import WhyWrong

Rule = Callable[[Item, Material], tuple[Problem, ...]]


def fault(item: Item, message: str, mend: str = "") -> tuple[Problem, ...]:
    return (Problem(where=f"item of {item.target}", message=message, mend=mend),)


def kept(item: Item, material: Material, rules: Sequence[Rule]) -> Item:
    """The item itself.   Raises: BadInput with every rule that it breaks."""
    if problems := broken(item, material, rules):
        raise BadInput(problems)
    return item


def broken(item: Item, material: Material, rules: Sequence[Rule]) -> tuple[Problem, ...]:
    return tuple(problem for rule in rules for problem in rule(item, material))


def content_words(meaning: Meaning, lexicon: Lexicon) -> tuple[str, ...]:
    """Lemmas of the words that carry content; a preposition and an auxiliary carry none."""
    nouns = lexicon.nouns
    if isinstance(meaning, Act):
        return (
            lexicon.verbs[meaning.verb].base,
            nouns[meaning.doer].singular,
            nouns[meaning.done_to].singular,
        )
    if isinstance(meaning, Place):
        return (nouns[meaning.thing].singular, nouns[meaning.landmark].singular)
    if not isinstance(meaning, State):
        raise TypeError(f"no exercise asks of a meaning such as {meaning}")
    complement = (
        lexicon.adjectives[meaning.complement].base
        if meaning.link is Link.BE
        else nouns[meaning.complement].singular
    )
    return (nouns[meaning.subject].singular, complement)


def keys_of(meaning: Meaning) -> tuple[str, ...]:
    """Keys of the content words, in no order of parts."""
    if isinstance(meaning, Act):
        return tuple(sorted((meaning.verb, meaning.doer, meaning.done_to)))
    if isinstance(meaning, Place):
        return tuple(sorted((meaning.thing, meaning.landmark)))
    if not isinstance(meaning, State):
        raise TypeError(f"no exercise asks of a meaning such as {meaning}")
    return tuple(sorted((meaning.subject, meaning.complement)))


def chance_choices(meaning: Meaning, options: Sequence[Option]) -> int:
    """How many pictures a listener is left with who knows the content words and no more."""
    return sum(
        option.scene is not None and keys_of(option.scene.meaning) == keys_of(meaning)
        for option in options
    )


# Rules of every kind that offers options.


def one_right_option(item: Item, _material: Material) -> tuple[Problem, ...]:
    right = [index for index, option in enumerate(item.options) if option.foil is None]
    if right == [item.answer]:
        return ()
    return fault(item, f"options {right} have no fault, but the answer is option {item.answer}.")


def reasons_given(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Every foil says why it is wrong, in a known word, and the right option has no reason."""
    known = [why.value for why in WhyWrong]
    for index, option in enumerate(item.options):
        if option.foil is None and option.why_wrong is not None:
            return fault(item, f"option {index} is right and says why it is wrong.")
        if option.foil is not None and option.why_wrong not in known:
            return fault(item, f"option {index} does not say why it is wrong.")
    return ()


def options_differ(item: Item, _material: Material) -> tuple[Problem, ...]:
    looks = [
        option.text if option.scene is None else option.scene.meaning.drawn
        for option in item.options
    ]
    for index, look in enumerate(looks):
        if look in looks[:index]:
            return fault(item, f"options {looks.index(look)} and {index} look the same.")
    return ()


def ladder_climbs(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Levels rise, a removal spares the answer and the reversal, the top shows the answer."""
    levels = [cue.level for cue in item.cues]
    if levels != sorted(dict.fromkeys(levels)) or not levels or levels[0] < 1:
        return fault(item, f"its cue levels do not rise: {levels}.")
    for cue in item.cues:
        gone = [each.foil for at, each in enumerate(item.options) if at in cue.removes]
        if len(gone) < len(cue.removes) or None in gone or Foil.REVERSAL in gone:
            return fault(item, "a cue takes away the right option, the reversal or none.")
    if item.answer is not None and item.cues[-1].kind is not CueKind.ANSWER:
        return fault(item, "its top cue does not show the answer.")
    return ()


# Rules of match.


def picture_of_meaning(item: Item, _material: Material) -> tuple[Problem, ...]:
    scene = None if item.answer is None else item.options[item.answer].scene
    if scene is None or scene.meaning != item.meaning:
        return fault(item, "the right picture does not show its meaning.")
    return ()


def reversal_offered(item: Item, _material: Material) -> tuple[Problem, ...]:
    for option in item.options:
        if option.foil is Foil.REVERSAL and option.scene is not None:
            shown, meant = option.scene.meaning, item.meaning
            if (
                isinstance(meant, Act | Place)
                and isinstance(shown, Act | Place)
                and shown == meant.reversed()
            ):
                return ()
    return fault(item, "no picture shows the same words with their parts exchanged.")


def chance_counted(item: Item, _material: Material) -> tuple[Problem, ...]:
    if item.kind is Kind.MATCH and item.meaning is not None:
        count = chance_choices(item.meaning, item.options)
    else:
        count = len(item.options)
    if item.effective_k != count or count < 2:
        return fault(item, f"it counts {item.effective_k} choices by chance where {count} are.")
    return ()


CHOICE_RULES: tuple[Rule, ...] = (
    one_right_option,
    reasons_given,
    options_differ,
    chance_counted,
    ladder_climbs,
)
MATCH_RULES: tuple[Rule, ...] = (*CHOICE_RULES, picture_of_meaning, reversal_offered)
GESTURE_RULES: tuple[Rule, ...] = (ladder_climbs,)
