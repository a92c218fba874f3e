"""Statements of facts of the world: one fact in easy grammar and in hard grammar, of one length.

Each says of one of two what sort it is, and who does what to whom. The words are the same in all of
them, and of a fact and its reversal; only their order and the small words tell which is said.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from drills.core.facts import Fact
from drills.core.meanings import Tense
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Part, Sentence
from drills.language.abstract import (
    Phrase,
    Word,
    finite,
    finite_small,
    indefinite,
    participle,
    small,
)
from drills.language.roles import Role
from drills.language.steps import finish

_AND = small("and", Part.CONJUNCTION)
_SUCH_AS = (small("such", Part.PREPOSITION), small("as", Part.PREPOSITION))
_THAT = small("that", Part.RELATIVE)
_BY = small("by", Part.PREPOSITION)
_IS = finite_small("be", Tense.PRESENT, Role.HOLDER)


def _does(fact: Fact, subject: Role) -> Word:
    return finite(fact.verb, Tense.PRESENT, subject)


def sort_first(fact: Fact, sort: str) -> tuple[Phrase, ...]:
    """ "A cat / is an animal / and catches a mouse"."""
    return (
        indefinite(fact.doer, Role.HOLDER),
        (_IS, *indefinite(sort, Role.COMPLEMENT)),
        (_AND, _does(fact, Role.HOLDER), *indefinite(fact.done_to, Role.DONE_TO)),
    )


def example_first(fact: Fact, sort: str) -> tuple[Phrase, ...]:
    """ "An animal / such as a cat / catches a mouse"."""
    return (
        indefinite(sort, Role.COMPLEMENT),
        (*_SUCH_AS, *indefinite(fact.doer, Role.HOLDER)),
        (_does(fact, Role.HOLDER), *indefinite(fact.done_to, Role.DONE_TO)),
    )


def passive_relative(fact: Fact, sort: str) -> tuple[Phrase, ...]:
    """ "A mouse / is an animal / caught by a cat"."""
    return (
        indefinite(fact.done_to, Role.HOLDER),
        (_IS, *indefinite(sort, Role.COMPLEMENT)),
        (participle(fact.verb), _BY, *indefinite(fact.doer, Role.DOER)),
    )


def object_relative(fact: Fact, sort: str) -> tuple[Phrase, ...]:
    """ "A mouse / is an animal / that a cat catches"."""
    return (
        indefinite(fact.done_to, Role.HOLDER),
        (_IS, *indefinite(sort, Role.COMPLEMENT)),
        (_THAT, *indefinite(fact.doer, Role.DOER), _does(fact, Role.DOER)),
    )


def centre_embedded(fact: Fact, sort: str) -> tuple[Phrase, ...]:
    """ "An animal / that a cat catches / is a mouse"."""
    be = finite_small("be", Tense.PRESENT, Role.DONE_TO)
    return (
        indefinite(sort, Role.COMPLEMENT),
        (_THAT, *indefinite(fact.doer, Role.DOER), _does(fact, Role.DOER)),
        (be, *indefinite(fact.done_to, Role.DONE_TO)),
    )


EASY: Mapping[str, Callable[[Fact, str], tuple[Phrase, ...]]] = MappingProxyType(
    {"sort-first": sort_first, "example-first": example_first}
)
"""The doer comes first, in clauses without a gap."""

HARD: Mapping[str, Callable[[Fact, str], tuple[Phrase, ...]]] = MappingProxyType(
    {
        "passive-relative": passive_relative,
        "object-relative": object_relative,
        "centre-embedded": centre_embedded,
    }
)
"""The doer comes second. Which forms are easy and which hard: common practice, no source."""


def state_fact(fact: Fact, form: str, lexicon: Lexicon) -> Sentence:
    """What `fact` says, true or not, in a form of `EASY` or `HARD`; the plain words are active.

    Raises: KeyError for an unknown form or a word that the lexicon lacks.
    """
    made = {**EASY, **HARD}[form](fact, sort_of(fact, lexicon))
    return Sentence(tokens=finish(made, lexicon), plain=restate_fact(fact, lexicon).text)


def restate_fact(fact: Fact, lexicon: Lexicon) -> Utterance:
    """ "A cat catches a mouse."."""
    clause = (
        indefinite(fact.doer, Role.HOLDER),
        (_does(fact, Role.HOLDER), *indefinite(fact.done_to, Role.DONE_TO)),
    )
    words = Sentence(tokens=finish(clause, lexicon), plain="")
    return words.spoken


def sort_of(fact: Fact, lexicon: Lexicon) -> str:
    """ "person", "animal" or "thing": of both, as a fact pairs two of one sort."""
    nouns = lexicon.facts.nouns
    noun = nouns[fact.doer] if fact.doer in nouns else lexicon.nouns[fact.doer]
    return noun.sort.value
