from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.meanings import Act, Activity, Place, Relation, Scene
from drills.pictures import ACTIVITY_KEYS, ANIMAL_VERB_KEYS, STEPS, VERB_KEYS, draw, frames
from drills.pictures.geometry import bounds
from drills.pictures.motion import paced, rise, swing
from drills.pictures.scenes import moving

shares = st.floats(0, 1)
steps = st.tuples(st.floats(-1, 1), st.floats(0, 0.5))
MOVING = (
    *(Act(verb=verb, doer="nurse", done_to="farmer") for verb in VERB_KEYS),
    *(Act(verb=verb, doer="cow", done_to="horse") for verb in ANIMAL_VERB_KEYS),
    *(Activity(verb=verb, doer="woman", count=2) for verb in ACTIVITY_KEYS),
    *(Activity(verb=verb, doer="dog") for verb in ("walk", "jump", "sleep", "drink")),
)


@pytest.mark.parametrize("meaning", MOVING, ids=lambda meaning: f"{meaning.verb}-{meaning.doer}")
def test_every_verb_moves_inside_one_frame_and_comes_back(meaning):
    made = moving(Scene(meaning=meaning), columns=38, lines=15, steps=STEPS)
    assert 4 <= len(made) <= 8
    assert len({drawing.frame for drawing in made}) == 1
    assert len({drawing.shapes for drawing in made}) >= 4
    frame = made[0].frame
    for drawing in made:
        inside = bounds(drawing.shapes)
        assert inside.left >= frame.left
        assert inside.left + inside.width <= frame.left + frame.width
        assert inside.top >= frame.top
        assert inside.top + inside.height <= frame.top + frame.height


def test_a_movement_starts_from_the_still_picture():
    meaning = Act(verb="push", doer="nurse", done_to="farmer")
    shown = frames(Scene(meaning=meaning), columns=38, lines=15)
    assert len(shown) == STEPS
    still = moving(Scene(meaning=meaning), columns=38, lines=15, steps=1)[0]
    assert still.shapes == moving(Scene(meaning=meaning), columns=38, lines=15, steps=8)[0].shapes
    assert draw([Scene(meaning=meaning)], columns=38, lines=15)[0].columns == shown[0].columns


def test_what_does_not_move_is_one_frame():
    place = Place(relation=Relation.ON, thing="cup", landmark="box")
    assert len(frames(Scene(meaning=place), columns=38, lines=9)) == 1


@given(shares)
def test_movement_begins_and_ends_in_the_still_picture(at):
    assert rise(0) == swing(0) == 0
    assert abs(rise(1)) < 1e-9
    assert abs(swing(1)) < 1e-9
    assert 0 <= rise(at) <= 1
    assert -1 <= swing(at) <= 1


@given(steps, steps)
def test_half_a_round_later_the_feet_have_changed_places(near, far):
    assert paced(0, near, far) == (near, far)
    moved_near, moved_far = paced(0.5, near, far)
    assert moved_near == pytest.approx(far)
    assert moved_far == pytest.approx(near)
