"""A gesture on screen: help by still and movement, and the caregiver's panel."""

from __future__ import annotations

from dataclasses import replace

import pytest

from drills.core.gestures import Tick
from drills.core.items import CueKind, Kind
from drills.core.material import Material
from drills.core.plans import SittingSettings
from drills.core.records import latest_trials
from drills.tui.widgets.picture import Picture
from tests.tui.player import Player, plan_of, playing

WAVE = plan_of(Kind.GESTURE, "wave")


async def help_until(player: Player, kind: CueKind) -> None:
    while player.ask.cue is None or player.ask.cue.kind is not kind:
        await player.press("h")
    await player.until(lambda: not figures(player)[0].is_blank, "a figure")


def figures(player: Player) -> list[Picture]:
    return list(player.app.screen.query(Picture))


async def test_the_patients_keys_are_no_score(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("1", "2", "3", "4", "0")
        await player.settle()
        assert player.screen == "GestureScreen"
        assert latest_trials(player.entries) == ()


async def test_help_shows_a_still_then_the_movement(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("h")
        assert figures(player)[0].is_blank
        await help_until(player, CueKind.PICTURE)
        assert not figures(player)[0].is_moving
        await help_until(player, CueKind.MODEL)
        await player.until(lambda: figures(player)[0].is_moving, "movement")
        await help_until(player, CueKind.TOGETHER)
        assert figures(player)[0].is_moving


async def test_without_animation_the_movement_is_two_stills(material: Material) -> None:
    plan = replace(WAVE, sitting=SittingSettings(animation=False))
    async with playing(material, plan=plan) as player:
        await player.begin()
        await help_until(player, CueKind.MODEL)
        await player.until(lambda: not figures(player)[1].is_blank, "the second still")
        first, second = figures(player)
        assert first.still != second.still
        assert not first.is_moving
        assert not second.is_moving


async def test_the_setting_of_the_machine_stops_movement_too(
    material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    # What TEXTUAL_ANIMATIONS=none sets at start.
    monkeypatch.setattr("textual.constants.TEXTUAL_ANIMATIONS", "none")
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        assert len(figures(player)) == 2


async def test_the_panel_shows_what_right_looks_like(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("s")
        for line in material.gestures["wave"].right:
            await player.until_text(line)


async def test_going_back_from_the_panel_scores_nothing(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("s", "1", "a", "escape", "escape")
        await player.until_screen("GestureScreen")
        assert latest_trials(player.entries) == ()


async def test_nothing_is_kept_before_a_score_is_chosen(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("s", "space")
        await player.settle()
        assert player.screen == "ScoreScreen"


async def test_a_score_of_three_keeps_no_ticks(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("s", "2", "j", "3", "space")
        await player.until_text("Noted.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].score == 3
        assert trial.attempts[0].ticks == ()


async def test_pain_is_ticked_and_not_scored(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("s", "0", "t", "space")
        await player.until_text("Rest the arm.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].score is None
        assert trial.attempts[0].ticks == (Tick.BODY,)


async def test_pain_has_a_key_of_its_own(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("s", "p", "space")
        await player.until_text("Rest the arm.")
        (trial,) = latest_trials(player.entries)
        assert trial.skipped
        assert trial.attempts[0].ticks == (Tick.BODY,)


async def test_scores_and_ticks_can_be_clicked(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await player.press("s")
        for words in ("Only part right", "Too big or too small", "keep   "):
            await player.until_text(words)
            line = next(at for at, text in enumerate(player.lines) if words in text)
            player.clock.wait(1)
            await player.pilot.click(offset=(player.lines[line].index(words), line))
        await player.until_text("Noted.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].score == 1
        assert trial.attempts[0].ticks == (Tick.SIZE,)


async def test_with_help_a_gesture_is_scored_at_its_level(material: Material) -> None:
    async with playing(material, plan=WAVE) as player:
        await player.begin()
        await help_until(player, CueKind.MODEL)
        await player.press("s", "3", "space")
        await player.until_text("Noted.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].cue_level == 4
        assert not trial.unaided_right
