from __future__ import annotations

from functools import cache
from itertools import permutations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.meanings import Act, Link, Place, Relation, Scene, Side, State
from drills.pictures import (
    ANIMAL_KEYS,
    ANIMAL_VERB_KEYS,
    CONTAINERS,
    PEOPLE_KEYS,
    THING_KEYS,
    VERB_KEYS,
    can_draw,
    drawing,
    drawings,
)
from drills.pictures.cast import PEOPLE
from drills.pictures.contrast import lab
from drills.pictures.geometry import INK, bounds, distance, mirrored
from drills.pictures.people import figure
from drills.pictures.poses import stance
from drills.pictures.raster import raster
from drills.pictures.scenes import stage
from drills.pictures.shapes import Drawing, Frame, Mark
from drills.pictures.skeleton import build_for

ANIMAL_PAIRS = (("horse", "cow"), ("cow", "horse"), ("dog", "goat"), ("goat", "dog"))
ACTS = tuple(
    Act(verb=verb, doer=doer, done_to=done_to)
    for verb in VERB_KEYS
    for doer, done_to in permutations(PEOPLE_KEYS, 2)
) + tuple(
    Act(verb=verb, doer=doer, done_to=done_to)
    for verb in ANIMAL_VERB_KEYS
    for doer, done_to in ANIMAL_PAIRS
)
PLACES = tuple(
    Place(relation=relation, thing=thing, landmark=landmark)
    for relation in Relation
    for thing, landmark in permutations(THING_KEYS, 2)
    if relation is not Relation.IN or landmark in CONTAINERS
)
LINES = (20, 9)
acts = st.sampled_from(ACTS)
staged_left = cache(lambda act, lines: stage(Scene(meaning=act), lines=lines))
scenes = st.builds(Scene, meaning=st.sampled_from(ACTS + PLACES), side=st.sampled_from(tuple(Side)))


def test_every_word_of_the_lexicon_that_can_be_seen_is_drawable():
    people = "nurse queen bride dancer builder baker farmer sailor judge painter"
    verbs = "push pull lift carry chase follow wash feed kiss tickle film splash tap measure"
    assert set(PEOPLE_KEYS) == set(people.split())
    assert set(VERB_KEYS) == set(verbs.split())
    assert set(ANIMAL_KEYS) == {"horse", "cow", "dog", "goat"}
    assert set(ANIMAL_VERB_KEYS) == {"push", "chase", "follow"}
    assert set(THING_KEYS) == {"cup", "bell", "box", "ball", "book", "hat", "shoe", "bucket"}
    assert all(can_draw(meaning) for meaning in ACTS + PLACES)


@pytest.mark.parametrize(
    "meaning",
    [
        State(subject="nurse", count=2, link=Link.BE, complement="wet"),
        Act(verb="push", doer="nurse", done_to="nurse"),
        Act(verb="push", doer="nurse", done_to="cow"),
        Act(verb="feed", doer="horse", done_to="cow"),
        Act(verb="teach", doer="nurse", done_to="judge"),
        Place(relation=Relation.IN, thing="cup", landmark="ball"),
        Place(relation=Relation.ON, thing="cup", landmark="cup"),
        Place(relation=Relation.ON, thing="cup", landmark="table"),
    ],
)
def test_what_has_no_picture_is_refused(meaning):
    assert not can_draw(meaning)
    with pytest.raises(ValueError, match="no act to draw"):
        drawing(Scene(meaning=meaning), columns=38, lines=20)


@pytest.mark.parametrize("lines", LINES)
def test_no_hand_covers_the_head_of_the_other(lines):
    hand = build_for(lines).hand
    for act in ACTS:
        staged = staged_left(act, lines)
        for body, other in ((staged.doer, staged.done_to), (staged.done_to, staged.doer)):
            for at in other.hands:
                assert distance(at, body.head) > body.head_radius * 0.92 + hand * 0.5, act


@pytest.mark.parametrize("lines", LINES)
def test_heads_do_not_cover_each_other(lines):
    for act in ACTS:
        staged = staged_left(act, lines)
        if act.doer in PEOPLE_KEYS:
            apart = distance(staged.doer.head, staged.done_to.head)
            least = 1.85 * staged.doer.head_radius
            assert apart > least, act


