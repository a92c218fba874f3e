from __future__ import annotations

from random import Random

import pytest

from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.meanings import Act, Scene
from drills.exercises.scenes import act_pairs
from drills.exercises.showing import LARGE_LINES, SMALL_LINES, Showing, never_alike
from drills.pictures import least_share, share_apart


@pytest.mark.parametrize("lines", [LARGE_LINES, SMALL_LINES])
@pytest.mark.parametrize("trade_places", [True, False])
def test_an_act_said_to_be_never_alike_is_not(
    material: Material, lines: int, trade_places: bool
) -> None:
    """A sample of pairs of each act, drawn and measured; the doer on either side."""
    rng, measured = Random(lines), 0
    for verb in material.lexicon.verbs:
        if never_alike(verb, lines=lines, trade_places=trade_places):
            for doer, done_to in rng.sample(act_pairs(material.lexicon, verb), 4):
                act = Act(verb=verb, doer=doer, done_to=done_to)
                side = rng.choice((Side.LEFT, Side.RIGHT))
                share = share_apart(
                    Scene(meaning=act, side=side),
                    Scene(meaning=act.reversed(), side=side if trade_places else side.other),
                    columns=38,
                    lines=lines,
                )
                assert share >= least_share(lines), (act, side)
                measured += 1
    assert measured >= 20


@pytest.mark.parametrize("options", [2, 3, 4])
def test_two_lifted_who_look_alike_are_turned_away(options: int) -> None:
    lift = Act(verb="lift", doer="baker", done_to="waiter")
    alike = Showing(options=options, side=Side.LEFT, reversed_side=Side.LEFT)
    assert not alike.tells(lift)
    assert Showing(options=options, side=Side.LEFT, reversed_side=Side.RIGHT).tells(lift)
