"""Entries as rows of plain JSON values, and back, exactly.

Every field is written out by name: what is on disk changes only where someone changes this file,
and then `core.records.RECORD_FORMAT` goes up and `upgrades` gains a step.
"""

from __future__ import annotations

from datetime import datetime
from typing import Any

from drills.core.gestures import Tick
from drills.core.kinds import Foil, ItemSet, Kind, Side, Target
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
from drills.ledger import values
from drills.ledger.lines import Row


def row_of(entry: Entry) -> dict[str, Any]:
    """Raises: ValueError for a time without its offset."""
    match entry:
        case SessionOpened():
            return {
                "entry": "opened",
                "session": entry.session,
                "at": time_out(entry.at),
                "plan_name": entry.plan_name,
                "plan_version": entry.plan_version,
                "program": entry.program,
                "content_hash": entry.content_hash,
                "seed": entry.seed,
                "continues": entry.continues,
                "minutes": entry.minutes,
                "simulated": entry.simulated,
                # Written where it is one, so that records of practice are as they always were.
                **({} if entry.check is None else {"check": entry.check}),
            }
        case Observation():
            return {
                "entry": "observation",
                "session": entry.session,
                "at": time_out(entry.at),
                "topic": entry.topic.value,
                "tiredness": entry.tiredness,
                "pain": entry.pain,
                "new_signs": entry.new_signs,
                "helped": entry.helped,
                "note": entry.note,
            }
        case Trial():
            return {
                "entry": "trial",
                "session": entry.session,
                "at": time_out(entry.at),
                "trial": entry.trial,
                "started_at": time_out(entry.started_at),
                "block": entry.block,
                "asked": asked_out(entry.asked),
                "attempts": [_attempt_out(attempt) for attempt in entry.attempts],
                "ended": entry.ended,
                "skipped": entry.skipped,
                "words_per_minute": entry.words_per_minute,
                # Most begin without help, and older rows do not tell.
                **({"help_at_start": entry.help_at_start} if entry.help_at_start else {}),
            }
        case SessionClosed():
            return {
                "entry": "closed",
                "session": entry.session,
                "at": time_out(entry.at),
                "reason": entry.reason.value,
            }


def entry_of(row: Row) -> Entry:
    """Raises: ValueError, KeyError or TypeError when the row is no entry."""
    session, at = values.text(row, "session"), values.moment(row, "at")
    match row["entry"]:
        case "opened":
            return SessionOpened(
                session=session,
                at=at,
                plan_name=values.text(row, "plan_name"),
                plan_version=values.whole(row, "plan_version"),
                program=values.text(row, "program"),
                content_hash=values.text(row, "content_hash"),
                seed=values.whole(row, "seed", -values.MOST),
                continues=values.maybe_text(row, "continues"),
                minutes=values.maybe_whole(row, "minutes"),
                simulated=values.flag(row, "simulated"),
                check=values.maybe_text(row, "check") if "check" in row else None,
            )
        case "observation":
            return Observation(
                session=session,
                at=at,
                topic=Topic(row["topic"]),
                tiredness=values.maybe_whole(row, "tiredness", 1, 6),
                pain=values.maybe_flag(row, "pain"),
                new_signs=values.maybe_flag(row, "new_signs"),
                helped=values.maybe_flag(row, "helped"),
                note=values.text(row, "note"),
            )
        case "trial":
            return _trial_in(row, session, at)
        case "closed":
            return SessionClosed(session=session, at=at, reason=CloseReason(row["reason"]))
        case unknown:
            raise ValueError(f"{unknown!r} is no kind of entry")


def _trial_in(row: Row, session: str, at: datetime) -> Trial:
    asked = asked_in(values.mapping(row, "asked"))
    return Trial(
        session=session,
        trial=values.text(row, "trial"),
        started_at=values.moment(row, "started_at"),
        at=at,
        block=values.whole(row, "block"),
        asked=asked,
        attempts=tuple(
            _attempt_in(attempt, options=len(asked.options))
            for attempt in values.items(row, "attempts")
        ),
        ended=values.flag(row, "ended"),
        skipped=values.flag(row, "skipped"),
        words_per_minute=values.maybe_whole(row, "words_per_minute"),
        help_at_start=values.whole(row, "help_at_start") if "help_at_start" in row else 0,
    )


def asked_out(asked: Asked) -> dict[str, Any]:
    # Only a cloze has a context, and older rows have none.
    context = {"context": asked.context} if asked.context else {}
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
        **context,
    }


def asked_in(row: Row) -> Asked:
    target = values.mapping(row, "target")
    options = tuple(_option_in(option) for option in values.items(row, "options"))
    return Asked(
        item_id=values.text(row, "item"),
        kind=Kind(row["kind"]),
        target=Target(
            kind=Kind(target["kind"]),
            name=values.text(target, "name"),
            group=values.text(target, "group"),
        ),
        construction=values.text(row, "construction"),
        level=values.text(row, "level"),
        sentence=values.text(row, "sentence"),
        words=values.texts(row, "words"),
        options=options,
        answer=values.maybe_whole(row, "answer", high=len(options)),
        effective_k=values.whole(row, "effective_k", 1),
        top_level=values.whole(row, "top_level"),
        side=None if row["side"] is None else Side(row["side"]),
        item_set=ItemSet(row["set"]),
        content_hash=values.text(row, "content_hash"),
        context=values.text(row, "context") if "context" in row else "",
    )


def _option_in(option: Row) -> dict[str, Any]:
    """What an option shows is kept as it was; why it is wrong is counted, so it must be known."""
    if option["foil"] is not None:
        Foil(option["foil"])
    return dict(option)


def _attempt_out(attempt: Attempt) -> dict[str, Any]:
    return {
        "right": attempt.right,
        "cue_level": attempt.cue_level,
        "at": time_out(attempt.at),
        "choice": attempt.choice,
        "score": attempt.score,
        "ticks": [tick.value for tick in attempt.ticks],
        "replays": attempt.replays,
        "latency_ms": attempt.latency_ms,
    }


def _attempt_in(row: Row, *, options: int) -> Attempt:
    return Attempt(
        right=values.flag(row, "right"),
        cue_level=values.whole(row, "cue_level"),
        at=values.moment(row, "at"),
        choice=values.maybe_whole(row, "choice", high=options),
        score=values.maybe_whole(row, "score", high=4),
        ticks=tuple(Tick(tick) for tick in values.items(row, "ticks")),
        replays=values.whole(row, "replays"),
        latency_ms=values.maybe_whole(row, "latency_ms"),
    )


def time_out(moment: datetime) -> str:
    if moment.utcoffset() is None:
        raise ValueError("a time in the records needs its offset from UTC")
    return moment.isoformat()
