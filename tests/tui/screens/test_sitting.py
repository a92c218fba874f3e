"""A whole session by keys, over the real session and records in memory."""

from __future__ import annotations

from dataclasses import replace

import pytest
from textual import events

from drills.core.gestures import Tick
from drills.core.items import Kind
from drills.core.material import Material
from drills.core.records import (
    CloseReason,
    Observation,
    SessionClosed,
    SessionOpened,
    Topic,
    latest_trials,
)
from tests.edges import FullDisk
from tests.tui.player import CHECK_IN, PLAN, Player, plan_of, playing


async def play_on(player: Player) -> None:
    """From any step to the first screen: right answers, gestures scored 3, 1 on every card."""
    for _ in range(60):
        match player.screen:
            case "HomeScreen":
                return
            case "TrialScreen":
                await player.until_asked()
                await player.answer(right=True)
                await player.go_on()
            case "GestureScreen":
                await player.until_asked()
                await player.press("s", "3", "space")
                await player.until_text("Noted.")
                await player.go_on()
            case "CardScreen":
                await player.answer_cards("1")
            case _:
                await player.pilot.pause(0.01)
    raise AssertionError(f"no end in sight:\n{player.text}")


async def test_a_whole_session_by_keys_is_on_record(material: Material) -> None:
    async with playing(material) as player:
        await player.begin()
        await play_on(player)
        trials = latest_trials(player.entries)
        assert [trial.asked.kind for trial in trials] == [
            Kind.MATCH,
            Kind.MATCH,
            Kind.CLOZE,
            Kind.QUESTION,
            Kind.GESTURE,
        ]
        assert all(trial.unaided_right for trial in trials)
        closed = player.entries[-1]
        assert isinstance(closed, SessionClosed)
        assert closed.reason is CloseReason.FINISHED
        topics = [entry.topic for entry in player.entries if isinstance(entry, Observation)]
        assert topics == [Topic.CHECK_IN, Topic.REST, Topic.REST, Topic.REST, Topic.FINISH]
        await player.until_text("Today's practice is done.")


async def test_a_wrong_answer_brings_help_and_the_right_one_is_aided(material: Material) -> None:
    async with playing(material) as player:
        await player.begin()
        await player.answer(right=False)
        await player.until_text("Not this one. Look again.")
        assert "Listen again." in player.text
        await player.answer(right=True)
        await player.until_text("Yes. That was with help.")
        (trial,) = latest_trials(player.entries)
        assert trial.level_at_success == 1
        assert not trial.unaided_right


async def test_new_signs_end_the_session_with_the_card_and_are_on_record(
    material: Material,
) -> None:
    async with playing(material) as player:
        await player.press("1")
        await player.answer_cards("1", "1", "2")
        await player.until_screen("SignsScreen")
        await player.until_text("Call 911 now.")
        noted = [entry for entry in player.entries if isinstance(entry, Observation)]
        assert noted[0].new_signs is True
        await player.press("space")
        await player.until_text("Practice stops here.")
        assert "Call 911 now." in player.text
        await player.press("1")
        await player.until_screen("HomeScreen")
        closed = player.entries[-1]
        assert isinstance(closed, SessionClosed)
        assert closed.reason is CloseReason.UNWELL
        await player.until_text("New signs were told today.")
        assert "Call 911 now." in player.text
        await player.press("1", "2", "n")
        await player.settle()
        assert player.screen == "HomeScreen"
        assert "Start" not in player.text


async def test_on_a_day_of_new_signs_practice_cannot_be_started_directly(
    material: Material,
) -> None:
    async with playing(material) as player:
        await player.press("1")
        await player.answer_cards("1", "1", "2")
        await player.until_screen("SignsScreen")
        records = player.records
    async with playing(material, start="practice", records=records) as player:
        await player.until_text("New signs were told today.")
        assert player.screen == "HomeScreen"


