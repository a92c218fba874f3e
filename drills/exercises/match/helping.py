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
    tell_doer,
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


def named_done_to(act: Act, lexicon: Lexicon) -> str:
    """Who it is done to, and no more: "The sailor was pushed."."""
    told = Undergone(verb=act.verb, done_to=act.done_to, tense=act.tense, aspect=act.aspect)
    return realise(told, "short-passive", lexicon).text


def help_of_doer(_told: Meaning, event: Act | Transfer, lexicon: Lexicon) -> Help:
    return Help(
        role_question=ask_about(event, Role.DOER, lexicon).text,
        named=tell_doer(event, lexicon).text,
    )


def help_of_described(told: Meaning, right: Described, lexicon: Lexicon) -> Help:
    return help_of_doer(told, right.act, lexicon)


def help_of_undergone(_told: Meaning, act: Act, lexicon: Lexicon) -> Help:
    """The sentence tells the done-to alone, so that is what is asked; the picture has the doer."""
    return Help(
        role_question=ask_about(act, Role.DONE_TO, lexicon).text,
        named=tell_doer(act, lexicon).text,
    )


def help_of_negation(act: Act, _right: Meaning, lexicon: Lexicon) -> Help:
    happens = replace(act, negated=False)
    return Help(
        role_question=ask_whether(happens, happens, lexicon).text,
        named=tell_doer(act, lexicon).text,
        named_is_doer=False,
    )


def help_of_question(_told: Meaning, right: Described, lexicon: Lexicon) -> Help:
    """Help turns to the one who is *not* asked about, since the other would be the answer."""
    act, doer_is_known = right.act, right.who is Part.DONE_TO
    role = Role.DOER if doer_is_known else Role.DONE_TO
    named = tell_doer(act, lexicon).text if doer_is_known else named_done_to(act, lexicon)
    return Help(
        role_question=ask_about(act, role, lexicon).text,
        named=named,
        named_is_doer=doer_is_known,
    )


def help_of_place(place: Place, _right: Meaning, lexicon: Lexicon) -> Help:
    be = "is" if place.tense is Tense.PRESENT else "was"
    thing, where = lexicon.nouns[place.thing], _PLACE_NAMES[place.relation]
    return Help(
        role_question=ask_about(place, Role.THING, lexicon).text,
        named=f"The {thing.singular} {be} {where}.",
    )


def help_of_count(told: Activity | State, _right: Meaning, lexicon: Lexicon) -> Help:
    return Help(
        role_question="How many are there?",
        named="There is one." if told.count == 1 else "There are two.",
        named_is_doer=False,
    )


def help_of_report(report: Report, _right: Meaning, lexicon: Lexicon) -> Help:
    """No verb with the doer: "The king washed." says himself, "someone" says him."""
    act = report.act
    asked = Act(verb=act.verb, doer=act.doer, done_to=report.speaker, tense=act.tense)
    return Help(
        role_question=ask_about(asked, Role.DONE_TO, lexicon).text,
        named=f"The {lexicon.nouns[act.doer].singular} did it.",
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


def _first_clause(plain: str) -> str:
    return plain.partition(". ")[0].rstrip(".") + "."
