"""When a check is due, and which list it takes."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import ProbeSettings
from drills.core.records import Trial
from drills.schedule.checks import CheckList, Phase, check_days, list_for, next_check
from tests.measures.made import asked, trial

SETTINGS = ProbeSettings(on=True)
MONDAY = date(2026, 11, 2)


def days(*numbers: int) -> tuple[date, ...]:
    return tuple(MONDAY + timedelta(days=number) for number in numbers)


def due(
    done: tuple[date, ...], practised: int | None, today: int, settings: ProbeSettings = SETTINGS
):
    last = None if practised is None else MONDAY + timedelta(days=practised)
    return next_check(done, settings, last_practice=last, today=MONDAY + timedelta(days=today))


def test_three_whole_checks_come_before_practice_on_three_days() -> None:
    first = due((), None, 0)
    assert (first.phase, first.day, str(first.list)) == (Phase.BASELINE, MONDAY, "A")
    second = due(days(0), None, 0)
    assert (second.day, str(second.list)) == (days(1)[0], "B")
    third = due(days(0, 1), None, 5)
    assert (third.day, str(third.list)) == (days(5)[0], "C")
    assert due(days(0, 1, 2), None, 3) is None


def test_a_baseline_that_practice_has_overtaken_is_not_made_up_for() -> None:
    found = due(days(0), 1, 1)
    assert found.phase is Phase.WEEKLY


def test_a_short_check_is_due_a_week_after_the_last() -> None:
    found = due(days(0, 1, 2), 8, 8)
    assert (found.phase, found.day) == (Phase.WEEKLY, days(9)[0])
    assert found.list == CheckList(letter="A", half=0)
    assert due(days(0, 1, 2, 9), 15, 15).list == CheckList(letter="B", half=1)
    assert due(days(0, 1, 2), 8, 8, replace(SETTINGS, weekly_days=0)) is None


def test_six_short_checks_in_a_row_ask_each_half_in_each_order_once() -> None:
    asked_in_turn = {str(list_for(Phase.WEEKLY, number, SETTINGS)) for number in range(3, 9)}
    assert asked_in_turn == {"A1", "A2", "B1", "B2", "C1", "C2"}


@pytest.mark.parametrize(("weeks", "day"), [(1, 7), (4, 28), (12, 84)])
def test_whole_checks_come_one_four_and_twelve_weeks_after_stopping(weeks: int, day: int) -> None:
    before = [each for each in (7, 28, 84) if each < day]
    found = due(days(*(each + 0 for each in (-3, -2, -1, *before))), 0, day)
    assert (found.phase, found.day, found.list.half) == (Phase.MAINTENANCE, days(day)[0], None)
    assert found.day == MONDAY + timedelta(weeks=weeks)


def test_after_the_last_maintenance_check_none_is_due() -> None:
    assert due(days(-3, -2, -1, 7, 28, 84), 0, 100) is None


def test_one_check_stands_for_the_newest_of_those_that_went_by() -> None:
    found = due(days(-3, -2, -1), 0, 40)
    assert found.day == days(28)[0]
    assert due(days(-3, -2, -1, 40), 0, 41).day == days(84)[0]


def test_practice_again_brings_short_checks_back() -> None:
    assert due(days(-3, -2, -1, 7), 30, 31).phase is Phase.WEEKLY


@given(
    done=st.sets(st.integers(-60, 60)).map(sorted),
    practised=st.none() | st.integers(-60, 0),
    today=st.integers(0, 60),
)
def test_what_is_due_never_lies_before_the_last_check(
    done: list[int], practised: int | None, today: int
) -> None:
    checks = days(*(each for each in done if each <= today))
    found = due(checks, practised, today)
    if found is not None and checks:
        assert found.day > checks[-1] or found.day >= days(today)[0]
        assert found.number == len(checks)


@pytest.mark.parametrize("text", ["A", "B1", "C2"])
def test_a_list_is_read_as_it_was_written(text: str) -> None:
    assert str(CheckList.parse(text)) == text


@pytest.mark.parametrize("text", ["", "D", "A3", "AB", "a"])
def test_another_list_is_refused(text: str) -> None:
    with pytest.raises(ValueError, match="no list"):
        CheckList.parse(text)


def answered(day: date, count: int, item_set: ItemSet = ItemSet.PROBE) -> list[Trial]:
    at = datetime(day.year, day.month, day.day, 10, tzinfo=UTC)
    target = Target(kind=Kind.MATCH, name="active", group="moving")
    made = trial("right", of=asked(target), at=at)
    return [
        replace(made, trial=f"{day}-{number}", asked=replace(made.asked, item_set=item_set))
        for number in range(count)
    ]


def test_a_day_counts_from_half_of_what_was_asked_and_practice_never_does() -> None:
    trials = [
        *answered(MONDAY, 19),
        *answered(days(1)[0], 20),
        *answered(days(2)[0], 40, ItemSet.TREATED),
        *answered(days(3)[0], 40, ItemSet.CONTROL),
        *answered(days(4)[0], 20, ItemSet.RELATED),
        *answered(days(11)[0], 10),
        *answered(days(18)[0], 9),
    ]
    found = check_days(trials, SETTINGS, whole=40, day_turns_at_hour=4)
    assert found == days(1, 3, 4, 11)
