"""Sentences and pictures, judged by hand: which picture makes which sentence true."""

from __future__ import annotations

import pytest

from drills.core.material import Material
from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Chain,
    Comparison,
    Described,
    Meaning,
    Order,
    Report,
    Role,
    Transfer,
    Undergone,
)
from drills.exercises.match.truth import is_true_of

PUSH = Act(verb="push", doer="nurse", done_to="judge")
BACK = PUSH.reversed()
NOT = Act(verb="push", doer="nurse", done_to="judge", negated=True)
SHE = Act(verb="push", doer="woman", done_to="man")
POINTED = Described(act=PUSH, who=Role.DOER)
TURNED = Described(act=BACK, who=Role.DONE_TO)

JUDGED: tuple[tuple[str, Meaning, Meaning, bool], ...] = (
    ("active", PUSH, PUSH, True),
    ("active", PUSH, BACK, False),
    ("full-passive", PUSH, PUSH, True),
    ("negation", NOT, NOT, True),
    ("negation", NOT, PUSH, False),
    ("negation", NOT, BACK, True),
    ("negation", NOT, Act(verb="pull", doer="nurse", done_to="judge"), True),
    ("negation", NOT, Act(verb="push", doer="nurse", done_to="baker"), False),
    ("subject-pronoun", SHE, SHE, True),
    ("subject-pronoun", SHE, SHE.reversed(), False),
    ("subject-pronoun", SHE, Act(verb="push", doer="nurse", done_to="queen"), False),
    ("subject-pronoun", SHE, Act(verb="push", doer="nurse", done_to="baker"), True),
    ("subject-pronoun", SHE, Act(verb="pull", doer="woman", done_to="man"), False),
    ("short-passive", Undergone(verb="push", done_to="judge"), PUSH, True),
    ("short-passive", Undergone(verb="push", done_to="judge"), BACK, False),
    ("subject-question", Asked(verb="push", known="judge", asked=Role.DOER), POINTED, True),
    ("subject-question", Asked(verb="push", known="judge", asked=Role.DOER), TURNED, False),
    (
        "object-question-who",
        Asked(verb="push", known="judge", asked=Role.DONE_TO),
        TURNED,
        True,
    ),
    ("subject-question-which", Chain(verb="push", outer="nurse", middle="judge"), POINTED, True),
    ("subject-question-which", Chain(verb="push", outer="nurse", middle="judge"), TURNED, False),
    ("object-question-which", Chain(verb="push", outer="nurse", middle="judge"), TURNED, True),
    ("object-question-which", Chain(verb="push", outer="judge", middle="nurse"), POINTED, False),
    (
        "number",
        Activity(verb="wave", doer="nurse", count=2),
        Activity(verb="wave", doer="nurse", count=3),
        True,
    ),
    (
        "number",
        Activity(verb="wave", doer="nurse", count=2),
        Activity(verb="wave", doer="nurse"),
        False,
    ),
    (
        "comparative",
        Comparison(quality="tall", more="nurse", less="judge"),
        Comparison(quality="short", more="judge", less="nurse"),
        True,
    ),
    (
        "before-reversed",
        Order(doer="nurse", earlier="sit", later="wave"),
        Order(doer="nurse", earlier="wave", later="sit"),
        False,
    ),
    (
        "pronoun-reference",
        Report(speaker="judge", act=Act(verb="wash", doer="baker", done_to="judge")),
        Report(speaker="judge", act=Act(verb="wash", doer="baker", done_to="baker")),
        False,
    ),
    (
        "dative",
        Transfer(verb="show", doer="nurse", given="queen", receiver="judge"),
        Transfer(verb="show", doer="nurse", given="judge", receiver="queen"),
        False,
    ),
    ("object-relative-right", POINTED, TURNED, False),
)


@pytest.mark.parametrize(("construction", "told", "shown", "is_true"), JUDGED)
def test_a_picture_makes_a_sentence_true_or_not(
    construction: str, told: Meaning, shown: Meaning, is_true: bool, material: Material
) -> None:
    assert is_true_of(told, construction, shown, material.lexicon) is is_true
