"""Trials as summaries and the checkpoint hold them: without sentence, words, options and answer."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import fields, replace
from datetime import datetime
from functools import partial
from typing import Any

from drills.core.gestures import Tick
from drills.core.records import Asked, Attempt, Trial
from drills.ledger.lines import Row
from drills.ledger.rows import asked_in, asked_out, time_out


def trials_out(trials: Sequence[Trial]) -> dict[str, Any]:
    """Trials of one session as plain values."""
    asked: dict[Asked, int] = {}
    rows = []
    for trial in trials:
        slim = slimmed(trial).asked
        number = asked.setdefault(replace(slim, item_id=""), len(asked))
        rows.append(_trial_out(trial, number))
    return {"asked": [asked_out(each) for each in asked], "trials": rows}


def trials_in(
    session: str, row: Row, known: dict[str, Callable[..., Asked]] | None = None
) -> tuple[Trial, ...]:
    """What `trials_out` gave.   Raises: ValueError, KeyError, TypeError or IndexError for others.

    known: what was asked in other sessions, and is made only once; it is added to.
    """
    known = {} if known is None else known
    asked = []
    for each in row["asked"]:
        said = repr(each)
        if said not in known:
            known[said] = _items_like(asked_in(each))
        asked.append(known[said])
    return tuple(_trial_in(session, each, asked) for each in row["trials"])


def slimmed(trial: Trial) -> Trial:
    """A trial as a summary gives it back: all but its sentence, words, options and answer."""
    asked = replace(trial.asked, sentence="", words=(), options=(), answer=None)
    return replace(trial, asked=asked)


def _trial_out(trial: Trial, asked: int) -> list[Any]:
    return [
        trial.trial,
        time_out(trial.started_at),
        time_out(trial.at),
        trial.block,
        asked,
        trial.asked.item_id,
        trial.ended,
        trial.skipped,
        trial.words_per_minute,
        [_attempt_out(attempt) for attempt in trial.attempts],
        *([trial.help_at_start] if trial.help_at_start else []),
    ]


def _items_like(asked: Asked) -> Callable[..., Asked]:
    """Makes the like of `asked` for any `item_id`; `replace` takes three times as long."""
    same = {each.name: getattr(asked, each.name) for each in fields(asked)}
    del same["item_id"]
    return partial(Asked, **same)


def _trial_in(session: str, row: list[Any], asked: list[Callable[..., Asked]]) -> Trial:
    trial, started_at, at, block, number, item, ended, skipped, words_per_minute, *rest = row
    attempts, *begun_with = rest
    return Trial(
        session=session,
        trial=trial,
        started_at=datetime.fromisoformat(started_at),
        at=datetime.fromisoformat(at),
        block=block,
        asked=asked[number](item_id=item),
        attempts=tuple(map(_attempt_in, attempts)),
        ended=ended,
        skipped=skipped,
        words_per_minute=words_per_minute,
        help_at_start=begun_with[0] if begun_with else 0,
    )


def _attempt_out(attempt: Attempt) -> list[Any]:
    return [
        attempt.right,
        attempt.cue_level,
        time_out(attempt.at),
        attempt.choice,
        attempt.score,
        [tick.value for tick in attempt.ticks],
        attempt.replays,
        attempt.latency_ms,
    ]


def _attempt_in(row: list[Any]) -> Attempt:
    right, cue_level, at, choice, score, ticks, replays, latency_ms = row
    return Attempt(
        right=right,
        cue_level=cue_level,
        at=datetime.fromisoformat(at),
        choice=choice,
        score=score,
        ticks=tuple(map(Tick, ticks)) if ticks else (),
        replays=replays,
        latency_ms=latency_ms,
    )
