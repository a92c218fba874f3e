"""Words in large letters where there is room for them, else as plain text."""

from __future__ import annotations

from textual.content import Content
from textual.geometry import Size

from drills.tui.letters import lettered
from drills.tui.widgets.words import Words


class LargeWords(Words):
    """`lines` are what it says, in whichever way it is shown."""

    def enlarge(self, text: str, *, room: Size) -> bool:
        """Show `text` in large letters; as plain text, and False, where they do not fit."""
        drawn = lettered(text)
        width = max(map(len, drawn), default=0)
        if not drawn or width > room.width or len(drawn) > room.height:
            self.say((text,))
            return False
        self.lines = (text,)
        self.update(Content("\n".join(line.ljust(width) for line in drawn)))
        return True
