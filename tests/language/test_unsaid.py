"""The doer told or asked for, without the one it is done to."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.meanings import Act, Aspect, Tense, Transfer
from drills.core.words import Lexicon, Sort
from drills.language import Role, ask_about, ask_doer, tell_doer
from drills.language.unsaid import STAND_ALONE
from tests.language.parsing import load

WAKE = Act(verb="wake", doer="nurse", done_to="baker")
CHASE = Act(verb="chase", doer="dog", done_to="pig")
GIVE = Transfer(verb="give", doer="sailor", given="cup", receiver="judge")


@pytest.mark.parametrize(
    ("event", "told"),
    [
        (replace(WAKE, verb="pull"), "The nurse pulled."),
        (WAKE, "The nurse woke someone."),
        (replace(WAKE, tense=Tense.PRESENT), "The nurse is waking someone."),
        (
            replace(WAKE, tense=Tense.PRESENT, aspect=Aspect.PROGRESSIVE, negated=True),
            "The nurse is not waking anyone.",
        ),
        (CHASE, "The dog chased another animal."),
        (GIVE, "The sailor gave it."),
        (replace(GIVE, given="dog"), "The sailor gave it."),
        (replace(GIVE, verb="bring", given="nurse"), "The sailor brought someone."),
    ],
)
def test_the_doer_is_told_in_whole_english(
    event: Act | Transfer, told: str, lexicon: Lexicon
) -> None:
    assert tell_doer(event, lexicon).text == told


def test_what_is_given_is_asked_about_as_it_is_told(lexicon: Lexicon) -> None:
    assert ask_about(GIVE, Role.DOER, lexicon).text == "Who was giving it?"
    shown = replace(GIVE, verb="show", given="nurse")
    assert ask_about(shown, Role.DOER, lexicon).text == "Who was showing someone?"


def test_a_doer_without_an_object_could_not_be_the_one_it_is_done_to(lexicon: Lexicon) -> None:
    """Verbs of which one alone is said to do it, written down apart from the list: from memory."""
    turn_round = {"dry", "feed", "shelter", "stop", "wake", "wash", "weigh", "measure", "kiss"}
    assert turn_round <= set(lexicon.verbs)
    assert not turn_round & STAND_ALONE


def test_neither_noun_of_the_act_is_in_the_question(lexicon: Lexicon) -> None:
    for verb in lexicon.verbs.values():
        doer, done_to = ("dog", "pig") if verb.sorts == {Sort.ANIMAL} else ("nurse", "baker")
        act = Act(verb=verb.key, doer=doer, done_to=done_to)
        for asked in (ask_doer(act, lexicon), ask_about(act, Role.DOER, lexicon)):
            assert not {doer, done_to} & set(asked.text.rstrip("?").split())
        assert done_to not in tell_doer(act, lexicon).text


def test_a_parser_finds_an_object_where_one_is_wanted(lexicon: Lexicon) -> None:
    """spaCy's small English model, which nobody here wrote."""
    parser = load()
    for key, verb in lexicon.verbs.items():
        text = ask_doer(replace(WAKE, verb=key), lexicon).text
        objects = [word.text for word in parser(text) if word.dep_ in ("dobj", "obj")]
        assert objects == ([] if key in STAND_ALONE else ["someone"]), (verb.base, text)
