"""Acts told in any construction with both of the two named and no pronoun."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from random import Random

from drills.core.material import Material
from drills.core.meanings import Act, Described, Meaning, Role
from drills.core.words import Lexicon
from drills.exercises.casting import Casting
from drills.exercises.choices import content_words
from drills.exercises.exercise import Batch
from drills.exercises.question.form import part_of
from drills.exercises.reserve import open_pairs
from drills.exercises.scenes import act_pairs, verb_groups, verbs_of
from drills.language import CONSTRUCTIONS, realise

TELLING = (
    "active",
    "subject-cleft",
    "subject-relative",
    "full-passive",
    "object-cleft",
    "object-relative-right",
    "object-relative-centre",
)
"""Constructions that tell an act so that both of the two can be asked for by name."""

TURNS_ROUND = frozenset({"dry", "feed", "shelter", "stop", "wake", "wash", "weigh"})
"""Verbs that without an object may be said of the other one: whoever is woken woke."""

LONGEST_RUN = 3
"""Most times running that the right answer may stand in one place. Common practice."""

Told = Act | Described
"""What a sentence tells: an act, or one of the two singled out by it."""


def has_verbs(material: Material, _part: str) -> bool:
    return bool(askable_groups(material.lexicon))


def askable_verbs(lexicon: Lexicon, group: str) -> tuple[str, ...]:
    """Verbs of a group of which "Who pulled?" asks for the doer alone."""
    return tuple(verb for verb in verbs_of(lexicon, group) if verb not in TURNS_ROUND)


def askable_groups(lexicon: Lexicon) -> tuple[str, ...]:
    return tuple(group for group in verb_groups(lexicon) if askable_verbs(lexicon, group))


def act_of(told: Meaning | None) -> Act:
    """The act that is told of.   Raises: TypeError for a meaning without one."""
    if isinstance(told, Described):
        return told.act
    if not isinstance(told, Act):
        raise TypeError(f"{told} tells of no act")
    return told


def told_acts(batch: Batch) -> Iterator[Told]:
    """What each target's item tells; words in even shares."""
    lexicon = batch.material.lexicon
    casting = Casting(
        batch.rng, lambda _name, verb: open_pairs(act_pairs(lexicon, verb), verb, lexicon)
    )
    states = _States(batch.rng, lexicon)
    for target in batch.targets:
        verbs = askable_verbs(lexicon, target.group)
        verb, (doer, done_to) = casting.choose(target.name, verbs)
        act = Act(verb=verb, doer=doer, done_to=done_to)
        construction = part_of(target.name)
        if CONSTRUCTIONS[construction].meaning_type is Act:
            yield act
            continue
        who = Role.DOER if construction == "subject-relative" else Role.DONE_TO
        state = None if construction == "object-relative-right" else states.next()
        yield Described(act=act, who=who, state=state)


class _States:
    """States that come and go, each in turn."""

    def __init__(self, rng: Random, lexicon: Lexicon) -> None:
        self._rng = rng
        self._uses = Counter({each.key: 0 for each in lexicon.adjectives.values() if each.passing})

    def next(self) -> str:
        least = min(self._uses.values())
        key = self._rng.choice([key for key, uses in self._uses.items() if uses == least])
        self._uses[key] += 1
        return key


def words_of(told: Told, lexicon: Lexicon) -> tuple[str, ...]:
    """Content words, lemmas."""
    words = content_words(act_of(told), lexicon)
    if isinstance(told, Described) and told.state is not None:
        return (*words, lexicon.adjectives[told.state].base)
    return words


def clause(act: Act, lexicon: Lexicon) -> str:
    """The act as one short clause."""
    return realise(act, "active", lexicon).text


def named_done_to(act: Act, lexicon: Lexicon) -> str:
    """Who it is done to, and no more: "The sailor was pushed."."""
    passive = realise(act, "full-passive", lexicon)
    return f"{' '.join(passive.spoken.phrases[:2])}."
