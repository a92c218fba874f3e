"""Lines to fill in: nothing that is written is lost unsaid."""

from __future__ import annotations

from pathlib import Path

from textual import events
from textual.widgets import Input

from drills.core.material import Material
from drills.tui.room import Room
from drills.tui.screens.form import FormScreen, Line
from tests.tui.player import Player
from tests.tui.screens.test_therapist import therapist


async def form(player: Player, *, most: int) -> Input:
    lines = (Line(key="text", says="Note", most=most), Line(key="by", says="Your name"))
    player.app.push_screen(
        FormScreen(Room(player.app._desk), title="A note", lines=lines, actions=(("keep", "Keep"),))
    )
    await player.until_screen("FormScreen")
    await player.until(lambda: isinstance(player.app.screen.focused, Input), "a line")
    return player.app.screen.query_one("#line-text", Input)


async def test_a_line_that_is_full_says_so_until_there_is_room(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        line = await form(player, most=3)
        for letter in "abc":
            await player.press(letter)
        assert "Not taken" not in player.text
        await player.press("d")
        await player.until_text("Not taken: this line holds 3 letters.")
        assert line.value == "abc"
        await player.press("backspace")
        await player.until(lambda: "Not taken" not in player.text, "no trouble")


async def test_all_lines_that_are_pasted_are_kept_and_too_many_are_refused_aloud(
    material: Material, tmp_path: Path
) -> None:
    async with therapist(material, tmp_path) as player:
        line = await form(player, most=20)
        line.post_message(events.Paste("one [red]\n  two\n"))
        await player.until(lambda: line.value == "one [red] two", "both lines")
        line.post_message(events.Paste("much too long a text"))
        await player.until_text("Not taken: this line holds 20 letters.")
        assert line.value == "one [red] two"
