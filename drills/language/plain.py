"""The plain restatement: active, one clause a sentence, without where and when.

It is the last cue, so it leaves nothing to small words that could be said by order.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
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
    Meaning,
    Order,
    Place,
    Report,
    State,
    Tense,
    Transfer,
    Undergone,
)
from drills.core.meanings import Role as AskedRole
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Part, phrases_of
from drills.language.abstract import (
    Form,
    Number,
    Phrase,
    Word,
    definite,
    finite,
    finite_small,
    indefinite,
    pronoun,
    small,
    standing_for,
)
from drills.language.places import locative
from drills.language.predicates import predicate
from drills.language.roles import Role
from drills.language.states import agreement, comparative, number
from drills.language.steps import finish
from drills.language.transfers import dative
from drills.language.voices import active

Clause = tuple[Phrase, ...]

_SOMEONE = "someone"
_SO = small("so", Part.PRONOUN)


def restate(meaning: Meaning, lexicon: Lexicon) -> str:
    """The meaning in plain words: "The goat chased the cow. The goat was wet."."""
    return " ".join(restated(meaning, lexicon).phrases)


def restated(meaning: Meaning, lexicon: Lexicon) -> Utterance:
    """The same, to be said: each clause has its own phrases and its stop."""
    return Utterance(
        phrases=tuple(
            phrase
            for clause in _CLAUSES[type(meaning)](meaning, lexicon)
            for phrase in phrases_of(finish(clause, lexicon), ".")
        )
    )


def _bare(clause: Clause) -> Clause:
    """The clause without where and when."""
    return tuple(phrase for phrase in clause if phrase[0].part is not Part.ADVERBIAL)


def _act(act: Act, _: Lexicon) -> tuple[Clause, ...]:
    return (_bare(active(act)),)


def _undergone(undergone: Undergone, _: Lexicon) -> tuple[Clause, ...]:
    return (_by_someone(undergone, undergone.done_to),)


def _asked(asked: Asked, _: Lexicon) -> tuple[Clause, ...]:
    if asked.asked is AskedRole.DOER:
        return (_by_someone(asked, asked.known),)
    verb = predicate(asked.verb, asked.tense, asked.aspect, Role.DOER)
    known = definite(asked.known, Role.DOER)
    return ((known, (*verb, pronoun(_SOMEONE, Role.ASKED))),)


def _by_someone(meaning: Undergone | Asked, done_to: str) -> Clause:
    verb = predicate(meaning.verb, meaning.tense, meaning.aspect, Role.ASKED)
    return ((pronoun(_SOMEONE, Role.ASKED),), (*verb, *definite(done_to, Role.DONE_TO)))


def _activity(activity: Activity, _: Lexicon) -> tuple[Clause, ...]:
    return (_bare(number(activity)),)


def _place(place: Place, _: Lexicon) -> tuple[Clause, ...]:
    return (_bare(locative(place)),)


def _state(state: State, _: Lexicon) -> tuple[Clause, ...]:
    return (_bare(agreement(state)),)


def _described(described: Described, lexicon: Lexicon) -> tuple[Clause, ...]:
    clauses = _act(described.act, lexicon)
    if described.state is None:
        return clauses
    be = finite_small("be", described.act.tense, Role.HOLDER)
    state = (be, small(described.state, Part.ADJECTIVE))
    return (*clauses, (definite(described.subject, Role.HOLDER), state))


def _report(report: Report, _: Lexicon) -> tuple[Clause, ...]:
    act = report.act
    verb = predicate(act.verb, act.tense, act.aspect, Role.DOER)
    done_to: Phrase = definite(act.done_to, Role.DONE_TO)
    if report.is_reflexive:
        done_to = (standing_for(act.doer, Form.REFLEXIVE, Role.DONE_TO),)
    said = (finite("say", act.tense, Role.TELLER), _SO)
    return (
        (definite(act.doer, Role.DOER), (*verb, *done_to)),
        (definite(report.speaker, Role.TELLER), said),
    )


def _transfer(transfer: Transfer, _: Lexicon) -> tuple[Clause, ...]:
    return (_bare(dative(transfer)),)


def _order(order: Order, _: Lexicon) -> tuple[Clause, ...]:
    def clause(link: str, verb: str) -> Clause:
        doer = (small(link, Part.CONJUNCTION), *definite(order.doer, Role.DOER))
        return (doer, predicate(verb, order.tense, Aspect.SIMPLE, Role.DOER))

    return (clause("first", order.earlier), clause("then", order.later))


def _comparison(comparison: Comparison, lexicon: Lexicon) -> tuple[Clause, ...]:
    opposite = lexicon.adjectives[comparison.quality].opposite
    if opposite is None:
        return (_bare(comparative(comparison)),)

    def clause(noun: str, quality: str) -> Clause:
        be = finite_small("be", comparison.tense, Role.HOLDER)
        more = Word(lemma=quality, part=Part.ADJECTIVE, form=Form.COMPARATIVE)
        return (definite(noun, Role.HOLDER), (be, more))

    return (clause(comparison.more, comparison.quality), clause(comparison.less, opposite))


def _chain(chain: Chain, _: Lexicon) -> tuple[Clause, ...]:
    def does(done_to: Phrase) -> Phrase:
        return (*predicate(chain.verb, chain.tense, Aspect.SIMPLE, Role.DOER), *done_to)

    outer = Word(lemma=chain.outer, part=Part.NOUN, number=Number.SINGULAR, role=Role.DOER)
    other = (
        small("the", Part.DETERMINER),
        small("other", Part.DETERMINER),
        replace(outer, role=Role.DONE_TO),
    )
    return (
        ((Word(lemma="1", part=Part.NUMERAL), outer), does(definite(chain.middle, Role.DONE_TO))),
        (definite(chain.middle, Role.DOER), does(other)),
    )


def _kin(kin: Kin, _: Lexicon) -> tuple[Clause, ...]:
    clauses: list[Clause] = []
    holder = Word(lemma="I", part=Part.PRONOUN, number=Number.PLURAL, role=Role.HOLDER)
    for term in kin.terms:
        have = finite_small("have", Tense.PRESENT, Role.HOLDER)
        clauses.append(((holder, have, *indefinite(term, Role.RELATIVE)),))
        holder = standing_for(term, Form.SUBJECT, Role.HOLDER)
    return tuple(clauses)


_CLAUSES: Mapping[type[Meaning], Callable[[Any, Lexicon], tuple[Clause, ...]]] = {
    Act: _act,
    Undergone: _undergone,
    Asked: _asked,
    Activity: _activity,
    Place: _place,
    State: _state,
    Described: _described,
    Report: _report,
    Transfer: _transfer,
    Order: _order,
    Comparison: _comparison,
    Chain: _chain,
    Kin: _kin,
}
