"""From records to the digest."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, datetime, timedelta
from itertools import pairwise

from drills.core.due import Due, PlannedDay
from drills.core.kinds import Kind
from drills.core.plans import Plan
from drills.core.records import (
    CloseReason,
    Entry,
    Observation,
    SessionOpened,
    Topic,
    Trial,
    latest_trials,
    practice_day,
)
from drills.digest.alerts import alerts_of, is_hindered
from drills.digest.checks import Checked, checks_of, practice_apart
from drills.digest.counting import errors_of, lines_of
from drills.digest.grids import grids_of
from drills.digest.values import (
    AnswerLine,
    Calendar,
    Digest,
    Dose,
    DueDay,
    DueLine,
    Line,
    Note,
    Quality,
    SittingLine,
)
from drills.digest.weeks import days_between
from drills.measures import dose, errors


def make(
    entries: Sequence[Entry],
    plan: Plan,
    *,
    first: date,
    last: date,
    upcoming: Sequence[Due],
    labels: Mapping[str, str],
    earlier: Sequence[Entry] = (),
    today: date | None = None,
    notices: Sequence[str] = (),
    checked: Checked | None = None,
    planned: Sequence[PlannedDay] = (),
    history: Sequence[Trial] = (),
) -> Digest:
    """The digest of the practice days `first` to `last`, both included.

    entries: oldest first; sessions opened outside the range are left out.
    upcoming: where every target of the plan stands.   labels: key -> plain name.
    earlier: entries of as many days before, for the change.
    today: while the range is still running; days to come are then neither days without practice
    nor days on which anything was put off, and the plan asks nothing for them yet.
    notices: what the records themselves tell of damage or of the clock.
    checked: all checks so far.   planned: the practice days of the week after today.
    history: every trial so far, checks too, oldest first, without its words and pictures.
    """
    until = last if today is None else max(first - timedelta(days=1), min(last, today))
    turns = plan.sitting.day_turns_at_hour
    own = _within(entries, first, last, turns)
    before, _ = practice_apart(_within(earlier, date.min, first - timedelta(days=1), turns))
    practice, checking = practice_apart(own)
    trials, practised = latest_trials(own), latest_trials(practice)
    sat = tuple(
        _sitting_line(sitting, practice)
        for sitting in dose.sittings(practice, day_turns_at_hour=turns)
    )
    lines = lines_of(practised, latest_trials(before), plan, labels)
    sat_before = dose.sittings(before, day_turns_at_hour=turns)
    return Digest(
        first=first,
        last=last,
        until=until,
        plan_name=plan.name,
        plan_version=plan.version,
        therapist=plan.therapist,
        locale=plan.locale,
        simulated=any(
            isinstance(entry, SessionOpened) and entry.simulated for entry in (*own, *before)
        ),
        alerts=alerts_of(
            own,
            sat,
            practised_before=max((sitting.day for sitting in sat_before), default=None),
            first=first,
            last=until,
            turns_at_hour=turns,
            tired_rise=plan.sitting.tired_rise,
        ),
        dose=_dose(practice, plan, first, until),
        sittings=sat,
        lines=lines,
        errors=errors_of(practised, labels),
        # Where targets stand is known for today only, however old the range is.
        upcoming=_upcoming(upcoming, labels, after=max(until, today or until), last=last),
        notes=tuple(
            Note(day=practice_day(entry.at, turns_at_hour=turns), text=entry.note)
            for entry in own
            if isinstance(entry, Observation) and entry.note.strip()
        ),
        quality=_quality(own, trials, sat, lines, notices),
        answers=tuple(_answer(trial, turns) for trial in trials),
        grids=grids_of(practised),
        calendar=_calendar(planned, labels),
        person=plan.code,
        checks=checks_of(
            checked or Checked(), checking, plan.probes, labels, last=last, turns_at_hour=turns
        ),
    )


def _calendar(planned: Sequence[PlannedDay], labels: Mapping[str, str]) -> Calendar | None:
    names = dict.fromkeys(each.target.name for day in planned for each in day.put_off)
    named = {name: labels.get(name, name) for name in names}
    return Calendar(days=tuple(planned), labels=named) if planned else None


def _within(entries: Sequence[Entry], first: date, last: date, turns: int) -> tuple[Entry, ...]:
    """Entries of the sessions that began in the range; a session is never cut in two."""
    days: dict[str, date] = {}
    for entry in entries:
        began = entry.started_at if isinstance(entry, Trial) else entry.at
        days.setdefault(entry.session, practice_day(began, turns_at_hour=turns))
    return tuple(entry for entry in entries if first <= days[entry.session] <= last)


def _dose(entries: Sequence[Entry], plan: Plan, first: date, until: date) -> Dose:
    done = dose.amount(dose.sittings(entries, day_turns_at_hour=plan.sitting.day_turns_at_hour))
    asked = days_between(first, until)
    # A clock that was wrong can have left practice on a day that is still to come.
    days = days_between(first, max((until, *done.minutes_by_day)))
    sessions_planned = plan.dose.sessions_per_week * len(asked) / 7
    minutes_planned = sessions_planned * plan.dose.minutes_per_session
    return Dose(
        minutes=done.minutes,
        active_minutes=done.active_minutes,
        minutes_planned=minutes_planned,
        minutes_share=dose.adherence(done.minutes, minutes_planned),
        sessions=done.sessions,
        sessions_planned=sessions_planned,
        sessions_share=dose.adherence(done.sessions, sessions_planned),
        trials=done.trials,
        days=done.days,
        by_day={day: done.minutes_by_day.get(day, 0.0) for day in days},
    )


def _sitting_line(sitting: dose.Sitting, entries: Sequence[Entry]) -> SittingLine:
    said = [
        (entry.topic, entry.tiredness)
        for entry in entries
        if isinstance(entry, Observation)
        and entry.session in sitting.sessions
        and entry.tiredness is not None
    ]
    before = [tiredness for topic, tiredness in said if topic is Topic.CHECK_IN]
    after = [tiredness for topic, tiredness in said if topic is not Topic.CHECK_IN]
    return SittingLine(
        day=sitting.day,
        minutes=sitting.minutes,
        active_minutes=sitting.active_minutes,
        trials=sitting.trials,
        tired_before=before[0] if before else None,
        tired_after=after[-1] if after else None,
        reason=sitting.reason,
    )


def _upcoming(
    dues: Sequence[Due], labels: Mapping[str, str], *, after: date, last: date
) -> tuple[DueDay, ...]:
    """What falls due from the day after `after` to a week after the later of `after` and `last`.

    What is open by then stands on the first of these days. Days with nothing are left out: each
    practice moves what is due, so an empty day says nothing of that day.
    """
    days: dict[date, list[DueLine]] = {
        day: []
        for day in days_between(after + timedelta(days=1), max(after, last) + timedelta(days=7))
    }
    for due in dues:
        shown = max(due.day, after + timedelta(days=1))
        if shown in days:
            days[shown].append(
                DueLine(
                    target=due.target,
                    label=labels.get(due.target.name, due.target.name),
                    day=shown,
                    last=due.last,
                    rung=due.rung,
                    run=due.run,
                    # What was never met cannot have been put off.
                    open_since=due.day if due.day <= after and due.last is not None else None,
                )
            )
    return tuple(DueDay(day=day, dues=tuple(of_day)) for day, of_day in days.items() if of_day)


def _quality(
    entries: Sequence[Entry],
    trials: Sequence[Trial],
    sat: Sequence[SittingLine],
    lines: Sequence[Line],
    notices: Sequence[str],
) -> Quality:
    opened = [entry for entry in entries if isinstance(entry, SessionOpened)]
    return Quality(
        programs=tuple(dict.fromkeys(entry.program for entry in opened)),
        plans=tuple(dict.fromkeys((entry.plan_name, entry.plan_version) for entry in opened)),
        contents=tuple(dict.fromkeys(entry.content_hash for entry in opened)),
        unfinished=sum(not trial.ended for trial in trials),
        # A hindered gesture is told as such, with the gestures.
        skipped=sum(trial.skipped and not is_hindered(trial) for trial in trials),
        stopped_early=sum(line.reason not in (None, CloseReason.FINISHED) for line in sat),
        broken_off=sum(line.reason is None for line in sat),
        clock_back=_clock_back(entries),
        too_soon=sum(line.latency.too_soon for line in lines),
        slow=sum(line.latency.slow for line in lines),
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


def _answer(trial: Trial, turns: int) -> AnswerLine:
    first = trial.first
    timed = trial.asked.kind is not Kind.GESTURE
    return AnswerLine(
        trial=trial.trial,
        session=trial.session,
        day=practice_day(trial.started_at, turns_at_hour=turns),
        item=trial.asked.item_id,
        item_set=trial.asked.item_set,
        target=trial.asked.target,
        sentence=trial.asked.sentence,
        first_choice=None if first is None else first.choice,
        foil=errors.foil_of(trial),
        right=trial.unaided_right,
        level_at_success=trial.level_at_success,
        score=None if first is None else first.score,
        latency_ms=first.latency_ms if first is not None and timed else None,
        ended=trial.ended,
        skipped=trial.skipped,
    )
