"""What a reader has to know before trusting the numbers."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from itertools import pairwise

from drills.core.records import CloseReason, Entry, SessionOpened, Trial
from drills.digest.alerts import is_hindered
from drills.digest.values import Quality
from drills.measures import latency
from drills.measures.dose import Sitting


def quality_of(
    entries: Sequence[Entry],
    trials: Sequence[Trial],
    sat: Sequence[Sitting],
    latencies: Sequence[latency.Latency],
    notices: Sequence[str],
) -> Quality:
    """sat: of practice.   latencies: of each name in each task."""
    opened = [entry for entry in entries if isinstance(entry, SessionOpened)]
    return Quality(
        programs=tuple(dict.fromkeys(entry.program for entry in opened)),
        plans=tuple(dict.fromkeys((entry.plan_name, entry.plan_version) for entry in opened)),
        contents=tuple(dict.fromkeys(entry.content_hash for entry in opened)),
        unfinished=sum(not trial.ended for trial in trials),
        # A hindered gesture is told as such, with the gestures.
        skipped=sum(trial.skipped and not is_hindered(trial) for trial in trials),
        stopped_early=sum(each.reason not in (None, CloseReason.FINISHED) for each in sat),
        broken_off=sum(each.reason is None for each in sat),
        clock_back=_clock_back(entries),
        too_soon=sum(each.too_soon for each in latencies),
        slow=sum(each.slow for each in latencies),
        notices=tuple(notices),
    )


def _clock_back(entries: Sequence[Entry]) -> int:
    """Sessions in which an entry, kept in the order of writing, is older than the one before."""
    moments: dict[str, list[datetime]] = {}
    for entry in entries:
        moments.setdefault(entry.session, []).append(entry.at)
    return sum(
        any(after < before for before, after in pairwise(of_session))
        for of_session in moments.values()
    )
