"""The acts that no two of the cast make too like their reversal, measured anew.

A redrawn act changes which acts a deal need not ask about (`drills/exercises/showing.py`). Over
every pair of the lexicon, at both sizes, with the doer on either side.

Run it: python -m tests.bench.bench_reversals [VERB ...]   (with no verb, all; about five minutes)
"""

from __future__ import annotations

import sys
from collections.abc import Iterator, Sequence

from drills.catalogue import load
from drills.core.kinds import Side
from drills.core.meanings import Act, Scene
from drills.core.words import Lexicon
from drills.exercises.showing import COLUMNS, LARGE_LINES, SMALL_LINES, never_alike
from drills.pictures import can_draw, least_share, share_apart
from tests.conftest import ROOT

MARGIN = 0.02
"""Above the least share, so that a deal without a check is safe on any machine."""


def pairs_of(verb: str, lexicon: Lexicon) -> Iterator[Act]:
    """An act of every two that could trade parts in it, each two once."""
    for one, other in lexicon.partners(lexicon.verbs[verb]):
        act = Act(verb=verb, doer=one.key, done_to=other.key)
        if one.key < other.key and can_draw(act) and can_draw(act.reversed()):
            yield act


def least(verb: str, lexicon: Lexicon, *, lines: int, trade_places: bool) -> tuple[float, str]:
    """The smallest share by which a meaning differs from its reversal, and of whom."""
    shares = []
    for act in pairs_of(verb, lexicon):
        for side in Side:
            foil = Scene(meaning=act.reversed(), side=side if trade_places else side.other)
            share = share_apart(
                Scene(meaning=act, side=side), foil, columns=COLUMNS, lines=lines
            )  # fmt: skip
            shares.append((share, f"{act.doer}/{act.done_to}"))
    return min(shares)


def main(verbs: Sequence[str]) -> None:
    lexicon = load(ROOT / "content", locale="en-US").lexicon
    chosen = [verb for verb in lexicon.verbs if any(pairs_of(verb, lexicon))]
    unknown = [verb for verb in verbs if verb not in chosen]
    if unknown:
        raise SystemExit(f"No pair trades parts in {', '.join(unknown)}.")
    for lines in (LARGE_LINES, SMALL_LINES):
        for trade_places in (True, False):
            gate = least_share(lines) + MARGIN
            print(f"rows {lines}, trade places {trade_places}, never below {gate:.2f}:")
            for verb in verbs or chosen:
                share, whose = least(verb, lexicon, lines=lines, trade_places=trade_places)
                found = share >= gate
                known = never_alike(verb, lines=lines, trade_places=trade_places)
                change = "" if found is known else "   TAKE OUT" if known else "   may be put in"
                mark = "never alike" if found else "to be asked"
                print(f"  {verb:10} {mark}   least {share:.3f} {whose}{change}", flush=True)


if __name__ == "__main__":
    main(sys.argv[1:])
