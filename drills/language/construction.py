"""What a construction is, and which meanings each may refuse."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Aspect,
    Chain,
    Comparison,
    Described,
    Kin,
    Order,
    Place,
    Report,
    Role,
    State,
    Transfer,
    Undergone,
)
from drills.core.words import Lexicon, Sort
from drills.language.abstract import Phrase

MeaningType = (
    type[Act]
    | type[Undergone]
    | type[Asked]
    | type[Activity]
    | type[Place]
    | type[State]
    | type[Described]
    | type[Report]
    | type[Transfer]
    | type[Order]
    | type[Comparison]
    | type[Chain]
    | type[Kin]
)

Refusal = Callable[[Any, Lexicon], str]
"""Why a construction cannot say a meaning; empty where it can."""


def never(_meaning: Any, _lexicon: Lexicon) -> str:
    return ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Construction:
    """One sentence type.

    label: for the therapist.   canonical: the doer comes first; of two events, the earlier one.
    rank: 1 (easiest) to 10; common practice, a default order that a person's own results replace.
    reversible: the words alone do not tell who does what to whom.
    where, when: whether it takes an adjunct of that kind, by which its length is chosen.
    order: puts the parts of a meaning of `meaning_type` in their order, as phrases.
    refuses: of the meanings of that type, those it cannot say so that they alone are said.
    end: the mark that closes the sentence.
    """

    name: str
    label: str
    example: str
    meaning_type: MeaningType
    canonical: bool
    rank: int
    order: Callable[[Any], tuple[Phrase, ...]] = field(repr=False)
    refuses: Refusal = field(default=never, repr=False)
    reversible: bool = True
    where: bool = True
    when: bool = True
    end: str = "."


def unless_reversible(act: Act, lexicon: Lexicon) -> str:
    """The statements of an act that could be turned round."""
    if act.negated:
        return "it says that something is so"
    return _unless_both_live(act, lexicon)


def unless_one_way(act: Act, lexicon: Lexicon) -> str:
    """An act on a thing, which could not do it."""
    if act.negated:
        return "it says that something is so"
    if act.done_to not in lexicon.verbs[act.verb].things:
        return f"{act.verb!r} is not done to {act.done_to!r}"
    return ""


def unless_negated(act: Act, lexicon: Lexicon) -> str:
    if not act.negated:
        return "it says that something is not so"
    return _unless_both_live(act, lexicon)


def unless_woman_and_man(act: Act, lexicon: Lexicon) -> str:
    """ "She" and "him" stand for any woman and man, so only these two are meant by them."""
    if {act.doer, act.done_to} != {"woman", "man"}:
        return "its pronouns mean one woman and one man"
    return unless_reversible(act, lexicon)


def unless_doer_asked(asked: Asked, _: Lexicon) -> str:
    return "" if asked.asked is Role.DOER else "it asks for the doer"


def unless_done_to_asked(asked: Asked, _: Lexicon) -> str:
    return "" if asked.asked is Role.DONE_TO else "it asks for the one it is done to"


def unless_doer_described(described: Described, lexicon: Lexicon) -> str:
    if described.who is not Role.DOER or described.state is None:
        return "it tells what the doer was like"
    return _unless_plain_act(described, lexicon)


def unless_done_to_described(described: Described, lexicon: Lexicon) -> str:
    if described.who is not Role.DONE_TO or described.state is None:
        return "it tells what the one it is done to was like"
    return _unless_plain_act(described, lexicon)


def unless_done_to_shown(described: Described, lexicon: Lexicon) -> str:
    if described.who is not Role.DONE_TO or described.state is not None:
        return "it points at the one it is done to"
    return _unless_plain_act(described, lexicon)


def unless_of_one_sex(report: Report, lexicon: Lexicon) -> str:
    """A pronoun that fits one of the two alone would need no grammar."""
    speaker, doer = lexicon.nouns[report.speaker], lexicon.nouns[report.act.doer]
    if speaker.sex is None or speaker.sex is not doer.sex:
        return "its two people are of one sex"
    if report.is_reflexive and not lexicon.verbs[report.act.verb].reflexive:
        return f"nobody can {report.act.verb} oneself"
    if report.act.negated:
        return "it says that something is so"
    return ""


def unless_number_shows(activity: Activity, lexicon: Lexicon) -> str:
    """Two and three have one plural; a verb with one form for now and then needs "are"."""
    if activity.count > 2:
        return "it tells one from two"
    verb = lexicon.alone[activity.verb]
    if activity.aspect is Aspect.SIMPLE and verb.base == verb.past:
        return f"{verb.base!r} has one form for now and then"
    return ""


def unless_person(order: Order, lexicon: Lexicon) -> str:
    if lexicon.nouns[order.doer].sex is None:
        return "its doer is a she or a he"
    return ""


def _unless_plain_act(described: Described, lexicon: Lexicon) -> str:
    if described.act.negated:
        return "it says that something is so"
    return _unless_both_live(described.act, lexicon)


def _unless_both_live(act: Act, lexicon: Lexicon) -> str:
    sorts = (lexicon.nouns[act.doer].sort, lexicon.nouns[act.done_to].sort)
    return "a thing cannot do it" if Sort.THING in sorts else ""
