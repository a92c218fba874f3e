"""What does not happen: two who do nothing, against two who do it.

No other act of the same two stands against it, since then the sentence would be true as well; so
the other foils change a noun.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from random import Random

from drills.core.items import Foil
from drills.core.meanings import Aspect, Tense
from drills.core.words import Lexicon
from drills.exercises.match.acts import act_of, other_actor, pairs, verbs
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_negation
from drills.exercises.reasons import WhyWrong


def _cases(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    happens = replace(act_of(wish), tense=Tense.PRESENT, aspect=Aspect.PROGRESSIVE)
    told = replace(happens, negated=True)
    twin = Wrong(shown=happens, foil=Foil.WORD, why=WhyWrong.NEGATION)
    yield Case(told=told, right=told, twin=twin)


NEGATION = Family(
    constructions=("negation",),
    acts=verbs,
    pairs=pairs,
    cases=_cases,
    others=(other_actor,),
    helps=help_of_negation,
)
