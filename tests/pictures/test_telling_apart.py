from __future__ import annotations

import pytest

from drills.core.kinds import Side
from drills.core.meanings import Act, Scene
from drills.pictures import Encoding, draw, share_apart, tells_apart
from drills.pictures.contrast import share_that_differs

PUSH = Act(verb="push", doer="nurse", done_to="farmer")


def test_the_share_is_measured_on_what_is_drawn():
    scenes = (Scene(meaning=PUSH), Scene(meaning=PUSH.reversed(), side=Side.RIGHT))
    drawn = draw(scenes, columns=38, lines=15, encoding=Encoding.HALVES)
    assert share_apart(*scenes, columns=38, lines=15) == share_that_differs(*drawn)


@pytest.mark.parametrize(("lines", "gate"), [(20, 0.20), (15, 0.20), (9, 0.15)])
def test_a_foil_too_like_its_target_is_turned_away(lines, gate):
    target = Scene(meaning=PUSH)
    foil = Scene(meaning=PUSH.reversed())
    share = share_apart(target, foil, columns=38, lines=lines)
    assert tells_apart(target, foil, columns=38, lines=lines) == (share >= gate)
    assert not tells_apart(target, target, columns=38, lines=lines)


def test_two_waiters_and_a_lift_are_known_to_be_too_alike():
    lift = Act(verb="lift", doer="baker", done_to="waiter")
    scenes = (Scene(meaning=lift), Scene(meaning=lift.reversed()))
    assert not tells_apart(*scenes, columns=38, lines=9)


def test_what_cannot_be_drawn_cannot_be_compared():
    with pytest.raises(ValueError, match="no act to draw"):
        tells_apart(
            Scene(meaning=PUSH),
            Scene(meaning=Act(verb="teach", doer="nurse", done_to="farmer")),
            columns=38,
            lines=15,
        )
