"""First step: who plays which part in a meaning, checked against the lexicon."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from enum import StrEnum
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
    Link,
    Meaning,
    Order,
    Place,
    Report,
    State,
    Transfer,
    Undergone,
)
from drills.core.words import Adjunct, AdjunctKind, Lexicon


class Role(StrEnum):
    """A part in a meaning. `IT`, `ASKED`, `SPEAKER` hold a place: "it was ...", "who ...?", "I"."""

    DOER = "doer"
    DONE_TO = "done to"
    GIVEN = "given"
    RECEIVER = "receiver"
    THING = "thing"
    LANDMARK = "landmark"
    HOLDER = "holder"
    COMPLEMENT = "complement"
    TELLER = "teller"
    MORE = "more"
    LESS = "less"
    RELATIVE = "relative"
    IT = "it"
    ASKED = "asked"
    SPEAKER = "speaker"


MOST_COUNTED = 3
MOST_TERMS = 3

_ADJUNCT_KINDS = tuple(AdjunctKind)


def check_roles(meaning: Meaning, lexicon: Lexicon) -> None:
    """Raises: ValueError when the meaning names no word of the lexicon, or one thing twice."""
    _CHECKS[type(meaning)](meaning, lexicon)
    _check_adjuncts(meaning, lexicon)


def _check_act(act: Act, lexicon: Lexicon) -> None:
    _known(lexicon.verbs, act.verb, "verb")
    _two(act.doer, act.done_to, lexicon)


def _check_one_sided(meaning: Undergone | Asked, lexicon: Lexicon) -> None:
    _known(lexicon.verbs, meaning.verb, "verb")
    named = meaning.done_to if isinstance(meaning, Undergone) else meaning.known
    _known(lexicon.nouns, named, "noun")


def _check_activity(activity: Activity, lexicon: Lexicon) -> None:
    _known(lexicon.alone, activity.verb, "verb of one alone")
    _known(lexicon.nouns, activity.doer, "noun")
    _counted(activity.count)


def _check_place(place: Place, lexicon: Lexicon) -> None:
    _two(place.thing, place.landmark, lexicon)


def _check_state(state: State, lexicon: Lexicon) -> None:
    _known(lexicon.nouns, state.subject, "noun")
    _counted(state.count)
    if state.link is Link.BE:
        _known(lexicon.adjectives, state.complement, "adjective")
    else:
        _known(lexicon.nouns, state.complement, "noun")


def _check_described(described: Described, lexicon: Lexicon) -> None:
    check_roles(described.act, lexicon)
    if described.state is not None:
        _known(lexicon.adjectives, described.state, "adjective")


def _check_report(report: Report, lexicon: Lexicon) -> None:
    act = report.act
    _known(lexicon.verbs, act.verb, "verb")
    _two(report.speaker, act.doer, lexicon)
    if act.done_to not in (report.speaker, act.doer):
        raise ValueError("what is told of is done to the teller or to its doer")
    _check_adjuncts(act, lexicon)


def _check_transfer(transfer: Transfer, lexicon: Lexicon) -> None:
    _known(lexicon.transfers, transfer.verb, "verb of giving")
    for one, other in (
        (transfer.doer, transfer.given),
        (transfer.given, transfer.receiver),
        (transfer.receiver, transfer.doer),
    ):
        _two(one, other, lexicon)


def _check_order(order: Order, lexicon: Lexicon) -> None:
    _known(lexicon.nouns, order.doer, "noun")
    for verb in (order.earlier, order.later):
        _known(lexicon.alone, verb, "verb of one alone")
    if order.earlier == order.later:
        raise ValueError(f"{order.earlier!r} cannot come before itself")


def _check_comparison(comparison: Comparison, lexicon: Lexicon) -> None:
    _known(lexicon.adjectives, comparison.quality, "adjective")
    if not lexicon.adjectives[comparison.quality].comparative:
        raise ValueError(f"{comparison.quality!r} has no form for more of it")
    _two(comparison.more, comparison.less, lexicon)


def _check_chain(chain: Chain, lexicon: Lexicon) -> None:
    _known(lexicon.verbs, chain.verb, "verb")
    _two(chain.outer, chain.middle, lexicon)


def _check_kin(kin: Kin, lexicon: Lexicon) -> None:
    if not 1 <= len(kin.terms) <= MOST_TERMS:
        raise ValueError(f"a chain has 1 to {MOST_TERMS} terms, not {len(kin.terms)}")
    for term in kin.terms:
        _known(lexicon.kin, term, "word for a relative")


_CHECKS: Mapping[type[Meaning], Callable[[Any, Lexicon], None]] = {
    Act: _check_act,
    Undergone: _check_one_sided,
    Asked: _check_one_sided,
    Activity: _check_activity,
    Place: _check_place,
    State: _check_state,
    Described: _check_described,
    Report: _check_report,
    Transfer: _check_transfer,
    Order: _check_order,
    Comparison: _check_comparison,
    Chain: _check_chain,
    Kin: _check_kin,
}


def _check_adjuncts(meaning: Meaning, lexicon: Lexicon) -> None:
    for kind in _ADJUNCT_KINDS:
        key = getattr(meaning, kind, None)
        if key is None:
            continue
        _known(lexicon.adjuncts, key, "adjunct")
        adjunct = lexicon.adjuncts[key]
        if adjunct.kind is not kind:
            raise ValueError(f"{key!r} does not say {kind.value}")
        if not can_stand(adjunct, meaning, lexicon):
            raise ValueError(f"{adjunct.text!r} cannot be said of {meaning}")


def can_stand(adjunct: Adjunct, meaning: Meaning, lexicon: Lexicon) -> bool:
    """Whether the adjunct suits the tense and the kind of what is said.

    meaning: what has the adjunct, which of a report or a description is its act.
    """
    if isinstance(meaning, Described | Report):
        return can_stand(adjunct, meaning.act, lexicon)
    if meaning.tense not in adjunct.tenses:
        return False
    if isinstance(meaning, Comparison) and not lexicon.adjectives[meaning.quality].passing:
        # Nobody is taller only this morning.
        return False
    return not adjunct.under_way or _is_under_way(meaning)


def _is_under_way(meaning: Meaning) -> bool:
    if isinstance(meaning, Chain | Order | Transfer):
        return False
    return getattr(meaning, "aspect", Aspect.PROGRESSIVE) is Aspect.PROGRESSIVE


def _counted(count: int) -> None:
    if not 1 <= count <= MOST_COUNTED:
        raise ValueError(f"a count is 1 to {MOST_COUNTED}, not {count}")


def _two(one: str, other: str, lexicon: Lexicon) -> None:
    _known(lexicon.nouns, one, "noun")
    _known(lexicon.nouns, other, "noun")
    if one == other:
        raise ValueError(f"{one!r} cannot play both parts of a meaning")


def _known(words: Mapping[str, Any], key: str, what: str) -> None:
    if key not in words:
        raise ValueError(f"the lexicon has no {what} {key!r}")
