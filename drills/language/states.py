"""Order of sentences of number: how many are, or have."""

from __future__ import annotations

from drills.core.meanings import Link, State
from drills.core.words import Part
from drills.language.abstract import Phrase, counted, finite_small, indefinite, small
from drills.language.roles import Role


def agreement(meaning: State) -> tuple[Phrase, ...]:
    """The numeral fixes the verb: "Two sailors / are wet", "One sailor / has a bell"."""
    complement = (
        (small(meaning.complement, Part.ADJECTIVE),)
        if meaning.link is Link.BE
        else indefinite(meaning.complement, Role.COMPLEMENT)
    )
    verb = finite_small(meaning.link.value, meaning.tense, Role.HOLDER)
    return (counted(meaning.count, meaning.subject, Role.HOLDER), (verb, *complement))
