"""Chains of relatives that can be asked about, with the words that are switched off left out."""

from __future__ import annotations

from functools import lru_cache

from drills.core.words import Lexicon, Sex
from drills.language.kinship import (
    SELF,
    TERMS,
    Terms,
    chains,
    has_one_name,
    names_of,
    reversal,
    sex_of,
)


def switched_off(lexicon: Lexicon) -> tuple[str, ...]:
    """Words for relatives that are not to be said, and nobody meant who may be called so."""
    return tuple(term for term in TERMS if term not in lexicon.kin)


def possessor(terms: Terms) -> str:
    """Whose relative is meant: "father" of "father's sister"."""
    return terms[-2]


def shows_trading(terms: Terms) -> bool:
    """Whether head and possessor differ in sex, so that taking one for the other is seen."""
    return sex_of(terms) is not sex_of((possessor(terms),))


@lru_cache(maxsize=64)
def asked_by_sex(lexicon: Lexicon, length: int) -> tuple[Terms, ...]:
    """Chains of which it is asked whether a woman or a man is meant.

    Of two terms, those alone whose words can be turned round; of none the one who speaks may be
    meant, nor on the way.
    """
    found = _clear(lexicon, length)
    known = frozenset(found)
    return tuple(
        terms
        for terms in found
        if shows_trading(terms) and (length > 2 or reversal(terms) in known)
    )


@lru_cache(maxsize=64)
def asked_by_name(lexicon: Lexicon) -> tuple[Terms, ...]:
    """Chains of two with one other word for them: "father's sister" is an aunt.

    That word is none of the chain's own, and the possessor is someone else.
    """
    return tuple(
        terms
        for terms in _clear(lexicon, 2)
        if (name := has_one_name(terms)) is not None
        and name in lexicon.kin
        and name not in terms
        and terms[0] != terms[1]
        and possessor(terms) not in names_of(terms)
    )


@lru_cache(maxsize=512)
def unrelated(lexicon: Lexicon, terms: Terms) -> tuple[str, ...]:
    """Relatives that have no part in the chain nor in its reversal, of the answer's sex first.

    Of the same sex as the answer: else woman or man alone would tell.
    """
    taken = {*terms, *names_of(terms), *names_of(terms[::-1])}
    free = [term for term in lexicon.kin if term not in taken]
    return tuple(sorted(free, key=lambda term: _sex(term) is not sex_of(terms)))


def _sex(term: str) -> Sex:
    return sex_of((term,))


@lru_cache(maxsize=64)
def _clear(lexicon: Lexicon, length: int) -> tuple[Terms, ...]:
    return tuple(
        terms
        for terms in chains(length, without=switched_off(lexicon))
        if not any(SELF in names_of(terms[:end]) for end in range(2, length + 1))
    )
