"""What works on every screen, and what no screen may do."""

from __future__ import annotations

from collections.abc import Awaitable, Callable

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from textual import events
from textual.content import Content

from drills.core.items import Kind
from drills.core.material import Material
from drills.core.plans import Plan, SafetySettings
from drills.tui.widgets.choices import Choice
from drills.tui.widgets.words import Words
from tests.tui.player import PLAN, Player, plan_of, playing

Way = Callable[[Player], Awaitable[None]]


async def stay(player: Player) -> None:
    await player.until_screen("HomeScreen")


async def to_people(player: Player) -> None:
    await player.press("2")
    await player.until_screen("PeopleScreen")


async def to_week(player: Player) -> None:
    await player.press("3")
    await player.until_screen("WeekScreen")


async def to_check_in(player: Player) -> None:
    await player.press("1")
    await player.until_screen("CardScreen")


async def to_trial(player: Player) -> None:
    await player.begin()
    await player.until_screen("TrialScreen")


async def to_over(player: Player) -> None:
    await player.begin()
    await player.answer(right=True)
    await player.until_text("Space: go on.")


async def to_pause(player: Player) -> None:
    await player.begin()
    await player.press("p")
    await player.until_text("Leave this one out")


async def to_rest(player: Player) -> None:
    await to_pause(player)
    await player.press("2")
    await player.until_text("Take your time.")


async def to_finish(player: Player) -> None:
    await to_pause(player)
    await player.press("3")
    await player.until_text("We stop here today.")


async def to_gesture(player: Player) -> None:
    await player.begin()
    await player.until_screen("GestureScreen")


async def to_one_in_place(player: Player) -> None:
    await player.begin()
    await player.press("1")
    await player.until_text("Esc undo")


async def to_score(player: Player) -> None:
    await to_gesture(player)
    await player.press("s")
    await player.until_screen("ScoreScreen")


async def to_ticks(player: Player) -> None:
    await to_score(player)
    await player.press("1", "a")
    await player.until_text("[x] No movement came")


async def to_guide(player: Player) -> None:
    await player.press("g", "2")
    await player.until_text("The light is good.")


async def to_signs(player: Player) -> None:
    await player.press("e")
    await player.until_screen("SignsScreen")


GESTURE = plan_of(Kind.GESTURE, "wave")
ACTED = plan_of(Kind.ACT_OUT, "active")
PLACES: list[tuple[Way, Plan]] = [
    (stay, PLAN),
    (to_people, PLAN),
    (to_week, PLAN),
    (to_check_in, PLAN),
    (to_trial, PLAN),
    (to_over, PLAN),
    (to_pause, PLAN),
    (to_rest, PLAN),
    (to_finish, PLAN),
    (to_gesture, GESTURE),
    (to_one_in_place, ACTED),
    (to_score, GESTURE),
    (to_ticks, GESTURE),
    (to_guide, PLAN),
    (to_signs, PLAN),
]


def named(value: object) -> str | None:
    return getattr(value, "__name__", None)


@pytest.mark.parametrize(("way", "plan"), PLACES, ids=named)
async def test_guide_and_stroke_signs_open_from_here_and_lose_nothing(
    way: Way, plan: Plan, material: Material
) -> None:
    async with playing(material, plan=plan) as player:
        await way(player)
        await player.settle()
        here, before, records = player.app.screen, player.text, player.entries
        for key, hint, page, close in (
            ("e", "E stroke signs", "SignsScreen", "escape"),
            ("g", "G guide", "GuideScreen", "space"),
        ):
            if player.screen == page:
                continue
            assert hint in before
            await player.press(key)
            await player.until_screen(page)
            await player.press(close)
            await player.until(lambda: player.app.screen is here, "back")
        await player.until(lambda: player.text == before, f"the same screen:\n{before}")
        assert player.entries == records


@pytest.mark.parametrize("close", ["escape", "space", "the same key", "its capital"])
async def test_guide_and_stroke_signs_close_with(close: str, material: Material) -> None:
    async with playing(material) as player:
        await player.until_screen("HomeScreen")
        for key, page in (("e", "SignsScreen"), ("g", "GuideScreen")):
            await player.press(key)
            await player.until_screen(page)
            await player.press({"the same key": key, "its capital": key.upper()}.get(close, close))
            await player.until_screen("HomeScreen")


async def test_the_card_of_stroke_signs_has_the_plans_number(material: Material) -> None:
    plan = plan_of(Kind.CLOZE, "C3")
    plan = Plan(
        name=plan.name,
        version=1,
        locale="en-GB",
        blocks=plan.blocks,
        safety=SafetySettings(emergency_number="112 [now]"),
    )
    async with playing(material, plan=plan) as player:
        await player.press("e")
        await player.until_text("Call 112 [now] now.")


async def test_the_card_of_stroke_signs_opens_in_a_small_window_too(material: Material) -> None:
    async with playing(material, size=(60, 14)) as player:
        await player.until_screen("CoverScreen")
        await player.press("e")
        await player.until_text("Call 911 now.")
        await player.press("e")
        await player.until_screen("CoverScreen")
        await player.pilot.resize_terminal(80, 24)
        await player.until_screen("HomeScreen")


@pytest.mark.parametrize(("key", "page"), [("e", "SignsScreen"), ("g", "GuideScreen")])
async def test_a_double_or_held_key_does_not_close_what_it_opened(
    key: str, page: str, material: Material
) -> None:
    async with playing(material) as player:
        await player.until_screen("HomeScreen")
        for seconds in (1.0, 0.1, 0.65, *(0.033 for _ in range(20))):
            await player.press(key, seconds=seconds)
        await player.settle()
        assert player.screen == page
        assert len(player.app.screen_stack) == 3
        await player.press(key)
        await player.until_screen("HomeScreen")


@pytest.mark.parametrize(("key", "page"), [("e", "SignsScreen"), ("g", "GuideScreen")])
async def test_two_presses_at_once_open_one_page(key: str, page: str, material: Material) -> None:
    async with playing(material) as player:
        await player.until_screen("HomeScreen")
        player.clock.wait(1)
        for _ in range(2):
            player.app.screen.post_message(events.Key(key, key))
        await player.until_screen(page)
        await player.settle()
        assert [type(screen).__name__ for screen in player.app.screen_stack][-2:] == [
            "HomeScreen",
            page,
        ]


async def test_guide_and_signs_do_not_pile_up(material: Material) -> None:
    async with playing(material) as player:
        await player.until_screen("HomeScreen")
        for key in "egegegeg":
            await player.press(key)
        await player.settle()
        assert len(player.app.screen_stack) <= 4


@settings(deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(text=st.text(st.characters(exclude_categories=["C", "Z"]), min_size=1))
def test_text_from_outside_is_shown_as_it_is(text: str) -> None:
    bracketed = f"[{text}] [bold]{text}[/bold] [@click=app.quit]"
    shown = Words((bracketed,)).render()
    assert isinstance(shown, Content)
    assert shown.plain == bracketed
    choice = Choice("1", bracketed).render()
    assert isinstance(choice, Content)
    assert choice.plain.endswith(bracketed)


async def test_bracketed_words_of_a_card_reach_the_screen(material: Material) -> None:
    async with playing(material) as player:
        await player.press("1")
        await player.until_text("Glasses on?")
        words = player.app.screen.query_one(".-question", Words)
        words.say(("[cup] and [red]box[/red]",))
        await player.until_text("[cup] and [red]box[/red]")
