"""The therapist's answers: nothing changes by itself, and every change has its record."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drills import wiring
from drills.catalogue import plan_text, read_plan
from drills.core.items import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, CueDirection, Layout, Plan, ProbeSettings
from drills.core.problems import BadInput, Failure
from drills.core.progress import Advice, Progress
from drills.core.suggestions import CueAdvice, Part, PlanChange, Suggestion
from drills.core.therapist import Answer, Decision
from drills.ledger import TherapistFiles, disk, plan_path, plan_versions, put_plan_in_force
from drills.practice import deciding
from drills.practice.checks import items_of_check
from drills.practice.dealing import check_plan
from drills.practice.deciding import (
    accept,
    accepted_plan,
    apply_changes,
    change_instead,
    decisions_of,
    ignore,
    suggested_plan,
    with_suggestions,
)
from drills.practice.easier import harder_than
from drills.practice.home import Home
from drills.practice.probed import asked_of
from drills.practice.sets import with_sets
from drills.rehearsal import MemoryRecords, Rehearsal
from drills.schedule.checks import CheckList
from drills.speech import start_voice
from tests.edges import HandClock, QuietVoice

PLAN = Plan(
    name="Decided",
    version=4,
    locale="en-US",
    note="Kept.",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive"), trials=8),
        BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=6),
    ),
)
TODAY = date(2026, 11, 25)


def suggestion(*changes: PlanChange) -> Suggestion:
    return Suggestion(id="one:1", says="Do it.", rule="A rule.", evidence="E.", changes=changes)


def change(part: Part, value: str | int, block: int | None = None) -> PlanChange:
    return PlanChange(part=part, value=value, block=block)


SHORTER = suggestion(change(Part.MINUTES, 20))
CHANGES: tuple[tuple[PlanChange, Callable[[Plan], object], object], ...] = (
    (change(Part.NAME_OFF, "active", 1), lambda plan: plan.blocks[0].names, ("full-passive",)),
    (
        change(Part.NAME_ON, "negation", 1),
        lambda plan: plan.blocks[0].names,
        ("active", "full-passive", "negation"),
    ),
    (
        change(Part.CUES, "most-to-least", 2),
        lambda plan: plan.blocks[1].cues,
        CueDirection.MOST_TO_LEAST,
    ),
    (change(Part.OPTIONS, 3, 1), lambda plan: plan.blocks[0].options, 3),
    (change(Part.TRIALS, 12, 2), lambda plan: plan.blocks[1].trials, 12),
    (change(Part.MINUTES, 15), lambda plan: plan.dose.minutes_per_session, 15),
    (change(Part.SESSIONS, 3), lambda plan: plan.dose.sessions_per_week, 3),
    (change(Part.LAYOUT, "stacked"), lambda plan: plan.sitting.layout, Layout.STACKED),
)


@pytest.fixture
def home(material: Material, tmp_path: Path) -> Home:
    folder = tmp_path / "practice"
    put_plan_in_force(folder, plan_text(PLAN))
    return Home(
        plan=read_plan(plan_path(folder)),
        material=lambda: material,
        records=MemoryRecords(),
        clock=HandClock(),
        voice=QuietVoice(),
        guide=tuple,
        program="0",
        new_seed=lambda: 1,
        folder=folder,
        therapist_log=TherapistFiles(folder),
        plan_desk=wiring.PlanFiles(folder, closed=lambda: ""),
    )


def in_force(home: Home) -> Plan:
    assert home.folder is not None
    return read_plan(plan_path(home.folder))


@pytest.mark.parametrize(("one", "of", "is_now"), CHANGES)
def test_each_part_of_a_plan_can_be_changed_and_nothing_else_is(one, of, is_now) -> None:
    changed = apply_changes(PLAN, [one])
    assert of(changed) == is_now
    assert of(PLAN) != is_now
    assert (changed.name, changed.version, changed.note) == ("Decided", 4, "Kept.")


def test_every_part_is_tried_here() -> None:
    assert {one.part for one, _, _ in CHANGES} == set(Part)


@settings(
    max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture]
)
@given(chosen=st.lists(st.sampled_from(CHANGES), min_size=1, max_size=4, unique=True))
def test_an_accepted_plan_reads_back_from_its_text_as_it_was(
    chosen: list, material: Material, tmp_path_factory: pytest.TempPathFactory
) -> None:
    changes = suggestion(*(one for one, _, _ in chosen))
    plan = accepted_plan(PLAN, changes, material, on=TODAY)
    assert (plan.version, plan.written_on, plan.note) == (5, TODAY, "Kept.")
    path = tmp_path_factory.getbasetemp() / "accepted.toml"
    path.write_text(plan_text(plan), encoding="utf-8", newline="\n")
    assert read_plan(path) == plan


@pytest.mark.parametrize(
    "one",
    [
        change(Part.NAME_OFF, "wave", 2),
        change(Part.NAME_OFF, "object-cleft", 1),
        change(Part.NAME_ON, "active", 1),
        change(Part.NAME_ON, "no-such-name", 1),
        change(Part.CUES, "sideways", 1),
        change(Part.OPTIONS, 9, 1),
        change(Part.TRIALS, 8, 3),
        change(Part.MINUTES, "long"),
    ],
)
def test_what_would_break_the_plan_is_refused_in_one_line(one, material: Material) -> None:
    with pytest.raises(BadInput) as refused:
        accepted_plan(PLAN, suggestion(one), material, on=TODAY)
    assert "\n" not in str(refused.value)


CHECKED = replace(PLAN, probes=ProbeSettings(on=True, related=("object-question-which",)))
KNOWN = suggestion(change(Part.NAME_OFF, "full-passive", 1))


@pytest.mark.parametrize("treated", [(), ("full-passive",), ("active", "full-passive")])
@pytest.mark.parametrize("has_sets", [False, True])
def test_what_is_no_longer_practised_is_checked_as_before(
    treated: tuple[str, ...], has_sets: bool, material: Material
) -> None:
    plan = replace(CHECKED, probes=replace(CHECKED.probes, treated=treated))
    if has_sets:
        plan = with_sets(plan, material)
    after = accepted_plan(plan, KNOWN, material, on=TODAY)
    assert after.probes.finished == ("full-passive",)
    assert {*asked_of(after)} == {*asked_of(plan)}
    assert check_plan(after, material) == ()


def test_a_name_that_cannot_come_or_go_is_told_in_plain_words(material: Material) -> None:
    gone = PlanChange(part=Part.NAME_OFF, value="C3", block=1, label="Place words")
    with pytest.raises(BadInput, match='Block 1 has no "Place words"'):
        suggested_plan(PLAN, suggestion(gone), material)


def test_a_construction_that_left_the_plan_is_asked_the_same_sentences(material: Material) -> None:
    made = with_sets(CHECKED, material)
    after = accepted_plan(made, KNOWN, material, on=TODAY)
    for letter in "AB":
        before, now = (
            items_of_check(plan, material, CheckList(letter=letter)) for plan in (made, after)
        )
        assert {item.sentence for item in now} == {item.sentence for item in before}


def test_what_is_still_practised_in_another_exercise_stays_treated(material: Material) -> None:
    question = BlockPlan(kind=Kind.QUESTION, names=("who-did-what:full-passive",), trials=6)
    plan = replace(CHECKED, blocks=(*PLAN.blocks, question))
    after = accepted_plan(plan, KNOWN, material, on=TODAY)
    assert (after.probes.treated, after.probes.finished) == (("active", "full-passive"), ())


def test_with_sets_a_new_name_is_not_checked_and_without_it_is(material: Material) -> None:
    more = suggestion(change(Part.NAME_ON, "object-cleft", 1))
    made = with_sets(CHECKED, material)
    assert asked_of(accepted_plan(made, more, material, on=TODAY)) == asked_of(made)
    names = [
        each.construction for each in asked_of(accepted_plan(CHECKED, more, material, on=TODAY))
    ]
    assert "object-cleft" in names


def test_without_checks_nothing_of_them_changes(material: Material) -> None:
    assert accepted_plan(PLAN, KNOWN, material, on=TODAY).probes == PLAN.probes


def test_a_suggestion_without_a_change_cannot_be_accepted(home: Home) -> None:
    with pytest.raises(BadInput, match="no change of its own"):
        accept(home, suggestion(), by="T")
    assert decisions_of(home) == ()


def test_accepting_puts_the_next_version_in_force_with_who_when_and_why(home: Home) -> None:
    accept(home, SHORTER, by="T. Therapist", why="she is tired")
    assert in_force(home).dose.minutes_per_session == 20
    assert in_force(home) == home.plan
    assert decisions_of(home) == (
        Decision(
            at=home.clock.now(),
            by="T. Therapist",
            suggestion="one:1",
            answer=Answer.ACCEPTED,
            rule="A rule.",
            evidence="E.",
            why="she is tired",
            plan_name="Decided",
            plan_version_before=4,
            plan_version_after=5,
            says="Do it.",
        ),
    )
    assert home.folder is not None
    assert [each.version for each in plan_versions(home.folder)] == [4, 5]


def test_another_plan_instead_is_kept_as_changed(home: Home) -> None:
    other = apply_changes(PLAN, [change(Part.SESSIONS, 4)])
    change_instead(home, SHORTER, other, by="T")
    assert in_force(home).dose.sessions_per_week == 4
    assert in_force(home).version == 5
    (kept,) = decisions_of(home)
    assert (kept.answer, kept.suggestion) == (Answer.CHANGED, "one:1")


def test_ignoring_leaves_the_plan_and_is_kept(home: Home) -> None:
    ignore(home, SHORTER, by="T", why="not yet")
    assert in_force(home) == PLAN
    (kept,) = decisions_of(home)
    assert (kept.answer, kept.plan_version_after) == (Answer.IGNORED, 4)


@pytest.mark.parametrize("answer", [accept, ignore])
def test_nobody_decides_without_a_name(home: Home, answer) -> None:
    with pytest.raises(BadInput, match="who decides"):
        answer(home, SHORTER, by="  ")
    assert in_force(home) == PLAN
    assert decisions_of(home) == ()


def test_a_plan_out_of_range_is_refused_and_nothing_is_kept(home: Home) -> None:
    with pytest.raises(BadInput, match="out of range"):
        accept(home, suggestion(change(Part.MINUTES, 900)), by="T")
    assert in_force(home) == PLAN == home.plan
    assert decisions_of(home) == ()


def test_where_the_disk_refuses_the_plan_stays_and_it_is_said(
    home: Home, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(path: Path, data: bytes) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(disk, "replace_file", full)
    with pytest.raises(Failure, match="the disk is full"):
        accept(home, SHORTER, by="T")
    assert in_force(home) == PLAN == home.plan


def test_the_next_harder_name_is_new_to_the_plan_and_can_be_practised(material: Material) -> None:
    block = PLAN.blocks[0]
    found = harder_than(block, "active", PLAN, material)
    assert found is not None
    assert found not in block.names
    accepted_plan(PLAN, suggestion(change(Part.NAME_ON, found, 1)), material, on=TODAY)
    assert harder_than(PLAN.blocks[1], "wave", PLAN, material) is None
    probed = replace(PLAN, probes=replace(PLAN.probes, related=(found,)))
    assert harder_than(block, "active", probed, material) != found


def test_an_answered_suggestion_of_rehearsed_weeks_is_gone_and_the_plan_never_moved(
    material: Material, home: Home
) -> None:
    first = date(2026, 11, 2)
    profile = replace(wiring.profiles()["first-noun"], missed=0.0)
    rehearsed = Rehearsal(
        plan=PLAN,
        material=material,
        records=home.records,
        voice=start_voice(on=False),
        guide=(),
        program="0",
        profile=profile,
        first=first,
        seed=4,
    ).run(3)
    last = first + timedelta(days=20)
    rehearsed.therapist_log = home.therapist_log
    rehearsed.plan_desk = home.plan_desk
    before = rehearsed.digest(last - timedelta(days=6), last)
    assert before.suggestions
    assert in_force(home) == PLAN
    known = Progress(kind=Kind.MATCH, name="active", advice=Advice.READY, evidence="E.")
    moved = with_suggestions(rehearsed, replace(before, alerts=(), progress=(known,)), ())
    named = [each for every in moved.suggestions for each in every.changes]
    assert {each.value for each in named} >= {"active"}
    assert all(each.label == home.labels[str(each.value)] for each in named)
    one = before.suggestions[0]
    ignore(rehearsed, one, by="T")
    after = rehearsed.digest(last - timedelta(days=6), last)
    assert one.id not in {each.id for each in after.suggestions}
    assert len(after.suggestions) == len(before.suggestions) - 1
    assert in_force(home) == PLAN
    # A digest of days long past suggests nothing, and tells what was decided in its days.
    old = rehearsed.digest(first, first + timedelta(days=6))
    assert old.suggestions == ()
    assert with_suggestions(rehearsed, old, ()).decisions == ()


@pytest.mark.parametrize("advice", [Advice.GO_ON, Advice.BELOW_CHANCE])
def test_all_help_first_that_was_accepted_is_not_spoken_against_while_below_guessing(
    advice: Advice, material: Material, home: Home, monkeypatch: pytest.MonkeyPatch
) -> None:
    least = CueAdvice(block=1, direction=CueDirection.LEAST_TO_MOST, right=8, of=10)
    monkeypatch.setattr(deciding, "advice_on_directions", lambda *_: (least,))
    home.take_up(
        accepted_plan(PLAN, suggestion(change(Part.CUES, "most-to-least", 1)), material, on=TODAY)
    )
    today = home.day()
    digest = home.digest(today - timedelta(days=6), today)
    known = Progress(kind=Kind.MATCH, name="full-passive", advice=advice, evidence="E.")
    found = with_suggestions(home, replace(digest, alerts=(), progress=(known,)), ()).suggestions
    assert any(each.id.startswith("direction:") for each in found) is (advice is Advice.GO_ON)
