"""The program on an imagined terminal, played by keys, with the edges in hand."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import asynccontextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from textual import events
from textual.pilot import Pilot

from drills.core.items import Kind
from drills.core.material import Chapter, Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import Entry
from drills.ledger import TherapistFiles
from drills.pictures.cells import Encoding
from drills.practice.home import Home
from drills.practice.session import Session
from drills.practice.steps import Ask
from drills.rehearsal import MemoryRecords
from drills.tui import PracticeApp
from drills.tui.screens.asking import AskScreen
from drills.wiring import PlanFiles
from tests.edges import HandClock, QuietVoice

if TYPE_CHECKING:
    from collections.abc import AsyncIterator

PLAN = Plan(
    name="Short",
    version=3,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive"), trials=2),
        BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=1),
        BlockPlan(kind=Kind.QUESTION, names=("who-did-what",), trials=1),
        BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=1),
    ),
)
GUIDE = (
    Chapter(key="one", title="First chapter", text="# First chapter\n\nThe radio is off.\n"),
    Chapter(key="two", title="Second chapter", text="# Second chapter\n\nThe light is good.\n"),
)
Colour = tuple[int, int, int]
CHECK_IN = ("1", "2", "1", "1")
PATIENCE = 400


def plan_of(kind: Kind, *names: str, trials: int = 1, options: int = 2) -> Plan:
    """A plan of one block."""
    block = BlockPlan(kind=kind, names=names, trials=trials, options=options)
    return Plan(name="Short", version=3, locale="en-US", blocks=(block,))


@dataclass
class Player:
    """Presses keys a good second apart, and waits for what comes of them."""

    pilot: Pilot[Any]
    app: PracticeApp
    home: Home
    clock: HandClock
    voice: QuietVoice
    records: MemoryRecords

    @property
    def screen(self) -> str:
        return type(self.app.screen).__name__

    @property
    def session(self) -> Session:
        assert self.app.session is not None
        return self.app.session

    @property
    def ask(self) -> Ask:
        assert isinstance(self.session.step, Ask)
        return self.session.step

    @property
    def entries(self) -> tuple[Entry, ...]:
        return self.records.entries()

    @property
    def lines(self) -> list[str]:
        """What stands on the screen."""
        strips = self.app.screen._compositor.render_strips()
        return ["".join(segment.text for segment in strip).rstrip() for strip in strips]

    def poor_contrasts(self, contrast: Callable[[Colour, Colour], float]) -> list[str]:
        """Words on the screen whose ink and paper are less than 7:1 apart."""
        poor = []
        for strip in self.app.screen._compositor.render_strips():
            for segment in strip:
                style = segment.style
                if style is None or not any(character.isalnum() for character in segment.text):
                    continue
                if style.color is None or style.bgcolor is None:
                    continue
                ink, paper = style.color.get_truecolor(), style.bgcolor.get_truecolor()
                if contrast(tuple(ink), tuple(paper)) < 7:
                    poor.append(f"{segment.text!r} {ink} on {paper}")
        return poor

    @property
    def colours(self) -> set[Colour]:
        """Every ink and paper as it is sent to the terminal."""
        found: set[Colour] = set()
        for strip in self.app.screen._compositor.render_strips():
            for text, style, _ in strip:
                if style is not None and text:
                    found |= {
                        tuple(colour.get_truecolor())  # type: ignore[misc]
                        for colour in (style.color, style.bgcolor)
                        if colour is not None
                    }
        return found

    @property
    def text(self) -> str:
        return "\n".join(self.lines)

    async def press(self, *keys: str, seconds: float = 1.0) -> None:
        for key in keys:
            self.clock.wait(seconds)
            # Not `Pilot.press`, which waits until the whole machine is idle.
            self.app.post_message(events.Key(key, key if len(key) == 1 else None))
            await self.pilot.pause(0)

    async def settle(self) -> None:
        """Long enough for whatever a press could still bring."""
        await self.pilot.pause()
        await self.pilot.pause()

    async def until(self, holds: Callable[[], bool], what: str = "it") -> None:
        for _ in range(PATIENCE):
            if holds():
                return
            await self.pilot.pause(0.01)
        raise AssertionError(f"waited for {what}; on screen was {self.screen}:\n{self.text}")

    async def until_screen(self, name: str) -> None:
        await self.until(lambda: self.screen == name, name)

    async def until_text(self, text: str) -> None:
        await self.until(lambda: text in self.text, repr(text))

    async def begin(self) -> None:
        """From the first screen through the check-in to the first trial, all being well."""
        await self.press("1")
        await self.answer_cards(*CHECK_IN)
        await self.until_asked()

    async def answer_cards(self, *keys: str) -> None:
        """One key a card, each once its card is there."""
        for key in keys:
            await self.until_screen("CardScreen")
            card = self.app.screen
            await self.press(key)
            await self.until(lambda: self.app.screen is not card, "the next card")  # noqa: B023

    async def until_asked(self) -> None:
        await self.until(
            lambda: (
                isinstance(self.app.screen, AskScreen)
                and not self.app.screen.is_over
                and self.app.screen.is_asked
            ),
            "a trial",
        )
        await self.until_text("hear again")

    async def answer(self, *, right: bool) -> None:
        """A right or the first wrong option that is still there."""
        ask = self.ask
        choice = next(
            index
            for index in range(len(ask.item.options))
            if (index == ask.item.answer) is right and index not in ask.removed
        )
        await self.press(str(choice + 1))

    async def go_on(self) -> None:
        """Past the gap, to whatever comes next."""
        before = self.app.screen
        await self.press("space", seconds=5)
        await self.until(lambda: self.app.screen is not before, "the next step")


@asynccontextmanager
async def playing(
    material: Material,
    *,
    plan: Plan = PLAN,
    size: tuple[int, int] = (80, 24),
    records: MemoryRecords | None = None,
    voice: QuietVoice | None = None,
    start: str = "home",
    folder: Path | None = None,
) -> AsyncIterator[Player]:
    """The program, running; closed at the end.   folder: for what the therapist decides."""
    clock, listens = HandClock(), voice or QuietVoice()
    kept = records if records is not None else MemoryRecords()
    seeds: Iterator[int] = iter(range(7, 100))
    home = Home(
        plan=plan,
        material=lambda: material,
        records=kept,
        clock=clock,
        voice=listens,
        guide=lambda: GUIDE,
        program="0",
        new_seed=lambda: next(seeds),
        folder=folder,
        therapist_log=None if folder is None else TherapistFiles(folder),
        plan_desk=None if folder is None else PlanFiles(folder, closed=lambda: ""),
    )
    app = PracticeApp(
        home,
        start="practice" if start == "practice" else "home",
        encoding=Encoding.BLOCKS,
    )
    async with app.run_test(size=size) as pilot:
        player = Player(pilot=pilot, app=app, home=home, clock=clock, voice=listens, records=kept)
        await pilot.pause()
        yield player
        # No screen may be on its way when the program ends under it.
        await pilot.pause()
