from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.meanings import Act, Place, Relation, Tense
from drills.core.words import Lexicon
from drills.language import Role, answer_name, ask_about, ask_doer, ask_done_to, realise

FEED = Act(verb="feed", doer="nurse", done_to="baker")
CUP = Place(relation=Relation.BEHIND, thing="cup", landmark="bell")


@pytest.mark.parametrize(
    ("tense", "doer", "done_to"),
    [
        (Tense.PAST, "Who fed?", "Who was fed?"),
        (Tense.PRESENT, "Who feeds?", "Who is fed?"),
    ],
)
def test_a_question_asks_for_one_part_in_the_tense_of_the_act(
    tense: Tense, doer: str, done_to: str, lexicon: Lexicon
) -> None:
    act = replace(FEED, tense=tense)
    assert ask_doer(act, lexicon).text == doer
    assert ask_done_to(act, lexicon).text == done_to


def test_the_two_questions_of_every_verb_differ(lexicon: Lexicon) -> None:
    for verb in lexicon.verbs:
        for tense in Tense:
            act = replace(FEED, verb=verb, tense=tense)
            asked = {
                question.text
                for question in (
                    ask_doer(act, lexicon),
                    ask_done_to(act, lexicon),
                    ask_about(act, Role.DOER, lexicon),
                    ask_about(act, Role.DONE_TO, lexicon),
                )
            }
            assert len(asked) == 4
            assert all(text.startswith("Who ") and text.endswith("?") for text in asked)


def test_the_role_question_asks_about_the_act_under_way(lexicon: Lexicon) -> None:
    now = replace(FEED, tense=Tense.PRESENT)
    assert ask_about(now, Role.DOER, lexicon).text == "Who is feeding?"
    assert ask_about(FEED, Role.DOER, lexicon).text == "Who was feeding?"
    assert ask_about(now, Role.DONE_TO, lexicon).text == "Who is being fed?"
    assert ask_about(FEED, Role.DONE_TO, lexicon).text == "Who was being fed?"
    assert ask_about(CUP, Role.THING, lexicon).text == "Where is the cup?"


def test_a_question_carries_the_plain_words_of_its_meaning(lexicon: Lexicon) -> None:
    plain = realise(FEED, "active", lexicon).plain
    assert ask_doer(FEED, lexicon).plain == ask_done_to(FEED, lexicon).plain == plain


def test_a_question_is_said_in_one_breath(lexicon: Lexicon) -> None:
    assert ask_done_to(FEED, lexicon).spoken.phrases == ("Who was fed?",)


def test_a_part_that_a_meaning_lacks_cannot_be_asked_about(lexicon: Lexicon) -> None:
    for meaning, role in ((FEED, Role.THING), (CUP, Role.DOER), (CUP, Role.LANDMARK)):
        with pytest.raises(ValueError, match="no question asks"):
            ask_about(meaning, role, lexicon)
    with pytest.raises(ValueError, match="no verb"):
        ask_doer(replace(FEED, verb="lend"), lexicon)


def test_an_answer_names_someone_as_the_sentence_does(lexicon: Lexicon) -> None:
    sentence = realise(FEED, "full-passive", lexicon).text
    assert answer_name(lexicon.nouns["nurse"]) == "the nurse"
    assert answer_name(lexicon.nouns["nurse"]) in sentence
