from __future__ import annotations

from random import Random

import pytest

from drills.core.meanings import Act, Aspect, Comparison, Described, Kin, Order, Role, Tense
from drills.core.words import Lexicon
from drills.language import adjunct_choices, lengths, padded, placed, realise

PULL = Act(verb="pull", doer="nurse", done_to="baker")
ORDER = Order(doer="sailor", earlier="wave", later="sit")


def test_the_choices_that_reach_a_length_are_shown(lexicon: Lexicon) -> None:
    reached = lengths(PULL, "active", lexicon)
    assert list(reached) == [5, 6, 7, 8, 9, 10, 11]
    assert reached[5] == ((None, None),)
    assert ("garden", None) in reached[8]
    assert ("garden", "yesterday") in reached[9]
    for words, choices in reached.items():
        for adjuncts in choices:
            assert realise(placed(PULL, adjuncts), "active", lexicon).word_count == words


def test_the_same_seed_gives_the_same_choice_and_the_meaning_keeps_it(lexicon: Lexicon) -> None:
    told = padded(PULL, "full-passive", lexicon, words=10, rng=Random(3))
    assert told == padded(PULL, "full-passive", lexicon, words=10, rng=Random(3))
    assert (told.where, told.when) != (None, None)
    assert placed(told, (None, None)) == PULL


def test_a_description_keeps_where_and_when_in_its_act(lexicon: Lexicon) -> None:
    described = Described(act=PULL, who=Role.DOER, state="wet")
    told = placed(described, ("garden", "yesterday"))
    assert told.act.where == "garden"
    assert realise(told, "subject-relative", lexicon).text == (
        "The nurse that pulled the baker in the garden yesterday was wet."
    )


def test_a_length_that_cannot_be_reached_is_refused(lexicon: Lexicon) -> None:
    with pytest.raises(ValueError, match="in 5, 6, 7, 8, 9, 10, 11 words, not in 4"):
        padded(PULL, "active", lexicon, words=4, rng=Random(1))


def test_only_what_suits_is_added(lexicon: Lexicon) -> None:
    def whens(meaning: Act | Comparison, name: str) -> set[str | None]:
        return {when for _, when in adjunct_choices(meaning, name, lexicon)}

    now = Act(verb="pull", doer="nurse", done_to="baker", tense=Tense.PRESENT)
    under_way = Act(
        verb="pull",
        doer="nurse",
        done_to="baker",
        tense=Tense.PRESENT,
        aspect=Aspect.PROGRESSIVE,
    )
    assert "yesterday" in whens(PULL, "active")
    assert "yesterday" not in whens(now, "active")
    assert "now" not in whens(now, "active")
    assert "now" in whens(under_way, "active")
    assert whens(Comparison(quality="tall", more="nurse", less="judge"), "comparative") == {None}
    happier = Comparison(quality="happy", more="nurse", less="judge")
    assert "today" in whens(happier, "comparative")


def test_an_order_has_one_adjunct_and_a_relative_no_when_alone(lexicon: Lexicon) -> None:
    for where, when in adjunct_choices(ORDER, "before-in-order", lexicon):
        assert where is None or when is None
    for where, when in adjunct_choices(Kin(terms=("aunt",)), "possessive-kinship", lexicon):
        assert where is not None or when is None