@pytest.mark.parametrize("key", ["1", "2"])
async def test_the_same_key_again_and_again_neither_passes_the_check_in_nor_raises_an_alarm(
    key: str, material: Material
) -> None:
    async with playing(material) as player:
        await player.press("1")
        for _ in range(12):
            await player.until_screen("CardScreen")
            await player.press(key)
            await player.settle()
            assert player.screen == "CardScreen"
        assert player.entries == ()


async def test_new_signs_are_asked_before_pain_and_going_back_asks_again(
    material: Material,
) -> None:
    async with playing(material) as player:
        await player.press("1")
        await player.answer_cards("1")
        await player.until_text("Worst headache ever?")
        await player.answer_cards("1")
        await player.until_text("You said: yes, new today.")
        await player.answer_cards("1")
        await player.until_text("Worst headache ever?")
        await player.answer_cards("2")
        await player.until_text("Do you have pain now?")
        assert player.entries == ()


async def to_note(player: Player, *, then: str) -> None:
    """From the first screen to the question for a note, and its answer."""
    await player.begin()
    await player.press("p")
    await player.until_text("Stop for today")
    await player.press("3")
    await player.until_text("We stop here today.")
    await player.answer_cards("1")
    await player.until_text("a note for the therapist?")
    await player.answer_cards(then)


def notes(player: Player) -> list[str]:
    return [entry.note for entry in player.entries if isinstance(entry, Observation)]


async def test_a_note_of_the_helpers_is_kept_as_it_was_written(material: Material) -> None:
    async with playing(material) as player:
        await to_note(player, then="2")
        await player.until_screen("NoteScreen")
        for character in "[b]gee[/b]!":
            player.app.post_message(events.Key(character, character))
        player.app.post_message(events.Paste("\x1b two\nlines"))
        await player.until_text("two")
        assert "[b]gee[/b]!" in player.text
        await player.press("enter")
        await player.until_screen("HomeScreen")
        assert notes(player)[-1] == "[b]gee[/b]! two lines"


@pytest.mark.parametrize(("key", "kept"), [("ctrl+s", "ok"), ("escape", "")])
async def test_a_note_is_kept_by_ctrl_s_and_left_by_escape(
    key: str, kept: str, material: Material
) -> None:
    async with playing(material) as player:
        await to_note(player, then="2")
        await player.until_screen("NoteScreen")
        await player.press("o", "k")
        await player.until_text("ok")
        await player.press(key)
        await player.until_screen("HomeScreen")
        assert notes(player)[-1] == kept


async def test_a_note_has_three_hundred_characters_and_no_held_key(material: Material) -> None:
    async with playing(material) as player:
        await to_note(player, then="2")
        await player.until_screen("NoteScreen")
        await player.press("2", "2", "2", seconds=0.1)
        await player.until_text("Room for 300 characters more.")
        player.app.post_message(events.Paste("x" * 500))
        await player.until_text("Room for 0 characters more.")
        await player.press("enter")
        await player.until_screen("HomeScreen")
        assert notes(player)[-1] == "x" * 300


async def test_no_note_is_written_by_the_key_that_says_no(material: Material) -> None:
    async with playing(material) as player:
        await to_note(player, then="1")
        await player.until_screen("HomeScreen")
        assert notes(player)[-1] == ""


async def test_pain_leaves_the_gestures_out(material: Material) -> None:
    async with playing(material) as player:
        await player.press("1")
        await player.answer_cards("1", "2", "2")
        await player.until_text("No gestures today.")
        assert "Sudden chest or head pain? Call 911." in player.text
        assert "Bad pain? Stop. Tell your doctor." in player.text
        await player.answer_cards("1", "1")
        await player.until_asked()
        await play_on(player)
        kinds = {trial.asked.kind for trial in latest_trials(player.entries)}
        assert Kind.GESTURE not in kinds


async def test_stopping_at_the_check_in_leaves_no_record(material: Material) -> None:
    async with playing(material) as player:
        await player.press("1")
        await player.until_screen("CardScreen")
        await player.press("p")
        await player.until_text("Stop for today")
        await player.press("3")
        await player.until_screen("HomeScreen")
        assert player.entries == ()


