"""Him or himself: what one says of another."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache
from random import Random

from drills.core.items import Foil
from drills.core.meanings import Act, Meaning, Report
from drills.core.words import Lexicon
from drills.exercises.casting import Pair
from drills.exercises.match.acts import exchanged, false_noun
from drills.exercises.match.family import Case, Family, Wish, Wrong
from drills.exercises.match.helping import help_of_report
from drills.exercises.reasons import WhyWrong
from drills.exercises.scenes import act_pairs, made_out, nouns_like, verbs_of
from drills.exercises.showing import LARGE_LINES
from drills.pictures import SMALL_UNREADABLE, can_draw


def _report(verb: str, speaker: str, doer: str, *, himself: bool) -> Report:
    act = Act(verb=verb, doer=doer, done_to=doer if himself else speaker)
    return Report(speaker=speaker, act=act)


@lru_cache(maxsize=256)
def _two_of_a_sex(lexicon: Lexicon, verb: str) -> tuple[Pair, ...]:
    """Speaker and doer of one sex, such that both "him" and "himself" can be drawn."""
    if not lexicon.verbs[verb].reflexive:
        return ()
    nouns = lexicon.nouns
    return tuple(
        (speaker, doer)
        for doer, speaker in act_pairs(lexicon, verb)
        if nouns[speaker].sex is not None
        and nouns[speaker].sex is nouns[doer].sex
        and all(
            can_draw(_report(verb, one, other, himself=himself))
            for himself in (True, False)
            for one, other in ((speaker, doer), (doer, speaker))
        )
    )


def _pairs(lexicon: Lexicon, _construction: str, verb: str) -> tuple[Pair, ...]:
    return _two_of_a_sex(lexicon, verb)


def _verbs(lexicon: Lexicon, _construction: str, group: str, small: bool) -> tuple[str, ...]:
    known = tuple(verb for verb in verbs_of(lexicon, group) if _two_of_a_sex(lexicon, verb))
    return made_out(known) if small else known


def _cases(wish: Wish, _lexicon: Lexicon, _rng: Random) -> Iterator[Case]:
    """For four pictures, the one who speaks and the one who does it exchanged, both ways."""
    speaker, doer = wish.pair
    himself = wish.turn == 1
    told = _report(wish.act, speaker, doer, himself=himself)
    twin = Wrong(
        shown=_report(wish.act, speaker, doer, himself=not himself),
        foil=Foil.WORD,
        why=WhyWrong.FALSE_REFERENT,
    )
    square = tuple(
        exchanged(_report(wish.act, doer, speaker, himself=each)) for each in (himself, not himself)
    )
    yield Case(told=told, right=told, twin=twin, square=square if wish.options == 4 else ())


def _other_act(_told: Meaning, base: Report, lexicon: Lexicon) -> Iterator[Wrong]:
    group = lexicon.verbs[base.act.verb].group
    for verb in lexicon.verbs.values():
        if verb.key in SMALL_UNREADABLE or verb.group == group:
            continue
        if (base.speaker, base.act.doer) in _two_of_a_sex(lexicon, verb.key):
            shown = replace(base, act=replace(base.act, verb=verb.key))
            yield Wrong(shown=shown, foil=Foil.VERB, why=WhyWrong.FALSE_ACT)


def _other_person(_told: Meaning, base: Report, lexicon: Lexicon) -> Iterator[Wrong]:
    """Another speaker or another doer, of the same sex, to whom "him" goes back as before."""
    verb, speaker, doer = base.act.verb, base.speaker, base.act.doer
    known = _two_of_a_sex(lexicon, verb)
    for one, other in (
        *((key, doer) for key in nouns_like(lexicon, speaker)),
        *((speaker, key) for key in nouns_like(lexicon, doer)),
    ):
        if (one, other) in known:
            yield false_noun(_report(verb, one, other, himself=base.is_reflexive))


REPORTS = Family(
    constructions=("pronoun-reference",),
    acts=_verbs,
    pairs=_pairs,
    cases=_cases,
    others=(_other_act, _other_person),
    helps=help_of_report,
    # The two differ inside the balloon alone, and that is a tenth of a large picture.
    mirrored_at=(LARGE_LINES,),
)
