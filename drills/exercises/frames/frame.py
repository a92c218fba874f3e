"""What a frame is: a kind of sentence with a gap, and what decides which word is right there."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import TYPE_CHECKING

from drills.core.clauses import Told
from drills.core.material import ClozeWords
from drills.core.meanings import Meaning, Place, State
from drills.core.words import Lexicon, Part, Sentence
from drills.exercises.reasons import WhyWrong
from drills.language import realise
from drills.language.clauses import Slot
from drills.language.told import answer_to, calendar_lines, calendar_said, lay, said_before

if TYPE_CHECKING:
    from drills.exercises.frames.dealing import Dealer


class Anchor(StrEnum):
    """What is on the screen and fixes the answer."""

    PICTURE = "picture"
    NUMERAL = "numeral"
    NOUN_FORM = "noun form"
    TIME_WORD = "time word"
    TIME_NOUN = "time noun"
    WORD_ORDER = "word order"
    WORD_BEFORE = "word before"
    WORD_AFTER = "word after"
    CONTEXT = "context"
    PAIR_WORD = "pair word"
    OWN = "own"
    PLACE_WORD = "place word"
    HEAD = "head"


@dataclass(frozen=True, slots=True, kw_only=True)
class Demand:
    """What the gap asks of its word: that `value` is among its values of `feature`.

    why: how a word is wrong that lacks it.
    """

    feature: str
    value: str
    why: WhyWrong
    anchor: Anchor


@dataclass(frozen=True, slots=True, kw_only=True)
class Dealt:
    """What one item says: in words (`told`), or by a meaning that a picture can show."""

    told: Told | None = None
    meaning: Meaning | None = None

    @property
    def words(self) -> Told:
        """Raises: TypeError where nothing is told in words."""
        if self.told is None:
            raise TypeError("nothing is told in words")
        return self.told


@dataclass(frozen=True, slots=True, kw_only=True)
class Gapped:
    """A sentence and the index of the token that is missing."""

    sentence: Sentence
    gap: int

    @property
    def word(self) -> str:
        return self.sentence.tokens[self.gap].text


Traits = Mapping[str, Mapping[str, frozenset[str]]]
"""Word, or name of an ending -> feature -> the values it has; no feature means that any will do."""


def _as_it_is(label: str, _dealt: Dealt, _lexicon: Lexicon) -> str:
    return label


def _no_picture(_told: Told) -> Meaning | None:
    return None


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Frame:
    """One kind of sentence with a gap.

    slots: where the gap is, the first that the sentence has.   deal: what is said so that a word
    of `traits` is right and the `others` wrong.   demands: what the gap asks for, from what is
    said alone.   surface: how a word, or the name of an ending, is printed there.
    picture_of: what is shown, from what is told.   fits: in place of traits and demands, where
    these do not tell enough.
    """

    name: str
    traits: Traits
    deal: Callable[[str, tuple[str, ...], Dealer], Dealt]
    demands: Callable[[Dealt, ClozeWords], tuple[Demand, ...]]
    slots: tuple[Slot, ...] = ()
    surface: Callable[[str, Dealt, Lexicon], str] = _as_it_is
    picture_of: Callable[[Told], Meaning | None] = _no_picture
    fits: Callable[[str, Dealt, ClozeWords], WhyWrong | None] | None = None

    @property
    def words(self) -> tuple[str, ...]:
        """The closed class."""
        return tuple(self.traits)

    def why_wrong(self, label: str, dealt: Dealt, words: ClozeWords) -> WhyWrong | None:
        """Why the word is wrong in the gap; None where it is right.   Raises: KeyError."""
        if self.fits is not None:
            return self.fits(label, dealt, words)
        traits = self.traits[label]
        for demand in self.demands(dealt, words):
            if demand.feature in traits and demand.value not in traits[demand.feature]:
                return demand.why
        return None

    def gapped(self, dealt: Dealt, lexicon: Lexicon) -> Gapped:
        if isinstance(dealt.meaning, Place | State) and dealt.told is None:
            is_place = isinstance(dealt.meaning, Place)
            sentence = realise(dealt.meaning, "locative" if is_place else "agreement", lexicon)
            part = Part.PREPOSITION if is_place else Part.AUXILIARY
            gap = next(i for i, token in enumerate(sentence.tokens) if token.part is part)
            return Gapped(sentence=sentence, gap=gap)
        laid = lay(dealt.words, lexicon)
        return Gapped(sentence=laid.sentence, gap=laid.find(*self.slots))


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """What is shown with the sentence, and the same as it is said."""

    lines: tuple[str, ...] = ()
    said: tuple[str, ...] = ()

    @property
    def text(self) -> str:
        return "\n".join(self.lines)


def context_of(dealt: Dealt, lexicon: Lexicon) -> Context:
    """What was said before, the calendar, and the answer to a question."""
    if dealt.told is None:
        return Context()
    told = dealt.told
    before = said_before(told, lexicon)
    answer = answer_to(told, lexicon)
    sentences = (*before, *((answer,) if answer is not None else ()))
    return Context(
        lines=(*calendar_lines(told, lexicon), *(each.text for each in sentences)),
        said=(
            *calendar_said(told, lexicon),
            *(phrase for each in sentences for phrase in each.spoken.phrases),
        ),
    )


def values(**features: str) -> dict[str, frozenset[str]]:
    """Features with their values, written apart by "|"."""
    return {name: frozenset(text.split("|")) for name, text in features.items()}
