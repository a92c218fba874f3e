"""What every item must hold, one function a rule; an item that breaks one is never given.

The rules by which exactly one word of a cloze is right are rules.py.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any

from drills.core.items import CueKind, Foil, Item, Kind, Option
from drills.core.material import Material
from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Chain,
    Comparison,
    Described,
    Kin,
    Meaning,
    Order,
    Place,
    Report,
    State,
    Transfer,
    Undergone,
)
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


def content_words(meaning: Meaning, lexicon: Lexicon, construction: str = "") -> tuple[str, ...]:
    """Lemmas of the words that carry content, the verb first; a small word carries none."""
    return tuple(_lemma(key, lexicon) for key in content_keys(meaning, construction))


_CONTENT: Mapping[type[Meaning], Callable[[Any], tuple[str, ...]]] = {
    Act: lambda each: (each.verb, each.doer, each.done_to),
    Undergone: lambda each: (each.verb, each.done_to),
    Asked: lambda each: (each.verb, each.known),
    Activity: lambda each: (each.verb, each.doer),
    Place: lambda each: (each.thing, each.landmark),
    State: lambda each: (each.subject, each.complement),
    Described: lambda each: (*content_keys(each.act), *([each.state] if each.state else [])),
    Report: lambda each: (each.act.verb, each.speaker, each.act.doer),
    Transfer: lambda each: (each.verb, each.doer, each.given, each.receiver),
    Order: lambda each: (each.earlier, each.later, each.doer),
    Comparison: lambda each: (each.quality, each.more, each.less),
    Chain: lambda each: (each.verb, each.outer, each.middle),
    Kin: lambda each: each.terms,
}


def content_keys(meaning: Meaning, construction: str = "") -> tuple[str, ...]:
    """Keys of the content words of a sentence or a picture, the verb first.

    construction: that of the sentence; a pronoun is no content word.
    """
    if construction == "subject-pronoun" and isinstance(meaning, Act):
        return (meaning.verb,)
    return _CONTENT[type(meaning)](meaning)


def _lemma(key: str, lexicon: Lexicon) -> str:
    if key in lexicon.nouns:
        return lexicon.nouns[key].singular
    for verbs in (lexicon.verbs, lexicon.alone, lexicon.transfers):
        if key in verbs:
            return verbs[key].base
    if key in lexicon.adjectives:
        return lexicon.adjectives[key].base
    return lexicon.kin[key].singular


def fits_words(told: Meaning, shown: Meaning, construction: str = "") -> bool:
    """Whether a listener who has the content words, and no more, could take this picture."""
    return set(content_keys(told, construction)) <= set(content_keys(shown))


def chance_choices(told: Meaning, options: Sequence[Option], construction: str = "") -> int:
    """How many pictures a listener is left with who knows the content words and no more."""
    return sum(
        option.scene is not None and fits_words(told, option.scene.meaning, construction)
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
    """Levels rise, a removal spares the answer and one reversal, the top shows the answer."""
    levels = [cue.level for cue in item.cues]
    if levels != sorted(dict.fromkeys(levels)) or not levels or levels[0] < 1:
        return fault(item, f"its cue levels do not rise: {levels}.")
    for cue in item.cues:
        gone = [each.foil for at, each in enumerate(item.options) if at in cue.removes]
        left = [each.foil for at, each in enumerate(item.options) if at not in cue.removes]
        last_reversal = Foil.REVERSAL in gone and Foil.REVERSAL not in left
        if len(gone) < len(cue.removes) or None in gone or last_reversal:
            return fault(item, "a cue takes away the right option, the reversal or none.")
    if item.answer is not None and item.cues[-1].kind is not CueKind.ANSWER:
        return fault(item, "its top cue does not show the answer.")
    return ()


def chance_counted(item: Item, _material: Material) -> tuple[Problem, ...]:
    if item.kind is Kind.MATCH and item.meaning is not None:
        count = chance_choices(item.meaning, item.options, item.construction)
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
GESTURE_RULES: tuple[Rule, ...] = (ladder_climbs,)
