"""The therapist's part: read, note, score, change the plan."""

from __future__ import annotations

from collections.abc import AsyncIterator, Sequence
from contextlib import asynccontextmanager
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import pytest
from textual.widgets import Input

from drills import wiring
from drills.core.kinds import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, CueDirection, Plan
from drills.core.problems import Failure
from drills.core.records import Observation, Topic, latest_trials
from drills.core.therapist import Answer, Decision, SecondScore, TherapistEntry, TherapistNote
from drills.ledger import TherapistFiles, plan_path
from drills.rehearsal import MemoryRecords, Rehearsal
from drills.tui.cards import SCORES
from drills.tui.screens.therapist import PARTS
from drills.tui.widgets.picture import Picture
from drills.tui.widgets.rows import Rows
from tests.edges import MORNING, QuietVoice
from tests.tui.player import Player, playing
from tests.tui.test_theme import contrast

PLAN = Plan(
    name="Short [red]",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive"), trials=12),
        BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=2),
        BlockPlan(kind=Kind.QUESTION, names=("who-did-what",), trials=2),
        BlockPlan(kind=Kind.GESTURE, names=("wave", "stop"), trials=6),
    ),
)
LAST_WEEK = MORNING.date() - timedelta(days=8)


@pytest.fixture(scope="module")
def practised(material: Material) -> MemoryRecords:
    """A week of a simulated patient, over two days before the clock's morning."""
    records = MemoryRecords()
    Rehearsal(
        plan=PLAN,
        material=material,
        records=records,
        voice=QuietVoice(),
        guide=(),
        program="0",
        profile=wiring.profiles()["first-noun"],
        first=LAST_WEEK,
        seed=11,
    ).run(1)
    return records


@asynccontextmanager
async def therapist(
    material: Material,
    folder: Path,
    records: MemoryRecords | None = None,
    *,
    size: tuple[int, int] = (80, 24),
    plan: Plan = PLAN,
) -> AsyncIterator[Player]:
    """In the therapist's part."""
    async with playing(material, plan=plan, records=records, folder=folder, size=size) as player:
        await player.press("t")
        await player.until_screen("CardScreen")
        await player.press("2")
        await player.until_screen("TherapistScreen")
        yield player


async def open_part(player: Player, part: str) -> None:
    await player.until_screen("TherapistScreen")
    await player.press(str([*PARTS].index(part) + 1))


async def write(player: Player, text: str) -> None:
    """On an empty line, or in place of what stands on a line that is marked as a whole."""
    await player.until(
        lambda: (
            isinstance(field := player.app.screen.focused, Input)
            and (not field.value or bool(field.selected_text))
        ),
        "a line to write on",
    )
    for letter in text:
        await player.press(letter)


def kept(folder: Path) -> Sequence[TherapistEntry]:
    return TherapistFiles(folder).entries()


# The way in


async def test_nobody_comes_in_by_pressing_one_key_again_and_again(material: Material) -> None:
    async with playing(material) as player:
        await player.until_text("T therapist")
        for key in "t1t1t1":
            await player.press(key)
            await player.settle()
            assert player.screen in ("HomeScreen", "CardScreen")


async def test_a_patients_key_held_on_the_first_screen_does_not_open_the_therapists_part(
    material: Material,
) -> None:
    async with playing(material) as player:
        await player.until_text("T therapist")
        for _ in range(20):
            await player.press("t", seconds=0.033)
        await player.settle()
        assert player.screen == "CardScreen"
        await player.press("escape")
        await player.until_screen("HomeScreen")


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
@pytest.mark.parametrize("part", [*PARTS])
async def test_every_part_opens_with_its_keys_whole_and_comes_back(
    part: str, size: tuple[int, int], material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised, size=size) as player:
        await open_part(player, part)
        await player.until(lambda: player.screen != "TherapistScreen", part)
        await player.until(lambda: "One moment." not in player.text, "the count")
        await player.until(
            lambda: bool(player.lines) and player.lines[-1].endswith("G guide"), "all of the keys"
        )
        await player.press("escape")
        await player.until_screen("TherapistScreen")
        await player.press("escape")
        await player.until_screen("HomeScreen")