async def test_much_more_tired_ends_kindly(material: Material) -> None:
    async with playing(material) as player:
        await player.begin()
        for _ in range(2):
            await player.until_asked()
            await player.answer(right=True)
            await player.go_on()
        await player.until_text("Did someone help")
        await player.press("1")
        await player.until_text("Part 1 of 4 is done.")
        await player.press("1")
        await player.until_text("How tired are you?")
        await player.press("4")
        await player.until_text("That is enough for today.")
        assert "2 alone. 0 with help." in player.text
        await play_on(player)
        closed = player.entries[-1]
        assert isinstance(closed, SessionClosed)
        assert closed.reason is CloseReason.TIRED


async def test_a_stopped_session_can_go_on_and_nothing_is_asked_twice(material: Material) -> None:
    async with playing(material) as player:
        await player.begin()
        await player.answer(right=True)
        first = latest_trials(player.entries)[0].asked.item_id
        await player.press("p")
        await player.until_text("Stop for today")
        await player.press("3")
        await player.until_text("We stop here today.")
        await play_on(player)
        await player.until_text("4 are still to do.")
        await player.begin()
        assert player.ask.item.id != first
        await play_on(player)
        opened = [entry for entry in player.entries if isinstance(entry, SessionOpened)]
        assert opened[1].continues == opened[0].session
        assert len(latest_trials(player.entries)) == 5


async def test_a_new_session_can_be_started_instead_of_going_on(material: Material) -> None:
    async with playing(material) as player:
        await player.begin()
        await player.answer(right=True)
        await player.press("p", "3")
        await player.until_text("We stop here today.")
        await play_on(player)
        await player.press("n")
        await player.answer_cards(*CHECK_IN)
        await player.until_asked()
        opened = [entry for entry in player.entries if isinstance(entry, SessionOpened)]
        assert opened[1].continues is None


async def test_trouble_with_the_disk_is_one_calm_line_and_practice_goes_on(
    material: Material,
) -> None:
    records = FullDisk()
    async with playing(material, records=records) as player:
        await player.begin()
        records.is_full = True
        await player.answer(right=False)
        await player.until_text("Answers are held")
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        records.is_full = False
        await player.go_on()
        await player.until_asked()
        await player.answer(right=True)
        await player.until(lambda: "Answers are held" not in player.text, "the line to go")
        assert len(latest_trials(player.entries)) == 2


async def test_ticks_are_kept_with_the_score(material: Material) -> None:
    async with playing(material, plan=plan_of(Kind.GESTURE, "wave")) as player:
        await player.begin()
        await player.press("s", "2", "j", "m", "m", "o", "space")
        await player.until_text("Noted.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].score == 2
        assert set(trial.attempts[0].ticks) == {Tick.GRIP, Tick.TEMPO}


async def test_a_session_closed_from_outside_is_closed_on_record(material: Material) -> None:
    async with playing(material) as player:
        await player.begin()
        await player.answer(right=True)
        player.app.action_leave()
        closed = player.entries[-1]
        assert isinstance(closed, SessionClosed)
        assert closed.reason is CloseReason.STOPPED


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
async def test_a_session_of_four_pictures_fits(size: tuple[int, int], material: Material) -> None:
    plan = plan_of(Kind.MATCH, "active", options=4)
    async with playing(material, plan=plan, size=size) as player:
        await player.begin()
        assert len(player.ask.item.options) == 4
        for number in "1234":
            await player.until_text(f"─ {number} ─")


async def test_practice_can_be_started_without_the_first_screen(material: Material) -> None:
    plan = replace(PLAN, dose=replace(PLAN.dose, minutes_per_session=10))
    async with playing(material, plan=plan, start="practice") as player:
        await player.until_screen("CardScreen")
        await player.until_text("About 10 minutes.")
