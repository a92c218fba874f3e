"""Acts told in any construction with both of the two named and no pronoun."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from random import Random

from drills.core.items import Cue, CueKind, Item, Option, Target
from drills.core.material import Material
from drills.core.meanings import Act, Described, Meaning
from drills.core.meanings import Role as Part
from drills.core.words import Lexicon, Sentence
from drills.exercises.casting import Casting
from drills.exercises.choices import content_words
from drills.exercises.cues import say
from drills.exercises.exercise import Batch
from drills.exercises.match import named_done_to
from drills.exercises.question.form import part_of
from drills.exercises.question.ladder import question_ladder, stressed
from drills.exercises.question.making import item_of, said
from drills.exercises.reserve import open_pairs
from drills.exercises.scenes import act_pairs, verb_groups, verbs_of
from drills.language import CONSTRUCTIONS, Role, ask_about, realise, tell_doer

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

LONGEST_RUN = 3
"""Most times running that the right answer may stand in one place. Common practice."""

Told = Act | Described
"""What a sentence tells: an act, or one of the two singled out by it."""


def has_verbs(material: Material, _part: str) -> bool:
    return bool(verb_groups(material.lexicon))


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
        verbs = verbs_of(lexicon, target.group)
        verb, (doer, done_to) = casting.choose(target.name, verbs)
        act = Act(verb=verb, doer=doer, done_to=done_to)
        construction = part_of(target.name)
        if CONSTRUCTIONS[construction].meaning_type is Act:
            yield act
            continue
        who = Part.DOER if construction == "subject-relative" else Part.DONE_TO
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


def named(act: Act, role: Role, lexicon: Lexicon) -> Cue:
    """Level 6: one of the two with what is true of that one."""
    if role is Role.DOER:
        text, kind = tell_doer(act, lexicon).text, CueKind.NAME_DOER
    else:
        text, kind = named_done_to(act, lexicon), CueKind.HINT
    return Cue(level=6, kind=kind, text=text, spoken=say(text))


def item_of_act(
    batch: Batch,
    target: Target,
    told: Told,
    *,
    question: Sentence,
    options: tuple[Option, ...],
    answer: int,
    turns_to: Role,
) -> Item:
    """The item that tells of an act and asks `question` of it.

    turns_to: the part that help turns the mind to, and names.
    """
    lexicon = batch.material.lexicon
    act, construction = act_of(told), part_of(target.name)
    sentence = realise(told, construction, lexicon)
    spoken = said(sentence.spoken, question.spoken)
    return item_of(
        batch,
        target,
        construction=construction,
        sentence=sentence.text,
        question=question,
        spoken=spoken,
        restated=realise(act, "active", lexicon).spoken,
        options=options,
        answer=answer,
        cues=question_ladder(
            asked=spoken,
            text=stressed(sentence),
            turns=ask_about(act, turns_to, lexicon).text,
            options=options,
            told=named(act, turns_to, lexicon),
            answer_text=sentence.plain,
            answer=answer,
        ),
        meaning=told,
        words=words_of(told, lexicon),
    )
