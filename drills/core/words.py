"""The words of a language as the other rooms know them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from drills.core.facts import Facts
from drills.core.utterances import Utterance


class Sort(StrEnum):
    PERSON = "person"
    ANIMAL = "animal"
    THING = "thing"


class Sex(StrEnum):
    FEMALE = "female"
    MALE = "male"


class Band(StrEnum):
    """How hard a word is in itself, whatever the grammar around it."""

    EVERYDAY = "everyday"
    RARE = "rare"


class Plausibility(StrEnum):
    """What knowledge of the world says of who does an act to whom."""

    EVEN = "even"
    """As likely one way as the other: only grammar tells. Alone used for accuracy."""
    LEANING = "leaning"
    """One way is likelier, as a nurse bandages rather than is bandaged."""
    ONE_WAY = "one way"
    """It cannot be the other way round: nobody is lifted by a box."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Noun:
    """A person, an animal or a thing that can be named and drawn.

    size: class 1 (small) to 3 (large); only nouns of one sort and size trade roles.
    zipf: frequency on the Zipf scale (log10 of uses in a thousand million words).
    container: something can be *in* it.   drawn_as: the key of the noun whose figure it shares.
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
    drawn_as: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Verb:
    """An act.

    group: the verb group that a target names.   sorts: whose act it can be.
    leaning: keys of nouns that are likelier in one part of it than in the other.
    things: keys of things to which it can be done.   reflexive: one can do it to oneself.
    drawn_as: the key of the verb whose picture it shares.
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
    band: str = Band.EVERYDAY
    leaning: tuple[str, ...] = ()
    things: tuple[str, ...] = ()
    reflexive: bool = False
    drawn_as: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjective:
    """A state of someone or something.

    comparative: "wetter"; empty where it is made with "more".   opposite: the key of "short" for
    "tall".   passing: a state that comes and goes, so that one can be told to be in it.
    """

    key: str
    base: str
    zipf: float
    zipf_source: str
    comparative: str = ""
    opposite: str | None = None
    passing: bool = True


class AdjunctKind(StrEnum):
    WHERE = "where"
    WHEN = "when"


@dataclass(frozen=True, slots=True, kw_only=True)
class Adjunct:
    """Where or when something is so: "in the garden", "this morning"; drawn nowhere.

    tenses: the tenses ("past", "present") with which it can stand.
    under_way: it can stand only with a state or with an act under way, as "now" does.
    """

    key: str
    text: str
    kind: AdjunctKind
    tenses: tuple[str, ...]
    zipf: float
    zipf_source: str
    under_way: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class KinTerm:
    """A word for a relative: "aunt"."""

    key: str
    singular: str
    plural: str
    sex: Sex
    zipf: float
    zipf_source: str


# Compared and kept in caches by identity: it is large, and made once a run.
@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Lexicon:
    """Every word that may be used, by key, in the order of the content files.

    verbs: acts of one on another.   alone: acts of one on nobody ("wave").
    transfers: acts by which something goes from one to another ("give").
    """

    locale: str
    nouns: Mapping[str, Noun]
    verbs: Mapping[str, Verb]
    adjectives: Mapping[str, Adjective]
    alone: Mapping[str, Verb] = field(default_factory=dict)
    transfers: Mapping[str, Verb] = field(default_factory=dict)
    adjuncts: Mapping[str, Adjunct] = field(default_factory=dict)
    kin: Mapping[str, KinTerm] = field(default_factory=dict)
    facts: Facts = field(default_factory=Facts)

    def partners(self, verb: Verb) -> tuple[tuple[Noun, Noun], ...]:
        """Ordered pairs (doer, done-to) of the verb's band, as likely one way as the other."""
        cast = [
            noun
            for noun in self.nouns.values()
            if noun.sort in verb.sorts and noun.band == verb.band
        ]
        return tuple(
            (a, b)
            for a in cast
            for b in cast
            if a is not b and self.plausibility(verb, a, b) is Plausibility.EVEN
        )

    def plausibility(self, verb: Verb, doer: Noun, done_to: Noun) -> Plausibility:
        """Whether the two could as well trade parts in `verb`."""
        if done_to.sort is Sort.THING or doer.sort is Sort.THING:
            return Plausibility.ONE_WAY
        alike = doer.sort is done_to.sort and doer.size == done_to.size
        if not alike or doer.key in verb.leaning or done_to.key in verb.leaning:
            return Plausibility.LEANING
        return Plausibility.EVEN

    @property
    def things(self) -> tuple[Noun, ...]:
        return tuple(noun for noun in self.nouns.values() if noun.sort is Sort.THING)

    @property
    def people(self) -> tuple[Noun, ...]:
        return tuple(noun for noun in self.nouns.values() if noun.sort is Sort.PERSON)


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
    ADVERBIAL = "adverbial"
    """A content word of where or when."""
    CONJUNCTION = "conjunction"
    NEGATION = "negation"


SMALL_PARTS = frozenset(
    {
        Part.DETERMINER,
        Part.AUXILIARY,
        Part.PREPOSITION,
        Part.PRONOUN,
        Part.RELATIVE,
        Part.CONJUNCTION,
        Part.NEGATION,
    }
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Token:
    """One word as printed, without the final stop.

    A fixed phrase ("in front of") is one token.   starts_phrase: a pause may stand before it.
    mark: what is printed close behind it, a comma or nothing.
    """

    text: str
    part: Part
    starts_phrase: bool = False
    mark: str = ""

    @property
    def is_small(self) -> bool:
        return self.part in SMALL_PARTS


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentence:
    """One sentence of one meaning, ready to print and to say.

    tokens: in order, the first with its capital.   plain: the same meaning in active words, one
    clause a sentence, without where and when.   end: the mark that closes it, "." or "?".
    """

    tokens: tuple[Token, ...]
    plain: str
    end: str = "."

    @property
    def text(self) -> str:
        return " ".join([token.text + token.mark for token in self.tokens]) + self.end

    @property
    def word_count(self) -> int:
        return len(self.text.split())

    @property
    def spoken(self) -> Utterance:
        return Utterance(phrases=phrases_of(self.tokens, self.end))

    @property
    def stressed(self) -> str:
        """The small words in capitals."""
        words = (
            (token.text.upper() if token.is_small else token.text) + token.mark
            for token in self.tokens
        )
        return " ".join(words) + self.end

    @property
    def as_heard(self) -> str:
        """The small words blanked: what the listener may be left with."""
        words = (
            ("_" * len(token.text) if token.is_small else token.text) + token.mark
            for token in self.tokens
        )
        return " ".join(words) + self.end

    def gapped(self, index: int, blank: str = "____") -> str:
        """The text with token `index` replaced by `blank`."""
        words = [token.text + token.mark for token in self.tokens]
        words[index] = blank + self.tokens[index].mark
        return " ".join(words) + self.end


def phrases_of(tokens: tuple[Token, ...], end: str) -> tuple[str, ...]:
    """The text of `tokens`, cut before each token that starts a phrase."""
    phrases: list[list[str]] = []
    for token in tokens:
        if token.starts_phrase or not phrases:
            phrases.append([])
        phrases[-1].append(token.text + token.mark)
    phrases[-1][-1] += end
    return tuple(" ".join(words) for words in phrases)
