from __future__ import annotations

import pytest

from drills.core.meanings import Tense
from drills.language.abstract import Number, counted, definite, finite, finite_small
from drills.language.concord import agree
from drills.language.roles import Role


def test_a_verb_agrees_with_its_own_subject_and_not_with_the_nearest_noun() -> None:
    phrases = agree(
        (
            counted(2, "sailor", Role.DOER),
            definite("baker", Role.DONE_TO),
            (finite("push", Tense.PRESENT, Role.DOER),),
        )
    )
    assert phrases[-1][-1].number is Number.PLURAL


def test_a_verb_agrees_with_a_subject_that_comes_later() -> None:
    phrases = agree(
        (
            (finite_small("be", Tense.PRESENT, Role.THING),),
            counted(3, "sailor", Role.THING),
        )
    )
    assert phrases[0][0].number is Number.PLURAL


def test_words_that_do_not_agree_are_left_alone() -> None:
    nouns = definite("nurse", Role.DOER)
    verb = finite("push", Tense.PAST, Role.DOER)
    assert agree((nouns, (verb,)))[0] == nouns


def test_a_verb_without_its_subject_is_refused() -> None:
    with pytest.raises(ValueError, match="no subject"):
        agree((definite("nurse", Role.DOER), (finite("push", Tense.PAST, Role.DONE_TO),)))
