from __future__ import annotations

from dataclasses import replace
from functools import cache
from itertools import permutations
from typing import get_args

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.kinds import Side
from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Chain,
    Comparison,
    Described,
    Kin,
    Link,
    Meaning,
    Order,
    Place,
    Relation,
    Report,
    Role,
    Scene,
    State,
    Transfer,
    Undergone,
)
from drills.pictures import (
    ANIMAL_KEYS,
    ANIMAL_VERB_KEYS,
    PEOPLE_KEYS,
    THING_KEYS,
    VERB_KEYS,
    can_draw,
    drawing,
    drawings,
)
from drills.pictures.cast import PEOPLE
from drills.pictures.compositions import build_of
from drills.pictures.contrast import lab
from drills.pictures.geometry import INK, bounds, distance, mirrored
from drills.pictures.people import figure
from drills.pictures.poses import stance
from drills.pictures.raster import raster
from drills.pictures.reflexive_acts import REFLEXIVE_ACTS
from drills.pictures.scenes import stage
from drills.pictures.shapes import Drawing, Frame, Mark
from drills.pictures.skeleton import build_for

ACTS = tuple(
    act
    for cast, verbs in ((PEOPLE_KEYS, VERB_KEYS), (ANIMAL_KEYS, ANIMAL_VERB_KEYS))
    for verb in verbs
    for doer, done_to in permutations(cast, 2)
    if can_draw(act := Act(verb=verb, doer=doer, done_to=done_to))
)
PLACES = tuple(
    place
    for relation in Relation
    for thing, landmark in permutations(THING_KEYS, 2)
    if can_draw(place := Place(relation=relation, thing=thing, landmark=landmark))
)
# Every act is tried by tests/bench/bench_pictures.py; here a spread that meets each verb often.
SOME = ACTS[::19]
PUSH = Act(verb="push", doer="nurse", done_to="judge")

OTHERS = (
    replace(PUSH, negated=True),
    Act(verb="push", doer="cow", done_to="pig", negated=True),
    *(Activity(verb=verb, doer=doer, count=count) for verb, doer, count in (
        ("wave", "nurse", 1), ("sit", "king", 2), ("jump", "boy", 3), ("sleep", "dancer", 1),
        ("walk", "goat", 2), ("read", "man", 1), ("drink", "cat", 1), ("dance", "queen", 3))),
    *(State(subject=who, count=count, link=link, complement=what) for who, count, link, what in (
        ("nurse", 1, Link.BE, "wet"), ("man", 2, Link.BE, "dirty"), ("girl", 3, Link.BE, "happy"),
        ("judge", 1, Link.BE, "tired"), ("waiter", 2, Link.BE, "cold"), ("pig", 2, Link.BE, "wet"),
        ("baker", 3, Link.HAVE, "kite"))),
    *(Described(act=PUSH, who=who, state=state) for who in Role
      for state in (None, "wet", "dirty")),
    Described(act=Act(verb="chase", doer="dog", done_to="goat"), who=Role.DONE_TO, state="wet"),
    Report(speaker="judge", act=PUSH),
    *(Report(speaker="woman", act=Act(verb=verb, doer="baker", done_to="baker"))
      for verb in REFLEXIVE_ACTS),
    *(Transfer(verb=verb, doer="man", given=given, receiver="queen")
      for verb in ("give", "show", "bring") for given in ("cake", "dog")),
    Transfer(verb="bring", doer="man", given="judge", receiver="queen"),
    Order(doer="nurse", earlier="read", later="sleep"),
    Order(doer="cat", earlier="walk", later="drink"),
    *(Comparison(quality=quality, more="man", less="bride")
      for quality in ("tall", "short", "big", "small")),
    Comparison(quality="big", more="dog", less="cow"),
    Comparison(quality="small", more="box", less="ball"),
    *(Chain(verb=verb, outer="nurse", middle="baker")
      for verb in ("chase", "follow", "push", "pull", "lead", "tap")),
    Chain(verb="chase", outer="pig", middle="dog"),
)  # fmt: skip

LINES = (20, 9)
acts = st.sampled_from(ACTS)
staged_left = cache(lambda act, lines: stage(Scene(meaning=act), lines=lines))
scenes = st.builds(
    Scene,
    meaning=st.one_of(*map(st.sampled_from, (ACTS, PLACES, OTHERS))),
    side=st.sampled_from(tuple(Side)),
)


def test_every_kind_of_meaning_is_drawable():
    assert all(can_draw(meaning) for meaning in OTHERS)
    kinds = {type(meaning) for meaning in OTHERS} | {Place}
    assert kinds == set(get_args(Meaning)) - {Undergone, Asked, Kin}


@pytest.mark.parametrize("lines", LINES)
def test_no_hand_covers_the_head_of_the_other(lines):
    for act in SOME:
        staged = staged_left(act, lines)
        hand = build_of(act.doer, build_for(lines)).hand
        for body, other in ((staged.doer, staged.done_to), (staged.done_to, staged.doer)):
            for at in other.hands:
                assert distance(at, body.head) > body.head_radius * 0.92 + hand * 0.5, act


@pytest.mark.parametrize("lines", LINES)
def test_heads_do_not_cover_each_other(lines):
    for act in SOME:
        staged = staged_left(act, lines)
        if act.doer in PEOPLE_KEYS:
            apart = distance(staged.doer.head, staged.done_to.head)
            least = 1.85 * staged.doer.head_radius
            assert apart > least, act


@pytest.mark.parametrize("lines", LINES)
def test_contact_is_exact_to_one_sub_pixel(lines):
    for act in SOME:
        staged = staged_left(act, lines)
        made = drawing(Scene(meaning=act), columns=38, lines=lines)
        sub_pixel = made.frame.height / (2 * lines)
        assert staged.touches or act.verb in ("chase", "follow")
        for doer_side, done_to_side in staged.touches:
            assert distance(doer_side, done_to_side) <= sub_pixel, act


@pytest.mark.parametrize("lines", LINES)
def test_the_doer_stands_on_the_left_of_a_left_scene(lines):
    for act in SOME:
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
    if isinstance(scene.meaning, Order):
        return  # what comes earlier stays on the left
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


@given(scenes, st.sampled_from(LINES))
def test_every_figure_has_an_eye_that_survives_reduction(scene, lines):
    made = drawing(scene, columns=38, lines=lines)
    eyes = [shape for shape in made.shapes if isinstance(shape, Mark)]
    assert len(eyes) >= figures_in(scene.meaning)
    pixels = raster(made, width=38, height=2 * lines)
    for eye in eyes:
        assert (pixels == np.array(eye.fill)).all(axis=-1).any()


def figures_in(meaning: Meaning) -> int:
    least = 2
    match meaning:
        case Activity(count=count) | State(count=count):
            least = count
        case Place():
            least = 0
        case Comparison(more=more) if more in THING_KEYS:
            least = 0
        case Chain():
            least = 3
        case Transfer(given=given) if given not in THING_KEYS:
            least = 3
        case Report() if not meaning.is_reflexive:
            least = 3
    return least


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
    build = build_of(person, build_for(lines))
    shapes = figure(PEOPLE[person], build, stance(build)).shapes
    high = build_for(lines).stature * 1.3
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
