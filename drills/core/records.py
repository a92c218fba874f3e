"""What is kept: entries of the append-only records, and the days they belong to.

A trial is written again, whole, after each response; the last entry of a trial id counts. So
whatever feedback was shown, the trial as it stood then is on disk.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from enum import StrEnum
from typing import TYPE_CHECKING, Any

from drills.core.gestures import Tick
from drills.core.kinds import Foil, ItemSet, Kind, Side, Target

if TYPE_CHECKING:
    from drills.core.items import Item

RECORD_FORMAT = 1


class Topic(StrEnum):
    """When something was noted; RULE: by the program, which changed the session by the plan."""

    CHECK_IN = "check-in"
    REST = "rest"
    FINISH = "finish"
    RULE = "rule"


class CloseReason(StrEnum):
    FINISHED = "finished"
    STOPPED = "stopped"
    TIRED = "tired"
    UNWELL = "unwell"


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """What later reading needs of an item: no more than was shown and why."""

    item_id: str
    kind: Kind
    target: Target
    construction: str
    level: str
    sentence: str
    words: tuple[str, ...]
    options: tuple[Mapping[str, Any], ...]
    answer: int | None
    effective_k: int
    top_level: int
    side: Side | None
    item_set: ItemSet
    content_hash: str
    context: str = ""

    @classmethod
    def of(cls, item: Item) -> Asked:
        right = None if item.answer is None else item.options[item.answer].scene
        scene = right or item.picture
        return cls(
            item_id=item.id,
            kind=item.kind,
            target=item.target,
            construction=item.construction,
            level=item.level,
            sentence=item.sentence,
            words=item.words,
            options=tuple(option.as_json() for option in item.options),
            answer=item.answer,
            effective_k=item.effective_k,
            top_level=item.top_level,
            side=None if scene is None else scene.side,
            item_set=item.item_set,
            content_hash=item.content_hash,
            context=item.context,
        )

    def foil(self, choice: int) -> Foil | None:
        """Why option `choice` is wrong; None for the right one."""
        foil = self.options[choice]["foil"]
        return None if foil is None else Foil(foil)


@dataclass(frozen=True, slots=True, kw_only=True)
class Attempt:
    """One response within a trial.

    choice: index of the option; None for a gesture.   score: 0 to 3, gestures only.
    cue_level: help given before it.   replays: times heard again since the last response.
    latency_ms: from the end of the spoken prompt, as measured; None when it was not.
    """

    right: bool
    cue_level: int
    at: datetime
    choice: int | None = None
    score: int | None = None
    ticks: tuple[Tick, ...] = ()
    replays: int = 0
    latency_ms: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionOpened:
    """at: aware, with the local offset.   seed: deals the same session again.

    continues: the session that this one goes on with, the same day.
    minutes: asked for when other than prescribed.   simulated: no person answered.
    check: the list that was asked, such as "A" or "B1", without help; None for practice.
    """

    session: str
    at: datetime
    plan_name: str
    plan_version: int
    program: str
    content_hash: str
    seed: int
    continues: str | None = None
    minutes: int | None = None
    simulated: bool = False
    check: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Observation:
    """What the patient or the caregiver says: None where nothing was asked or answered.

    tiredness: 1 (fresh) to 5.   helped: someone helped with an answer.
    """

    session: str
    at: datetime
    topic: Topic
    tiredness: int | None = None
    pain: bool | None = None
    new_signs: bool | None = None
    helped: bool | None = None
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Trial:
    """One giving of an item.

    started_at: when it was shown; `at` of the last attempt ends its span.
    ended: the trial is over (right, answer shown, scored, or skipped); False while cues go on.
    skipped: ended without an answer, by the patient's or caregiver's wish.
    block: 0-based block of the session.   words_per_minute: of the voice, None when silent.
    help_at_start: level of help that it began with, by the plan or a rule; what was asked for
    comes later.
    """

    session: str
    trial: str
    started_at: datetime
    at: datetime
    block: int
    asked: Asked
    attempts: tuple[Attempt, ...]
    ended: bool
    skipped: bool = False
    words_per_minute: int | None = None
    help_at_start: int = 0

    @property
    def first(self) -> Attempt | None:
        return self.attempts[0] if self.attempts else None

    @property
    def unaided_right(self) -> bool:
        """Right at the first response with no cue before it.

        A gesture counts when scored 3 or 2 with no cue.
        """
        first = self.first
        return first is not None and first.right and first.cue_level == 0

    @property
    def level_at_success(self) -> int | None:
        """Cue level of the right response; None for never. The shown answer is no success."""
        for attempt in self.attempts:
            if attempt.right and (
                self.asked.top_level == 0 or attempt.cue_level < self.asked.top_level
            ):
                return attempt.cue_level
        return None

    @property
    def aided_right(self) -> bool:
        """Right at any level below the top, level 0 included."""
        return self.level_at_success is not None

    @property
    def counts(self) -> bool:
        """There is a first response to judge, also when the trial was then left out.

        A gesture that pain, weakness or reach hindered is noted and not judged.
        """
        first = self.first
        return first is not None and Tick.BODY not in first.ticks

    @property
    def could_be_alone(self) -> bool:
        """It counts, and nobody but the person brought help into it before the first response."""
        return self.counts and self.help_at_start == 0


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionClosed:
    session: str
    at: datetime
    reason: CloseReason


Entry = SessionOpened | Observation | Trial | SessionClosed


def practice_day(at: datetime, *, turns_at_hour: int = 4) -> date:
    """The day a moment belongs to; a practice day begins at `turns_at_hour`, local time."""
    return (at - timedelta(hours=turns_at_hour)).date()


def latest_trials(entries: Iterable[Entry]) -> tuple[Trial, ...]:
    """Each trial as last written, in the order in which the trials began."""
    latest: dict[str, Trial] = {}
    for entry in entries:
        if isinstance(entry, Trial):
            latest[entry.trial] = entry
    return tuple(latest.values())
