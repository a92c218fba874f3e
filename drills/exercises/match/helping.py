"""The words of the steps of help: a question about the parts, then one part named."""

from __future__ import annotations

from dataclasses import replace

from drills.core.meanings import (
    Act,
    Activity,
    Comparison,
    Described,
    Meaning,
    Order,
    Place,
    Relation,
    Report,
    State,
    Tense,
    Transfer,
    Undergone,
)
from drills.core.meanings import Role as Part
from drills.core.words import Lexicon
from drills.exercises.match.family import Case, Help
from drills.language import (
    Role,
    ask_about,
    ask_first,
    ask_more,
    ask_whether,
    realise,
    restate,
)

_PLACE_NAMES = {
    Relation.IN: "inside",
    Relation.ON: "on top",
    Relation.UNDER: "underneath",
    Relation.BEHIND: "behind",
    Relation.IN_FRONT_OF: "in front",
}


def plainly(case: Case) -> Meaning:
    """What is said plainly after the answer: what the sentence tells, of a question its answer."""
    return case.right.act if isinstance(case.right, Described) and case.is_question else case.told


def named_doer(meaning: Act | Place, lexicon: Lexicon) -> str:
    """Who does it, or what is there, and no more: "The sailor pushed."."""
    if isinstance(meaning, Place):
        verb = "is" if meaning.tense is Tense.PRESENT else "was"
        where = _PLACE_NAMES[meaning.relation]
        return f"The {lexicon.nouns[meaning.thing].singular} {verb} {where}."
    word = lexicon.verbs[meaning.verb]
    does = word.past if meaning.tense is Tense.PAST else f"is {word.ing}"
    return f"The {lexicon.nouns[meaning.doer].singular} {does}."


def _named_done_to(act: Act, lexicon: Lexicon) -> str:
    told = Undergone(verb=act.verb, done_to=act.done_to, tense=act.tense, aspect=act.aspect)
    return realise(told, "short-passive", lexicon).text


def help_of_act(_told: Meaning, act: Act, lexicon: Lexicon) -> Help:
    return Help(
        role_question=ask_about(act, Role.DOER, lexicon).text,
        named=named_doer(act, lexicon),
    )


def help_of_described(told: Meaning, right: Described, lexicon: Lexicon) -> Help:
    return help_of_act(told, right.act, lexicon)


def help_of_undergone(_told: Meaning, act: Act, lexicon: Lexicon) -> Help:
    """The sentence tells the done-to alone, so that is what is asked; the picture has the doer."""
    return Help(
        role_question=ask_about(act, Role.DONE_TO, lexicon).text,
        named=named_doer(act, lexicon),
    )


def help_of_negation(act: Act, _right: Meaning, lexicon: Lexicon) -> Help:
    happens = replace(act, negated=False)
    noun, verb = lexicon.nouns[act.doer], lexicon.verbs[act.verb]
    return Help(
        role_question=ask_whether(happens, happens, lexicon).text,
        named=f"The {noun.singular} is not {verb.ing}.",
        named_is_doer=False,
    )


def help_of_question(_told: Meaning, right: Described, lexicon: Lexicon) -> Help:
    """Help turns to the one who is *not* asked about, since the other would be the answer."""
    act, doer_is_known = right.act, right.who is Part.DONE_TO
    role = Role.DOER if doer_is_known else Role.DONE_TO
    named = named_doer(act, lexicon) if doer_is_known else _named_done_to(act, lexicon)
    return Help(
        role_question=ask_about(act, role, lexicon).text,
        named=named,
        named_is_doer=doer_is_known,
    )


def help_of_place(place: Place, _right: Meaning, lexicon: Lexicon) -> Help:
    return Help(
        role_question=ask_about(place, Role.THING, lexicon).text,
        named=named_doer(place, lexicon),
    )


def help_of_count(told: Activity | State, _right: Meaning, lexicon: Lexicon) -> Help:
    return Help(
        role_question="How many are there?",
        named="There is one." if told.count == 1 else "There are two.",
        named_is_doer=False,
    )


def help_of_report(report: Report, _right: Meaning, lexicon: Lexicon) -> Help:
    act = report.act
    asked = Act(verb=act.verb, doer=act.doer, done_to=report.speaker, tense=act.tense)
    return Help(
        role_question=ask_about(asked, Role.DONE_TO, lexicon).text,
        named=named_doer(act, lexicon),
    )


def help_of_order(order: Order, _right: Meaning, lexicon: Lexicon) -> Help:
    return Help(
        role_question=ask_first(order, lexicon).text,
        named=_first_clause(restate(order, lexicon)),
        named_is_doer=False,
    )


def help_of_comparison(comparison: Comparison, _right: Meaning, lexicon: Lexicon) -> Help:
    return Help(
        role_question=ask_more(comparison, lexicon).text,
        named=_first_clause(restate(comparison, lexicon)),
        named_is_doer=False,
    )


def help_of_transfer(transfer: Transfer, _right: Meaning, lexicon: Lexicon) -> Help:
    verb, doer = lexicon.transfers[transfer.verb], lexicon.nouns[transfer.doer]
    return Help(
        role_question=f"Who was {verb.ing}?",
        named=f"It was the {doer.singular}.",
    )


def _first_clause(plain: str) -> str:
    return plain.partition(". ")[0].rstrip(".") + "."
