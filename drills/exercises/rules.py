"""The ten rules by which exactly one word of a cloze is right, one function or two a rule.

Common practice, no source. They run at the build of each item; those on contrasts run on the
content before any item is made. Rule 8, that fluent readers agree, is `drills items --blind`.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from drills.core.clauses import clauses_of, parties_of
from drills.core.closed_words import (
    LOCALE_WORDS,
    ONE_FORM_FOR_MANY,
    ONE_FORM_FOR_THEN,
    REGIONAL,
    UNCLEAR_NUMBER,
    UNCOUNTED,
    near_pairs,
)
from drills.core.items import Item
from drills.core.material import Material
from drills.core.meanings import State
from drills.core.problems import Problem
from drills.exercises.anchors import anchor_stands
from drills.exercises.choices import CHOICE_RULES, Rule, chance_counted, fault
from drills.exercises.gaps import (
    GAP,
    dealt_of,
    frame_of,
    item_words,
    labels_of,
    right_label,
    right_text,
)
from drills.language.spelling import indefinite_article

LONGEST_CLOZE = 8
LONGEST_LATER = 12
"""Most words of a cloze sentence, the gap filled, up to C6 and from C7."""
FIRST_LATER_LEVEL = 7
LONGEST_ANSWER_RUN = 2
"""Most times running that one word is the right one."""
FEWEST_WORDS, MOST_WORDS = 2, 4
OMISSION = "bare"
OMISSION_LEVELS = ("C8", "C9", "C10")
ARTICLES = ("a", "an")
FORCED_THE = ("again", "ranked", "rate")


def _filled(item: Item) -> list[str]:
    return [item.sentence.replace(GAP, option.text or "") for option in item.options]


# Rule 1


def one_closed_class(item: Item, material: Material) -> tuple[Problem, ...]:
    """All options are of one closed class, in one spelling of capitals."""
    frame = frame_of(item, material)
    labels = labels_of(item, material)
    texts = [option.text or "" for option in item.options]
    if None in labels or any(label not in frame.words for label in labels):
        return fault(item, f"{', '.join(texts)} are not of one closed class.")
    return ()


def sounds_fit(item: Item, material: Material) -> tuple[Problem, ...]:
    """ "A" and "an" suit the sound of the next word, unless that is what is asked."""
    if frame_of(item, material).name == "article-sound":
        return ()
    _, _, after = item.sentence.partition(f"{GAP} ")
    for option in item.options:
        if (
            after
            and option.text in ARTICLES
            and option.text != indefinite_article(after.split()[0])
        ):
            return fault(item, f"{option.text!r} does not suit the sound of {after.split()[0]!r}.")
    return ()


# Rule 2; that every foil has a reason at all is choices.reasons_given


def foils_are_wrong(item: Item, material: Material) -> tuple[Problem, ...]:
    """Each foil is false or ungrammatical for the reason that it gives; the right word is not."""
    frame, dealt, words = frame_of(item, material), dealt_of(item), material.cloze_words
    for option, label in zip(item.options, labels_of(item, material), strict=True):
        why = WRONG_CLASS if label is None else frame.why_wrong(label, dealt, words)
        if option.foil is None and why is not None:
            return fault(item, f"{option.text!r} is not right in {item.sentence!r}.")
        if option.foil is not None and why is None:
            return fault(item, f"{option.text!r} in {item.sentence!r} is not wrong.")
        if option.foil is not None and option.why_wrong != why:
            return fault(item, f"{option.text!r} is wrong for another reason: {why}.")
    return ()


WRONG_CLASS = "not of its class"


def says_its_meaning(item: Item, material: Material) -> tuple[Problem, ...]:
    """The sentence is the one that the meaning makes, and the right word the one left out."""
    gapped = frame_of(item, material).gapped(dealt_of(item), material.cloze_words.lexicon)
    if item.sentence != gapped.sentence.gapped(gapped.gap, GAP):
        return fault(item, f"{item.sentence!r} does not say its meaning.")
    if right_text(item) != gapped.word:
        return fault(item, f"the word left out is {gapped.word!r}, not {right_text(item)!r}.")
    return ()


# Rule 3


def anchored(item: Item, material: Material) -> tuple[Problem, ...]:
    """What fixes the answer is on the screen: a numeral, a time, a picture, what was said."""
    demands = frame_of(item, material).demands(dealt_of(item), material.cloze_words)
    if not demands:
        return fault(item, "nothing fixes which word is right.")
    for demand in demands:
        if not anchor_stands(demand, item, material):
            return fault(item, f"no {demand.anchor.value} fixes the {demand.feature}.")
    return ()


# Rule 4


def none_too_near(item: Item, _material: Material) -> tuple[Problem, ...]:
    words = [(option.text or "").lower() for option in item.options]
    return near_faults(f"item of {item.target}", words)


def near_faults(where: str, words: Sequence[str]) -> tuple[Problem, ...]:
    return tuple(
        Problem(
            where=where,
            message=f"{one} and {other} can both be right.",
            mend="Take one of them out.",
        )
        for one, other in near_pairs(words)
    )


def nothing_hides(item: Item, material: Material) -> tuple[Problem, ...]:
    """No noun hides its number, no verb its tense, and no noun takes other small words abroad."""
    lexicon = material.cloze_words.lexicon
    for key in _nouns(item):
        noun = lexicon.nouns[key]
        unclear = noun.singular in UNCLEAR_NUMBER | UNCOUNTED | ONE_FORM_FOR_MANY
        if unclear or noun.singular == noun.plural:
            return fault(item, f"{noun.singular!r} does not show its number.")
        if noun.singular in REGIONAL:
            return fault(item, f"{noun.singular!r} is said otherwise from region to region.")
    told = item.told
    verbs = {clause.verb for clause in clauses_of(told)} if told is not None else set()
    for verb in sorted(verbs):
        if verb in ONE_FORM_FOR_THEN and item.level in ("C8", "C10"):
            return fault(item, f"{verb!r} has one form for now and then.")
    return ()


def _nouns(item: Item) -> tuple[str, ...]:
    if item.told is not None:
        return tuple(party.noun for party in parties_of(item.told) if party.noun)
    return (item.meaning.subject,) if isinstance(item.meaning, State) else ()


# Rule 5


def article_is_forced(item: Item, material: Material) -> tuple[Problem, ...]:
    """ "The" stands against "a" only where no other article is possible."""
    texts = [option.text for option in item.options]
    if "the" not in texts or not any(article in texts for article in ARTICLES):
        return ()
    demands = frame_of(item, material).demands(dealt_of(item), material.cloze_words)
    if any(each.feature == "known" and each.value in FORCED_THE for each in demands):
        return ()
    return fault(item, "another article is possible too.")


# Rule 6


def one_gap(item: Item, _material: Material) -> tuple[Problem, ...]:
    """One gap, up to C6 never the first word, and no more words than can be held."""
    later = int(item.level.removeprefix("C")) >= FIRST_LATER_LEVEL
    longest = LONGEST_LATER if later else LONGEST_CLOZE
    if item.sentence.count(GAP) != 1:
        return fault(item, f"{item.sentence!r} has not exactly one gap.")
    if item.sentence.startswith(GAP) and not later:
        return fault(item, f"{item.sentence!r} begins with the gap.")
    for filled in _filled(item):
        if len(filled.split()) > longest:
            return fault(item, f"{filled!r} has more than {longest} words.")
    return ()


# Rule 7


def guesses_counted(item: Item, material: Material) -> tuple[Problem, ...]:
    """Two to four options, no more than the contrast has words, all of them counted as chances."""
    most = min(MOST_WORDS, len(item_words(item)))
    if not FEWEST_WORDS <= len(item.options) <= most:
        return fault(item, f"it offers {len(item.options)} words.")
    return chance_counted(item, material)


# Rule 9


def one_locale(item: Item, material: Material) -> tuple[Problem, ...]:
    """No word of another region's spelling or usage."""
    words = " ".join([*_filled(item), item.context]).lower().replace("\n", " ").split()
    plain = {word.strip(".,?:") for word in words}
    for locale, others in LOCALE_WORDS.items():
        strange = sorted(plain & others)
        if locale != material.lexicon.locale and strange:
            return fault(item, f"{strange[0]!r} belongs to {locale}.")
    return ()


