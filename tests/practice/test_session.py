"""One sitting through the session, with real items and records in memory."""

from __future__ import annotations

from dataclasses import replace
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.gestures import Tick
from drills.core.items import CueKind, Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import (
    CloseReason,
    Observation,
    SessionClosed,
    SessionOpened,
    Topic,
    latest_trials,
)
from drills.practice.dealing import deal_session
from drills.practice.session import Session
from drills.practice.steps import Ask, CheckIn, Finish, Rest
from drills.rehearsal import MemoryRecords
from tests.edges import MORNING, FullDisk, HandClock

PLAN = Plan(
    name="Short",
    version=3,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive"), trials=4, options=4),
        BlockPlan(kind=Kind.CLOZE, names=("C4",), trials=2),
        BlockPlan(kind=Kind.GESTURE, names=("wave", "brush-teeth"), trials=2),
    ),
)


class Sitting:
    """A session begun, with what it writes at hand."""

    def __init__(
        self, material: Material, *, plan: Plan = PLAN, records: MemoryRecords | None = None
    ) -> None:
        self.records = records if records is not None else MemoryRecords()
        self.clock = HandClock()
        self.session = Session(
            opened=SessionOpened(
                session="20261125-100000-0007",
                at=MORNING,
                plan_name=plan.name,
                plan_version=plan.version,
                program="0",
                content_hash=material.content_hash,
                seed=7,
            ),
            blocks=deal_session(
                plan, material, (), today=MORNING.date(), minutes=None, rng=Random(7)
            ),
            plan=plan,
            records=self.records,
            clock=self.clock,
        )

    def begin(self) -> Session:
        self.session.check_in(tiredness=1, pain=False, new_signs=False)
        return self.session

    @property
    def trials(self) -> tuple:
        return latest_trials(self.records.entries())

    def ask(self) -> Ask:
        step = self.session.step
        assert isinstance(step, Ask)
        return step

    def right(self) -> int:
        answer = self.ask().item.answer
        assert answer is not None
        return answer

    def wrong(self) -> int:
        step = self.ask()
        return next(
            index
            for index in range(len(step.item.options))
            if index != step.item.answer and index not in step.removed
        )


@pytest.fixture
def sitting(material: Material) -> Sitting:
    return Sitting(material)


def test_a_session_only_looked_at_leaves_no_record(sitting: Sitting) -> None:
    assert isinstance(sitting.session.step, CheckIn)
    assert sitting.records.entries() == ()


def test_a_right_first_answer_is_unaided_and_ends_the_trial(sitting: Sitting) -> None:
    session = sitting.begin()
    session.shown()
    sitting.clock.wait(3.2)
    feedback = session.choose(sitting.right())
    assert feedback.right
    assert feedback.over
    (trial,) = sitting.trials
    assert trial.unaided_right
    assert trial.ended
    assert trial.first.latency_ms == 3200


def test_an_answer_before_the_prompt_ends_has_no_latency(sitting: Sitting) -> None:
    session = sitting.begin()
    session.choose(sitting.right())
    assert sitting.trials[0].first.latency_ms is None


def test_each_wrong_answer_is_kept_at_once_and_brings_the_next_cue(sitting: Sitting) -> None:
    session = sitting.begin()
    item = sitting.ask().item
    seen = [0]
    # Two wrong answers can be had with four options before one is taken away.
    for attempt in range(1, 3):
        feedback = session.choose(sitting.wrong())
        assert not feedback.over
        assert feedback.text == "Not this one. Look again."
        cue = sitting.ask().cue
        assert cue is not None
        assert cue.level > seen[-1]
        seen.append(cue.level)
        (trial,) = sitting.trials
        assert len(trial.attempts) == attempt
        assert not trial.ended
    session.choose(sitting.right())
    (trial,) = sitting.trials
    assert [each.cue_level for each in trial.attempts] == seen
    assert trial.aided_right
    assert not trial.unaided_right
    assert trial.level_at_success == seen[-1]
    assert trial.asked.item_id == item.id


def test_help_before_the_first_answer_makes_it_aided(sitting: Sitting) -> None:
    session = sitting.begin()
    session.help()
    session.choose(sitting.right())
    (trial,) = sitting.trials
    assert not trial.unaided_right
    assert trial.aided_right
    assert trial.first.cue_level == 1


def test_hearing_again_before_the_answer_is_free_and_counted(sitting: Sitting) -> None:
    session = sitting.begin()
    session.heard_again()
    session.heard_again()
    session.choose(sitting.right())
    (trial,) = sitting.trials
    assert trial.unaided_right
    assert trial.first.replays == 2


