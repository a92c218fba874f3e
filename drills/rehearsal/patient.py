"""A simulated patient: what it understands, how it guesses, how it learns and tires."""

from __future__ import annotations

from collections import Counter
from math import exp
from random import Random

from drills.core.gestures import Tick
from drills.core.items import Foil, Item, Kind
from drills.core.meanings import Act, Described
from drills.core.profiles import Profile
from drills.core.question_words import Grammar, cell_of
from drills.core.words import Lexicon
from drills.exercises.events import events_of, parts

# What most often goes wrong in a gesture; the shares are invented.
_SLIPS = (Tick.GRIP, Tick.PLACE, Tick.PATH, Tick.HAND_AS_TOOL, Tick.SEARCH)
_MISSES = (*_SLIPS, Tick.OLD_ACT)


class Patient:
    """Answers items by `profile`, with chance from `rng`."""

    def __init__(self, profile: Profile, lexicon: Lexicon, rng: Random) -> None:
        self._profile = profile
        self._lexicon = lexicon
        self._rng = rng
        self._practised: Counter[str] = Counter()

    def apart(self, rng: Random) -> Patient:
        """The same patient, who learns with this one, with chance of its own."""
        other = Patient(self._profile, self._lexicon, rng)
        other._practised = self._practised
        return other

    def share_understood(self, item: Item, cue_level: int) -> float:
        """How likely the item is understood, at this point of learning and with this help."""
        name = self._name(item)
        start = self._profile.knows.get(name, 0.5)
        gap = (1 - start) * exp(-self._profile.learning * self._practised[name])
        return 1 - gap * (1 - self._profile.cue_help) ** cue_level

    def choose(self, item: Item, *, cue_level: int, removed: frozenset[int]) -> int:
        """The option that the patient takes, an index."""
        open_options = [index for index in range(len(item.options)) if index not in removed]
        if len(open_options) == 1 or item.answer is None:
            return open_options[0]
        if self._rng.random() < self.share_understood(item, cue_level):
            return item.answer
        if self._rng.random() > self._profile.words:
            return self._rng.choice(open_options)
        if self._rng.random() < self._profile.first_noun:
            by_order = self._first_noun_choice(item)
            if by_order in open_options:
                return by_order
        plausible = [
            index
            for index in open_options
            # What a picture alone tells is not told by the words.
            if item.picture is not None or item.options[index].foil not in (Foil.VERB, Foil.NOUN)
        ]
        return self._rng.choice(plausible or open_options)

    def score(self, item: Item, *, cue_level: int) -> tuple[int, tuple[Tick, ...]]:
        """The caregiver's score of the gesture that the patient makes."""
        if self._rng.random() < self.share_understood(item, cue_level):
            return (3, ()) if self._rng.random() < 0.6 else (2, (self._rng.choice(_SLIPS),))
        if self._rng.random() < 0.2:
            return 0, (Tick.NOTHING,)
        return 1, (self._rng.choice(_MISSES),)

    def learn(self, item: Item) -> None:
        """One more trial of this kind has been practised."""
        self._practised[self._name(item)] += 1

    def latency_ms(self) -> int:
        """How long the patient thinks: skewed, never under half a second."""
        return max(500, round(self._rng.lognormvariate(0, 0.4) * self._profile.latency_ms))

    def _name(self, item: Item) -> str:
        if item.kind is Kind.GESTURE:
            return "gesture"
        if item.kind is Kind.QUESTION and (cell := cell_of(item.level)) is not None:
            # Easy grammar goes as the active does, hard as the passive.
            return "active" if cell[1] is Grammar.EASY else "full-passive"
        if item.kind is Kind.QUESTION and item.target.name.startswith("kin:"):
            return item.target.name
        return item.level if item.kind is Kind.CLOZE else item.construction

    def _first_noun_event(self, item: Item) -> int | None:
        """The event in which whoever is named first does it, and the other has it done to."""
        if item.answer is None:
            return None
        doer, other = (
            self._lexicon.nouns[key].singular for key in parts(events_of(item)[item.answer])
        )
        words = item.sentence.lower().rstrip(".").split()
        if doer in words and words.index(doer) < words.index(other):
            return item.answer
        return self._reversal(item)

    def _reversal(self, item: Item) -> int | None:
        return next(
            (i for i, option in enumerate(item.options) if option.foil is Foil.REVERSAL), None
        )

    def _first_noun_choice(self, item: Item) -> int | None:
        """The option of a listener who takes the first noun of the sentence as the doer."""
        if item.kind is Kind.ACT_OUT:
            return self._first_noun_event(item)
        meaning = item.meaning.act if isinstance(item.meaning, Described) else item.meaning
        if not isinstance(meaning, Act) or meaning.negated:
            return None
        if item.effective_k < 2:
            # What is asked goes with other words than were told: order says nothing.
            return item.answer
        words = item.sentence.lower().rstrip(".").split()
        doer_word = self._lexicon.nouns[meaning.doer].singular
        done_to_word = self._lexicon.nouns[meaning.done_to].singular
        if not {doer_word, done_to_word} <= set(words):
            # "She pushed him" has no noun to go by.
            return None
        if words.index(doer_word) < words.index(done_to_word):
            return item.answer
        return self._reversal(item)