async def test_two_presses_at_once_leave_one_screen(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await open_part(player, "notes")
        await player.until_screen("TherapistNotesScreen")
        notes = player.app.screen
        for _ in range(2):
            notes.hear("escape")  # type: ignore[attr-defined]
        await player.settle()
        assert player.screen == "TherapistScreen"


async def test_the_mouse_opens_a_row(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await player.until_text("Notes")
        await player.pilot.click(Rows, offset=(8, [*PARTS].index("notes")))
        await player.until_screen("TherapistNotesScreen")


# Reading


async def test_the_digest_turns_week_by_week_and_not_past_today(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await open_part(player, "week")
        await player.until_text("PRACTICE DIGEST")
        await player.until_text("Digest: Thu 19 Nov 2026 to Wed 25 Nov 2026 (today)")
        await player.press("right", "left")
        await player.until_text("Digest: Thu 12 Nov 2026 to Wed 18 Nov 2026")
        await player.until_text("Thu 12 Nov 2026 to Wed 18 Nov 2026")
        await player.press("right")
        await player.until_text("(today)")


async def test_a_names_trials_are_shown_as_they_were_with_the_pictures_drawn_again(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    trials = [
        trial
        for trial in latest_trials(practised.entries())
        if trial.asked.target.name == "full-passive"
        and trial.asked.kind is Kind.MATCH
        and trial.started_at.date() > MORNING.date() - timedelta(days=7)
    ]
    async with therapist(material, tmp_path, practised) as player:
        await open_part(player, "items")
        await player.until_text("Full passive: the doer comes last (pictures)")
        await player.press("1")
        await player.until_screen("TherapistAnswersScreen")
        await player.until_text(trials[0].asked.sentence)
        await player.press("1")
        await player.until_screen("TherapistTrialScreen")
        for trial in trials:
            await player.until_text(trial.asked.sentence)
            first = trial.first
            assert first is not None
            assert first.choice is not None
            await player.until_text(f"1. chose {first.choice + 1}, ")
            await player.until(
                lambda: not any(each.is_blank for each in player.app.screen.query(Picture)),
                "the pictures",
            )
            await player.until_text("chosen first")
            await player.until_text("roles exchanged")
            await player.press("right")
        await player.press("escape")
        await player.until_screen("TherapistAnswersScreen")
        assert player.app.screen.query_one(Rows).highlighted == len(trials) - 1


# Notes


async def test_a_note_of_the_therapist_is_on_disk_and_shown_as_it_was_written(
    material: Material, tmp_path: Path
) -> None:
    records = MemoryRecords()
    async with therapist(material, tmp_path, records) as player:
        await open_part(player, "notes")
        await player.until_text("Wed 25 Nov")
        await player.press("1")
        await player.until_text("No note about this day.")
        await player.press("n")
        await player.until_screen("FormScreen")
        await write(player, "[bold]ge1[/bold]")
        await player.press("enter")
        await write(player, "Sam")
        await player.press("enter", "enter")
        await player.until_text("[bold]ge1[/bold]")
        await player.until_text("Sam, written on Wed 25 Nov:")
    (note,) = kept(tmp_path)
    assert isinstance(note, TherapistNote)
    assert (note.text, note.by, note.about) == ("[bold]ge1[/bold]", "Sam", date(2026, 11, 25))


async def test_the_caregivers_notes_stand_on_their_day(material: Material, tmp_path: Path) -> None:
    records = MemoryRecords()
    async with playing(material, plan=PLAN, records=records, folder=tmp_path) as player:
        opened = player.home.opening(player.clock.now(), seed=3, chain=None, minutes=None)
        records.open_session(opened)
        note = "Slept badly. [x]"
        at = player.clock.now()
        records.append(Observation(session=opened.session, at=at, topic=Topic.FINISH, note=note))
        await player.press("t")
        await player.until_screen("CardScreen")
        await player.press("2")
        await open_part(player, "notes")
        await player.until_text("Wed 25 Nov  Slept badly. [x]")


async def test_what_a_rule_did_is_told_after_what_a_person_wrote_and_as_the_programs(
    material: Material, tmp_path: Path
) -> None:
    records = MemoryRecords()
    async with playing(material, plan=PLAN, records=records, folder=tmp_path) as player:
        at = player.clock.now()
        opened = player.home.opening(at, seed=3, chain=None, minutes=None)
        records.open_session(opened)
        for topic, note in ((Topic.RULE, "Rule: help came."), (Topic.FINISH, "Slept badly.")):
            records.append(Observation(session=opened.session, at=at, topic=topic, note=note))
        await player.press("t")
        await player.until_screen("CardScreen")
        await player.press("2")
        await open_part(player, "notes")
        await player.until_text("Wed 25 Nov  Slept badly.  (and 1 more)")
        await player.press("1")
        await player.until_text("Program:")
        lines = [line.strip() for line in player.text.splitlines() if line.strip()]
        assert lines.index("Caregiver:") + 1 == lines.index("Slept badly.")
        assert lines.index("Program:") + 1 == lines.index("Rule: help came.")
        assert lines.index("Caregiver:") < lines.index("Program:")


async def test_what_is_written_is_not_thrown_away_without_a_question(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        await open_part(player, "notes")
        await player.until_text("Wed 25 Nov")
        await player.press("1", "n")
        await player.until_screen("FormScreen")
        await write(player, "tired")
        await player.press("escape")
        await player.until_text("not kept yet")
        await player.press("1")
        await player.until_screen("FormScreen")
        assert player.app.screen.query_one("#line-text", Input).value == "tired"
        await player.press("escape")
        await player.until_text("not kept yet")
        await player.press("2")
        await player.until_screen("TherapistDayScreen")
    assert not kept(tmp_path)


async def test_a_note_that_the_disk_refuses_stays_on_the_screen(
    material: Material, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise Failure("The disk is full.")

    monkeypatch.setattr(TherapistFiles, "append", refuse)
    async with therapist(material, tmp_path) as player:
        await open_part(player, "notes")
        await player.until_text("Wed 25 Nov")
        await player.press("1", "n")
        await player.until_screen("FormScreen")
        await write(player, "tired")
        await player.press("enter")
        await write(player, "Sam")
        await player.press("enter", "enter")
        await player.until_text("The note is not kept yet. The disk is full.")
        assert player.app.screen.query_one("#line-text", Input).value == "tired"


# Agreement


async def test_the_caregivers_score_is_shown_only_after_the_therapists_own(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    plan = replace(PLAN, flags=replace(PLAN.flags, double_score_one_in=1))
    async with therapist(material, tmp_path, practised, plan=plan) as player:
        await open_part(player, "agreement")
        await player.until_text("not scored by you")
        assert "Caregiver's:" not in player.text
        assert "that you saw yourself" in player.text
        await player.press("1")
        await player.until_screen("FormScreen")
        await write(player, "Sam")
        await player.press("enter")
        await player.until_screen("ScoreScreen")
        assert "Caregiver's:" not in player.text
        await player.press("2", "space")
        await player.until_screen("TherapistAgreementScreen")
        await player.until_text(f"Yours: 2, {SCORES[2].lower()}")
        await player.until_text("Caregiver's: ")
        await player.until_text("Kappa, linear weights: not given before 20 are scored twice.")
        await player.until_text("yours 2")
    (second,) = kept(tmp_path)
    assert isinstance(second, SecondScore)
    assert (second.score, second.by) == (2, "Sam")
    assert any(
        (trial.session, trial.trial) == (second.session, second.trial)
        for trial in latest_trials(practised.entries())
    )


async def test_a_try_hindered_by_pain_gets_no_second_score(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    plan = replace(PLAN, therapist="Sam", flags=replace(PLAN.flags, double_score_one_in=1))
    async with therapist(material, tmp_path, practised, plan=plan) as player:
        await open_part(player, "agreement")
        await player.until_text("not scored by you")
        await player.press("1")
        await player.until_screen("ScoreScreen")
        await player.press("p", "space")
        await player.until_text("nothing is kept")
    assert not kept(tmp_path)


# The plan


async def to_minutes(player: Player) -> None:
    """The plan's minutes of a session."""
    await open_part(player, "plan")
    await player.until_text("Add a block")
    rows = player.app.screen.query_one(Rows)
    rows.highlighted = rows.keys.index("section dose")
    await player.press("enter")
    await player.until_text("minutes_per_session: 25")


async def set_minutes(player: Player, minutes: str) -> None:
    await player.press("1")
    await player.until_screen("FormScreen")
    await write(player, minutes)
    await player.press("enter")


async def test_a_changed_plan_is_the_next_version_with_the_record_of_who_and_why(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        await to_minutes(player)
        await set_minutes(player, "20")
        await player.until_text("minutes_per_session: 20   (was 25)")
        await player.press("escape", "s")
        await player.until_text("dose, minutes_per_session")
        await player.until_text("No fault is found in it.")
        await player.press("k")
        await player.until_screen("FormScreen")
        await write(player, "shorter")
        await player.press("enter")
        await write(player, "Sam")
        await player.press("enter", "enter")
        await player.until_text("version 2.")
        assert player.home.plan.dose.minutes_per_session == 20
        await player.press("escape")
        await player.until_text("About 20 minutes.")
    plan = wiring.read_plan(plan_path(tmp_path))
    assert (plan.version, plan.dose.minutes_per_session) == (2, 20)
    assert replace(plan, version=1, dose=PLAN.dose, written_on=None) == PLAN
    (decision,) = kept(tmp_path)
    assert isinstance(decision, Decision)
    assert (decision.by, decision.why, decision.answer) == ("Sam", "shorter", Answer.CHANGED)
    assert (decision.plan_version_before, decision.plan_version_after) == (1, 2)
    assert decision.evidence == "dose, minutes_per_session: 25 -> 20"


async def test_a_number_outside_its_limits_is_refused_at_once(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        await to_minutes(player)
        await set_minutes(player, "2000")
        await player.until_text("2000 is outside 5 to 90.")
        await player.press("escape")
        await player.until_text("not kept yet")
        await player.press("2")
        await player.until_text("minutes_per_session: 25")


async def test_quitting_in_the_middle_of_a_change_leaves_the_plan_in_force(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        await to_minutes(player)
        await set_minutes(player, "20")
        await player.until_text("(was 25)")
        await player.press("escape")
        await player.until_text("Add a block")
        await player.press("escape")
        await player.until_text("not in force")
        await player.press("1")
        await player.until_text("1 change. No fault.")
        await player.press("ctrl+q")
        await player.until(lambda: player.app.return_value == 0, "the end")
        assert player.home.plan == PLAN
    assert not plan_path(tmp_path).exists()
    assert not kept(tmp_path)


async def test_a_block_without_names_cannot_be_put_in_force_and_says_why(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        await open_part(player, "plan")
        await player.until_text("Add a block")
        await player.press("5")
        await player.until_text("A block of")
        await player.press("1")
        await player.until_text("Block 5 of 5")
        await player.until_text("Fault: ")
        await player.press("escape", "s")
        await player.until_text("cannot be put in force, because:")
        await player.press("k")
        await player.until_text("cannot be put in force as it stands.")
    assert not plan_path(tmp_path).exists()


async def test_names_of_a_block_are_ticked_and_its_items_are_seen_with_pictures(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        await open_part(player, "plan")
        await player.until_text("Add a block")
        await player.press("1", "2")
        await player.until_text("[x] Active: the doer comes first")
        await player.press("1", "escape")
        await player.until_text("Block 1 of 4")
        await player.until_text("names: Full passive: the doer comes last")
        await player.press("v")
        await player.until_text("Item 1 of")
        await player.until(
            lambda: (
                bool(player.app.screen.query(Picture))
                and not any(each.is_blank for each in player.app.screen.query(Picture))
            ),
            "the pictures",
        )
        before = player.lines[1]
        await player.press("o")
        await player.until(lambda: player.lines[1] != before, "other items")


async def test_without_a_folder_the_plan_cannot_be_changed_and_it_says_so(
    material: Material,
) -> None:
    async with playing(material) as player:
        await player.press("t")
        await player.until_screen("CardScreen")
        await player.press("2")
        await open_part(player, "plan")
        await player.until_text("There is no practice folder")


# Suggestions


async def to_suggestion(player: Player) -> None:
    """The first one: the passive is below guessing, so its help is to come first."""
    await open_part(player, "suggestions")
    await player.until_text('Begin "Full passive: the doer comes last" with all the help')
    await player.press("1")
    await player.until_text("What would change:")


async def sign(player: Player, why: str) -> None:
    """Why and who, then the thing to do with it."""
    await player.until_screen("FormScreen")
    await write(player, why)
    await player.press("enter")
    await write(player, "Sam")
    await player.press("enter", "enter")


async def test_an_accepted_suggestion_is_version_2_on_disk_with_its_record(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await to_suggestion(player)
        for said in ("Evidence: ", "Rule: ", "before: least-to-most", "after:  most-to-least"):
            assert said in player.text
        assert not plan_path(tmp_path).exists()
        await player.press("1")
        await player.until_text("No fault is found in it.")
        await player.press("k")
        await sign(player, "reversals")
        await player.until_screen("TherapistSuggestionsScreen")
        await player.until_text("Accepted by Sam, version 1 to 2.")
    plan = wiring.read_plan(plan_path(tmp_path))
    assert plan.version == 2
    assert plan.blocks[0].cues is CueDirection.MOST_TO_LEAST
    assert plan.blocks[1:] == PLAN.blocks[1:]
    (decision,) = kept(tmp_path)
    assert isinstance(decision, Decision)
    assert (decision.answer, decision.by, decision.why) == (Answer.ACCEPTED, "Sam", "reversals")
    assert (decision.plan_version_before, decision.plan_version_after) == (1, 2)
    assert decision.rule
    assert decision.evidence.startswith("Right alone ")


async def test_a_suggestion_that_is_altered_is_kept_as_changed(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await to_suggestion(player)
        await player.press("2")
        await player.until_text("(changed)")
        await player.press("1")
        await player.until_text("cues: most-to-least")
        await player.press("3")
        await write(player, "9")
        await player.press("enter")
        await player.until_text("trials: 9")
        await player.press("escape")
        await player.until_text("2 changes. No fault.")
        await player.press("s")
        await player.until_text("block 1, trials")
        await player.press("k")
        await sign(player, "shorter")
        await player.until_text("Plan changed by Sam, version 1 to 2.")
    plan = wiring.read_plan(plan_path(tmp_path))
    assert (plan.blocks[0].trials, plan.blocks[0].cues) == (9, CueDirection.MOST_TO_LEAST)
    (decision,) = kept(tmp_path)
    assert isinstance(decision, Decision)
    assert decision.answer is Answer.CHANGED


async def test_an_ignored_suggestion_leaves_the_plan_and_does_not_come_back(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await to_suggestion(player)
        await player.press("3")
        await sign(player, "seen it")
        await player.until_text("Ignored by Sam, version 1.")
        assert '1   Begin "Full passive' not in player.text  # below it is told as decided
        assert player.home.plan == PLAN
    assert not plan_path(tmp_path).exists()
    (decision,) = kept(tmp_path)
    assert isinstance(decision, Decision)
    assert (decision.answer, decision.why) == (Answer.IGNORED, "seen it")


async def test_a_suggestion_that_is_left_stays_open(
    material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await to_suggestion(player)
        await player.press("1")
        await player.until_text("No fault is found in it.")
        await player.press("escape")
        await player.until_text("What would change:")
        await player.press("escape")
        await player.until_text('1   Begin "Full passive')
    assert not kept(tmp_path)


@pytest.mark.parametrize("part", [*PARTS])
async def test_all_words_of_a_part_stand_out_from_their_ground(
    part: str, material: Material, tmp_path: Path, practised: MemoryRecords
) -> None:
    async with therapist(material, tmp_path, practised) as player:
        await open_part(player, part)
        await player.until(lambda: player.screen != "TherapistScreen", part)
        await player.until(lambda: "One moment." not in player.text, "the count")
        assert player.poor_contrasts(contrast) == []
