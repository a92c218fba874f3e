from __future__ import annotations

import pytest

from drills.core.kinds import Side
from drills.core.meanings import Act, Scene
from drills.exercises.showing import (
    COLUMNS,
    LARGE_LINES,
    SMALL_LINES,
    Showing,
    alike,
    are_unlike,
    lines_for,
    shares,
)
from drills.pictures import Encoding, draw, share_apart
from drills.pictures.contrast import share_that_differs

LIFT = Act(verb="lift", doer="baker", done_to="waiter")
PUSH = Act(verb="push", doer="nurse", done_to="judge")
PAIRS = (
    (Scene(meaning=LIFT), Scene(meaning=LIFT.reversed())),
    (Scene(meaning=LIFT), Scene(meaning=LIFT.reversed(), side=Side.RIGHT)),
    (Scene(meaning=PUSH, side=Side.RIGHT), Scene(meaning=PUSH.reversed())),
)


@pytest.mark.parametrize("lines", [LARGE_LINES, SMALL_LINES])
@pytest.mark.parametrize(("one", "other"), PAIRS)
def test_two_pictures_differ_by_what_the_picture_room_measures(
    one: Scene, other: Scene, lines: int
) -> None:
    (share,) = shares(one, [other], lines=lines)
    assert share == pytest.approx(share_apart(one, other, columns=COLUMNS, lines=lines))


def test_four_pictures_are_measured_at_their_one_scale() -> None:
    wide = Scene(meaning=Act(verb="chase", doer="horse", done_to="cow"))
    scenes = [PAIRS[0][0], PAIRS[0][1], wide, PAIRS[2][0]]
    cells = draw(scenes, columns=COLUMNS, lines=SMALL_LINES, encoding=Encoding.HALVES)
    expected = [share_that_differs(cells[0], other) for other in cells[1:]]
    assert shares(scenes[0], scenes[1:], lines=SMALL_LINES) == pytest.approx(tuple(expected))


def test_which_foils_are_alike_is_told_by_their_place() -> None:
    target, twin = PAIRS[0]
    clear = Scene(meaning=PUSH)
    assert alike(target, [twin]) == (0,)
    assert set(alike(target, [clear, twin])) <= {1}
    again = alike(target, [twin, clear])
    assert {1 - index for index in again} == set(alike(target, [clear, twin]))


def test_where_and_when_are_not_seen() -> None:
    told = Act(verb="lift", doer="baker", done_to="waiter", where="garden", when="today")
    assert shares(Scene(meaning=told), [PAIRS[0][1]], lines=SMALL_LINES) == shares(
        *PAIRS[0][:1], [PAIRS[0][1]], lines=SMALL_LINES
    )


@pytest.mark.parametrize(("options", "lines"), [(2, 15), (3, 9), (4, 9)])
def test_three_or_four_pictures_are_small(options: int, lines: int) -> None:
    assert lines_for(options) == lines


@pytest.mark.parametrize("options", [2, 3, 4])
def test_two_lifted_who_look_alike_are_turned_away(options: int) -> None:
    alike_ones = Showing(options=options, side=Side.LEFT, reversed_side=Side.LEFT)
    assert not alike_ones.tells(LIFT)
    assert Showing(options=options, side=Side.LEFT, reversed_side=Side.RIGHT).tells(LIFT)
    assert are_unlike(*PAIRS[1], lines=lines_for(options))
