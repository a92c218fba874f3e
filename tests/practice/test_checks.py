"""Checks through the real session: no help, no feedback, the same day again, never in spacing."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import pairwise

import pytest

from drills.core.items import ItemSet, Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan, ProbeSettings
from drills.core.problems import BadInput
from drills.core.records import SessionOpened, Trial, latest_trials
from drills.ledger.rows import entry_of, row_of
from drills.practice.checks import check_blocks, items_of_check, likeness
from drills.practice.dealing import check_plan
from drills.practice.home import Home
from drills.practice.session import Session
from drills.practice.steps import Ask, Finish, Rest
from drills.rehearsal import MemoryRecords
from drills.schedule.checks import CheckList, Phase, list_for
from tests.edges import QuietVoice

PLAN = Plan(
    name="A plan with checks",
    version=1,
    locale="en-US",
    blocks=(BlockPlan(kind=Kind.MATCH, names=("full-passive",), trials=2),),
    probes=ProbeSettings(on=True, control=("locative",)),
)
WHOLE = 40


class Watch:
    """A clock that moves a little each time it is read."""

    def __init__(self) -> None:
        self.at = datetime(2026, 11, 2, 10, tzinfo=UTC)

    def now(self) -> datetime:
        self.at += timedelta(seconds=2)
        return self.at

    def monotonic_ms(self) -> float:
        return self.at.timestamp() * 1000


class AtHome:
    def __init__(self, material: Material, plan: Plan = PLAN) -> None:
        self.watch = Watch()
        self.records = MemoryRecords()
        self.home = Home(
            plan=plan,
            material=lambda: material,
            records=self.records,
            clock=self.watch,
            voice=QuietVoice(),
            guide=lambda: (),
            program="0",
            new_seed=lambda: 7,
        )

    def trials(self) -> list[Trial]:
        return list(latest_trials(self.records.entries()))


def sit(session: Session, *, most: int = 1000) -> int:
    """Answer with the first picture until the end, or until `most` are answered."""
    session.check_in(tiredness=1, pain=False, new_signs=False)
    given = 0
    while given < most and not isinstance(session.step, Finish):
        if isinstance(session.step, Rest):
            session.rested(tiredness=1, helped=False)
            continue
        assert isinstance(session.step, Ask)
        feedback = session.choose(0)
        assert (feedback.over, feedback.right, feedback.answer) == (True, None, None)
        assert feedback.text == "Thank you."
        session.advance()
        given += 1
    session.stop()
    session.finish()
    return given


@pytest.fixture
def at_home(material: Material) -> AtHome:
    return AtHome(material)


def test_a_check_takes_one_answer_a_sentence_and_says_nothing_of_it(at_home: AtHome) -> None:
    session = at_home.home.checking.start()
    assert sit(session) == WHOLE
    assert isinstance(session.step, Finish)
    assert session.step.is_check
    trials = at_home.trials()
    assert len(trials) == WHOLE
    assert all(len(trial.attempts) == 1 and trial.ended for trial in trials)
    assert 0 < sum(trial.unaided_right for trial in trials) < WHOLE
    assert {trial.asked.item_set for trial in trials} == {ItemSet.PROBE, ItemSet.CONTROL}


def test_help_changes_nothing_in_a_check(at_home: AtHome) -> None:
    session = at_home.home.checking.start()
    session.check_in(tiredness=1, pain=False, new_signs=False)
    before = session.step
    assert session.help() == before
    assert not session.may_help_unasked


def test_a_check_stopped_before_its_first_answer_still_ends_as_a_check(at_home: AtHome) -> None:
    session = at_home.home.checking.start()
    session.check_in(tiredness=1, pain=False, new_signs=False)
    finish = session.stop()
    assert isinstance(finish, Finish)
    assert finish.is_check


def test_errors_running_change_nothing_in_a_check(at_home: AtHome) -> None:
    session = at_home.home.checking.start()
    session.check_in(tiredness=1, pain=False, new_signs=False)
    for _ in range(12):
        assert isinstance(session.step, Ask)
        assert session.step.cue is None
        wrong = 1 - (session.step.item.answer or 0)
        session.choose(wrong)
        assert session.told_to_helper is None
        session.advance()


def test_a_check_that_was_stopped_goes_on_the_same_day_where_it_was(at_home: AtHome) -> None:
    assert at_home.home.today().check_minutes is not None
    sit(at_home.home.checking.start(), most=7)
    assert at_home.home.today().check_minutes is not None
    assert at_home.home.today().resumable == 0
    assert sit(at_home.home.checking.start()) == WHOLE - 7
    items = [trial.asked.item_id for trial in at_home.trials()]
    assert len(set(items)) == WHOLE
    assert at_home.home.today().check_minutes is None
    at_home.watch.at += timedelta(days=1)
    assert at_home.home.today().check_minutes is not None


def test_lists_go_round_and_the_items_stay(at_home: AtHome) -> None:
    orders = []
    for _ in range(3):
        sit(at_home.home.checking.start())
        orders.append([trial.asked.item_id for trial in at_home.trials()[-WHOLE:]])
        at_home.watch.at += timedelta(days=1)
    opened = [each for each in at_home.records.entries() if isinstance(each, SessionOpened)]
    assert [each.check for each in opened] == ["A", "B", "C"]
    assert len({tuple(order) for order in orders}) == 3
    assert len({frozenset(order) for order in orders}) == 1


def test_checks_move_no_due_day_and_are_no_session_of_practice(at_home: AtHome) -> None:
    before = at_home.home.standings()
    sit(at_home.home.checking.start())
    after = at_home.home.standings()
    assert [(due.rung, due.run, due.last) for due in before] == [
        (due.rung, due.run, due.last) for due in after
    ]
    assert at_home.home.today().sessions_done == 0
    assert at_home.home.suggested_cues() == {}


def test_the_digest_tells_of_the_check_and_no_practice(at_home: AtHome) -> None:
    sit(at_home.home.checking.start())
    day = at_home.home.day()
    digest = at_home.home.digest(day, day)
    assert digest.dose.trials == 0
    assert digest.lines == ()
    assert digest.checks is not None
    assert digest.checks.baseline_done == 1
    assert [point.right.of for line in digest.checks.lines for point in line.points] == [20, 20]


def test_a_part_has_at_most_twenty_and_a_short_check_half(material: Material) -> None:
    whole = check_blocks(PLAN, material, CheckList(letter="A"))
    assert [len(block.items) for block in whole] == [20, 20]
    halves = [items_of_check(PLAN, material, CheckList(letter="C", half=half)) for half in (0, 1)]
    assert [len(half) for half in halves] == [20, 20]
    assert not {item.id for item in halves[0]} & {item.id for item in halves[1]}


def test_short_checks_ask_one_half_and_the_other_by_turns(material: Material) -> None:
    settings = PLAN.probes
    lists = [list_for(Phase.WEEKLY, number, settings) for number in range(3, 9)]
    asked = [{item.id for item in items_of_check(PLAN, material, each)} for each in lists]
    assert all(not one & other for one, other in pairwise(asked))
    assert all(one == after_next for one, after_next in zip(asked, asked[2:], strict=False))


def test_what_is_asked_is_like_what_is_practised(material: Material) -> None:
    for apart in likeness(PLAN, material).values():
        assert max(map(abs, apart.values())) <= 0.1


@pytest.mark.parametrize(
    ("probes", "message"),
    [
        (ProbeSettings(treated=("nope",)), "there is no construction"),
        (ProbeSettings(control=("negation",)), "no checks are made of"),
        (ProbeSettings(treated=("active",)), "is in no block"),
        (ProbeSettings(related=("full-passive",)), "is practised in this plan"),
        (ProbeSettings(finished=("full-passive",)), "is practised in this plan"),
    ],
)
def test_what_checks_cannot_ask_is_told(
    probes: ProbeSettings, message: str, material: Material
) -> None:
    problems = check_plan(replace(PLAN, probes=probes), material)
    assert [message in problem.message for problem in problems] == [True]


def test_a_plan_with_nothing_to_check_is_told_so(material: Material) -> None:
    plan = replace(
        PLAN,
        blocks=(BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=2),),
        probes=ProbeSettings(on=True),
    )
    assert [problem.where for problem in check_plan(plan, material)] == ["probes.on"]
    with pytest.raises(BadInput, match="nothing that can be checked"):
        AtHome(material, plan).home.checking.start()


def test_the_list_of_a_check_is_kept_and_older_records_have_none(at_home: AtHome) -> None:
    sit(at_home.home.checking.start(), most=1)
    opened = at_home.records.entries()[0]
    assert entry_of(row_of(opened)) == opened
    practice = replace(opened, check=None)  # type: ignore[type-var]
    row = row_of(practice)
    assert "check" not in row
    assert entry_of(row) == practice