# Rule 10


def omission_offered(item: Item, material: Material) -> tuple[Problem, ...]:
    """The bare form is among the options at C8 to C10 where its contrast has it, only there."""
    labels = labels_of(item, material)
    here = item.level in OMISSION_LEVELS
    if here and OMISSION in item_words(item) and OMISSION not in labels:
        return fault(item, "the bare form is not offered.")
    if not here and OMISSION in item_words(item):
        return fault(item, "the bare form is offered where it is no typical error.")
    return ()


CLOZE_RULES: tuple[Rule, ...] = (
    *CHOICE_RULES,
    one_closed_class,
    sounds_fit,
    foils_are_wrong,
    says_its_meaning,
    anchored,
    none_too_near,
    nothing_hides,
    article_is_forced,
    one_gap,
    guesses_counted,
    one_locale,
    omission_offered,
)


# Rules of a batch of cloze items: the rest of rule 6


def answers_take_turns(items: Sequence[Item]) -> tuple[Problem, ...]:
    """No word is right more than two times running."""
    answers = [right_text(item) for item in items]
    span = LONGEST_ANSWER_RUN + 1
    for start in range(len(answers) - span + 1):
        if len(dict.fromkeys(answers[start : start + span])) == 1:
            return fault(items[start], f"{answers[start]!r} is right {span} times running.")
    return ()


def answers_come_out_even(items: Sequence[Item], material: Material) -> tuple[Problem, ...]:
    """Each word of a contrast is right equally often, within one."""
    counts: dict[str, Counter[str]] = {}
    firsts: dict[str, Item] = {}
    for item in items:
        group = str(item.target)
        firsts.setdefault(group, item)
        counts.setdefault(group, Counter())[right_label(item, material)] += 1
    for group, count in counts.items():
        shares = [count[word] for word in item_words(firsts[group])]
        if max(shares) - min(shares) > 1:
            return fault(firsts[group], f"{dict(count)} is uneven.")
    return ()
