"""Flags on how things stand. Thresholds: customary in the trade, no source."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from drills.core.flag_settings import FlagSettings
from drills.core.items import Kind
from drills.core.plans import BlockPlan, Plan
from drills.core.progress import Advice, Progress
from drills.core.therapist import SecondScore
from drills.digest.flag_states import (
    adherence_flags,
    ceiling_flags,
    cue_flags,
    flat_flags,
    record_flags,
    score_flags,
)
from drills.digest.flag_values import AlertKind
from drills.digest.raters import agreement_of
from drills.digest.spans import CueWeek, CueWeeks, DoseWeek
from drills.measures.cues import CueUse
from tests.digest.flagged import answered
from tests.digest.invented import digest
from tests.measures.made import MONDAY

PLAN = Plan(
    name="P",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active",), trials=8),
        BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=6),
    ),
    flags=FlagSettings(fewest_flat_sessions=25),
)
FIRST = date(2026, 9, 7)


def dose_week(number: int, sessions: int) -> DoseWeek:
    first = FIRST + timedelta(weeks=number)
    return DoseWeek(
        first=first,
        last=first + timedelta(days=6),
        minutes=25.0 * sessions,
        minutes_planned=125,
        minutes_share=sessions / 5,
        active_minutes=20.0 * sessions,
        sessions=sessions,
        sessions_planned=5,
        trials=40 * sessions,
        hours=0,
    )


def adherence(*sessions: int, begun: date = FIRST) -> list:
    weeks = [dose_week(number, each) for number, each in enumerate(sessions)]
    return adherence_flags(weeks, PLAN.flags, begun=begun, until=weeks[-1].last)


def test_fewer_than_half_of_the_sessions_in_two_weeks_running_is_told():
    (found,) = adherence(5, 2, 1)
    assert found.kind is AlertKind.ADHERENCE
    assert found.evidence == "Sessions a week: 2 of 5, 1 of 5."
    assert found.days == (FIRST + timedelta(weeks=1), FIRST + timedelta(days=20))
    assert adherence(2, 3) == adherence(1, 5) == adherence(1) == []


def test_the_week_in_which_practice_began_is_not_held_against_anybody():
    assert adherence(1, 2, begun=FIRST + timedelta(days=4)) == []


def help_by_week(*means: float, of: int = 40, name: str = "active") -> CueWeeks:
    return CueWeeks(
        kind=Kind.MATCH,
        name=name,
        label=name.title(),
        weeks=tuple(
            CueWeek(
                first=FIRST + timedelta(weeks=number),
                last=FIRST + timedelta(weeks=number, days=6),
                use=CueUse(of=of, mean_level=mean, dependence=mean / 7),
            )
            for number, mean in enumerate(means)
        ),
    )


def test_help_that_does_not_fade_in_three_weeks_is_told_of_all_names_and_of_one():
    (found,) = cue_flags([help_by_week(0.1, 1.3, 1.2, 1.1)], PLAN.flags)
    assert (found.subject, found.evidence) == ("", "Mean level of help by week: 1.3, 1.2, 1.1.")
    much = cue_flags([help_by_week(2.4, 2.2, 2.5)], PLAN.flags)
    assert [each.subject for each in much] == ["", "active"]


@pytest.mark.parametrize("means", [(1.9, 1.5, 1.4), (0.3, 0.4, 0.3), (2.0, 2.0)])
def test_help_that_fades_or_is_little_or_known_too_short_is_no_flag(means):
    assert cue_flags([help_by_week(*means)], PLAN.flags) == []


def test_weeks_with_few_trials_say_nothing_of_help():
    assert cue_flags([help_by_week(2.0, 2.0, 2.0, of=9)], PLAN.flags) == []


def sessions_of(*right: int, of: int = 10) -> list:
    return [
        answered(trial < each, days=day + trial / 1000)
        for day, each in enumerate(right)
        for trial in range(of)
    ]


def test_no_rise_in_twenty_five_sessions_is_told_and_names_what_has_none_of_its_own():
    flat = Progress(kind=Kind.MATCH, name="active", advice=Advice.NO_RISE, evidence="")
    (found,) = flat_flags([flat], sessions_of(*[12] * 25, of=20), PLAN, {"active": "Active"})
    assert found.kind is AlertKind.NO_RISE
    assert found.evidence == (
        "Right alone 156 of 260 in the last half, right alone 144 of 240 before. "
        "Nor does any of these rise by itself: Active."
    )


def test_a_fall_over_many_sessions_is_called_so():
    (found,) = flat_flags([], sessions_of(*[14] * 12, *[9] * 13, of=20), PLAN, {})
    assert found.evidence.startswith("It falls. Right alone 117 of 260 in the last half")


def test_a_rise_too_few_sessions_and_names_that_are_known_are_no_flag():
    assert flat_flags([], sessions_of(*[4] * 12, *[8] * 13), PLAN, {}) == []
    assert flat_flags([], sessions_of(*[12] * 24, of=20), PLAN, {}) == []
    assert flat_flags([], sessions_of(*[18] * 25, of=20), PLAN, {}) == []
    assert flat_flags([], [], PLAN, {}) == []


def test_the_ceiling_comes_from_progress():
    progress = [
        Progress(kind=Kind.MATCH, name="active", advice=advice, evidence="The numbers.")
        for advice in Advice
    ]
    (found,) = ceiling_flags(progress, PLAN, {"active": "Active"})
    assert (found.kind, found.label) == (AlertKind.CEILING, "Active")
    assert found.evidence == "The numbers."


def scored_twice(same: int, other: int) -> list:
    """So many gestures with the same score and with another one, and what is flagged."""
    trials = [
        answered(number % 2 == 0, name="wave", kind=Kind.GESTURE, days=number / 1000)
        for number in range(max(same + other, 1))
    ]
    second = [
        SecondScore(
            at=MONDAY,
            by="T",
            session=each.session,
            trial=each.trial,
            score=(each.attempts[0].score if number < same else 2) or 0,
        )
        for number, each in enumerate(trials[: same + other])
    ]
    return score_flags(agreement_of(second, trials), trials, PLAN)


def test_scores_at_home_are_not_trusted_before_twenty_gestures_were_scored_twice():
    (found,) = scored_twice(0, 0)
    assert (found.kind, found.evidence) == (AlertKind.UNTRUSTED, "Scored twice: 0.")
    assert scored_twice(19, 0)[0].evidence == "Scored twice: 19."
    assert scored_twice(20, 0) == []


def test_scores_that_differ_are_not_trusted_however_many_there_are():
    (found,) = scored_twice(5, 20)
    assert "The same score in 5 of 25" in found.evidence


def test_scores_that_agree_and_are_always_the_higher_ones_are_not_trusted():
    # 20 of 25 are the same, as many as asked for; of the other 5 one side has all: exact McNemar
    # p = .0625 (2 / 2 ** 5), of 6 it is .0313.
    trials = [
        answered(True, name="wave", kind=Kind.GESTURE, days=number / 1000) for number in range(40)
    ]
    best = trials[0].attempts[0].score or 0

    def lower_in(count: int) -> list:
        second = [
            SecondScore(
                at=MONDAY,
                by="T",
                session=each.session,
                trial=each.trial,
                score=best - (number < count),
            )
            for number, each in enumerate(trials)
        ]
        return score_flags(agreement_of(second, trials), trials, PLAN)

    assert lower_in(5) == []
    (found,) = lower_in(6)
    assert "the caregiver's is higher in 6, lower in 0" in found.evidence


def test_without_gestures_there_are_no_scores_to_trust():
    words = [answered(True)]
    assert score_flags(None, words, PLAN) == []
    gestures = [answered(True, name="wave", kind=Kind.GESTURE)]
    assert score_flags(None, gestures, replace(PLAN, blocks=PLAN.blocks[:1])) == []


def test_a_clock_that_went_back_and_damage_are_told():
    quality = digest().quality
    assert record_flags(quality) == []
    found = record_flags(replace(quality, clock_back=2, notices=("One is damaged.",)))
    assert [each.kind for each in found] == [AlertKind.CLOCK, AlertKind.DATA]
    assert found[1].evidence == "One is damaged."
