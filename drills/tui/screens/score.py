"""The caregiver's panel: what right looks like, a score, and what went wrong."""

from __future__ import annotations

from dataclasses import dataclass

from textual.app import ComposeResult
from textual.containers import Vertical

from drills.core.gestures import Gesture, Tick
from drills.tui.cards import PAIN_KEY, PAIN_WORDS, SCORES, TICK_LETTERS, TICKS
from drills.tui.desk import Desk
from drills.tui.screens.keyed import KeyedScreen
from drills.tui.widgets.choices import Choice, Choices
from drills.tui.widgets.key_bar import Hint, KeyBar
from drills.tui.widgets.words import Words

CAREGIVER_ASKED = "Helper: score this gesture."
_KEEP = Hint(key="space", shown="Space", label="keep", calls=True)
_BACK = Hint(key="escape", shown="Esc", label="back, no score")


@dataclass(frozen=True, slots=True, kw_only=True)
class Score:
    score: int
    ticks: tuple[Tick, ...] = ()


class ScoreScreen(KeyedScreen[Score | None]):
    """Returns what is kept, or None to go back without a score.   asks: who is to score what."""

    CSS_PATH = "score.tcss"

    def __init__(self, gesture: Gesture, desk: Desk, *, asks: str = CAREGIVER_ASKED) -> None:
        super().__init__()
        self._asks = asks
        self._gesture = gesture
        self._desk = desk
        self._score: int | None = None
        self._ticks: set[Tick] = set()
        self._has_pain = False

    def compose(self) -> ComposeResult:
        with Vertical(classes="-panel"):
            yield Words((f"{self._asks}   {self._gesture.name}",), classes="-title")
            yield Words(
                ("Right looks like this:", *(f"- {line}" for line in self._gesture.right)),
                classes="-right",
            )
            with Vertical(classes="-scores"):
                yield Choices(
                    [
                        *((str(score), words) for score, words in SCORES.items()),
                        (PAIN_KEY, PAIN_WORDS),
                    ],
                    classes="-close",
                )
            with Vertical(classes="-ticks"):
                yield Words(("What was not right? Tick all that fit.",))
                yield Choices(
                    [(letter, TICKS[tick]) for letter, tick in TICK_LETTERS.items()],
                    classes="-close",
                )
            yield Words(classes="-chosen")
        yield KeyBar((_BACK,))

    def on_mount(self) -> None:
        self._show()

    def pressed(self, key: str) -> None:
        if not self._desk.presses.is_meant(key):
            return
        if key == "escape":
            self._back()
        elif key == "space":
            self._keep()
        elif key.isdecimal() and int(key) in SCORES:
            self._score, self._has_pain = int(key), False
            self._show()
        elif key == PAIN_KEY:
            self._score, self._has_pain = min(SCORES), True
            self._show()
        elif key in TICK_LETTERS and self._asks_why:
            self._ticks ^= {TICK_LETTERS[key]}
            self._show()

    @property
    def _asks_why(self) -> bool:
        return self._score is not None and self._score < max(SCORES) and not self._has_pain

    def _back(self) -> None:
        """From the ticks to the scores, from the scores to the gesture."""
        if self._score is None:
            self.dismiss(None)
        else:
            self._score = None
            self._show()

    def _keep(self) -> None:
        if self._score is None:
            return
        ticks = tuple(tick for tick in Tick if tick in self._ticks) if self._asks_why else ()
        if self._has_pain:
            ticks = (Tick.BODY,)
        self.dismiss(Score(score=self._score, ticks=ticks))

    def _show(self) -> None:
        self.set_class(self._asks_why, "-asks-why")
        for choice in self.query(Choice):
            if choice.key in TICK_LETTERS:
                choice.tick(is_on=TICK_LETTERS[choice.key] in self._ticks)
            else:
                score = PAIN_KEY if self._has_pain else str(self._score)
                choice.tick(is_on=choice.key == score)
        chosen = self.query_one(".-chosen", Words)
        if self._score is None:
            chosen.say(())
        else:
            words = PAIN_WORDS if self._has_pain else f"Score {self._score}: {SCORES[self._score]}"
            chosen.say((f"{words}. Space keeps it.",))
        hints = (_BACK,) if self._score is None else (_KEEP, _BACK)
        self.call_later(self.query_one(KeyBar).show, hints)
