"""Entries as rows of plain JSON values, and back, exactly.

Every field is written out by name: what is on disk changes only where someone changes this file,
and then `core.records.RECORD_FORMAT` goes up and `upgrades` gains a step.
"""

from __future__ import annotations

from datetime import datetime
from typing import Any

from drills.core.gestures import Tick
from drills.core.items import ItemSet, Kind, Target
from drills.core.meanings import Side
from drills.core.records import (
    Asked,
    Attempt,
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    Topic,
    Trial,
)
from drills.ledger.lines import Row


def row_of(entry: Entry) -> dict[str, Any]:
    """Raises: ValueError for a time without its offset."""
    row: dict[str, Any] = {"session": entry.session, "at": _time_out(entry.at)}
    match entry:
        case SessionOpened():
            return row | {
                "entry": "opened",
                "plan_name": entry.plan_name,
                "plan_version": entry.plan_version,
                "program": entry.program,
                "content_hash": entry.content_hash,
                "seed": entry.seed,
                "continues": entry.continues,
                "minutes": entry.minutes,
                "simulated": entry.simulated,
            }
        case Observation():
            return row | {
                "entry": "observation",
                "topic": entry.topic.value,
                "tiredness": entry.tiredness,
                "pain": entry.pain,
                "new_signs": entry.new_signs,
                "helped": entry.helped,
                "note": entry.note,
            }
        case Trial():
            return row | {
                "entry": "trial",
                "trial": entry.trial,
                "started_at": _time_out(entry.started_at),
                "block": entry.block,
                "asked": _asked_out(entry.asked),
                "attempts": [_attempt_out(attempt) for attempt in entry.attempts],
                "ended": entry.ended,
                "skipped": entry.skipped,
                "words_per_minute": entry.words_per_minute,
            }
        case SessionClosed():
            return row | {"entry": "closed", "reason": entry.reason.value}


def entry_of(row: Row) -> Entry:
    """Raises: ValueError, KeyError or TypeError when the row is no entry."""
    session, at = row["session"], _time_in(row["at"])
    match row["entry"]:
        case "opened":
            return SessionOpened(
                session=session,
                at=at,
                plan_name=row["plan_name"],
                plan_version=row["plan_version"],
                program=row["program"],
                content_hash=row["content_hash"],
                seed=row["seed"],
                continues=row["continues"],
                minutes=row["minutes"],
                simulated=row["simulated"],
            )
        case "observation":
            return Observation(
                session=session,
                at=at,
                topic=Topic(row["topic"]),
                tiredness=row["tiredness"],
                pain=row["pain"],
                new_signs=row["new_signs"],
                helped=row["helped"],
                note=row["note"],
            )
        case "trial":
            return Trial(
                session=session,
                trial=row["trial"],
                started_at=_time_in(row["started_at"]),
                at=at,
                block=row["block"],
                asked=_asked_in(row["asked"]),
                attempts=tuple(_attempt_in(attempt) for attempt in row["attempts"]),
                ended=row["ended"],
                skipped=row["skipped"],
                words_per_minute=row["words_per_minute"],
            )
        case "closed":
            return SessionClosed(session=session, at=at, reason=CloseReason(row["reason"]))
        case unknown:
            raise ValueError(f"{unknown!r} is no kind of entry")


def _asked_out(asked: Asked) -> dict[str, Any]:
    return {
        "item": asked.item_id,
        "kind": asked.kind.value,
        "target": {
            "kind": asked.target.kind.value,
            "name": asked.target.name,
            "group": asked.target.group,
        },
        "construction": asked.construction,
        "level": asked.level,
        "sentence": asked.sentence,
        "words": list(asked.words),
        "options": [dict(option) for option in asked.options],
        "answer": asked.answer,
        "effective_k": asked.effective_k,
        "top_level": asked.top_level,
        "side": None if asked.side is None else asked.side.value,
        "set": asked.item_set.value,
        "content_hash": asked.content_hash,
    }


def _asked_in(row: Row) -> Asked:
    target = row["target"]
    return Asked(
        item_id=row["item"],
        kind=Kind(row["kind"]),
        target=Target(kind=Kind(target["kind"]), name=target["name"], group=target["group"]),
        construction=row["construction"],
        level=row["level"],
        sentence=row["sentence"],
        words=tuple(row["words"]),
        options=tuple(dict(option) for option in row["options"]),
        answer=row["answer"],
        effective_k=row["effective_k"],
        top_level=row["top_level"],
        side=None if row["side"] is None else Side(row["side"]),
        item_set=ItemSet(row["set"]),
        content_hash=row["content_hash"],
    )


def _attempt_out(attempt: Attempt) -> dict[str, Any]:
    return {
        "right": attempt.right,
        "cue_level": attempt.cue_level,
        "at": _time_out(attempt.at),
        "choice": attempt.choice,
        "score": attempt.score,
        "ticks": [tick.value for tick in attempt.ticks],
        "replays": attempt.replays,
        "latency_ms": attempt.latency_ms,
    }


def _attempt_in(row: Row) -> Attempt:
    return Attempt(
        right=row["right"],
        cue_level=row["cue_level"],
        at=_time_in(row["at"]),
        choice=row["choice"],
        score=row["score"],
        ticks=tuple(Tick(tick) for tick in row["ticks"]),
        replays=row["replays"],
        latency_ms=row["latency_ms"],
    )


def _time_out(moment: datetime) -> str:
    if moment.utcoffset() is None:
        raise ValueError("a time in the records needs its offset from UTC")
    return moment.isoformat()


def _time_in(text: str) -> datetime:
    moment = datetime.fromisoformat(text)
    if moment.utcoffset() is None:
        raise ValueError(f"{text!r} has no offset from UTC")
    return moment
