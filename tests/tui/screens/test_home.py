"""The first screen and what it opens."""

from __future__ import annotations

from unittest.mock import patch

import pytest

from drills.core.material import Material
from drills.core.problems import BadInput, Problem
from drills.core.words import Sort
from drills.pictures import ANIMAL_KEYS, PEOPLE_KEYS
from drills.practice.home import Home, Today
from drills.practice.session import Session
from drills.rehearsal import MemoryRecords
from drills.tui.screens.home import about_today, ways_on
from drills.tui.screens.people import pairs_of
from drills.tui.widgets.picture import Picture
from tests.edges import QuietVoice
from tests.tui.player import playing


def test_a_day_just_begun_says_how_long_practice_takes() -> None:
    today = Today(minutes=25, sessions_done=0, resumable=0)
    assert about_today(today, emergency_number="911") == ("Today's practice", "About 25 minutes.")
    assert [key for key, _ in ways_on(today)] == ["1", "2", "3", "4"]


def test_a_session_begun_today_offers_to_go_on_and_to_start_anew() -> None:
    ways = dict(ways_on(Today(minutes=25, sessions_done=0, resumable=12)))
    assert ways["1"] == "Go on with today's practice"
    assert ways["n"] == "Start a new practice"


def test_everyone_in_the_pictures_is_met(material: Material) -> None:
    met = {noun.key for left, right, _ in pairs_of(material.lexicon) for noun in (left, right)}
    figures = {
        noun.drawn_as or noun.key
        for noun in material.lexicon.nouns.values()
        if noun.sort is not Sort.THING
    }
    assert met == figures & {*PEOPLE_KEYS, *ANIMAL_KEYS}
    assert len(met) >= 12


async def test_the_people_are_shown_with_their_names_page_by_page(material: Material) -> None:
    voice = QuietVoice("ready")
    pairs = list(pairs_of(material.lexicon))
    async with playing(material, voice=voice) as player:
        await player.press("2")
        for first, second in zip(pairs[::2], pairs[1::2], strict=False):
            for noun in (*first[:2], *second[:2]):
                await player.until_text(noun.singular)
                assert noun.singular in voice.said[-1]
            await player.until(
                lambda: not any(p.is_blank for p in player.app.screen.query(Picture))
            )
            await player.press("1")
        await player.press("2")
        await player.until_screen("HomeScreen")


async def test_the_week_is_the_digest_and_scrolls(material: Material) -> None:
    async with playing(material) as player:
        await player.press("3")
        await player.until_text("PRACTICE DIGEST")
        top = player.text
        await player.press("pagedown")
        await player.until(lambda: player.text != top, "the next page")
        await player.press("escape")
        await player.until_screen("HomeScreen")


async def test_the_guide_opens_its_chapters_by_number(material: Material) -> None:
    async with playing(material) as player:
        await player.press("g")
        await player.until_text("The radio is off.")
        await player.press("2")
        await player.until_text("The light is good.")


async def test_a_session_that_cannot_start_says_why(
    material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    def start(_home: Home, *, resume: bool, minutes: int | None = None) -> Session:
        raise BadInput("The plan asks for [something] that is not there.")

    monkeypatch.setattr(Home, "start", start)
    async with playing(material) as player:
        await player.press("1")
        await player.until_text("The plan asks for [something] that is not there.")
        await player.press("1")
        await player.until_screen("HomeScreen")


def broken() -> Home:
    raise BadInput([Problem(where=f"file-{n}.toml", message="is [broken].") for n in range(9)])


@pytest.mark.parametrize(
    ("what", "key", "says"),
    [
        ("guide", "g", "The guide cannot be shown."),
        ("material", "2", "Nobody can be shown."),
        ("material", "1", "Practice cannot start."),
    ],
)
async def test_what_broken_content_keeps_away_is_told_with_a_way_back(
    what: str, key: str, says: str, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Home, what, property(lambda _: broken()))
    async with playing(material) as player:
        await player.until_screen("HomeScreen")
        await player.press(key)
        await player.until_text(says)
        await player.until_text("file-0.toml: is [broken].")
        await player.until_text("And 6 more.")
        await player.press("g", "1")
        await player.until_screen("HomeScreen")


async def test_a_week_that_broken_content_keeps_away_is_told(
    material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Home, "digest", lambda *_: broken())
    async with playing(material) as player:
        await player.press("3")
        await player.until_text("file-0.toml: is [broken].")
        await player.press("escape")
        await player.until_screen("HomeScreen")


async def test_a_day_that_broken_content_keeps_away_is_told_and_offers_no_practice(
    material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Home, "today", lambda _: broken())
    async with playing(material, start="practice") as player:
        await player.until_text("Practice cannot start.")
        await player.press("1")
        await player.until_screen("HomeScreen")
        await player.until_text("file-0.toml: is [broken].")
        await player.press("1")
        await player.settle()
        assert player.screen == "HomeScreen"
        await player.press("4")
        await player.until(lambda: player.app.return_value == 0, "the end")


def test_a_day_of_new_signs_offers_no_practice() -> None:
    today = Today(minutes=25, sessions_done=0, resumable=4, new_signs=True)
    assert about_today(today, emergency_number="112") == (
        "New signs were told today.",
        "Call 112 now.",
    )
    assert [key for key, _ in ways_on(today)] == ["3", "4"]


async def test_leave_ends_the_program(material: Material) -> None:
    async with playing(material) as player:
        await player.until_text("Leave")
        await player.press("4")
        await player.until(lambda: player.app.return_value is not None, "the end")
        assert player.app.return_value == 0
        assert player.entries == ()


async def test_a_voice_that_cannot_be_heard_is_told_to_the_helper(material: Material) -> None:
    async with playing(material, voice=QuietVoice("no sound device")) as player:
        await player.until_text("nothing is said aloud: no sound")


async def test_no_practice_starts_where_nothing_can_be_kept(material: Material) -> None:
    records = MemoryRecords()
    with patch.object(MemoryRecords, "reason", "another program is writing here"):
        async with playing(material, records=records) as player:
            await player.until_text("no practice now, because another")
            await player.press("1")
            assert "Start" not in player.text
            assert not player.entries
