"""Clauses of small words as sentences. Expected sentences: any school grammar, from memory."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.clauses import (
    Clause,
    Day,
    Determined,
    Missing,
    Party,
    Person,
    Rank,
    Relative,
    Thing,
    Tie,
    Told,
    Wanted,
)
from drills.core.meanings import Aspect, Tense
from drills.core.words import Lexicon
from drills.language.clauses import Slot
from drills.language.told import answer_to, calendar_lines, calendar_said, lay, said_before

NURSE, CUP = Party(noun="nurse"), Party(noun="cup")
I = Party(person=Person.FIRST, is_pronoun=True)  # noqa: E741 - the word itself
TWO = Party(noun="king", count=2, determined=Determined.COUNTED)
WASH = Clause(subject=NURSE, verb="wash", object=CUP)
WET = Clause(subject=NURSE, verb="be", state="wet")


@pytest.mark.parametrize(
    ("clause", "text"),
    [
        (WASH, "The nurse washes the cup."),
        (replace(WASH, subject=TWO), "Two kings wash the cup."),
        (replace(WASH, subject=I), "I wash the cup."),
        (replace(WASH, tense=Tense.PAST), "The nurse washed the cup."),
        (replace(WASH, aspect=Aspect.PROGRESSIVE, when="now"), "Now the nurse is washing the cup."),
        (replace(WASH, perfect=True), "The nurse has washed the cup."),
        (replace(WASH, negated=True), "The nurse does not wash the cup."),
        (
            replace(WASH, negated=True, tense=Tense.PAST, when="yesterday"),
            "Yesterday the nurse did not wash the cup.",
        ),
        (replace(WASH, modal="can"), "The nurse can wash the cup."),
        (replace(WASH, modal="will", negated=True), "The nurse will not wash the cup."),
        (replace(WET, subject=I), "I am wet."),
        (replace(WET, subject=replace(I, count=2), tense=Tense.PAST), "We were wet."),
        (replace(WET, perfect=True), "The nurse has been wet."),
        (replace(WET, modal="will"), "The nurse will be wet."),
        (replace(WET, negated=True), "The nurse is not wet."),
        (
            Clause(subject=CUP, verb="wash", passive=True, aspect=Aspect.PROGRESSIVE),
            "The cup is being washed.",
        ),
        (
            Clause(subject=CUP, verb="give", passive=True, ties=(Tie(word="to", party=NURSE),)),
            "The cup is given to the nurse.",
        ),
        (replace(WET, state="tall", than=Party(noun="king")), "The nurse is taller than the king."),
        (
            replace(WET, state="tall", than=Party(noun="king"), equal=True),
            "The nurse is as tall as the king.",
        ),
        (
            Clause(
                subject=NURSE,
                verb="be",
                object=Party(quality="hungry", rank=Rank.MOST),
            ),
            "The nurse is the hungriest of all.",
        ),
        (
            Clause(subject=TWO, verb="have", object=Party(noun="hat", rank=Rank.SAME)),
            "Two kings have the same hat.",
        ),
        (
            Clause(subject=NURSE, verb="wave", rate="hour", times=2),
            "The nurse waves twice an hour.",
        ),
        (
            Clause(
                subject=Party(determined=Determined.NEAR),
                verb="be",
                object=Party(noun="hat", owner=NURSE),
            ),
            "This is the nurse's hat.",
        ),
        (
            Clause(
                subject=Party(thing=Thing.THERE),
                verb="be",
                object=Party(noun="cup", count=2, determined=Determined.COUNTED),
            ),
            "There are two cups.",
        ),
        (
            Clause(
                subject=Party(noun="nurse", also=Party(noun="king"), pair="and"),
                verb="be",
                state="wet",
            ),
            "Both the nurse and the king are wet.",
        ),
        (
            Clause(
                subject=Party(noun="nurse", also=Party(noun="king"), pair="or"),
                verb="be",
                state="wet",
            ),
            "Either the nurse or the king is wet.",
        ),
        (
            Clause(
                subject=I,
                verb="wash",
                object=replace(I, is_reflexive=True),
                aspect=Aspect.PROGRESSIVE,
            ),
            "I am washing myself.",
        ),
        (
            Clause(
                subject=Party(noun="dog"),
                verb="have",
                object=Party(noun="box", owner=Party(noun="dog", is_pronoun=True), own=True),
            ),
            "The dog has its own box.",
        ),
        (
            Clause(
                subject=Party(
                    noun="king",
                    relative=Relative(
                        word="who",
                        missing=Missing.SUBJECT,
                        clause=Clause(subject=None, verb="wave"),
                    ),
                ),
                verb="be",
                state="wet",
            ),
            "The king who waves is wet.",
        ),
        (
            Clause(
                subject=I,
                verb="see",
                object=Party(
                    relative=Relative(
                        word="what",
                        missing=Missing.OBJECT,
                        clause=Clause(subject=NURSE, verb="have"),
                    )
                ),
            ),
            "I see what the nurse has.",
        ),
    ],
)
def test_a_clause_is_said(clause: Clause, text: str, lexicon: Lexicon) -> None:
    assert lay(Told(clause=clause), lexicon).sentence.text == text


@pytest.mark.parametrize(
    ("told", "question", "answer"),
    [
        (Told(clause=WASH, wanted=Wanted.OBJECT), "What does the nurse wash?", "The cup."),
        (Told(clause=WASH, wanted=Wanted.SUBJECT), "Who washes the cup?", "The nurse."),
        (
            Told(
                clause=Clause(
                    subject=CUP, verb="be", ties=(Tie(word="in", party=Party(noun="box")),)
                ),
                wanted=Wanted.PLACE,
            ),
            "Where is the cup?",
            "In the box.",
        ),
        (
            Told(
                clause=Clause(subject=NURSE, verb="wave", ties=(Tie(word="on", time="monday"),)),
                wanted=Wanted.TIME,
            ),
            "When does the nurse wave?",
            "On Monday.",
        ),
        (
            Told(
                clause=Clause(subject=TWO, verb="sleep"),
                second=replace(WET, subject=replace(TWO, is_pronoun=True), state="tired"),
                link="because",
                wanted=Wanted.REASON,
            ),
            "Why do two kings sleep?",
            "Because they are tired.",
        ),
        (
            Told(
                clause=Clause(subject=Party(noun="cup", quality="big"), verb="be", state="wet"),
                wanted=Wanted.WHICH,
            ),
            "Which cup is wet?",
            "The big cup.",
        ),
    ],
)
def test_a_question_is_asked_and_answered(
    told: Told, question: str, answer: str, lexicon: Lexicon
) -> None:
    said = answer_to(told, lexicon)
    assert lay(told, lexicon).sentence.text == question
    assert said is not None
    assert said.text == answer


def test_two_clauses_a_first_sentence_and_a_calendar_are_said(lexicon: Lexicon) -> None:
    told = Told(
        clause=Clause(subject=NURSE, verb="sleep"),
        link="because",
        second=Clause(subject=Party(noun="nurse", is_pronoun=True), verb="be", state="tired"),
        before=(WASH,),
        calendar=(Day(weekday="monday", date=2, verb="wave"),),
    )
    laid = lay(told, lexicon)
    assert laid.sentence.text == "The nurse sleeps because she is tired."
    assert laid.sentence.tokens[laid.find(Slot.LINK)].text == "because"
    assert laid.find(Slot.WH, Slot.LINK) == laid.find(Slot.LINK)
    with pytest.raises(ValueError, match="has no wh"):
        laid.find(Slot.WH)
    assert [each.text for each in said_before(told, lexicon)] == ["The nurse washes the cup."]
    assert calendar_lines(told, lexicon) == ("Mon 2: wave",)
    assert calendar_said(told, lexicon) == ("Monday: wave.",)
    assert answer_to(told, lexicon) is None
