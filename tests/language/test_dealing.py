from __future__ import annotations

from collections import Counter
from random import Random
from typing import Any

import pytest
from scipy.stats import binomtest

from drills.core.items import Kind
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Act, Aspect, Chain, Meaning, Order, Report, Tense
from drills.core.words import Band, Lexicon, Plausibility
from drills.language import (
    CONSTRUCTIONS,
    as_drawn,
    deal,
    exchanged,
    meanings_of,
    plausibility,
    realise,
)
from tests.exercises.batches import make, right_scene

ITEMS = 1000
# Where pronouns and the forms of verbs do not change with who is who.
SAME_WORDS = (
    "active",
    "negation",
    "full-passive",
    "subject-cleft",
    "object-cleft",
    "subject-relative",
    "object-relative-right",
    "object-relative-centre",
    "subject-question-which",
    "object-question-which",
    "dative",
    "comparative",
    "locative",
)
PARTS = {
    Act: ("doer", "done_to"),
    Chain: ("outer", "middle"),
    Order: ("earlier", "later"),
}


def not_uneven(one: int, other: int) -> bool:
    """Source: exact binomial test of scipy, not significant at .001."""
    return one + other == 0 or binomtest(one, one + other, 0.5).pvalue > 0.001


def _act(meaning: Any) -> Any:
    return getattr(meaning, "act", meaning)


@pytest.mark.parametrize("name", [n for n, each in CONSTRUCTIONS.items() if each.reversible])
def test_over_1000_items_each_word_plays_both_parts_equally_often(
    name: str, american: Lexicon
) -> None:
    dealt = deal(name, american, Random(name), ITEMS)
    assert len(dealt) == ITEMS
    first: Counter[str] = Counter()
    second: Counter[str] = Counter()
    for meaning in dealt:
        parts = PARTS.get(type(_act(meaning)))
        if parts is not None and not isinstance(meaning, Report):
            first[getattr(_act(meaning), parts[0])] += 1
            second[getattr(_act(meaning), parts[1])] += 1
    for word in first | second:
        assert not_uneven(first[word], second[word]), word
    tenses = Counter(_act(meaning).tense for meaning in dealt)
    assert not_uneven(tenses[Tense.PAST], tenses[Tense.PRESENT])
    for meaning in dealt:
        realise(meaning, name, american)


def test_over_1000_items_side_and_answer_are_even_too(material: Material) -> None:
    """The exercises deal these; over the words that are here now."""
    items = make(material, Kind.MATCH, "active", "full-passive", count=ITEMS, seed=5)
    answers = Counter(item.answer for item in items)
    sides = Counter(right_scene(item).side for item in items)
    assert not_uneven(answers[0], answers[1])
    assert not_uneven(sides[Side.LEFT], sides[Side.RIGHT])
    doers: Counter[str] = Counter()
    done_to: Counter[str] = Counter()
    for item in items:
        assert isinstance(item.meaning, Act)
        assert plausibility(item.meaning, material.lexicon) is Plausibility.EVEN
        doers[item.meaning.doer] += 1
        done_to[item.meaning.done_to] += 1
    for word in doers | done_to:
        assert not_uneven(doers[word], done_to[word]), word


def test_an_exchange_says_the_same_words_of_the_other_parts(american: Lexicon) -> None:
    for name in CONSTRUCTIONS:
        for meaning in Random(name).sample(meanings_of(name, american), 40):
            back = exchanged(meaning)
            if back is None:
                continue
            assert back != meaning
            assert exchanged(back) == meaning
            if name in SAME_WORDS:
                one, other = (realise(each, name, american).text for each in (meaning, back))
                assert one != other
                assert sorted(one.lower().rstrip(".?")) == sorted(other.lower().rstrip(".?"))


def test_the_same_seed_deals_the_same(american: Lexicon) -> None:
    assert deal("active", american, Random(1), 30) == deal("active", american, Random(1), 30)
    both = deal("active", american, Random(1), 200, aspects=tuple(Aspect))
    assert {each.aspect for each in both if isinstance(each, Act)} == set(Aspect)


def test_only_words_of_the_band_are_dealt(american: Lexicon) -> None:
    for band in Band:
        for meaning in deal("full-passive", american, Random(2), 60, band=band):
            assert isinstance(meaning, Act)
            assert american.verbs[meaning.verb].band == band
            assert american.nouns[meaning.doer].band == american.nouns[meaning.done_to].band == band


def test_a_construction_without_words_in_a_band_is_refused(american: Lexicon) -> None:
    with pytest.raises(ValueError, match="no meaning"):
        deal("subject-pronoun", american, Random(1), 4, band=Band.RARE)
    with pytest.raises(ValueError, match="no construction"):
        meanings_of("no-such", american)


@pytest.mark.parametrize(
    ("meaning", "expected"),
    [
        (Act(verb="pull", doer="nurse", done_to="baker"), Plausibility.EVEN),
        (Act(verb="bandage", doer="nurse", done_to="baker"), Plausibility.LEANING),
        (Act(verb="bandage", doer="baker", done_to="nurse"), Plausibility.LEANING),
        (Act(verb="lift", doer="baker", done_to="girl"), Plausibility.LEANING),
        (Act(verb="chase", doer="dog", done_to="cat"), Plausibility.LEANING),
        (Act(verb="chase", doer="dog", done_to="baker"), Plausibility.LEANING),
        (Act(verb="lift", doer="baker", done_to="box"), Plausibility.ONE_WAY),
        (
            Report(speaker="nurse", act=Act(verb="wash", doer="queen", done_to="queen")),
            Plausibility.LEANING,
        ),
    ],
)
def test_what_the_world_says_is_marked(
    meaning: Meaning, expected: Plausibility, american: Lexicon
) -> None:
    assert plausibility(meaning, american) is expected


def test_no_item_outside_the_balance_is_in_the_pool(american: Lexicon) -> None:
    for name, construction in CONSTRUCTIONS.items():
        if not construction.reversible:
            continue
        pool = meanings_of(name, american)
        for meaning in Random(name).sample(pool, min(300, len(pool))):
            assert plausibility(meaning, american) is Plausibility.EVEN, meaning


def test_words_that_share_a_figure_look_alike(american: Lexicon) -> None:
    rare = Act(verb="hoist", doer="mariner", done_to="empress")
    plain = Act(verb="lift", doer="sailor", done_to="queen")
    assert as_drawn(rare, american) == plain
    assert as_drawn(plain, american) == plain
    told = Report(speaker="mariner", act=rare)
    assert as_drawn(told, american) == Report(speaker="sailor", act=plain)
