"""A simulated patient: what it understands, how it guesses, how it learns and tires."""

from __future__ import annotations

from collections import Counter, deque
from datetime import date
from math import exp
from random import Random
from typing import Self

from drills.core.gestures import Tick
from drills.core.items import Foil, Item, Kind
from drills.core.kinds import Side
from drills.core.meanings import Act, Described
from drills.core.profiles import Profile
from drills.core.question_words import YES, Grammar, cell_of
from drills.core.words import Band, Lexicon
from drills.exercises.events import events_of, parts

# What most often goes wrong in a gesture; the shares are invented.
_SLIPS = (Tick.GRIP, Tick.PLACE, Tick.PATH, Tick.HAND_AS_TOOL, Tick.SEARCH)
_MISSES = (*_SLIPS, Tick.OLD_ACT)
_HIGHEST_SCORE = 3
_REMEMBERED_RESPONSES = 3


class Patient:
    """Answers items by `profile`, with chance from `rng`.   first: the day that days count from."""

    def __init__(
        self, profile: Profile, lexicon: Lexicon, rng: Random, *, first: date = date.max
    ) -> None:
        self._profile = profile
        self._lexicon = lexicon
        self._rng = rng
        self._first = first
        self._practised: dict[str, Counter[date]] = {}
        self._said: deque[str] = deque(maxlen=_REMEMBERED_RESPONSES)
        self._day = date.min
        self._tiredness = 1.0
        self._since_rest = 0

    def apart(self, rng: Random) -> Self:
        """The same patient, who learns with this one, with chance of its own."""
        other = type(self)(self._profile, self._lexicon, rng, first=self._first)
        other._practised = self._practised
        other._said = self._said.copy()
        other.sits(on=self._day, tiredness=self._tiredness)
        other._since_rest = self._since_rest
        return other

    def sits(self, *, on: date, tiredness: float) -> None:
        """It is `on` now, after a rest, and the patient is so tired, 1 (fresh) to 5."""
        self._day = on
        self._tiredness = tiredness
        self._since_rest = 0

    def share_understood(self, item: Item, cue_level: int) -> float:
        """How likely the item is understood, as learned so far, as tired and with this help."""
        name = self._name(item)
        start = self._profile.knows.get(name, 0.5)
        gap: float = (1 - start) * exp(-self._profile.learning * self._remembered(name))
        fresh: float = pow(1 - self._profile.fading, max(0.0, self._tiredness - 1))
        # Only the grid asks in rare words.
        cell = cell_of(item.level)
        if cell is not None and cell[0] is Band.RARE:
            fresh *= self._profile.rare_words
        if self._profile.drop and (self._day - self._first).days >= self._profile.drop_after_days:
            fresh *= 1 - self._profile.drop
        fresh *= pow(1 - self._profile.wearing, self._since_rest)
        gap = 1 - (1 - gap) * fresh
        return 1 - gap * (1 - self._profile.cue_help) ** cue_level

    def _remembered(self, name: str) -> float:
        """Trials so far, each faded by a power of the days since: not as the schedule has it."""
        power = self._profile.forgetting
        remembered = 0.0
        for day, count in self._practised.get(name, Counter()).items():
            remembered += count / pow(1.0 + max(0, (self._day - day).days), power)
        return remembered

    def choose(self, item: Item, *, cue_level: int, removed: frozenset[int]) -> int:
        """The option that the patient takes, an index."""
        open_options = [index for index in range(len(item.options)) if index not in removed]
        if len(open_options) == 1 or item.answer is None:
            return open_options[0]
        if (unasked := self._unasked(item, open_options)) is not None:
            return unasked
        open_options = self._seen(item, open_options)
        blind = self._happens(self._profile.guessing)
        if not blind and self._rng.random() < self.share_understood(item, cue_level):
            return item.answer if item.answer in open_options else self._rng.choice(open_options)
        return self._guess(item, open_options, blind=blind)

    def _guess(self, item: Item, open_options: list[int], *, blind: bool) -> int:
        """The option that is taken where the item was not understood."""
        if item.options[open_options[0]].text == YES and self._happens(self._profile.yes_bias):
            return open_options[0]
        if blind or self._rng.random() > self._profile.words:
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
        score, ticks = self.perform(item, cue_level=cue_level)
        if score < _HIGHEST_SCORE and self._happens(self._profile.lenience):
            # Who has nothing to find fault with ticks nothing.
            return (score + 1, ticks) if score + 1 < _HIGHEST_SCORE else (_HIGHEST_SCORE, ())
        return score, ticks

    def perform(self, item: Item, *, cue_level: int) -> tuple[int, tuple[Tick, ...]]:
        """The gesture as it deserves to be scored."""
        if self._happens(self._profile.perseveration):
            return 1, (Tick.OLD_ACT,)
        if self._rng.random() < self.share_understood(item, cue_level):
            return (3, ()) if self._rng.random() < 0.6 else (2, (self._rng.choice(_SLIPS),))
        if self._rng.random() < 0.2:
            return 0, (Tick.NOTHING,)
        return 1, (self._rng.choice(_MISSES),)

    def said(self, item: Item, choice: int) -> None:
        """Option `choice` was the first response to an item; words may come again."""
        text = item.options[choice].text
        if text is not None:
            self._said.append(text)

    def learn(self, item: Item) -> None:
        """One more trial of this kind has been practised."""
        self._practised.setdefault(self._name(item), Counter())[self._day] += 1
        self._since_rest += 1

    def latency_ms(self) -> int:
        """How long the patient thinks: skewed, never under half a second."""
        return max(500, round(self._rng.lognormvariate(0, 0.4) * self._profile.latency_ms))

    def _happens(self, share: float) -> bool:
        # What never happens takes no chance, so that a profile without the trouble stays as it was.
        return share > 0 and self._rng.random() < share

    def _unasked(self, item: Item, options: list[int]) -> int | None:
        """An option that is taken whatever is asked, None for none."""
        profile = self._profile
        old = [index for index in options if item.options[index].text in self._said]
        if old and self._happens(profile.perseveration):
            return self._rng.choice(old)
        liked = None if profile.place is None else profile.place - 1
        return liked if liked in options and self._happens(profile.place_liking) else None

    def _seen(self, item: Item, options: list[int]) -> list[int]:
        """The options that are looked at; side by side, the first half stands on the left."""
        profile = self._profile
        if profile.neglected is None or not self._happens(profile.neglect):
            return options
        half = (len(item.options) + 1) // 2
        on_left = profile.neglected is Side.LEFT
        return [index for index in options if (index < half) is not on_left] or options

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
