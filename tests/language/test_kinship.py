"""The kinship model held against a search of random family trees."""

from __future__ import annotations

from collections import defaultdict
from itertools import combinations, product
from random import Random

import pytest

from drills.core.words import Lexicon, Sex
from drills.language.kinship import (
    SELF,
    TERMS,
    Sameness,
    chains,
    generation,
    has_one_name,
    is_possible,
    names_of,
    reversal,
    sameness,
    sex_of,
)
from tests.language.families import Person, random_person, relatives, walked

CHAINS = 100_000
ALL_CHAINS = [terms for length in (1, 2, 3) for terms in product(TERMS, repeat=length)]


def names_in_tree(speaker: Person, meant: Person) -> set[str]:
    """Every word by which the speaker may call the one who is meant."""
    if meant is speaker:
        return {SELF}
    return {word for word in TERMS if meant in relatives(speaker, word)}


def test_answers_agree_with_a_search_of_random_families_over_100_000_chains() -> None:
    """Source: brute force over family trees; no step or place of the model is used there."""
    rng = Random(20261125)
    seen: dict[tuple[str, ...], set[str]] = defaultdict(set)
    met: set[tuple[str, ...]] = set()
    for number in range(CHAINS):
        if number % 50 == 0:
            speaker = random_person(rng)
        terms = ALL_CHAINS[rng.randrange(len(ALL_CHAINS))]
        for meant in walked(speaker, terms):
            met.add(terms)
            assert is_possible(terms), terms
            assert meant.sex is sex_of(terms), terms
            names = names_in_tree(speaker, meant)
            # One person, one word: no family gives somebody two.
            assert len(names) <= 1
            assert names <= names_of(terms), (terms, names)
            one = has_one_name(terms)
            assert one is None or names == {one}, (terms, names)
            seen[terms] |= names
    # A chain is drawn 23 times on average: by far the most that can be are met.
    possible = [terms for terms in ALL_CHAINS if is_possible(terms)]
    assert met <= set(possible)
    assert len(met) > 0.95 * len(possible)


def test_every_name_that_the_model_gives_is_met_in_some_family() -> None:
    rng = Random(1)
    seen: dict[tuple[str, ...], set[str]] = defaultdict(set)
    met: set[tuple[str, ...]] = set()
    short = [terms for terms in ALL_CHAINS if len(terms) <= 2]
    for speaker in (random_person(rng) for _ in range(150)):
        for terms in short:
            for meant in walked(speaker, terms):
                met.add(terms)
                seen[terms] |= names_in_tree(speaker, meant)
    assert [terms for terms in short if is_possible(terms) != (terms in met)] == []
    assert [terms for terms in short if names_of(terms) != seen[terms]] == []


def test_two_chains_lead_to_one_person_as_a_search_finds() -> None:
    """Source: brute force over family trees."""
    rng = Random(2)
    shorts = [terms for terms in ALL_CHAINS if len(terms) <= 2 and is_possible(terms)]
    pairs = list(combinations(shorts, 2))
    same = [pair for pair in pairs if sameness(*pair) is Sameness.ALWAYS]
    assert len(same) > 10
    pairs = [*same, *rng.sample(pairs, 2000)]
    found: dict[Sameness, int] = defaultdict(int)
    differed: set[tuple[tuple[str, ...], ...]] = set()
    agreed: set[tuple[tuple[str, ...], ...]] = set()
    for speaker in (random_person(rng) for _ in range(60)):
        for pair in pairs:
            first, second = (walked(speaker, terms) for terms in pair)
            if not first or not second:
                continue
            said = sameness(*pair)
            found[said] += 1
            if said is Sameness.NEVER:
                assert not set(first) & set(second), pair
            elif said is Sameness.ALWAYS:
                assert first == second, pair
                assert len(first) == 1
            else:
                (agreed if set(first) & set(second) else differed).add(pair)
                differed |= {pair} if len(first) > 1 or first != second else set()
    assert all(found[each] > 100 for each in Sameness)
    sometimes = agreed | differed
    assert len(agreed & differed) > 0.7 * len(sometimes)


@pytest.mark.parametrize(
    ("terms", "name"),
    [
        (("father", "sister"), "aunt"),
        (("mother", "mother"), "grandmother"),
        (("sister", "son"), "nephew"),
        (("daughter", "daughter"), "granddaughter"),
        (("mother", "husband"), "father"),
        (("sister", "mother"), "mother"),
        (("father", "mother", "husband"), "grandfather"),
    ],
)
def test_a_chain_with_one_word_for_it_has_that_word(terms: tuple[str, ...], name: str) -> None:
    assert has_one_name(terms) == name


def test_a_chain_that_may_lead_to_several_relatives_has_no_one_word() -> None:
    assert names_of(("aunt", "brother")) == {"uncle", "father"}
    assert has_one_name(("aunt", "brother")) is None
    assert names_of(("father", "son")) == {"brother", SELF}
    # There is no single word for these that is used here.
    assert names_of(("aunt", "son")) == frozenset()
    assert names_of(("wife", "mother")) == frozenset()


def test_what_cannot_be_is_said_so() -> None:
    assert not is_possible(("husband", "husband"))
    assert is_possible(("wife", "husband"))
    assert ("husband", "husband") not in chains(2)


def test_same_person_or_not() -> None:
    assert sameness(("sister", "mother"), ("mother",)) is Sameness.ALWAYS
    assert sameness(("mother", "husband"), ("father",)) is Sameness.ALWAYS
    assert sameness(("father", "sister"), ("aunt",)) is Sameness.SOMETIMES
    assert sameness(("father", "mother"), ("grandmother",)) is Sameness.SOMETIMES
    assert sameness(("aunt", "brother"), ("brother", "aunt")) is Sameness.NEVER


def test_a_reversal_shows_in_the_sex_of_the_one_who_is_meant() -> None:
    assert reversal(("aunt", "brother")) == ("brother", "aunt")
    assert reversal(("aunt", "sister")) is None
    pairs = [terms for terms in chains(2) if reversal(terms)]
    assert len(pairs) > 60
    for terms in pairs:
        back = reversal(terms)
        assert back is not None
        assert sex_of(back) is not sex_of(terms)
        assert reversal(back) == terms


def test_a_generation_is_told_where_it_is_sure() -> None:
    assert generation(("grandmother",)) == 2
    assert generation(("brother", "son")) == -1
    assert generation(("aunt", "brother")) == 1
    assert generation(("grandmother", "son", "daughter")) == 0


def test_a_term_that_is_switched_off_is_neither_said_nor_meant() -> None:
    for length in (1, 2, 3):
        kept = chains(length, without=("mother", "husband"))
        assert kept
        for terms in kept:
            assert "mother" not in terms
            assert "mother" not in names_of(terms)
            assert "husband" not in terms
    assert ("father", "wife") in chains(2)
    assert ("father", "wife") not in chains(2, without=("mother",))
    assert ("father", "wife", "sister") not in chains(3, without=("mother",))


def test_faults_of_the_caller_are_told() -> None:
    with pytest.raises(ValueError, match="1 to 3"):
        chains(4)
    with pytest.raises(ValueError, match="no relative 'friend'"):
        chains(2, without=("friend",))
    with pytest.raises(ValueError, match="no relative 'friend'"):
        names_of(("friend",))


def test_the_words_of_the_model_are_those_of_the_lexicon(lexicon: Lexicon) -> None:
    assert tuple(sorted(lexicon.kin)) == tuple(sorted(TERMS))
    for key, term in lexicon.kin.items():
        assert term.sex is sex_of((key,))
    assert {term.sex for term in lexicon.kin.values()} == set(Sex)
