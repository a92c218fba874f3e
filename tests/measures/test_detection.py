from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import binomtest, norm

from drills.core.kinds import Kind, Target
from drills.core.records import Trial
from drills.measures.chance import Verdict
from drills.measures.detection import (
    Detection,
    count,
    criterion,
    d_prime,
    d_prime_of_two,
    log_linear,
)
from tests.measures.made import asked, trial

QUESTION = Target(kind=Kind.QUESTION, name="yes-no:full-passive", group="moving")


def answered(*, true: bool, yes: bool, level: int = 0, **more: object) -> Trial:
    """One yes/no trial with its first response."""
    right, wrong = ("yes", "no") if true else ("no", "yes")
    rows = (
        {"text": right, "foil": None, "why_wrong": None},
        {"text": wrong, "foil": "reversal", "why_wrong": "false_role"},
    )
    of = replace(asked(QUESTION), options=rows)
    response = 0 if yes == true else 1
    return trial(response, of=of, levels=(level,), **more)  # type: ignore[arg-type]


def test_raw_d_and_c_of_a_worked_sample() -> None:
    """Source: Stanislaw & Todorov 1999, Behav Res Methods Instrum Comput 31:137 (from memory)."""
    assert d_prime(20 / 25, 10 / 25) == pytest.approx(1.0950, abs=5e-5)
    assert criterion(20 / 25, 10 / 25) == pytest.approx(-0.2941, abs=5e-5)


def test_log_linear_d_and_c_of_the_same_sample() -> None:
    sample = Detection(hits=20, true=25, false_alarms=10, false=25)
    assert sample.d_prime == pytest.approx(1.0445, abs=5e-5)
    assert sample.criterion == pytest.approx(-0.2788, abs=5e-5)


def test_log_linear_rates_and_d_of_a_second_sample() -> None:
    """Source: public documentation of a statistics program, 82 of 100 and 46 of 100."""
    assert log_linear(82, 100) == pytest.approx(0.8168, abs=5e-5)
    assert log_linear(46, 100) == pytest.approx(0.4604, abs=5e-5)
    sample = Detection(hits=82, true=100, false_alarms=46, false=100)
    assert sample.d_prime == pytest.approx(1.0028, abs=5e-5)


@pytest.mark.parametrize(
    ("hits", "false_alarms", "value"),
    [
        (0.99, 0.01, 4.6527),
        (0.90, 0.10, 2.5631),
        (0.84, 0.16, 1.9889),
        (0.75, 0.25, 1.3490),
        (0.69, 0.31, 0.9917),
        (0.60, 0.40, 0.5067),
    ],
)
def test_d_of_a_table(hits: float, false_alarms: float, value: float) -> None:
    """Source: Macmillan & Creelman, Detection Theory (from memory)."""
    assert d_prime(hits, false_alarms) == pytest.approx(value, abs=5e-5)
    assert criterion(hits, false_alarms) == pytest.approx(0, abs=1e-12)


@pytest.mark.parametrize(
    ("share", "value"),
    [(0.60, 0.3583), (0.75, 0.9539), (0.80, 1.1902), (0.90, 1.8124), (0.95, 2.3262)],
)
def test_d_of_two_choices(share: float, value: float) -> None:
    """Source: sqrt(2) z(share), Macmillan & Creelman (from memory)."""
    assert d_prime_of_two(share) == pytest.approx(value, abs=5e-5)


@given(
    true=st.integers(1, 400),
    false=st.integers(1, 400),
    shares=st.tuples(st.floats(0, 1), st.floats(0, 1)),
)
def test_d_and_c_are_those_of_scipy(true: int, false: int, shares: tuple[float, float]) -> None:
    """Source: scipy.stats.norm.ppf on the corrected rates."""
    hits, false_alarms = round(shares[0] * true), round(shares[1] * false)
    found = Detection(hits=hits, true=true, false_alarms=false_alarms, false=false)
    high = norm.ppf((hits + 0.5) / (true + 1))
    low = norm.ppf((false_alarms + 0.5) / (false + 1))
    assert found.d_prime == pytest.approx(high - low, abs=1e-9)
    assert found.criterion == pytest.approx(-(high + low) / 2, abs=1e-9)


@given(of=st.integers(1, 200), share=st.floats(0, 1))
def test_as_many_yes_to_false_as_to_true_tells_nothing(of: int, share: float) -> None:
    yes = round(share * of)
    assert Detection(hits=yes, true=of, false_alarms=yes, false=of).d_prime == pytest.approx(0)


@given(st.integers(0, 60), st.integers(0, 60))
def test_to_turn_every_answer_round_turns_both_signs(hits: int, false_alarms: int) -> None:
    one = Detection(hits=hits, true=60, false_alarms=false_alarms, false=60)
    other = Detection(hits=60 - hits, true=60, false_alarms=60 - false_alarms, false=60)
    assert one.d_prime == pytest.approx(-other.d_prime, abs=1e-9)
    assert one.criterion == pytest.approx(-other.criterion, abs=1e-9)


def test_all_right_has_a_number_and_no_more_yes_than_there_are_is_taken() -> None:
    assert 0 < Detection(hits=1, true=1, false_alarms=0, false=1).d_prime < 2
    with pytest.raises(ValueError, match="cannot be"):
        log_linear(3, 2)


def test_first_responses_without_help_are_counted() -> None:
    trials = [
        *(answered(true=True, yes=True) for _ in range(4)),
        answered(true=True, yes=False),
        *(answered(true=False, yes=True) for _ in range(3)),
        *(answered(true=False, yes=False) for _ in range(2)),
        # Help before the response, and another kind of trial: not counted.
        answered(true=False, yes=True, level=3),
        trial("right"),
    ]
    assert count(trials) == Detection(hits=4, true=5, false_alarms=3, false=5)
    assert count([trial("wrong")]) is None
    assert count([]) is None


@given(st.integers(0, 30), st.integers(0, 30))
def test_a_liking_is_what_the_exact_binomial_test_finds(hits: int, false_alarms: int) -> None:
    """Source: scipy.stats.binomtest, each side at 2.5 in a hundred."""
    found = Detection(hits=hits, true=30, false_alarms=false_alarms, false=30)
    yes = hits + false_alarms
    above = binomtest(yes, 60, 0.5, alternative="greater").pvalue <= 0.025
    below = binomtest(yes, 60, 0.5, alternative="less").pvalue <= 0.025
    assert found.liking is (Verdict.ABOVE if above else Verdict.BELOW if below else Verdict.SAME)
