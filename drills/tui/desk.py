"""What every screen of the program shares."""

from __future__ import annotations

from dataclasses import dataclass

from drills.core.cells import Encoding
from drills.practice.home import Home
from drills.tui.presses import Presses
from drills.tui.speaker import Speaker


@dataclass(frozen=True, slots=True, kw_only=True)
class Desk:
    """The practice folder, the voice, the watch over the keys, and how pictures are shown."""

    home: Home
    speaker: Speaker
    presses: Presses
    encoding: Encoding
    animated: bool

    @property
    def large(self) -> bool:
        return self.home.plan.sitting.large_letters
