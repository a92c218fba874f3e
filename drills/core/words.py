"""The words of a language as the other rooms know them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum


class Sort(StrEnum):
    PERSON = "person"
    ANIMAL = "animal"
    THING = "thing"


class Sex(StrEnum):
    FEMALE = "female"
    MALE = "male"


@dataclass(frozen=True, slots=True, kw_only=True)
class Noun:
    """A person, an animal or a thing that can be named and drawn.

    size: class 1 (small) to 3 (large); only nouns of one sort and size trade roles.
    zipf: frequency on the Zipf scale (log10 of uses in a thousand million words).
    container: something can be *in* it.
    """

    key: str
    singular: str
    plural: str
    sort: Sort
    sex: Sex | None
    size: int
    band: str
    zipf: float
    zipf_source: str
    container: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Verb:
    """An act that one of a pair does to the other, equally likely both ways round.

    group: the verb group that a target names.   sorts: whose act it can be.
    """

    key: str
    base: str
    third_person: str
    past: str
    past_participle: str
    ing: str
    group: str
    sorts: frozenset[Sort]
    zipf: float
    zipf_source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjective:
    """A passing state of a person ("wet", "tired")."""

    key: str
    base: str
    zipf: float
    zipf_source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Lexicon:
    """Every word that may be used, by key, in the order of the content files."""

    locale: str
    nouns: Mapping[str, Noun]
    verbs: Mapping[str, Verb]
    adjectives: Mapping[str, Adjective]

    def partners(self, verb: Verb) -> tuple[tuple[Noun, Noun], ...]:
        """Ordered pairs (doer, done-to) that are as likely one way as the other."""
        cast = [noun for noun in self.nouns.values() if noun.sort in verb.sorts]
        return tuple(
            (a, b)
            for a in cast
            for b in cast
            if a is not b and a.sort is b.sort and a.size == b.size
        )

    @property
    def things(self) -> tuple[Noun, ...]:
        return tuple(noun for noun in self.nouns.values() if noun.sort is Sort.THING)


@dataclass(frozen=True, slots=True, kw_only=True)
class Utterance:
    """Words to be said: spoken phrase by phrase, with a pause at each boundary."""

    phrases: tuple[str, ...]

    @property
    def text(self) -> str:
        return " ".join(self.phrases)


class Part(StrEnum):
    """What a word does in its sentence."""

    DETERMINER = "determiner"
    NUMERAL = "numeral"
    NOUN = "noun"
    VERB = "verb"
    AUXILIARY = "auxiliary"
    PREPOSITION = "preposition"
    PRONOUN = "pronoun"
    RELATIVE = "relative"
    ADJECTIVE = "adjective"


SMALL_PARTS = frozenset(
    {Part.DETERMINER, Part.AUXILIARY, Part.PREPOSITION, Part.PRONOUN, Part.RELATIVE}
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """One word as printed, without the final stop.

    A fixed phrase ("in front of") is one token.   starts_phrase: a pause may stand before it.
    """

    text: str
    part: Part
    starts_phrase: bool = False

    @property
    def is_small(self) -> bool:
        return self.part in SMALL_PARTS


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """One sentence of one meaning, ready to print and to say.

    tokens: in order, the first with its capital.   plain: the same meaning in plain active words.
    end: the mark that closes it, "." or "?".
    """

    tokens: tuple[Token, ...]
    plain: str
    end: str = "."

    @property
    def text(self) -> str:
        return " ".join(token.text for token in self.tokens) + self.end

    @property
    def word_count(self) -> int:
        return len(self.text.split())

    @property
    def spoken(self) -> Utterance:
        return Utterance(phrases=phrases_of(self.tokens, self.end))

    @property
    def stressed(self) -> str:
        """The small words in capitals."""
        words = (token.text.upper() if token.is_small else token.text for token in self.tokens)
        return " ".join(words) + self.end

    @property
    def as_heard(self) -> str:
        """The small words blanked: what the listener may be left with."""
        words = ("_" * len(token.text) if token.is_small else token.text for token in self.tokens)
        return " ".join(words) + self.end

    def gapped(self, index: int, blank: str = "____") -> str:
        """The text with token `index` replaced by `blank`."""
        words = [token.text for token in self.tokens]
        words[index] = blank
        return " ".join(words) + self.end


def phrases_of(tokens: tuple[Token, ...], end: str) -> tuple[str, ...]:
    """The text of `tokens`, cut before each token that starts a phrase."""
    phrases: list[list[str]] = []
    for token in tokens:
        if token.starts_phrase or not phrases:
            phrases.append([])
        phrases[-1].append(token.text)
    phrases[-1][-1] += end
    return tuple(" ".join(words) for words in phrases)
