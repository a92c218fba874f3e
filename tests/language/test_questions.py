from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.meanings import (
    Act,
    Aspect,
    Comparison,
    Kin,
    Link,
    Order,
    Place,
    Relation,
    State,
    Tense,
)
from drills.core.words import Lexicon
from drills.language import (
    Role,
    answer_name,
    answer_owner,
    answer_relation,
    answer_sex,
    ask_about,
    ask_doer,
    ask_done_to,
    ask_first,
    ask_last,
    ask_more,
    ask_owner,
    ask_relation,
    ask_same,
    ask_sex,
    ask_what_happened,
    ask_whether,
    holds,
    realise,
)

FEED = Act(verb="feed", doer="nurse", done_to="baker")
CUP = Place(relation=Relation.BEHIND, thing="cup", landmark="bell")


@pytest.mark.parametrize(
    ("tense", "doer", "done_to"),
    [
        (Tense.PAST, "Who fed someone?", "Who was fed?"),
        (Tense.PRESENT, "Who feeds someone?", "Who is fed?"),
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
    assert ask_about(now, Role.DOER, lexicon).text == "Who is feeding someone?"
    assert ask_about(FEED, Role.DOER, lexicon).text == "Who was feeding someone?"
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


@pytest.mark.parametrize(
    ("act", "whether", "what"),
    [
        (FEED, "Did the nurse feed the baker?", "What happened to the baker?"),
        (
            replace(FEED, tense=Tense.PRESENT),
            "Does the nurse feed the baker?",
            "What is happening to the baker?",
        ),
        (
            replace(FEED, aspect=Aspect.PROGRESSIVE),
            "Was the nurse feeding the baker?",
            "What happened to the baker?",
        ),
    ],
)
def test_what_happened_and_whether_it_did(
    act: Act, whether: str, what: str, lexicon: Lexicon
) -> None:
    assert ask_whether(act, act, lexicon).text == whether
    assert ask_what_happened(act, lexicon).text == what
    assert ask_what_happened(act, lexicon).plain == realise(act, "active", lexicon).text


def test_yes_is_right_for_what_was_told_and_no_for_its_reversal(lexicon: Lexicon) -> None:
    told = replace(FEED, where="garden", when="yesterday")
    assert holds(FEED, told)
    assert not holds(FEED.reversed(), told)
    turned = ask_whether(FEED.reversed(), told, lexicon)
    assert turned.text == "Did the baker feed the nurse?"
    assert turned.plain == "The nurse fed the baker."
    with pytest.raises(ValueError, match="no noun"):
        ask_whether(replace(FEED, doer="clown"), told, lexicon)


def test_whose_it_is(lexicon: Lexicon) -> None:
    state = State(subject="boy", count=1, link=Link.HAVE, complement="hat")
    assert ask_owner(state, lexicon).text == "Whose hat is it?"
    assert answer_owner(lexicon.nouns["boy"]) == "the boy's"


def test_what_came_first_and_who_has_more(lexicon: Lexicon) -> None:
    order = Order(doer="sailor", earlier="wave", later="sit")
    assert ask_first(order, lexicon).text == "What did the sailor do first?"
    assert ask_last(order, lexicon).text == "What did the sailor do last?"
    assert ask_first(order, lexicon).plain.startswith("First the sailor waved.")
    taller = Comparison(quality="tall", more="nurse", less="judge")
    assert ask_more(taller, lexicon).text == "Who is taller?"
    bigger = Comparison(quality="big", more="cup", less="hat")
    assert ask_more(bigger, lexicon).text == "Which is bigger?"


def test_the_ladder_of_relatives(lexicon: Lexicon) -> None:
    """K2 to K6 of the ladder: sex, "of", one word, reversal, three terms."""
    kin = Kin(terms=("aunt", "brother"))
    assert ask_sex(kin, lexicon).text == "Is my aunt's brother a woman or a man?"
    assert answer_sex(kin) == "a man"
    assert ask_sex(kin, lexicon, of=True).text == "Is the brother of my aunt a woman or a man?"
    sister = Kin(terms=("father", "sister"))
    assert ask_relation(sister, lexicon).text == "Who is my father's sister?"
    assert ask_relation(sister, lexicon, of=True).text == "Who is the sister of my father?"
    assert answer_relation(sister, lexicon) == "my aunt"
    assert answer_sex(kin.reversed()) == "a woman"
    three = Kin(terms=("sister", "son", "mother"))
    assert ask_same(three, ("sister",), lexicon).text == ("Is my sister's son's mother my sister?")
    assert answer_relation(three, lexicon) == "my sister"
    with pytest.raises(ValueError, match="no one word"):
        answer_relation(kin, lexicon)
