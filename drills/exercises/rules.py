"""The rules by which exactly one word of a cloze is right, one function a rule.

Common practice, no source. They run at the build of each item, and on the contrasts of the
content before any item is made.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from drills.core.items import Item, Option
from drills.core.material import Material
from drills.core.meanings import Place, Relation, State
from drills.core.problems import Problem
from drills.core.words import Noun
from drills.exercises.choices import CHOICE_RULES, Rule, fault
from drills.exercises.reasons import WhyWrong

GAP = "____"
LONGEST_CLOZE = 8
"""Most words of a cloze sentence, the gap filled."""
LONGEST_ANSWER_RUN = 2
"""Most times running that one word is the right one."""

CLOSED_CLASSES: tuple[tuple[str, ...], ...] = (
    tuple(relation.value for relation in Relation),
    ("is", "are"),
    ("was", "were"),
    ("has", "have"),
)
"""Words that may stand against each other."""

_SINGULAR = ("is", "was", "has")

_TOO_NEAR: tuple[tuple[str, str], ...] = (
    ("in", "inside"),
    ("on", "onto"),
    ("under", "below"),
    ("near", "next to"),
    ("between", "among"),
    ("who", "that"),
    ("may", "can"),
    ("will", "is going to"),
    ("since", "because"),
    # A thing that stands before or behind another also stands next to it.
    ("next to", "behind"),
    ("next to", "in front of"),
)
"""Pairs that may both be right."""

# Groups that speakers count as one or as many, and nouns that are always plural.
_UNCLEAR_NUMBER = frozenset(
    {
        "army", "audience", "band", "choir", "class", "club", "committee", "couple", "crew",
        "crowd", "family", "glasses", "group", "pair", "people", "police", "scissors", "staff",
        "team", "trousers",
    }
)  # fmt: skip


def one_gap(item: Item, _material: Material) -> tuple[Problem, ...]:
    """One gap, never the first word, and no more words than can be held."""
    if item.sentence.count(GAP) != 1:
        return fault(item, f"{item.sentence!r} has not exactly one gap.")
    if item.sentence.startswith(GAP):
        return fault(item, f"{item.sentence!r} begins with the gap.")
    for option in item.options:
        filled = item.sentence.replace(GAP, option.text or "")
        if len(filled.split()) > LONGEST_CLOZE:
            return fault(item, f"{filled!r} has more than {LONGEST_CLOZE} words.")
    return ()


def one_closed_class(item: Item, _material: Material) -> tuple[Problem, ...]:
    """All options are of one closed class, in one spelling of capitals."""
    return _class_faults(f"item of {item.target}", [option.text or "" for option in item.options])


def none_too_near(item: Item, _material: Material) -> tuple[Problem, ...]:
    return near_pairs(f"item of {item.target}", [option.text or "" for option in item.options])


def contrast_faults(where: str, words: Sequence[str]) -> tuple[Problem, ...]:
    """What is wrong with a contrast before any item is made of it."""
    return (*_class_faults(where, words), *near_pairs(where, words))


def _class_faults(where: str, words: Sequence[str]) -> tuple[Problem, ...]:
    if len(words) < 2 or len(dict.fromkeys(words)) < len(words):
        return (
            Problem(
                where=where,
                message=f"{', '.join(words)} offers no choice.",
                mend="Name two different words or more.",
            ),
        )
    if any(all(word in each for word in words) for each in CLOSED_CLASSES):
        return ()
    return (
        Problem(
            where=where,
            message=f"{', '.join(words)} are not of one closed class.",
            mend="Use words of one line: "
            + "; ".join(", ".join(each) for each in CLOSED_CLASSES)
            + ".",
        ),
    )


def near_pairs(where: str, words: Sequence[str]) -> tuple[Problem, ...]:
    return tuple(
        Problem(
            where=where,
            message=f"{one} and {other} can both be right.",
            mend="Take one of them out.",
        )
        for one, other in _TOO_NEAR
        if one in words and other in words
    )


def foils_are_wrong(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Each foil is false of the picture or ungrammatical, and for the reason that it gives."""
    for option in item.options:
        if option.foil is not None and not _is_wrong(item, option):
            return fault(item, f"{option.text!r} in {item.sentence!r} is not wrong.")
    if item.answer is not None and _is_wrong(item, item.options[item.answer]):
        return fault(item, f"{item.options[item.answer].text!r} is not right.")
    return ()


def _is_wrong(item: Item, option: Option) -> bool:
    meaning = item.meaning
    if isinstance(meaning, Place):
        if option.text not in [relation.value for relation in Relation]:
            return False
        claimed = Place(
            relation=Relation(option.text),
            thing=meaning.thing,
            landmark=meaning.landmark,
            tense=meaning.tense,
        )
        reason = option.foil is None or option.why_wrong == WhyWrong.FALSE_PLACE
        return claimed.drawn != meaning.drawn and reason
    if isinstance(meaning, State):
        reason = option.foil is None or option.why_wrong == WhyWrong.AGREEMENT
        return (option.text in _SINGULAR) != (meaning.count == 1) and reason
    return False


def anchored(item: Item, material: Material) -> tuple[Problem, ...]:
    """Place is fixed by the picture; number by a numeral before a noun that shows it."""
    meaning = item.meaning
    if isinstance(meaning, Place):
        if item.picture is None or item.picture.meaning != meaning:
            return fault(item, "its picture does not show its meaning.")
        return ()
    if isinstance(meaning, State):
        if item.sentence.split()[0].lower() not in ("one", "two", "three"):
            return fault(item, f"no numeral fixes the number in {item.sentence!r}.")
        if not shows_number(material.lexicon.nouns[meaning.subject]):
            return fault(item, f"{meaning.subject!r} does not show its number.")
        return ()
    return fault(item, "nothing fixes which word is right.")


def shows_number(noun: Noun) -> bool:
    """One and many differ in form, and all speakers count it alike."""
    return noun.singular != noun.plural and noun.singular not in _UNCLEAR_NUMBER


# Rules of a batch of cloze items.


def answers_take_turns(items: Sequence[Item]) -> tuple[Problem, ...]:
    """No word is right more than two times running."""
    answers = [right_text(item) for item in items]
    span = LONGEST_ANSWER_RUN + 1
    for start in range(len(answers) - span + 1):
        if len(dict.fromkeys(answers[start : start + span])) == 1:
            return fault(items[start], f"{answers[start]!r} is right {span} times running.")
    return ()


def answers_come_out_even(items: Sequence[Item]) -> tuple[Problem, ...]:
    """Each word of a contrast is right equally often, within one."""
    counts: dict[str, Counter[str]] = {}
    firsts: dict[str, Item] = {}
    for item in items:
        group = str(item.target)
        firsts.setdefault(group, item)
        counts.setdefault(group, Counter())[right_text(item)] += 1
    for group, count in counts.items():
        words = item_words(firsts[group])
        shares = [count[word] for word in words]
        if max(shares) - min(shares) > 1:
            return fault(firsts[group], f"{dict(count)} is uneven.")
    return ()


def item_words(item: Item) -> tuple[str, ...]:
    """The words of the item's contrast."""
    return tuple(word.replace("_", " ") for word in item.target.group.split("-"))


def right_text(item: Item) -> str:
    """The right word; empty where the right option is no word."""
    return "" if item.answer is None else item.options[item.answer].text or ""


CLOZE_RULES: tuple[Rule, ...] = (
    *CHOICE_RULES,
    one_gap,
    one_closed_class,
    none_too_near,
    foils_are_wrong,
    anchored,
)
