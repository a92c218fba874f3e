from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.kinds import Side
from drills.core.meanings import (
    Act,
    Activity,
    Chain,
    Comparison,
    Described,
    Link,
    Order,
    Place,
    Relation,
    Report,
    Role,
    Scene,
    State,
    Transfer,
)
from drills.pictures import ACTIVITY_KEYS, ANIMAL_KEYS, PEOPLE_KEYS, drawing
from drills.pictures.cast import PEOPLE
from drills.pictures.compositions import two
from drills.pictures.geometry import bounds, distance
from drills.pictures.places import parts
from drills.pictures.shapes import Ellipse, Mark, Stroke
from drills.pictures.skeleton import build_for

FIGURES = PEOPLE_KEYS + ANIMAL_KEYS
people = st.sampled_from(PEOPLE_KEYS[:16])
sizes = st.sampled_from(((38, 20), (38, 9), (58, 17)))
ACT = Act(verb="push", doer="nurse", done_to="judge")


def _made(meaning, size=(38, 20), side=Side.LEFT):
    columns, lines = size
    return drawing(Scene(meaning=meaning, side=side), columns=columns, lines=lines)


def _eyes(meaning, size=(38, 20), side=Side.LEFT):
    return [shape.at for shape in _made(meaning, size, side).shapes if isinstance(shape, Mark)]


@given(people, st.permutations(ACTIVITY_KEYS), sizes)
def test_what_comes_first_is_on_the_left_whoever_looks_where(doer, verbs, size):
    order = Order(doer=doer, earlier=verbs[0], later=verbs[1])
    assert _made(order, size) == _made(order, size, Side.RIGHT)
    left, right = _made(order, size), _made(order.reversed(), size)
    assert left != right
    # The doer stands on both sides of the arrow.
    middle = left.frame.left + left.frame.width / 2
    eyes = [x for x, _ in _eyes(order, size)]
    assert min(eyes) < middle < max(eyes)


@given(people, people, st.sampled_from(("tall", "big")), sizes)
def test_more_is_higher_and_stands_on_the_side_asked(more, less, quality, size):
    if more == less:
        return
    eyes = sorted(_eyes(Comparison(quality=quality, more=more, less=less), size))
    assert eyes[0][1] < eyes[-1][1]
    swapped = {"tall": "short", "big": "small"}[quality]
    low = sorted(_eyes(Comparison(quality=swapped, more=less, less=more), size))
    assert low[0][1] > low[-1][1]


@given(st.integers(1, 3), people, st.sampled_from(ACTIVITY_KEYS), sizes)
def test_as_many_are_seen_as_there_are(count, doer, verb, size):
    one = _eyes(Activity(verb=verb, doer=doer), size)
    assert len(_eyes(Activity(verb=verb, doer=doer, count=count), size)) == count * len(one)
    wet = State(subject=doer, count=count, link=Link.BE, complement="wet")
    assert len(_eyes(wet, size)) == count


@given(people, people, st.sampled_from(("give", "show", "bring")), sizes)
def test_what_is_given_is_between_the_two(doer, receiver, verb, size):
    if doer == receiver:
        return
    first, second = sorted(
        _eyes(Transfer(verb=verb, doer=doer, given="cake", receiver=receiver), size)
    )
    made = _made(Transfer(verb=verb, doer=doer, given="cake", receiver=receiver), size)
    icing = [shape for shape in made.shapes if getattr(shape, "fill", None) == (250, 226, 232)]
    cake = bounds(icing)
    assert first[0] < cake.left + cake.width / 2 < second[0]


def test_a_speaker_stands_outside_the_balloon_and_two_or_one_within():
    him = Report(speaker="farmer", act=Act(verb="wash", doer="nurse", done_to="farmer"))
    himself = replace(him, act=replace(him.act, done_to="nurse"))
    assert len(_eyes(him)) == 3
    assert len(_eyes(himself)) == 2


@pytest.mark.parametrize("who", list(Role))
@pytest.mark.parametrize("size", [(38, 20), (38, 9)])
def test_the_arrow_points_at_the_one_that_is_meant(who, size):
    made = _made(Described(act=ACT, who=who), size)
    staged = two(ACT, build_for(size[1]))
    one = staged.doer if who is Role.DOER else staged.done_to
    arrow = bounds([made.shapes[-1]])
    assert arrow.left < one.head[0] < arrow.left + arrow.width
    assert arrow.top + arrow.height < one.head[1] - one.head_radius


