"""The hand-counted week of `invented.py`, number by number."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import binomtest
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

from drills.core.gestures import Tick
from drills.core.items import Foil, ItemSet, Kind
from drills.core.plans import Dose, Plan
from drills.core.records import CloseReason, Topic
from drills.digest import Digest, make, render
from drills.measures.accuracy import Share
from drills.measures.chance import Verdict
from tests.digest.invented import (
    CLOZE,
    FIRST,
    LABELS,
    LAST,
    PLAN,
    closed,
    digest,
    opened,
    said,
    week,
    week_before,
)
from tests.measures.made import ACTIVE, MONDAY, PASSIVE, WAVE, asked, trial


def line(of: Digest, name: str):
    (found,) = [each for each in of.lines if each.name == name]
    return found


def test_dose_is_held_against_the_plan():
    dose = digest().dose
    assert (dose.minutes, dose.sessions, dose.trials, dose.days) == (16, 2, 28, 2)
    assert dose.active_minutes == 14
    assert (dose.minutes_planned, dose.sessions_planned) == (125, 5)
    assert dose.minutes_share == pytest.approx(16 / 125)
    assert dose.sessions_share == pytest.approx(0.4)
    assert list(dose.by_day.values()) == [6, 10, 0, 0, 0, 0, 0]


def test_a_week_that_runs_is_held_against_its_days_so_far():
    running = digest(today=date(2026, 11, 25))
    assert (running.until, running.is_over) == (date(2026, 11, 25), False)
    assert running.dose.sessions_planned == pytest.approx(5 * 3 / 7)
    assert running.dose.minutes_planned == pytest.approx(125 * 3 / 7)
    assert running.dose.sessions_share == pytest.approx(2 / (5 * 3 / 7))
    assert list(running.dose.by_day.values()) == [6, 10, 0]
    assert digest(today=LAST).is_over
    assert digest(today=LAST).dose == digest().dose


def test_a_range_to_come_asks_for_nothing_yet():
    found = digest([], today=FIRST - timedelta(days=3))
    assert not found.is_over
    assert found.dose.sessions_planned == 0
    assert (found.dose.sessions_share, found.dose.by_day) == (None, {})


def test_practice_dated_ahead_by_a_wrong_clock_keeps_its_day():
    found = digest(today=FIRST)
    assert found.dose.sessions_planned == pytest.approx(5 / 7)
    assert sum(found.dose.by_day.values()) == found.dose.minutes == 16


def test_two_weeks_ask_for_twice_the_dose():
    plan = Plan(name="p", version=1, locale="en-US", blocks=(), dose=Dose(sessions_per_week=3))
    assert digest(plan=plan).dose.sessions_planned == 3


def test_sessions_say_how_tired_they_made_and_how_they_ended():
    monday, tuesday = digest().sittings
    assert (monday.tired_before, monday.tired_after) == (1, 3)
    assert (monday.trials, monday.reason) == (10, CloseReason.FINISHED)
    assert (monday.minutes, monday.active_minutes) == (6, 5)
    assert (tuesday.tired_before, tuesday.tired_after) == (2, None)
    assert tuesday.reason is CloseReason.STOPPED


def test_the_passive_line_has_every_hand_counted_number():
    passive = line(digest(), "full_passive")
    assert passive.label == "Passive sentences"
    assert passive.unaided == Share(right=2, of=10)
    assert passive.aided == Share(right=8, of=10)
    # Six at level 3, two never, of a ladder of seven.
    assert passive.cues.mean_level == pytest.approx((6 * 3 + 2 * 7) / 10)
    assert passive.errors == {Foil.REVERSAL: 7, Foil.VERB: 1, Foil.NOUN: 0, Foil.WORD: 0}
    # Three pictures, of which the known words leave two.
    assert (passive.effective_k, passive.chance) == (2, 0.5)
    # 2 of 10 cannot be told from guessing, 1 of 10 could.
    assert passive.verdict is Verdict.SAME


def test_intervals_verdicts_and_changes_agree_with_statsmodels_and_scipy():
    passive, active = line(digest(), "full_passive"), line(digest(), "active")
    assert (passive.interval.low, passive.interval.high) == pytest.approx(
        proportion_confint(2, 10, method="wilson")
    )
    assert active.verdict is Verdict.ABOVE
    assert binomtest(10, 10, 0.5).pvalue < 0.05 < binomtest(2, 10, 0.5).pvalue
    assert passive.change is not None
    assert passive.change.earlier == Share(right=5, of=10)
    assert passive.change.points == pytest.approx(-0.3)
    assert passive.change.interval is not None
    assert (passive.change.interval.low, passive.change.interval.high) == pytest.approx(
        confint_proportions_2indep(2, 10, 5, 10, method="newcomb", compare="diff")
    )


def test_too_few_trials_before_give_no_change_in_points():
    change = line(digest(), "active").change
    assert change is not None
    assert (change.earlier, change.points) == (Share(right=2, of=2), None)
    assert line(digest(), "C3").change is None


def test_lines_follow_the_plan_with_gestures_last():
    assert [each.name for each in digest().lines] == ["active", "full_passive", "C3", "wave"]


def test_probes_have_their_own_line():
    probes = [trial("right", of=asked(item_set=ItemSet.PROBE, top_level=0), session="m")]
    found = digest([*week(), *probes])
    passives = [each for each in found.lines if each.name == "full_passive"]
    assert [(each.item_set, each.unaided.of) for each in passives] == [
        (ItemSet.TREATED, 10),
        (ItemSet.PROBE, 1),
    ]


def test_one_construction_in_two_tasks_has_two_lines():
    question = replace(PASSIVE, kind=Kind.QUESTION)
    found = digest([*week(), trial("right", of=asked(question), session="m")])
    assert [
        (each.kind, each.unaided.of) for each in found.lines if each.name == "full_passive"
    ] == [(Kind.MATCH, 10), (Kind.QUESTION, 1)]


def test_errors_come_most_frequent_first_with_at_most_two_examples():
    errors = digest().errors
    assert [(each.foil, each.count) for each in errors] == [
        (Foil.REVERSAL, 7),
        (Foil.WORD, 2),
        (Foil.VERB, 1),
    ]
    sentences = [
        trial("wrong", of=asked(sentence=f"Sentence {number}."), session="t")
        for number in (1, 2, 2, 3)
    ]
    most = digest([*week(), *sentences]).errors[0]
    assert [example.sentence for example in most.examples] == ["Sentence 3.", "Sentence 2."]


def test_the_gesture_line_leaves_out_the_painful_try():
    wave = line(digest(), "wave").gesture
    assert wave is not None
    assert (wave.scores, wave.hindered) == ((1, 0, 1, 1), 1)
    assert wave.mean == pytest.approx(5 / 3)
    assert line(digest(), "wave").unaided == Share(right=2, of=3)
    assert line(digest(), "wave").verdict is None


def test_leaving_one_out_after_a_wrong_answer_is_in_every_number():
    entries = [
        opened("m", MONDAY),
        *(trial("right", session="m") for _ in range(3)),
        *(trial("wrong", session="m", skipped=True) for _ in range(3)),
        trial(session="m", skipped=True),
    ]
    found = digest(entries, earlier=())
    passive = line(found, "full_passive")
    assert passive.unaided == Share(right=3, of=6)
    assert passive.errors[Foil.REVERSAL] == found.errors[0].count == 3
    assert (found.dose.trials, found.quality.skipped) == (6, 4)


def test_a_session_of_hindered_gestures_was_held_and_its_line_says_so():
    entries = [opened("m", MONDAY)] + [
        trial(0, target=WAVE, ticks=(Tick.BODY,), session="m") for _ in range(4)
    ]
    found = digest(entries, earlier=())
    wave = line(found, "wave")
    assert wave.gesture is not None
    assert (wave.gesture.of, wave.gesture.hindered, wave.unaided.of) == (0, 4, 0)
    assert (found.dose.sessions, found.dose.trials) == (1, 4)
    # They are told as hindered and not again as skipped.
    assert found.quality.skipped == 0


def test_gestures_scored_with_help_are_not_alone():
    shown = [trial(3, target=WAVE, levels=(6,), session="t") for _ in range(3)]
    wave = line(digest([*week(), *shown]), "wave")
    assert wave.unaided == Share(right=2, of=6)
    assert wave.gesture is not None
    assert wave.gesture.mean_help == 3


def test_the_caregivers_scoring_time_is_no_latency():
    entries = [opened("m", MONDAY)] + [
        trial(3, target=WAVE, session="m", latency_ms=ms) for ms in (100, 4000, 4000, 90_000)
    ]
    found = digest(entries, earlier=())
    assert line(found, "wave").latency.median_ms is None
    assert (found.quality.slow, found.quality.too_soon) == (0, 0)


def test_what_is_due_stands_on_its_day_and_what_was_put_off_on_the_first():
    days = digest().upcoming
    # Days on which nothing is due say nothing, for each practice moves what is.
    assert [each.day for each in days] == [date(2026, 11, 30), date(2026, 12, 2)]
    first = {each.target: each.open_since for each in days[0].dues}
    # What was never met was not put off; what is due later than the week is left out.
    assert first == {PASSIVE: date(2026, 11, 25), CLOZE: None}
    assert [each.target for each in days[1].dues] == [ACTIVE]
    assert WAVE not in [each.target for day in days for each in day.dues]


def test_in_the_middle_of_the_week_what_is_still_to_come_is_not_put_off():
    days = digest(today=date(2026, 11, 24)).upcoming
    assert [each.day for each in days] == [
        date(2026, 11, 25),
        date(2026, 11, 29),
        date(2026, 12, 2),
    ]
    assert [(due.target, due.open_since) for due in days[0].dues] == [(PASSIVE, None)]
    late = digest(today=date(2026, 11, 26)).upcoming
    assert [(due.target, due.open_since) for due in late[0].dues] == [(PASSIVE, date(2026, 11, 25))]


def test_a_digest_read_later_is_the_digest_of_its_week():
    entries = week()
    later = digest(entries, today=date(2026, 12, 20), earlier=())
    assert later.as_of == date(2026, 12, 20)
    at_once = digest(entries, earlier=())
    assert at_once.as_of is None
    assert replace(later, upcoming=(), as_of=None) == replace(at_once, upcoming=())


def test_what_is_due_stands_as_of_today_though_the_week_is_long_past():
    (tomorrow,) = digest(today=date(2026, 12, 20)).upcoming
    assert tomorrow.day == date(2026, 12, 21)
    assert [due.open_since for due in tomorrow.dues] == [
        date(2026, 11, 25),
        date(2026, 12, 2),
        date(2026, 12, 20),
        None,
    ]


def test_every_answer_of_the_week_is_kept_one_by_one():
    entries = week()
    found = digest(entries).answers
    trials = [entry for entry in entries if hasattr(entry, "attempts")]
    assert [each.trial for each in found] == [each.trial for each in trials]
    assert [each.right for each in found] == [each.unaided_right for each in trials]
    aided = found[2]
    assert (aided.first_choice, aided.foil, aided.level_at_success) == (1, Foil.REVERSAL, 3)
    assert [each.score for each in found[-4:]] == [3, 2, 0, None]
    # A gesture's time is the caregiver's.
    assert [each.latency_ms for each in found[-5:]] == [4000, None, None, None, None]


def test_a_trial_written_again_counts_once_as_last_written():
    first = trial("wrong", session="m", ended=False)
    again = replace(first, ended=True, attempts=trial("wrong", "right").attempts)
    found = digest([opened("m", MONDAY), first, again, closed("m", MONDAY)])
    assert line(found, "full_passive").aided == Share(right=1, of=1)
    assert found.quality.unfinished == 0


def test_quality_counts_what_weakens_the_numbers():
    wednesday = MONDAY + timedelta(days=2)
    more = [
        opened("w", wednesday, program="0.3.0"),
        trial("wrong", at=wednesday, session="w", ended=False),
        trial(at=wednesday + timedelta(minutes=1), session="w", skipped=True),
        trial("right", at=wednesday - timedelta(hours=1), session="w", latency_ms=100),
    ]
    quality = digest([*week(), *more]).quality
    assert quality.programs == ("0.2.0", "0.3.0")
    assert quality.plans == (("Invented plan", 2),)
    assert (quality.unfinished, quality.skipped) == (1, 1)
    assert (quality.stopped_early, quality.broken_off) == (1, 1)
    assert (quality.clock_back, quality.too_soon) == (1, 1)


def test_sessions_outside_the_range_are_left_out_and_never_cut_in_two():
    late = MONDAY + timedelta(days=6, hours=13)
    entries = [
        *week_before(),
        *week(),
        opened("late", late),
        trial("right", at=late + timedelta(hours=6), session="late"),
        opened("next", MONDAY + timedelta(days=7)),
        trial("right", at=MONDAY + timedelta(days=7), session="next"),
    ]
    found = digest(entries, earlier=())
    # 23:00 on Sunday goes on until 05:00 on Monday: all of it is Sunday's.
    assert found.dose.trials == 29
    assert found.dose.by_day[date(2026, 11, 29)] > 0


def test_simulated_practice_marks_the_whole_digest():
    assert digest(week(simulated=True)).simulated
    assert not digest().simulated


def test_an_empty_week_is_a_digest_too():
    found = digest([], upcoming=(), earlier=())
    assert (found.dose.trials, found.lines, found.errors, found.answers) == (0, (), (), ())
    assert found.dose.minutes_share == 0


def test_notes_keep_their_day():
    (note,) = digest(week(note="Slept badly.")).notes
    assert (note.day, note.text) == (FIRST, "Slept badly.")


def test_a_name_without_a_label_stands_for_itself():
    assert line(digest(labels={}), "C3").label == "C3"
    assert LABELS["C3"] == line(digest(), "C3").label


@settings(deadline=None)
@given(
    st.lists(
        st.tuples(
            st.sampled_from([PASSIVE, ACTIVE, CLOZE]),
            st.sampled_from([("right",), ("wrong",), ("wrong", "right"), ()]),
            st.integers(0, 9),
            st.booleans(),
        ),
        max_size=25,
    )
)
def test_whatever_was_practised_the_numbers_stay_in_bounds(made):
    entries = [
        opened("s", MONDAY),
        said("s", MONDAY, Topic.CHECK_IN),
        *(
            trial(*responses, target=target, session="s", ended=ended, seconds=minutes * 60)
            for target, responses, minutes, ended in made
        ),
    ]
    found = digest(entries)
    assert sum(each.unaided.of for each in found.lines) == found.dose.trials
    assert len(found.answers) == len(made)
    for each in found.lines:
        assert 0 <= each.interval.low <= each.unaided.right / each.unaided.of
        assert each.unaided.right / each.unaided.of <= each.interval.high <= 1
        assert each.aided.right <= each.aided.of <= each.unaided.of
        assert sum(each.errors.values()) == each.unaided.of - each.unaided.right
    assert sum(each.count for each in found.errors) == sum(
        not each.right and each.first_choice is not None for each in found.answers
    )
    assert PLAN.name == found.plan_name


def test_what_the_records_tell_of_themselves_is_passed_on():
    notice = "s1.jsonl ended in a torn line, which was cut."
    digest = make((), PLAN, first=FIRST, last=LAST, upcoming=(), labels={}, notices=(notice,))
    for kind in ("text", "html", "json"):
        assert "ended in a torn line" in " ".join(render(digest, kind).split())
