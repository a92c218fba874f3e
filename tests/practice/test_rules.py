"""What the trials so far change. The worked cases are common practice, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.gestures import Tick
from drills.core.items import Kind
from drills.core.plans import SessionRules
from drills.core.records import Trial
from drills.practice.rules import (
    Decision,
    Rule,
    decide,
    decline_of,
    errors_running,
    is_perseveration,
    perseverations,
)
from tests.practice.made import WORDS, row, trial

RULES = SessionRules()
OFF = SessionRules(
    errors_to_full_help=0,
    errors_to_easier=0,
    perseverations_to_change=0,
    fall_points=0,
    slower_times=0,
)


def yes() -> bool:
    return True


def no() -> bool:
    return False


def rule_of(
    trials: list[Trial], rules: SessionRules = RULES, *, easier: bool = True
) -> Rule | None:
    found = decide(trials, rules, has_easier=yes if easier else no)
    return None if found is None else found.rule


@pytest.mark.parametrize(
    ("pattern", "rule"),
    [
        ("ww", None),
        ("www", Rule.FULL_HELP),
        ("wwr", None),
        ("wrww", None),
        ("wwwRR", None),
        ("wwwRRw", None),
        ("wwwRRww", Rule.EASIER),
        ("ww-w", Rule.FULL_HELP),
        ("wwww", None),
        ("wwwww", Rule.EASIER),
        ("wwwwww", Rule.FULL_HELP),
    ],
)
def test_three_errors_bring_full_help_and_five_something_easier(
    pattern: str, rule: Rule | None
) -> None:
    assert rule_of(row(pattern, words=("is", "are"))) is rule


def test_where_nothing_is_easier_the_block_goes_on() -> None:
    assert rule_of(row("wwwww", words=("is", "are")), easier=False) is None


def test_errors_of_another_block_do_not_count() -> None:
    trials = [*row("ww", words=("is", "are")), trial(2, right=False, words=("is", "are"), block=1)]
    assert rule_of(trials) is None


def test_at_the_end_of_a_block_errors_change_nothing() -> None:
    trials = row("www", words=("is", "are"))
    assert decide(trials, RULES, has_easier=yes, block_goes_on=False) is None


@given(pattern=st.text("rwRW-", max_size=30))
def test_errors_running_are_the_wrong_ones_since_the_last_right_one_alone(pattern: str) -> None:
    """Against the same counted on the letters themselves."""
    alone = "".join(letter for letter in pattern if letter in "rw")
    count = len(alone) - len(alone.rstrip("w")) if pattern.endswith("w") else 0
    assert errors_running(row(pattern)) == count


def chosen(choices: str, *, words: tuple[str, ...] = WORDS) -> list[Trial]:
    """One trial a digit, the option that is chosen; option 0 is always right."""
    return [
        trial(number, right=choice == "0", choice=int(choice), words=words)
        for number, choice in enumerate(choices)
    ]


@pytest.mark.parametrize(
    ("choices", "count"),
    [
        ("11", 1),
        ("101", 1),
        ("1001", 1),
        ("10001", 0),  # four back is no longer old
        ("12", 0),
        ("1212", 2),
        ("110", 1),
        ("000", 0),
    ],
)
def test_an_error_that_repeats_one_of_the_last_three_answers_is_a_perseveration(
    choices: str, count: int
) -> None:
    assert perseverations(chosen(choices), RULES) == count


def test_with_one_wrong_word_an_error_cannot_be_told_from_a_perseveration() -> None:
    assert perseverations(chosen("1111", words=("is", "are")), RULES) == 0


def test_the_helper_ticks_an_old_gesture() -> None:
    old = trial(0, right=False, kind=Kind.GESTURE, ticks=(Tick.OLD_ACT,))
    other = trial(1, right=False, kind=Kind.GESTURE, ticks=(Tick.GRIP,))
    assert is_perseveration([old], RULES)
    assert not is_perseveration([old, other], RULES)


def test_two_perseverations_change_the_task() -> None:
    assert rule_of(chosen("101")) is None
    assert rule_of(chosen("10101")) is Rule.CHANGE_TASK
    assert rule_of(chosen("10101"), replace(RULES, perseverations_to_change=3)) is None


@given(choices=st.text("0123", min_size=1, max_size=25))
def test_a_perseveration_is_an_error_and_never_the_first_answer(choices: str) -> None:
    trials = chosen(choices)
    for end in range(1, len(trials) + 1):
        if is_perseveration(trials[:end], RULES):
            assert end > 1
            assert choices[end - 1] in choices[max(0, end - 4) : end - 1]
            assert choices[end - 1] != "0"


def waits(seconds: list[float], pattern: str) -> list[Trial]:
    return [
        trial(number, right=letter == "r", words=("is", "are"), latency_ms=round(1000 * wait))
        for number, (letter, wait) in enumerate(zip(pattern, seconds, strict=True))
    ]


@pytest.mark.parametrize(
    ("pattern", "rule"),
    [
        ("rrrrrrrrrrrrrwrrwr", Rule.REST),  # 6 of 6, then 4 of 6: 33 points
        ("rrrrrrrrrrrrrwrrrr", None),  # 17 points
        ("rrrrrrrrrrrwwrr", None),  # too few to compare
    ],
)
def test_twenty_points_fewer_in_the_last_third_bring_a_rest(
    pattern: str, rule: Rule | None
) -> None:
    assert rule_of(row(pattern, words=("is", "are"))) is rule


def test_exactly_twenty_points_are_enough() -> None:
    trials = row("rrrrrrrrrrrrrrw", words=("is", "are"))
    assert rule_of(trials, replace(RULES, fewest_trials=15)) is Rule.REST
    assert rule_of(trials, replace(RULES, fewest_trials=15, fall_points=21)) is None


@pytest.mark.parametrize(("last", "rule"), [(3.0, Rule.REST), (2.9, None)])
def test_half_as_slow_again_in_the_last_third_brings_a_rest(last: float, rule: Rule | None) -> None:
    trials = waits([2.0] * 12 + [last] * 6, "r" * 18)
    assert rule_of(trials) is rule


def test_after_the_rest_only_a_last_third_behind_it_can_end_the_session() -> None:
    worse = row("rrrrrrrrrrrrrwrrwrw", words=("is", "are"))
    assert decline_of(worse, RULES, rested_after=18) is None
    long = row("rrrrrrrrrrrrrrrrwwwrrrwr", words=("is", "are"))
    decision = decide(long, RULES, has_easier=no, rested_after=16)
    assert decision is not None
    assert decision.rule is Rule.END
    assert decision.why.endswith("after a rest too, so the session ends.")


def test_trials_with_help_and_of_another_kind_are_no_decline() -> None:
    easy = row("r" * 12, words=("is", "are"), kind=Kind.QUESTION)
    hard = [replace(each, trial=f"x{each.trial}") for each in row("rw" * 5, words=("is", "are"))]
    assert decline_of([*easy, *hard], RULES) is None
    assert decline_of(row("r" * 12 + "W" * 6), RULES) is None


@given(pattern=st.text("rwRW-", max_size=40), easier=st.booleans())
def test_rules_that_are_switched_off_change_nothing(pattern: str, easier: bool) -> None:
    assert rule_of(row(pattern), OFF, easier=easier) is None


@given(choices=st.lists(st.sampled_from("0123"), min_size=1, max_size=40))
def test_every_decision_says_why_in_one_sentence(choices: list[str]) -> None:
    decision = decide(chosen("".join(choices)), RULES, has_easier=yes)
    if decision is not None:
        assert_plain(decision)


def assert_plain(decision: Decision) -> None:
    """One sentence for the therapist; at most 15 words a sentence for the helper."""
    assert decision.why.endswith(".")
    assert ". " not in decision.why
    assert decision.why[0].isupper() or decision.why[0].isdigit()
    for sentence in decision.helper.split(". "):
        assert len(sentence.split()) <= 15
    # Beside "Space: go on." on a line of 80.
    assert len(decision.helper) <= 56