def test_the_shown_answer_is_confirmed_and_is_no_success(sitting: Sitting) -> None:
    session = sitting.begin()
    while sitting.ask().cue is None or sitting.ask().cue.kind is not CueKind.ANSWER:
        session.help()
    assert sitting.ask().removed == {0, 1, 2, 3} - {sitting.right()}
    feedback = session.choose(sitting.right())
    assert feedback.over
    (trial,) = sitting.trials
    assert trial.level_at_success is None
    assert not trial.aided_right


def test_a_removed_option_cannot_be_chosen(sitting: Sitting) -> None:
    session = sitting.begin()
    while not sitting.ask().removed:
        session.help()
    with pytest.raises(ValueError, match="not there to choose"):
        session.choose(next(iter(sitting.ask().removed)))


def test_a_second_press_after_the_end_of_a_trial_is_refused(sitting: Sitting) -> None:
    session = sitting.begin()
    session.choose(sitting.right())
    with pytest.raises(RuntimeError):
        session.choose(0)
    assert len(sitting.trials) == 1


def play(sitting: Sitting) -> list[str]:
    """All steps of a session answered right; gives the kinds of steps met."""
    session = sitting.session
    met = []
    while True:
        step = session.step
        met.append(type(step).__name__)
        match step:
            case CheckIn():
                session.check_in(tiredness=1, pain=False, new_signs=False)
            case Ask() if step.item.kind is Kind.GESTURE:
                session.score(2, [Tick.GRIP])
                session.advance()
            case Ask():
                session.choose(sitting.right())
                session.advance()
            case Rest():
                session.rested(tiredness=1, helped=False)
            case Finish():
                session.finish(tiredness=2, helped=False)
                return met


def test_a_whole_session_has_its_blocks_rests_and_end(sitting: Sitting) -> None:
    met = play(sitting)
    assert met == ["CheckIn", *["Ask"] * 4, "Rest", *["Ask"] * 2, "Rest", *["Ask"] * 2, "Finish"]
    entries = sitting.records.entries()
    assert isinstance(entries[0], SessionOpened)
    assert entries[-1] == SessionClosed(
        session=sitting.session.id, at=MORNING, reason=CloseReason.FINISHED
    )
    assert [e.topic for e in entries if isinstance(e, Observation)] == [
        Topic.CHECK_IN,
        Topic.REST,
        Topic.REST,
        Topic.FINISH,
    ]
    assert len(sitting.trials) == 8
    assert all(trial.ended for trial in sitting.trials)


def test_new_signs_of_a_stroke_end_the_session_at_once(sitting: Sitting) -> None:
    step = sitting.session.check_in(tiredness=None, pain=None, new_signs=True)
    assert isinstance(step, Finish)
    assert step.reason is CloseReason.UNWELL
    sitting.session.finish(tiredness=None, helped=None)
    assert sitting.trials == ()
    assert sitting.records.entries()[-1].reason is CloseReason.UNWELL


def test_pain_at_the_start_leaves_the_gestures_out(sitting: Sitting) -> None:
    sitting.session.check_in(tiredness=1, pain=True, new_signs=False)
    met = []
    while not isinstance(sitting.session.step, Finish):
        if isinstance(sitting.session.step, Rest):
            sitting.session.rested(tiredness=1, helped=False)
            continue
        met.append(sitting.ask().item.kind)
        sitting.session.choose(sitting.right())
        sitting.session.advance()
    assert set(met) == {Kind.MATCH, Kind.CLOZE}


@given(start=st.integers(1, 5), later=st.integers(1, 5))
def test_a_rise_of_tiredness_beyond_the_limit_ends_kindly(
    material: Material, start: int, later: int
) -> None:
    sitting = Sitting(material)
    sitting.session.check_in(tiredness=start, pain=False, new_signs=False)
    while isinstance(sitting.session.step, Ask):
        sitting.session.choose(sitting.right())
        sitting.session.advance()
    step = sitting.session.rested(tiredness=later, helped=False)
    if later - start >= PLAN.sitting.tired_rise:
        assert isinstance(step, Finish)
        assert step.reason is CloseReason.TIRED
    else:
        assert isinstance(step, Ask)


def test_stopping_in_the_middle_of_a_trial_keeps_what_was_answered(sitting: Sitting) -> None:
    session = sitting.begin()
    session.choose(sitting.right())
    session.advance()
    session.choose(sitting.wrong())
    step = session.stop()
    assert isinstance(step, Finish)
    assert (step.done, step.right_alone) == (1, 1)
    session.finish(tiredness=1, helped=False)
    first, second = sitting.trials
    assert first.ended
    assert not second.ended
    assert len(second.attempts) == 1
    assert sitting.records.entries()[-1].reason is CloseReason.STOPPED


