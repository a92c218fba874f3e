"""Order of sentences of number and of more and less."""

from __future__ import annotations

from drills.core.meanings import Activity, Comparison, Link, State
from drills.core.words import Part
from drills.language.abstract import (
    Form,
    Number,
    Phrase,
    Word,
    counted,
    definite,
    finite_small,
    indefinite,
    small,
)
from drills.language.predicates import predicate, where_and_when
from drills.language.roles import Role


def agreement(meaning: State) -> tuple[Phrase, ...]:
    """The numeral fixes the verb: "Two sailors / are wet", "One sailor / has a bell"."""
    complement = (
        (small(meaning.complement, Part.ADJECTIVE),)
        if meaning.link is Link.BE
        else indefinite(meaning.complement, Role.COMPLEMENT)
    )
    verb = finite_small(meaning.link.value, meaning.tense, Role.HOLDER)
    return (
        counted(meaning.count, meaning.subject, Role.HOLDER),
        (verb, *complement),
        *where_and_when(meaning),
    )


def number(meaning: Activity) -> tuple[Phrase, ...]:
    """Only endings and the small verb tell how many: "The sailors / are waving"."""
    many = Number.SINGULAR if meaning.count == 1 else Number.PLURAL
    return (
        definite(meaning.doer, Role.DOER, many),
        predicate(meaning.verb, meaning.tense, meaning.aspect, Role.DOER),
        *where_and_when(meaning),
    )


def comparative(meaning: Comparison) -> tuple[Phrase, ...]:
    """ "The nurse / is taller / than the judge"."""
    return (
        definite(meaning.more, Role.MORE),
        (
            finite_small("be", meaning.tense, Role.MORE),
            Word(lemma=meaning.quality, part=Part.ADJECTIVE, form=Form.COMPARATIVE),
        ),
        (small("than", Part.CONJUNCTION), *definite(meaning.less, Role.LESS)),
        *where_and_when(meaning),
    )
