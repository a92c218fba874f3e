"""Which presses are meant."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.tui.presses import SAME_KEY_FACTOR, Presses
from tests.edges import HandClock


def test_the_first_press_is_meant() -> None:
    assert Presses(HandClock(), second_press_ms=400).is_meant("1")


@pytest.mark.parametrize(("milliseconds", "meant"), [(100, False), (399, False), (400, True)])
def test_another_key_is_meant_once_the_time_has_passed(milliseconds: int, meant: bool) -> None:
    clock = HandClock()
    presses = Presses(clock, second_press_ms=400)
    presses.is_meant("1")
    clock.wait(milliseconds / 1000)
    assert presses.is_meant("2") is meant


def test_the_first_repeat_of_a_held_key_is_not_meant() -> None:
    clock = HandClock()
    presses = Presses(clock, second_press_ms=400)
    presses.is_meant("1")
    clock.wait(0.66)
    assert not presses.is_meant("1")


def test_the_same_key_is_meant_again_later() -> None:
    clock = HandClock()
    presses = Presses(clock, second_press_ms=400)
    presses.is_meant("1")
    clock.wait(0.4 * SAME_KEY_FACTOR)
    assert presses.is_meant("1")


@given(st.lists(st.floats(0.001, 0.39), min_size=1, max_size=50))
def test_of_presses_in_quick_succession_only_the_first_is_meant(waits: list[float]) -> None:
    clock = HandClock()
    presses = Presses(clock, second_press_ms=400)
    assert presses.is_meant("0")
    for number, wait in enumerate(waits, 1):
        clock.wait(wait)
        assert not presses.is_meant(str(number % 4))


def test_a_plan_may_turn_the_watch_off() -> None:
    presses = Presses(HandClock(), second_press_ms=0)
    assert all(presses.is_meant("1") for _ in range(3))
