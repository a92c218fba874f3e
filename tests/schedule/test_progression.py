"""When to move on. Held against scipy's beta distribution and exact binomial test."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import beta, binomtest

from drills.core.items import ItemSet, Kind
from drills.core.plans import ProgressionSettings
from drills.core.records import Trial
from drills.schedule.progression import Advice, Progress, opened, progress_of
from tests.bench.promotions import courses, errors_of, told_ready
from tests.bench.schedule_world import World
from tests.measures.made import MONDAY, PASSIVE, WAVE, asked, trial

SETTINGS = ProgressionSettings()
NAME = (Kind.MATCH, PASSIVE.name)


def sessions(*marks: str, options: int = 2, of=PASSIVE, probe: bool = False) -> list[Trial]:
    """One session a word: `+` right alone, `-` wrong, `2` right with help of level 2."""
    made = []
    kept = asked(of, options=options, item_set=ItemSet.PROBE if probe else ItemSet.TREATED)
    for number, word in enumerate(marks):
        for minute, mark in enumerate(word):
            made.append(
                trial(
                    *{"+": ("right",), "-": ("wrong",), "2": ("wrong", "right")}[mark],
                    levels={"+": (0,), "-": (0,), "2": (0, 2)}[mark],
                    at=MONDAY + timedelta(days=number, minutes=minute),
                    of=kept,
                    session=f"{'probe' if probe else 'day'}-{number}",
                )
            )
    return made


def advice(trials: list[Trial], settings: ProgressionSettings = SETTINGS) -> Progress:
    (found,) = progress_of([NAME], trials, settings)
    return found


def test_most_right_alone_in_three_sessions_is_ready() -> None:
    found = advice(sessions("++++++-", "+++++++", "++++++"))
    assert found.advice is Advice.READY
    assert found.evidence == (
        "Right alone 19 of 20 in the last 3 sessions, above guessing, mean help 0.3; all sessions "
        "and their rise make it 96 of 100 likely to be 80 of 100 or more by now."
    )


def test_two_sessions_are_too_few_however_long_they_are() -> None:
    found = advice(sessions("+" * 20, "+" * 20))
    assert found.advice is Advice.TOO_FEW
    assert found.evidence == "40 trials in 2 sessions; 20 in 3 are needed."


def test_short_sessions_are_put_together_until_there_are_twenty_trials() -> None:
    assert advice(sessions(*["+++"] * 6)).advice is Advice.TOO_FEW
    assert advice(sessions(*["+++"] * 7)).advice is Advice.READY


def test_only_the_newest_sessions_count() -> None:
    assert advice(sessions("-------", "-------", *["+++++++"] * 3)).advice is Advice.READY
    assert advice(sessions(*["+++++++"] * 3, "-------")).advice is Advice.GO_ON


def test_much_help_is_not_ready() -> None:
    # 17 of 20 right alone, and the others shown: 3 times level 7.
    shown = [
        trial(
            "wrong", "right", levels=(0, 7), at=MONDAY + timedelta(days=day), session=f"day-{day}"
        )
        for day in range(3)
    ]
    trials = sessions("++++++", "++++++", "+++++") + shown
    assert advice(trials, replace(SETTINGS, sure_percent=0)).advice is Advice.GO_ON
    lenient = replace(SETTINGS, sure_percent=0, most_help=2.0)
    assert advice(trials, lenient).advice is Advice.READY


def test_words_that_decide_alone_are_no_evidence() -> None:
    kept = asked(PASSIVE, effective_k=1)
    trials = [
        trial("right", at=MONDAY + timedelta(days=day, minutes=minute), of=kept, session=f"{day}")
        for day in range(3)
        for minute in range(10)
    ]
    assert advice(trials).advice is Advice.GO_ON


@settings(deadline=None)
@given(st.integers(7, 12).flatmap(lambda each: st.tuples(st.just(each), st.integers(0, 3 * each))))
def test_of_even_sessions_ready_is_near_to_what_beta_and_binomial_say(
    drawn: tuple[int, int],
) -> None:
    """Source: scipy.stats.beta (uniform prior) and scipy.stats.binomtest."""
    each, right = drawn
    of = 3 * each
    shared = [right // 3 + (right % 3 > number) for number in range(3)]
    words = ["+" * ones + "-" * (each - ones) for ones in shared]
    # Wrong answers without more help count the top level, so help is left out here.
    found = advice(sessions(*words), replace(SETTINGS, most_help=7.0))
    sure = beta.sf(0.8, right + 1, of - right + 1)
    # A rise is thought possible, so a little less than the beta asks for may do.
    if sure >= SETTINGS.sure_percent / 100 + 0.1:
        assert found.advice is Advice.READY
    if sure <= 0.3 or binomtest(right, of, 0.5, alternative="greater").pvalue >= 0.05:
        assert found.advice is not Advice.READY


def test_three_sessions_below_guessing_are_handed_back() -> None:
    found = advice(sessions("+------", "+------", "-------"))
    assert found.advice is Advice.BELOW_CHANCE
    assert found.evidence == (
        "Right alone 2 of 21 in the last 3 sessions, each below guessing, which would give 10."
    )
    # One of them at chance is enough to wait.
    assert advice(sessions("+------", "++++---", "-------")).advice is not Advice.BELOW_CHANCE


def test_eight_sessions_without_a_rise_are_handed_back() -> None:
    flat = sessions(*["+++---", "++++--"] * 4)
    assert advice(flat[: 7 * 6]).advice is Advice.GO_ON
    falling = sessions(*["++++--"] * 4, *["+++---"] * 4)
    assert advice(falling).advice is Advice.NO_RISE
    rising = sessions(*["+++---"] * 4, *["++++--"] * 4)
    assert advice(rising).advice is Advice.GO_ON


def test_two_checks_at_the_ceiling_are_handed_back_whatever_was_practised() -> None:
    checks = sessions("+" * 10, "+" * 9 + "-", probe=True)
    assert advice(checks).advice is Advice.CEILING
    assert advice(checks).evidence == "Right alone in the last 2 checks: 10 of 10, 9 of 10."
    assert advice(sessions("+" * 10, "+" * 8 + "--", probe=True)).advice is Advice.TOO_FEW


def test_gestures_are_never_guessed() -> None:
    trials = [
        trial(3, at=MONDAY + timedelta(days=day, minutes=minute), target=WAVE, session=f"day-{day}")
        for day in range(3)
        for minute in range(7)
    ]
    (found,) = progress_of([(Kind.GESTURE, WAVE.name)], trials, SETTINGS)
    assert found.advice is Advice.READY


def test_a_name_opens_when_the_one_before_is_ready_and_stays_open_once_practised() -> None:
    def at(advice: Advice, name: str) -> Progress:
        return Progress(kind=Kind.MATCH, name=name, advice=advice, evidence="")

    names = ("a", "b", "c")
    assert opened(names, {}, ()) == ("a",)
    assert opened(names, {"a": at(Advice.READY, "a")}, ()) == ("a", "b")
    assert opened(names, {"a": at(Advice.GO_ON, "a")}, ("b",)) == ("a", "b")
    both = {"a": at(Advice.READY, "a"), "b": at(Advice.CEILING, "b")}
    assert opened(names, both, ()) == names


@pytest.mark.parametrize("speed", [0.0, -0.7])
def test_few_are_moved_on_too_soon_and_few_that_stand_well_wait(speed: float) -> None:
    """The benchmark in small: 4 people of 11 constructions."""
    found = [course for person in range(4) for course in courses(World(speed=speed), person)]
    told = [(course, told_ready(course, SETTINGS)) for course in found]
    errors = errors_of(told, least=0.75, ready_from=0.9)
    assert errors.promoted > 30
    assert errors.too_soon <= 0.1 * errors.promoted
    assert errors.late <= 0.15 * errors.ready
