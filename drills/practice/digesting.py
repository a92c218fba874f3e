"""The digest of one practice folder: what of it is read, once for all measures."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from datetime import date, timedelta
from itertools import chain
from typing import TYPE_CHECKING

from drills.core.garbage import uncollected
from drills.core.kinds import ItemSet, Kind
from drills.core.progress import Progress
from drills.core.records import Entry, Trial
from drills.core.sessions import SessionSpan
from drills.core.therapist import SecondScore
from drills.digest import Digest, make
from drills.digest.keeping import RETENTION_WEEKS
from drills.digest.spans import WEEKS
from drills.practice.cueing import MOST_LOOKED_AT
from drills.practice.dealing import plan_standings, plan_targets, week_to_come
from drills.practice.deciding import with_suggestions
from drills.practice.past import Late, Past
from drills.schedule.progression import progress_of

if TYPE_CHECKING:
    from drills.practice.home import Home

_DAY = timedelta(days=1)
# How long a trial takes is told by those of the last half year.
_RECENT = timedelta(weeks=26)
# Hours and offsets may put a session on another day.
_FEW_DAYS = timedelta(days=3)


@uncollected()
def digest_of(home: Home, first: date, last: date) -> Digest:
    """The digest of the practice days `first` to `last`, both included."""
    span = max(last - first + _DAY, timedelta(weeks=WEEKS))
    past = home.past()
    history = _history(home, past, last, first - span)
    return _made(home, past, history, first, last, looks_back_to=first - span)


def course_of(home: Home) -> Digest:
    """The digest of the whole course, from the first record to today."""
    today, history = home.day(), home.history()
    begun = [home.day(trial.started_at) for trial in history[:1]]
    return _made(home, home.past(), history, min([*begun, today]), today, looks_back_to=None)


def _made(
    home: Home,
    past: Past,
    history: Sequence[Trial],
    first: date,
    last: date,
    *,
    looks_back_to: date | None,
) -> Digest:
    """looks_back_to: before the range, for its change and the weeks before; None for a course."""
    today = home.day()
    earlier, earlier_sessions = _earlier(home, first, looks_back_to)
    of_practice = tuple(t for t in history if t.asked.item_set is ItemSet.TREATED)
    dues = plan_standings(home.plan, home.material, past)
    all_of_practice = Late(home.history_of_practice)
    second_scores = [each for each in home.therapist_log.entries() if isinstance(each, SecondScore)]
    made = make(
        home.entries_of(first, last),
        home.plan,
        first=first,
        last=last,
        upcoming=dues,
        labels=home.labels,
        earlier=earlier,
        earlier_sessions=earlier_sessions,
        today=today,
        notices=home.records.notices,
        checked=home.checking_of(past).checked,
        planned=week_to_come(
            home.plan, home.material, all_of_practice, today, dues=dues, recent=of_practice
        ),
        history=_scored(home, second_scores, history),
        practice_days=past.days,
        progress=_progress(home, past, of_practice, all_of_practice),
        second_scores=second_scores,
        whole_course=looks_back_to is None,
    )
    newest = of_practice if len(of_practice) >= MOST_LOOKED_AT else all_of_practice
    return with_suggestions(home, made, newest)


def _history(home: Home, past: Past, last: date, looks_back_to: date) -> Sequence[Trial]:
    """As far back as any measure of the range looks: years of the rest are in `past`."""
    back = min(looks_back_to, last - timedelta(weeks=RETENTION_WEEKS), past.today - _RECENT)
    return home.history(since=back - _FEW_DAYS)


def _earlier(
    home: Home, first: date, looks_back_to: date | None
) -> tuple[Sequence[Entry], Sequence[SessionSpan]]:
    """How long sessions took is enough where the history holds their trials, else all of them."""
    if looks_back_to is None:
        return (), ()
    if looks_back_to - _FEW_DAYS >= home.history_begins.date():
        return (), home.sessions_of(looks_back_to, first - _DAY)
    return home.entries_of(looks_back_to, first - _DAY), ()


def _progress(
    home: Home, past: Past, recent: Sequence[Trial], every: Sequence[Trial]
) -> tuple[Progress, ...]:
    """By the recent trials where they hold all that can decide, else by every one."""
    settings = home.plan.progression
    targets = plan_targets(home.plan, home.material)
    names = dict.fromkeys((target.kind, target.name) for own in targets for target in own)
    sessions: dict[tuple[Kind, str], Counter[str]] = {name: Counter() for name in names}
    for trial in recent:
        name = (trial.asked.kind, trial.asked.target.name)
        if trial.counts and name in sessions:
            sessions[name][trial.session] += 1
    most = max(settings.least_sessions, settings.below_sessions, settings.flat_sessions)
    enough = all(
        (len(own) >= most and own.total() >= settings.least_trials)
        or own.total() == past.counted.get(name, 0)
        for name, own in sessions.items()
    )
    return progress_of(names, chain(past.checks, recent if enough else every), settings)


def _scored(home: Home, second: Sequence[SecondScore], history: Sequence[Trial]) -> Sequence[Trial]:
    """The trials in `history`, with older ones where a second score asks for them."""
    older = {each.session for each in second} - {trial.session for trial in history}
    if not older:
        return history
    return (*(trial for trial in home.history() if trial.session in older), *history)