@pytest.mark.parametrize("size", [(38, 20), (38, 15), (38, 9)])
@pytest.mark.parametrize("state", ["wet", "dirty"])
def test_a_state_is_marked_on_the_one_who_is_in_it(state, size):
    meaning = Described(act=ACT, who=Role.DOER, state=state)
    assert len(_eyes(meaning, size)) == 2
    shapes = _made(meaning, size).shapes
    assert len(shapes) > len(_made(ACT, size).shapes)
    assert shapes != _made(replace(meaning, who=Role.DONE_TO), size).shapes


def test_with_no_act_the_two_stand_apart_and_touch_nothing():
    staged = two(replace(ACT, negated=True), build_for(20))
    assert staged.touches == ()
    gap = staged.done_to.head[0] - staged.doer.head[0]
    assert gap > 4 * staged.doer.head_radius


@given(st.permutations(FIGURES), sizes)
def test_any_two_can_stand_beside_each_other(keys, size):
    act = Act(verb="push", doer=keys[0], done_to=keys[1], negated=True)
    assert len(_eyes(act, size)) == 2
    staged = two(act, build_for(size[1]))
    assert staged.doer.head[0] < staged.done_to.head[0]


def test_a_chain_has_the_middle_one_in_the_middle():
    chain = Chain(verb="chase", outer="farmer", middle="sailor")
    assert len(_eyes(chain)) == 3
    assert _made(chain) != _made(Chain(verb="chase", outer="sailor", middle="farmer"))


def test_what_stands_on_a_cup_does_not_look_to_be_in_it():
    on = Place(relation=Relation.ON, thing="bell", landmark="cup")
    inside = Place(relation=Relation.IN, thing="bell", landmark="cup")
    (_, lower), (_, upper) = parts(on)[1:]
    top, low = bounds(lower), bounds(upper)
    # The bell's foot is at the height of the cup's closed top, and nothing of the cup hides it.
    assert abs(low.top + low.height - top.top) < 3
    assert parts(inside)[-1][0] == "landmark"


@pytest.mark.parametrize("size", [(38, 20), (38, 9)])
def test_who_jumps_is_clear_of_the_ground(size):
    shapes = _made(Activity(verb="jump", doer="cyclist"), size).shapes
    shadow, *body = [shape for shape in shapes if not isinstance(shape, Stroke)]
    feet = max(bounds([shape]).top + bounds([shape]).height for shape in body)
    assert feet < bounds([shadow]).top - 5


@pytest.mark.parametrize("lines", [20, 15, 9])
def test_who_is_paid_is_nowhere_near_the_note(lines):
    staged = two(Act(verb="pay", doer="judge", done_to="builder"), build_for(lines))
    (note,) = [bounds([s]) for s in staged.shapes if getattr(s, "fill", None) == (88, 160, 104)]
    palm = min(staged.done_to.hands)
    hand = max(staged.doer.hands)
    assert note.left <= hand[0] + 6
    assert note.left + note.width < palm[0]


@pytest.mark.parametrize("lines", [20, 15, 9])
def test_what_is_shown_is_in_no_hand(lines):
    shapes = _made(Transfer(verb="show", doer="man", given="cake", receiver="queen"), (38, lines))
    icing = [each for each in shapes.shapes if getattr(each, "fill", None) == (250, 226, 232)]
    cake = bounds(icing)
    skins = (PEOPLE["man"].skin, PEOPLE["queen"].skin)
    hands = [
        each
        for each in shapes.shapes
        if isinstance(each, Ellipse) and each.fill in skins and each.radii[0] == each.radii[1]
    ]
    assert len(hands) >= 2
    for hand in hands:
        reach = abs(hand.centre[0] - cake.left - cake.width / 2) - hand.radii[0]
        assert reach > cake.width / 2


@given(people, people, sizes)
def test_the_slide_of_the_rule_lies_on_the_head_that_is_measured(doer, done_to, size):
    if doer == done_to:
        return
    staged = two(Act(verb="measure", doer=doer, done_to=done_to), build_for(size[1]))
    (plate,) = [bounds([s]) for s in staged.shapes if getattr(s, "fill", None) == (66, 70, 104)]
    head = staged.done_to.head
    assert plate.left < head[0] < plate.left + plate.width
    assert plate.top < head[1] - staged.done_to.head_radius


@given(people, people, sizes)
def test_who_is_covered_has_no_hand_near_the_face(doer, done_to, size):
    if doer == done_to:
        return
    staged = two(Act(verb="cover", doer=doer, done_to=done_to), build_for(size[1]))
    for hand in staged.doer.hands:
        assert distance(hand, staged.done_to.head) > 2 * staged.done_to.head_radius