def test_a_window_that_closes_closes_the_records_once(sitting: Sitting) -> None:
    session = sitting.begin()
    session.choose(sitting.right())
    session.abandon()
    session.abandon()
    session.finish(tiredness=1, helped=None)
    closed = [e for e in sitting.records.entries() if isinstance(e, SessionClosed)]
    assert [each.reason for each in closed] == [CloseReason.STOPPED]


def test_a_gesture_with_pain_is_not_scored(material: Material) -> None:
    plan = replace(PLAN, blocks=PLAN.blocks[2:])
    sitting = Sitting(material, plan=plan)
    session = sitting.begin()
    session.score(1, [Tick.BODY])
    (trial,) = sitting.trials
    assert trial.skipped
    assert not trial.counts
    assert trial.first.score is None


@pytest.mark.parametrize(("score", "right"), [(3, True), (2, True), (1, False), (0, False)])
def test_gesture_scores_two_and_three_count_as_right(
    material: Material, score: int, right: bool
) -> None:
    sitting = Sitting(material, plan=replace(PLAN, blocks=PLAN.blocks[2:]))
    session = sitting.begin()
    session.score(score)
    assert sitting.trials[0].unaided_right is right


def test_a_skipped_trial_is_noted_and_counts_for_nothing(sitting: Sitting) -> None:
    session = sitting.begin()
    session.skip()
    (trial,) = sitting.trials
    assert trial.skipped
    assert not trial.counts
    assert isinstance(session.step, Ask)
    assert session.step.number == 2


def test_a_full_disk_is_told_and_the_answers_are_written_later(material: Material) -> None:
    records = FullDisk()
    sitting = Sitting(material, records=records)
    session = sitting.begin()
    records.is_full = True
    session.choose(sitting.right())
    assert session.trouble is not None
    session.advance()
    records.is_full = False
    session.choose(sitting.right())
    assert session.trouble is None
    assert len(sitting.trials) == 2


def test_what_comes_next_is_known_while_this_one_is_asked(sitting: Sitting) -> None:
    session = sitting.begin()
    upcoming = session.upcoming
    assert upcoming is not None
    session.choose(sitting.right())
    session.advance()
    assert sitting.ask().item == upcoming.item


def test_pain_in_a_gesture_leaves_the_other_gestures_out(material: Material) -> None:
    sitting = Sitting(material, plan=replace(PLAN, blocks=PLAN.blocks[2:]))
    session = sitting.begin()
    feedback = session.score(0, [Tick.BODY])
    assert "No more gestures" in feedback.text
    step = session.advance()
    assert isinstance(step, Finish)
    assert step.done == 0


def test_pain_that_leaves_nothing_to_ask_is_no_finished_session(material: Material) -> None:
    sitting = Sitting(material, plan=replace(PLAN, blocks=PLAN.blocks[2:]))
    step = sitting.session.check_in(tiredness=1, pain=True, new_signs=False)
    assert isinstance(step, Finish)
    assert step.reason is CloseReason.STOPPED


def test_what_is_left_out_is_not_counted_as_done(sitting: Sitting) -> None:
    session = sitting.begin()
    session.skip()
    session.choose(sitting.right())
    session.advance()
    step = session.stop()
    assert isinstance(step, Finish)
    assert (step.done, step.right_alone) == (1, 1)


def test_the_wait_begins_anew_after_help_a_replay_or_a_wrong_answer(sitting: Sitting) -> None:
    session = sitting.begin()
    session.shown()
    sitting.clock.wait(5)
    session.choose(sitting.wrong())
    sitting.clock.wait(2)
    session.shown()
    sitting.clock.wait(1)
    session.choose(sitting.right())
    (trial,) = sitting.trials
    assert [each.latency_ms for each in trial.attempts] == [5000, 1000]
    session.advance()
    session.shown()
    session.heard_again()
    session.choose(sitting.right())
    assert sitting.trials[-1].first.latency_ms is None


def test_an_interrupted_wait_is_not_measured(sitting: Sitting) -> None:
    session = sitting.begin()
    session.shown()
    session.interrupt()
    session.shown()
    session.choose(sitting.right())
    assert sitting.trials[0].first.latency_ms is None
    session.advance()
    session.shown()
    sitting.clock.wait(1)
    session.choose(sitting.right())
    assert sitting.trials[1].first.latency_ms == 1000


def test_the_voice_is_asked_for_its_speed_at_each_trial(material: Material) -> None:
    speeds = iter([None, 120, 120, 120])
    sitting = Sitting(material)
    sitting.session._words_per_minute = lambda: next(speeds)
    sitting.begin()
    sitting.session.choose(sitting.right())
    sitting.session.advance()
    sitting.session.choose(sitting.right())
    assert [trial.words_per_minute for trial in sitting.trials] == [None, 120]
