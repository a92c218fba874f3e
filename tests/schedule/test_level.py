"""How likely a level is by now: against scipy's beta, numpy's matrices, and simulated learners."""

from __future__ import annotations

from math import exp
from random import Random

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import beta, norm

from drills.schedule.level import ANEW, STEP, WAVER, chance_at_least

SESSIONS = st.lists(
    st.integers(1, 9).flatmap(lambda asked: st.tuples(st.integers(0, asked), st.just(asked))),
    min_size=1,
    max_size=12,
).map(tuple)


@given(
    right=st.integers(0, 40), wrong=st.integers(0, 40), level=st.sampled_from([0.5, 0.7, 0.8, 0.9])
)
def test_standing_still_it_is_the_tail_of_a_beta(right: int, wrong: int, level: float) -> None:
    """Source: scipy.stats.beta, the posterior of a uniform prior."""
    asked = right + wrong
    halves = ((right // 2, asked // 2 if asked // 2 >= right // 2 else right // 2),)
    rest = (right - halves[0][0], asked - halves[0][1])
    if rest[1] < rest[0]:
        halves, rest = ((0, 0),), (right, asked)
    mine = chance_at_least(level, (*halves, rest), rises=(0,), waver=0.0, anew=0.0)
    assert mine == pytest.approx(beta.sf(level, right + 1, wrong + 1), abs=0.03)


@settings(max_examples=20, deadline=None)
@given(sessions=SESSIONS)
def test_wavering_and_rising_it_is_the_forward_pass_by_matrices(
    sessions: tuple[tuple[int, int], ...],
) -> None:
    """Source: numpy's matrix product and scipy.stats.norm, on a grid six times as fine."""
    fine = STEP / 6
    odds = np.arange(-5.5, 6.5, fine)
    share = 1 / (1 + np.exp(-odds))
    prior = share * (1 - share)
    likely = [share**right * (1 - share) ** (asked - right) for right, asked in sessions]
    states = []
    for rise in (0.0, STEP):
        move = norm.pdf(odds[:, None], odds[None, :] + rise, WAVER)
        state = prior / prior.sum() / 2 * likely[0]
        states.append([state, move / move.sum(axis=0)])
    fresh = prior / prior.sum() / 2
    for each in likely[1:]:
        total = sum(state.sum() for state, _ in states)
        for pair in states:
            pair[0] = ((1 - ANEW) * pair[1] @ pair[0] / total + ANEW * fresh) * each
    states = [state for state, _ in states]
    whole = np.array(states).sum()
    above = float(np.array(states)[:, share >= 0.8].sum() / whole)
    # A grid of a fifth of a log odd, with waverings of three steps at the most.
    assert chance_at_least(0.8, sessions) == pytest.approx(above, abs=0.06)


@given(sessions=SESSIONS, level=st.floats(0.1, 0.95))
def test_it_is_a_chance_and_falls_as_the_level_rises(
    sessions: tuple[tuple[int, int], ...], level: float
) -> None:
    low, high = chance_at_least(level, sessions), chance_at_least(level + 0.04, sessions)
    assert -1e-9 <= high <= low + 1e-9 <= 1 + 2e-9


@given(sessions=SESSIONS)
def test_one_more_right_makes_it_no_less_likely(sessions: tuple[tuple[int, int], ...]) -> None:
    right, asked = sessions[-1]
    better = (*sessions[:-1], (min(right + 1, asked), asked))
    assert chance_at_least(0.8, better) >= chance_at_least(0.8, sessions) - 1e-9


def test_a_rise_makes_it_likelier_and_a_fall_less() -> None:
    rising = ((2, 7), (3, 7), (4, 7), (5, 7), (6, 7))
    level = ((4, 7),) * 5
    assert (
        chance_at_least(0.8, rising)
        > chance_at_least(0.8, level)
        > chance_at_least(0.8, rising[::-1])
    )


def test_who_rises_as_it_supposes_is_told_with_the_chance_it_says() -> None:
    """Calibration: of those told 60 to 80 of 100 about so many are there, in 4,000 simulated."""
    rng = Random(3)
    there = told = 0
    chances = []
    for _ in range(4000):
        share = rng.random()
        odds = np.log(share / (1 - share))
        rise = rng.choice((0.0, STEP))
        counts = []
        for number in range(6):
            if number:
                odds += rise + rng.gauss(0, WAVER)
            share = 1 / (1 + exp(-odds))
            counts.append((sum(rng.random() < share for _ in range(6)), 6))
        sure = chance_at_least(0.8, tuple(counts))
        if 0.6 <= sure <= 0.8:
            told += 1
            there += share >= 0.8
            chances.append(sure)
    assert told > 150
    assert there / told == pytest.approx(sum(chances) / told, abs=0.1)


def test_a_leap_counts_as_soon_as_it_holds() -> None:
    assert chance_at_least(0.8, ((0, 7), (0, 7), (7, 7), (7, 7), (7, 7))) > 0.7
    assert chance_at_least(0.8, ((7, 7), (7, 7), (7, 7), (0, 7))) < 0.3


def test_nobody_is_taken_to_be_below_guessing() -> None:
    some = ((4, 7), (6, 7))
    assert chance_at_least(0.8, some, guess=0.5) > chance_at_least(0.8, some)
    assert chance_at_least(0.8, some, guess=0.9) == 0
