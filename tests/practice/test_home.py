"""A practice folder's day: starting, going on, the next session."""

from __future__ import annotations

from itertools import count

from drills.core.items import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import SessionOpened, latest_trials
from drills.practice.home import Home
from drills.practice.session import Session
from drills.practice.steps import Ask, Finish, Rest
from drills.rehearsal import MemoryRecords
from tests.edges import HandClock, QuietVoice

PLAN = Plan(
    name="Short",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active",), trials=3),
        BlockPlan(kind=Kind.QUESTION, names=("who-did-what",), trials=3),
    ),
)


def home_of(
    material: Material, *, records: MemoryRecords, clock: HandClock, plan: Plan = PLAN
) -> Home:
    seeds = count(1)
    return Home(
        plan=plan,
        material=lambda: material,
        records=records,
        clock=clock,
        voice=QuietVoice(),
        guide=tuple,
        program="0",
        new_seed=lambda: next(seeds),
    )


def answer(session: Session, trials: int) -> list[str]:
    """Answer so many trials right; gives the sentences asked."""
    asked = []
    while len(asked) < trials:
        step = session.step
        if isinstance(step, Rest):
            session.rested(tiredness=1, helped=False)
            continue
        assert isinstance(step, Ask)
        asked.append(step.item.id)
        session.choose(step.item.answer or 0)
        session.advance()
    return asked


def test_a_stopped_session_goes_on_where_it_was(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    whole = home_of(material, records=MemoryRecords(), clock=clock).start(resume=False)
    whole.check_in(tiredness=1, pain=False, new_signs=False)
    expected = answer(whole, 6)

    first = home.start(resume=False)
    first.check_in(tiredness=1, pain=False, new_signs=False)
    begun = answer(first, 2)
    first.stop()
    first.finish(tiredness=2, helped=False)
    assert home.today().resumable == 4

    clock.wait(3600)
    again = home.start(resume=True)
    again.check_in(tiredness=1, pain=False, new_signs=False)
    assert begun + answer(again, 4) == expected
    assert isinstance(again.step, Finish)
    again.finish(tiredness=1, helped=False)
    assert home.today().resumable == 0
    assert home.today().sessions_done == 1


def test_going_on_after_a_kill_gives_each_trial_once(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    session = home.start(resume=False)
    session.check_in(tiredness=1, pain=False, new_signs=False)
    answer(session, 2)
    # No more is written, as after kill -9; the third trial had been shown but not answered.
    clock.wait(60)
    again = home.start(resume=True)
    again.check_in(tiredness=1, pain=False, new_signs=False)
    answer(again, 4)
    ordinals = [trial.trial.rpartition("-")[2] for trial in latest_trials(records.entries())]
    assert ordinals == ["000", "001", "002", "003", "004", "005"]


def test_a_session_of_yesterday_is_not_gone_on_with(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    session = home.start(resume=False)
    session.check_in(tiredness=1, pain=False, new_signs=False)
    answer(session, 2)
    clock.wait(24 * 3600)
    assert home.today().resumable == 0


def test_a_practice_day_turns_at_four_in_the_morning(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    session = home.start(resume=False)
    session.check_in(tiredness=1, pain=False, new_signs=False)
    answer(session, 2)
    clock.wait(17.5 * 3600)  # half past three
    assert home.today().resumable == 4
    clock.wait(3600)
    assert home.today().resumable == 0


def test_a_new_plan_is_not_mixed_into_a_session_begun(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    session = home_of(material, records=records, clock=clock).start(resume=False)
    session.check_in(tiredness=1, pain=False, new_signs=False)
    answer(session, 2)
    changed = Plan(name="Short", version=2, locale="en-US", blocks=PLAN.blocks)
    assert home_of(material, records=records, clock=clock, plan=changed).today().resumable == 0


def test_a_session_says_what_it_was_dealt_from(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    home.start(resume=False, minutes=5).check_in(tiredness=1, pain=False, new_signs=False)
    (opened,) = [e for e in records.entries() if isinstance(e, SessionOpened)]
    assert opened.content_hash == material.content_hash
    assert opened.plan_version == 1
    assert opened.minutes == 5
    assert opened.continues is None


def test_tired_is_enough_for_today(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    session = home.start(resume=False)
    session.check_in(tiredness=1, pain=False, new_signs=False)
    answer(session, 3)
    assert isinstance(session.rested(tiredness=5, helped=False), Finish)
    session.finish(tiredness=5, helped=False)
    assert home.today().resumable == 0


def test_new_signs_are_remembered_for_the_day_whatever_came_after(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    # Killed right after the check-in: nothing more is written.
    home.start(resume=False).check_in(tiredness=None, pain=None, new_signs=True)
    assert home.today().new_signs
    clock.wait(24 * 3600)
    assert not home.today().new_signs


def test_practice_of_a_year_ago_still_counts(material: Material) -> None:
    records, clock = MemoryRecords(), HandClock()
    home = home_of(material, records=records, clock=clock)
    session = home.start(resume=False)
    session.check_in(tiredness=1, pain=False, new_signs=False)
    answer(session, 3)
    session.stop()
    session.finish(tiredness=1, helped=False)
    clock.wait(400 * 24 * 3600)
    assert any(due.last is not None for due in home.standings())