@pytest.mark.parametrize("lines", LINES)
def test_contact_is_exact_to_one_sub_pixel(lines):
    for act in ACTS:
        staged = staged_left(act, lines)
        made = drawing(Scene(meaning=act), columns=38, lines=lines)
        sub_pixel = made.frame.height / (2 * lines)
        assert staged.touches or act.verb in ("chase", "follow")
        for doer_side, done_to_side in staged.touches:
            assert distance(doer_side, done_to_side) <= sub_pixel, act


@pytest.mark.parametrize("lines", LINES)
def test_the_doer_stands_on_the_left_of_a_left_scene(lines):
    for act in ACTS:
        staged = staged_left(act, lines)
        assert staged.doer.head[0] < staged.done_to.head[0], act


@given(acts, st.sampled_from(LINES))
def test_the_doer_stands_on_the_right_of_a_right_scene(act, lines):
    staged = stage(Scene(meaning=act, side=Side.RIGHT), lines=lines)
    assert staged.doer.head[0] > staged.done_to.head[0]


@given(scenes, st.sampled_from(((38, 20), (38, 15), (38, 9), (58, 17), (24, 7))))
def test_everything_is_inside_the_frame(scene, size):
    columns, lines = size
    made = drawing(scene, columns=columns, lines=lines)
    inside, frame = bounds(made.shapes), made.frame
    assert inside.left >= frame.left
    assert inside.top >= frame.top
    assert inside.left + inside.width <= frame.left + frame.width
    assert inside.top + inside.height <= frame.top + frame.height
    assert frame.width / frame.height == pytest.approx(columns / (2 * lines))


@given(scenes, st.sampled_from(LINES))
def test_the_other_side_is_the_mirror_image(scene, lines):
    made = drawing(scene, columns=38, lines=lines)
    other = drawing(Scene(meaning=scene.meaning, side=scene.side.other), columns=38, lines=lines)
    assert other.shapes == tuple(mirrored(shape) for shape in made.shapes)
    assert other.frame.left == pytest.approx(-made.frame.left - made.frame.width)


@given(st.lists(scenes, min_size=2, max_size=4), st.sampled_from(LINES))
def test_pictures_of_one_item_share_scale_and_ground(several, lines):
    made = drawings(several, columns=38, lines=lines)
    assert len({(each.frame.width, each.frame.height, each.frame.top) for each in made}) == 1


@given(scenes, st.sampled_from(LINES))
def test_a_scene_is_always_drawn_the_same(scene, lines):
    assert drawing(scene, columns=38, lines=lines) == drawing(scene, columns=38, lines=lines)


def test_nothing_is_drawn_for_no_scenes():
    assert drawings((), columns=38, lines=20) == ()


@given(acts, st.sampled_from(LINES))
def test_both_faces_have_an_eye_that_survives_reduction(act, lines):
    made = drawing(Scene(meaning=act), columns=38, lines=lines)
    eyes = [shape for shape in made.shapes if isinstance(shape, Mark)]
    assert len(eyes) == (3 if act.verb == "kiss" else 2)
    pixels = raster(made, width=38, height=2 * lines)
    assert sum(int((pixels == np.array(eye.fill)).all(axis=-1).any()) for eye in eyes) == len(eyes)


@pytest.mark.parametrize("person", PEOPLE_KEYS)
def test_an_eye_stands_out_from_the_skin(person):
    eye, skin = lab(np.array([INK, PEOPLE[person].skin], dtype=float))
    assert np.linalg.norm(eye - skin) > 20


def _silhouette(person: str, lines: int) -> np.ndarray:
    """Where one person standing alone is painted, colours left out."""
    build = build_for(lines)
    shapes = figure(PEOPLE[person], build, stance(build)).shapes
    high = build.stature * 1.3
    frame = Frame(left=-high / 2, top=-high + 4, width=high, height=high)
    sky = (1, 2, 3)
    made = Drawing(shapes=shapes, frame=frame, sky=sky, ground=None)
    pixels = raster(made, width=2 * lines, height=2 * lines)
    return np.abs(pixels.astype(int) - np.array(sky)).sum(axis=-1) > 60


@pytest.mark.parametrize("lines", [20, 9])
def test_no_two_people_share_a_silhouette(lines):
    shapes = {person: _silhouette(person, lines) for person in PEOPLE_KEYS}
    for one, other in permutations(PEOPLE_KEYS, 2):
        both = shapes[one] & shapes[other]
        either = shapes[one] | shapes[other]
        # common practice, no source: a tenth of the joint area belongs to one of them alone.
        assert 1 - both.sum() / either.sum() >= 0.10, (one, other)
