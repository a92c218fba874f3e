"""From records to the digest."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import date, timedelta
from itertools import chain

from drills.core.due import Due, PlannedDay
from drills.core.plans import Plan
from drills.core.progress import Progress
from drills.core.records import (
    Entry,
    Observation,
    SessionOpened,
    Trial,
    latest_trials,
    practice_day,
)
from drills.core.sessions import SessionSpan, spans_of
from drills.core.therapist import SecondScore
from drills.digest.answers import answer_of
from drills.digest.checks import Checked, checks_of, practice_apart
from drills.digest.counting import errors_of, lines_of
from drills.digest.course import Course, course_of, trials_in
from drills.digest.doses import dose_of, sitting_line
from drills.digest.dues import calendar_of, due_days_of
from drills.digest.flags import Grounds, flags_of
from drills.digest.grids import grids_of
from drills.digest.keeping import RETENTION_WEEKS, kept_of, trends_of
from drills.digest.outcomes import Phase
from drills.digest.past import Past
from drills.digest.patterns import patterns_of
from drills.digest.quality import quality_of
from drills.digest.raters import agreement_of
from drills.digest.spans import (
    WEEKS,
    Week,
    cue_weeks_of,
    dose_weeks_of,
    weeks_from,
    weeks_to,
)
from drills.digest.values import Digest, Line, Note
from drills.measures import dose
from drills.measures.dose import Sitting


def make(
    entries: Sequence[Entry],
    plan: Plan,
    *,
    first: date,
    last: date,
    upcoming: Sequence[Due],
    labels: Mapping[str, str],
    earlier: Sequence[Entry] = (),
    earlier_sessions: Sequence[SessionSpan] = (),
    today: date | None = None,
    notices: Sequence[str] = (),
    checked: Checked | None = None,
    planned: Sequence[PlannedDay] = (),
    history: Sequence[Trial] = (),
    practice_days: Sequence[date] = (),
    progress: Sequence[Progress] = (),
    second_scores: Sequence[SecondScore] = (),
    whole_course: bool = False,
) -> Digest:
    """The digest of the practice days `first` to `last`, both included.

    entries: oldest first; sessions opened outside the range are left out.
    upcoming: where every target of the plan stands.   labels: key -> plain name.
    earlier: entries of as many days before, for the change, or of more, for the dose of weeks.
    earlier_sessions: sessions of such days whose trials are in `history`, so not in `earlier`.
    today: while the range is still running; days to come are then neither days without practice
    nor days on which anything was put off, and the plan asks nothing for them yet.
    notices: what the records themselves tell of damage or of the clock.
    checked: all checks so far.   planned: the practice days of the week after today.
    history: trials as far back as the measures of the range look, checks too, oldest first, without
    their words and pictures.   practice_days: all of them so far.
    progress: what is advised on each name.   second_scores: the therapist's own, of gestures.
    whole_course: the range is the whole course, of which `Digest.course` tells.
    """
    until = last if today is None else max(first - timedelta(days=1), min(last, today))
    turns = plan.sitting.day_turns_at_hour
    own = _within(entries, first, last, turns)
    practice, checking = practice_apart(own)
    before, _ = practice_apart(_within(earlier, date.min, first - timedelta(days=1), turns))
    sat = dose.sittings(practice, day_turns_at_hour=turns)
    practised_sessions = [span for span in earlier_sessions if span.check is None]
    spans_before = (*spans_of(before), *practised_sessions)
    from_history = {span.session for span in practised_sessions}
    practised_before = (
        *latest_trials(before),
        *(trial for trial in history if trial.session in from_history),
    )
    sat_before = dose.joined(spans_before, practised_before, day_turns_at_hour=turns)
    trials, practised = latest_trials(own), latest_trials(practice)
    past = Past(
        history=history,
        known_days=practice_days,
        read=(*practised_before, *practised),
        last=last,
        turns_at_hour=turns,
    )
    days = past.days()
    checks = checks_of(
        checked or Checked(),
        checking,
        plan.probes,
        labels,
        practised=days,
        last=last,
        turns_at_hour=turns,
    )
    phase = Phase.BASELINE if checks is None else checks.outcomes.phase
    course = course_of(phase, days) if whole_course else None
    asked_from, asked_to = _asked(course, first, until)
    weeks = _weeks(days, first=first, last=last, course=course)
    weeks_from_day = weeks[0].first if weeks else first
    lines = _lines(practised, practised_before, plan, labels, first=first, last=last, course=course)
    sittings = tuple(sitting_line(sitting, practice) for sitting in sat)
    kept_since = max(
        min(first, last - timedelta(weeks=RETENTION_WEEKS)), days[0] if days else date.min
    )
    by_sitting = _by_sitting(sat, practised)
    dose_weeks = dose_weeks_of(
        weeks,
        (*sat_before, *sat),
        plan,
        asked=(asked_from if course else weeks_from_day, asked_to),
    )
    cue_weeks = cue_weeks_of(weeks, past.since(weeks_from_day), labels, turns_at_hour=turns)
    agreement = agreement_of(second_scores, chain(history, practised))
    quality = quality_of(own, trials, sat, [line.latency for line in lines], notices)
    return Digest(
        first=first,
        last=last,
        until=until,
        plan_name=plan.name,
        plan_version=plan.version,
        therapist=plan.therapist,
        locale=plan.locale,
        simulated=any(isinstance(each, SessionOpened) and each.simulated for each in own)
        or any(span.simulated for span in spans_before),
        alerts=flags_of(
            Grounds(
                entries=own,
                sittings=sittings,
                trials_of_sittings=by_sitting,
                past=past.since(
                    min(weeks_from_day, first - timedelta(weeks=plan.flags.drop_weeks))
                ),
                begun=min(days, default=None),
                practised_before=max((day for day in days if day < first), default=None),
                first=first,
                until=until,
                dose_weeks=dose_weeks,
                cue_weeks=cue_weeks,
                progress=progress,
                agreement=agreement,
                quality=quality,
            ),
            plan,
            labels,
        ),
        dose=dose_of(sat, plan, asked_from, asked_to),
        sittings=sittings,
        lines=lines,
        errors=errors_of(practised, labels),
        # Where targets stand is known for today only, however old the range is.
        upcoming=due_days_of(upcoming, labels, after=max(until, today or until), last=last),
        notes=tuple(
            Note(day=practice_day(entry.at, turns_at_hour=turns), text=entry.note)
            for entry in own
            if isinstance(entry, Observation) and entry.note.strip()
        ),
        quality=quality,
        answers=tuple(answer_of(trial, turns) for trial in trials),
        grids=grids_of(practised),
        calendar=calendar_of(planned, labels),
        person=plan.code,
        checks=checks,
        patterns=patterns_of(by_sitting),
        dose_weeks=dose_weeks,
        cue_weeks=cue_weeks,
        kept=kept_of(past.since(kept_since), since=kept_since, turns_at_hour=turns),
        trends=trends_of(past.since(weeks_from_day), labels, since=weeks_from_day),
        progress=tuple(progress),
        agreement=agreement,
        course=course,
        as_of=today if today is not None and today > last else None,
    )


def _asked(course: Course | None, first: date, until: date) -> tuple[date, date]:
    """The days for which the plan asks for practice: of a course, those from first to last."""
    if course is None:
        return first, until
    if course.first_practice is None or course.last_practice is None:
        return first, first - timedelta(days=1)
    return course.first_practice, course.last_practice


def _weeks(
    days: Sequence[date], *, first: date, last: date, course: Course | None
) -> tuple[Week, ...]:
    """The last weeks, or all of a course; none from before anybody practised."""
    if course is None:
        least = max(WEEKS, -(-((last - first).days + 1) // 7))
        return weeks_to(last, begun=min(first, days[0]) if days else first, least=least)
    return weeks_from(days[0], days[-1]) if days else ()


def _lines(
    practised: Sequence[Trial],
    before: Sequence[Trial],
    plan: Plan,
    labels: Mapping[str, str],
    *,
    first: date,
    last: date,
    course: Course | None,
) -> tuple[Line, ...]:
    """The range against as many days before, or the last days of a course against its first."""
    turns = plan.sitting.day_turns_at_hour
    if course is None:
        days = (first - (last - first) - timedelta(days=1), first - timedelta(days=1))
        earlier = trials_in(before, days, turns_at_hour=turns)
        return lines_of(practised, earlier, plan, labels)
    if course.ends is None:
        return lines_of(practised, (), plan, labels)
    opening, closing = (
        trials_in(practised, days, turns_at_hour=turns)
        for days in (course.ends.opening, course.ends.closing)
    )
    return lines_of(closing, opening, plan, labels)


def _by_sitting(sittings: Sequence[Sitting], trials: Sequence[Trial]) -> list[list[Trial]]:
    """The trials of each sitting; what was broken off and gone on with is one."""
    place = {session: n for n, sitting in enumerate(sittings) for session in sitting.sessions}
    found: list[list[Trial]] = [[] for _ in sittings]
    for trial in trials:
        if trial.session in place:
            found[place[trial.session]].append(trial)
    return found


def _within(entries: Sequence[Entry], first: date, last: date, turns: int) -> tuple[Entry, ...]:
    """Entries of the sessions that began in the range; a session is never cut in two."""
    days: dict[str, date] = {}
    for entry in entries:
        began = entry.started_at if isinstance(entry, Trial) else entry.at
        days.setdefault(entry.session, practice_day(began, turns_at_hour=turns))
    return tuple(entry for entry in entries if first <= days[entry.session] <= last)
