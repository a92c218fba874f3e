"""One invented week whose numbers were counted by hand; see `week`."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from drills.core.due import Due
from drills.core.gestures import Tick
from drills.core.items import Kind, Target
from drills.core.plans import BlockPlan, Plan
from drills.core.records import (
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    Topic,
)
from drills.digest import Digest, make
from tests.measures.made import ACTIVE, MONDAY, PASSIVE, WAVE, asked, trial

FIRST, LAST = date(2026, 11, 23), date(2026, 11, 29)
CLOZE = Target(kind=Kind.CLOZE, name="C3", group="in/on")
LABELS = {
    "full_passive": "Passive sentences",
    "active": "Active sentences",
    "C3": "Place words",
    "wave": "wave goodbye",
}
PLAN = Plan(
    name="Invented plan",
    version=2,
    locale="en-GB",
    therapist="Invented Therapist",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full_passive"), trials=12),
        BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=4),
        BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=4),
    ),
)


def opened(
    session: str,
    at: datetime,
    *,
    continues: str | None = None,
    simulated: bool = False,
    program: str = "0.2.0",
) -> SessionOpened:
    return SessionOpened(
        session=session,
        at=at,
        plan_name="Invented plan",
        plan_version=2,
        program=program,
        content_hash="c0ffee",
        seed=7,
        continues=continues,
        simulated=simulated,
    )


def said(session: str, at: datetime, topic: Topic = Topic.CHECK_IN, **what) -> Observation:
    return Observation(session=session, at=at, topic=topic, **what)


def closed(session: str, at: datetime, reason: CloseReason = CloseReason.FINISHED) -> SessionClosed:
    return SessionClosed(session=session, at=at, reason=reason)


def week(*, simulated: bool = False, note: str = "Slept badly.") -> list[Entry]:
    """Monday and Tuesday.

    Passive pictures (two options): 2 of 10 right alone, 7 reversed roles on the first response and
    one wrong verb; 8 of 10 with help. Active pictures: 10 of 10. Place words: 2 of 4.
    Gesture: 3, 2, 0 (grip) and one that pain hindered. 28 trials of 30 s: 14 active minutes of 16,
    from opening to closing.
    """
    tuesday = MONDAY + timedelta(days=1)
    entries: list[Entry] = [
        opened("m", MONDAY, simulated=simulated),
        said("m", MONDAY, tiredness=1, pain=False, new_signs=False, note=note),
    ]
    at = MONDAY

    def give(session: str, *responses, **more) -> None:
        nonlocal at
        at += timedelta(seconds=30)
        entries.append(trial(*responses, at=at, seconds=30, session=session, **more))

    passive = asked(PASSIVE, foils=("reversal", "verb"), options=3, effective_k=2)
    for _ in range(2):
        give("m", "right", of=passive)
    for _ in range(6):
        give("m", 1, 0, of=passive, levels=(0, 3))
    give("m", 1, 1, 0, of=passive, levels=(0, 4, 7))
    give("m", 2, 2, 0, of=passive, levels=(0, 4, 7))
    finished = at + timedelta(seconds=30)
    entries.append(said("m", finished, Topic.FINISH, tiredness=3, helped=True))
    entries.append(closed("m", at + timedelta(minutes=1)))

    at = tuesday
    entries += [opened("t", tuesday), said("t", tuesday, tiredness=2, pain=True, new_signs=False)]
    for _ in range(10):
        give("t", "right", target=ACTIVE)
    word = asked(CLOZE, foils=("word",), top_level=5, sentence="The cup is ____ the box.")
    for _ in range(2):
        give("t", "right", of=word)
    for _ in range(2):
        give("t", "wrong", of=word)
    give("t", 3, target=WAVE)
    give("t", 2, target=WAVE)
    give("t", 0, target=WAVE, ticks=(Tick.GRIP,))
    give("t", 0, target=WAVE, ticks=(Tick.BODY,))
    entries.append(closed("t", at + timedelta(minutes=1), CloseReason.STOPPED))
    return entries


def week_before() -> list[Entry]:
    """Passive pictures: 5 of 10 right alone, on the Wednesday before; active ones: 2 of 2."""
    at = MONDAY - timedelta(days=5)
    entries: list[Entry] = [opened("b", at)]
    for response in ("right",) * 5 + ("wrong",) * 5:
        entries.append(trial(response, at=at, session="b"))
    for _ in range(2):
        entries.append(trial("right", at=at, target=ACTIVE, session="b"))
    return [*entries, closed("b", at + timedelta(minutes=9))]


def due(target: Target, day: date, *, run: int = 0, last: date | None = FIRST) -> Due:
    return Due(target=target, day=day, rung=0, run=run, last=last, reason="told")


DUES = (
    due(PASSIVE, date(2026, 11, 25), run=0),
    due(ACTIVE, date(2026, 12, 2), run=10, last=date(2026, 11, 24)),
    due(WAVE, date(2026, 12, 20)),
    due(CLOZE, date(2026, 11, 29), last=None),
)


def digest(
    entries: Sequence[Entry] | None = None,
    *,
    upcoming: Sequence[Due] = DUES,
    earlier: Sequence[Entry] | None = None,
    today: date | None = None,
    plan: Plan = PLAN,
    labels: dict[str, str] | None = None,
) -> Digest:
    return make(
        week() if entries is None else entries,
        plan,
        first=FIRST,
        last=LAST,
        upcoming=upcoming,
        labels=LABELS if labels is None else labels,
        earlier=week_before() if earlier is None else earlier,
        today=today,
    )
