"""One trial being asked: the responses so far, the help that shows, what comes next."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from datetime import datetime

from drills.core.gestures import Tick
from drills.core.items import Cue, CueKind, Item, Kind
from drills.core.records import Asked, Attempt, Trial


@dataclass(frozen=True, slots=True, kw_only=True)
class Asking:
    """A trial that runs; every response or cue gives a new value.

    cue_index: index into the item's ladder, -1 for no help yet.
    """

    session: str
    trial: str
    block: int
    item: Item
    started_at: datetime
    words_per_minute: int | None
    cue_index: int = -1
    attempts: tuple[Attempt, ...] = ()
    replays: int = 0
    removed: frozenset[int] = field(default_factory=frozenset)
    help_at_start: int = 0
    over: bool = False
    skipped: bool = False

    @property
    def cue(self) -> Cue | None:
        return self.item.cues[self.cue_index] if self.cue_index >= 0 else None

    @property
    def cue_level(self) -> int:
        return 0 if self.cue is None else self.cue.level

    @property
    def is_answer_shown(self) -> bool:
        return self.cue is not None and self.cue.kind is CueKind.ANSWER

    def heard_again(self) -> Asking:
        return replace(self, replays=self.replays + 1)

    def helped(self) -> Asking:
        """One step more of help; the same when all help is given."""
        if self.cue_index + 1 >= len(self.item.cues):
            return self
        cue = self.item.cues[self.cue_index + 1]
        removed = self.removed.union(cue.removes)
        if cue.kind is CueKind.ANSWER and self.item.answer is not None:
            removed = frozenset(range(len(self.item.options))) - {self.item.answer}
        return replace(self, cue_index=self.cue_index + 1, removed=removed)

    def begun_with(self, level: int) -> Asking:
        """The trial that begins with all help up to `level`, where the item has it."""
        asking = self
        while (
            asking.cue_index + 1 < len(self.item.cues)
            and self.item.cues[asking.cue_index + 1].level <= level
        ):
            asking = asking.helped()
        return replace(asking, help_at_start=asking.cue_level)

    def may_choose(self, choice: int) -> bool:
        return 0 <= choice < len(self.item.options) and choice not in self.removed

    def chosen(self, choice: int, *, at: datetime, latency_ms: int | None) -> Asking:
        """The trial after option `choice`; wrong brings the next cue.

        Raises: ValueError when the option is not there to choose.
        """
        if not self.may_choose(choice):
            raise ValueError(f"option {choice} is not there to choose")
        right = choice == self.item.answer
        after = self._with(
            Attempt(
                right=right,
                cue_level=self.cue_level,
                at=at,
                choice=choice,
                replays=self.replays,
                latency_ms=latency_ms,
            )
        )
        # A check gives no help, so it goes on whatever the answer.
        is_over = right or not self.item.cues
        return replace(after, over=True) if is_over else after.helped()

    def scored(self, score: int, ticks: tuple[Tick, ...], *, at: datetime) -> Asking:
        """The gesture after the caregiver's score, 0 to 3.

        A tick for pain or weakness (`Tick.BODY`) means that nothing is scored. There is no
        latency: the time is the caregiver's.
        """
        if self.item.kind is not Kind.GESTURE or score not in range(4):
            raise ValueError(f"{self.item.kind} cannot be scored {score}")
        not_scored = Tick.BODY in ticks
        after = self._with(
            Attempt(
                right=score >= 2 and not not_scored,
                cue_level=self.cue_level,
                at=at,
                score=None if not_scored else score,
                ticks=ticks,
                replays=self.replays,
            )
        )
        return replace(after, over=True, skipped=not_scored)

    def passed_over(self) -> Asking:
        return replace(self, over=True, skipped=True)

    def _with(self, attempt: Attempt) -> Asking:
        return replace(self, attempts=(*self.attempts, attempt), replays=0)

    def as_trial(self, at: datetime) -> Trial:
        return Trial(
            session=self.session,
            trial=self.trial,
            started_at=self.started_at,
            at=at,
            block=self.block,
            asked=Asked.of(self.item),
            attempts=self.attempts,
            ended=self.over,
            skipped=self.skipped,
            words_per_minute=self.words_per_minute,
            help_at_start=self.help_at_start,
        )
