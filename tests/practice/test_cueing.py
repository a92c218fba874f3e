"""With how much help a trial begins. Worked cases: common practice, no source."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.items import ItemSet, Kind
from drills.core.plans import CueDirection, CueSettings
from drills.practice.cueing import (
    HelpLevel,
    fullest_level,
    help_levels,
    suggested_direction,
)
from tests.practice.made import row, trial

CUES = CueSettings()
TOP = 5
KEY = (Kind.CLOZE, "C3")
SETTINGS = st.builds(CueSettings, drop_after=st.integers(1, 4), rise_after=st.integers(1, 3))


def played(pattern: str, settings: CueSettings = CUES) -> list[int]:
    """The level that each trial of a block begins with: r right, w wrong, at that level."""
    standing, begun = HelpLevel(level=TOP), []
    for number, letter in enumerate(pattern):
        assert standing.level is not None
        begun.append(standing.level)
        given = trial(number, right=letter == "r", cue_level=standing.level)
        standing = standing.after(given, settings)
    assert standing.level is not None
    return [*begun, standing.level]


@pytest.mark.parametrize(
    ("pattern", "begun"),
    [
        ("rrrr", [5, 5, 4, 4, 3]),
        ("rrrw", [5, 5, 4, 4, 5]),
        ("rrrwrr", [5, 5, 4, 4, 5, 5, 4]),
        ("rw", [5, 5, 5]),
        ("r" * 12, [5, 5, 4, 4, 3, 3, 2, 2, 1, 1, 0, 0, 0]),
    ],
)
def test_help_falls_after_two_successes_and_rises_after_one_failure(
    pattern: str, begun: list[int]
) -> None:
    assert played(pattern) == begun


def test_the_plan_may_ask_for_three_successes() -> None:
    assert played("rrrr", replace(CUES, drop_after=3)) == [5, 5, 5, 4, 4]


def test_a_failure_between_two_successes_begins_the_count_anew() -> None:
    assert played("rrrwrw")[-1] == 5


@given(pattern=st.text("rw", max_size=40), settings=SETTINGS)
def test_help_stays_on_the_ladder_and_moves_one_step_at_a_time(
    pattern: str, settings: CueSettings
) -> None:
    begun = played(pattern, settings)
    assert all(0 <= level <= TOP for level in begun)
    for before, after, letter in zip(begun, begun[1:], pattern, strict=False):
        assert after - before in ((0, -1) if letter == "r" else (0, 1))


@given(pattern=st.text("rw", max_size=30), settings=SETTINGS)
def test_more_successes_never_mean_more_help(pattern: str, settings: CueSettings) -> None:
    last = played(pattern, settings)[-1]
    assert played(pattern + "r" * settings.drop_after, settings)[-1] <= last


@given(pattern=st.text("rw", max_size=30), cut=st.integers(0, 30))
def test_the_level_goes_on_from_the_last_session(pattern: str, cut: int) -> None:
    trials = [
        trial(number, right=letter == "r", cue_level=level)
        for number, (letter, level) in enumerate(zip(pattern, played(pattern), strict=False))
    ]
    whole = help_levels(trials, CUES)
    standing = help_levels(trials[:cut], CUES).get(KEY, HelpLevel())
    for each in trials[cut:]:
        standing = standing.after(each, CUES)
    assert whole.get(KEY, HelpLevel()) == standing


def test_each_name_has_a_level_of_its_own() -> None:
    trials = [trial(number, right=True, cue_level=5, name="C4") for number in range(2)]
    assert help_levels(trials, CUES) == {(Kind.CLOZE, "C4"): HelpLevel(level=4)}


@pytest.mark.parametrize("settings", [CUES, replace(CUES, drop_after=1)])
def test_right_with_more_help_than_was_given_says_nothing(settings: CueSettings) -> None:
    standing = HelpLevel(level=2)
    assert standing.after(trial(0, right=True, cue_level=4), settings) == standing


def test_probes_and_what_nobody_answered_say_nothing() -> None:
    standing = HelpLevel(level=2, right_running=1)
    probe = trial(0, right=True, item_set=ItemSet.PROBE)
    assert standing.after(probe, CUES) == standing
    assert standing.after(trial(0, right=True, is_answered=False), CUES) == standing


def test_an_item_that_lacks_the_level_still_moves_it() -> None:
    """Level 5 is left out where no option can be removed; level 4 was then given."""
    standing = HelpLevel(level=5, right_running=1)
    four = trial(0, right=True, cue_level=4, top_level=7)
    assert standing.after(four, CUES).level == 3
    assert standing.after(replace_right(four), CUES).level == 6


def replace_right(right):
    return replace(right, attempts=(replace(right.attempts[0], right=False),))


def test_no_gesture_begins_with_the_helpers_hand() -> None:
    assert fullest_level(Kind.GESTURE, 6) == 5
    assert fullest_level(Kind.MATCH, 7) == 7


@pytest.mark.parametrize(
    ("pattern", "suggested"),
    [
        ("rrwww", CueDirection.LEAST_TO_MOST),  # 40 %
        ("rwwww", CueDirection.MOST_TO_LEAST),  # 20 %
        ("rrrr", None),
        ("RRRRRRR", None),
        ("w" * 50 + "r" * 20, CueDirection.LEAST_TO_MOST),  # the newest count
    ],
)
def test_forty_percent_alone_speaks_for_least_to_most(
    pattern: str, suggested: CueDirection | None
) -> None:
    assert suggested_direction(row(pattern), CUES) is suggested
