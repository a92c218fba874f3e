"""Many persons' digests side by side: the newest of each, most urgent first, with the reason.

What the files hold comes from outside, so each value is checked before it is believed.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from math import isfinite
from typing import Any

from drills.core.plans import PERSON_CODE
from drills.core.problems import BadInput
from drills.digest.flag_values import AlertKind
from drills.digest.incoming import read_fields
from drills.digest.plain import day_and_year
from drills.digest.weeks import YEARS

SILENT_DAYS = 10
"""A digest comes once a week, and a few days late; common practice, no source."""

NO_DIGEST, DAYS_TO_COME = "no digest", "days to come"
NEVER_SHORTENED = (AlertKind.NEW_SIGNS, AlertKind.UNWELL, AlertKind.PAIN, DAYS_TO_COME)
_WEEK = timedelta(days=7)
_FIELDS = ("person", "simulated", "first", "last", "until", "plan", "alerts", "dose")
_MOST_REASONS = 100
_LONGEST_REASON = 300
_LONGEST_NAME = 80
_MOST_SESSIONS = 100_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why to look.

    kind: an alert's, NO_DIGEST or DAYS_TO_COME.   text: one sentence.
    evidence: the numbers it rests on, where the digest tells them.
    """

    kind: str
    text: str
    evidence: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """What one digest says of one person.

    code: of the person; empty where the plan has none.   until: the last day that is counted.
    reasons: most urgent first.   sessions_planned: up to `until`.
    """

    file: str
    code: str
    plan: str
    plan_version: int
    simulated: bool
    first: date
    last: date
    until: date
    sessions: int
    sessions_planned: float
    reasons: tuple[Reason, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NotRead:
    """A file and one sentence why."""

    file: str
    message: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Caseload:
    """cases: most urgent first; each person once, and each digest without a code by itself.

    Where one code stands in two plans of the same week, both: it may be two persons.
    older: digests that a newer one of the same person stands for.
    left_alone: what else is in the folder.
    """

    today: date
    cases: tuple[Case, ...]
    not_read: tuple[NotRead, ...]
    older: int
    left_alone: int


def read_case(data: bytes, file: str) -> Case:
    """The case in one opened digest.   Raises: BadInput, in one sentence that names the file."""
    value = read_fields(data, file, _FIELDS)
    try:
        return _case(value, file)
    except (KeyError, TypeError, ValueError):
        raise BadInput(
            f"{file} is no whole digest: something in it is missing or wrong. Ask for it again."
        ) from None


def caseload(
    cases: Iterable[Case],
    not_read: Sequence[NotRead] = (),
    *,
    today: date,
    silent_days: int = SILENT_DAYS,
    left_alone: int = 0,
) -> Caseload:
    """The newest of each person, those with the most urgent reason first.

    silent_days: after the last counted day of a digest, from which the next one is missed.
    """
    newest: list[Case] = []
    shown: dict[str, list[Case]] = {}
    older = 0
    for case in sorted(cases, key=_age, reverse=True):
        # Two persons can have plans of one name, and a wrong clock must not hide what is newer.
        alone = not case.code or _is_ahead(case, today)
        own = [] if alone else shown.setdefault(case.code, [])
        if own and not _may_be_of_another(case, own):
            older += 1
            continue
        own.append(case)
        newest.append(case)
    found = [_with_days(case, today, silent_days) for case in newest]
    return Caseload(
        today=today,
        cases=tuple(sorted(found, key=_urgency)),
        not_read=tuple(sorted(not_read, key=lambda each: each.file)),
        older=older,
        left_alone=left_alone,
    )


def _age(case: Case) -> tuple[date, date, int, int, str]:
    return case.until, case.last, case.plan_version, case.sessions, case.file


def _may_be_of_another(case: Case, newer: Sequence[Case]) -> bool:
    """Whether another person may have the same code by mistake: another plan in the same week."""
    return all(each.plan != case.plan for each in newer) and any(
        each.until - case.until < _WEEK for each in newer
    )


def _is_ahead(case: Case, today: date) -> bool:
    # It may be tomorrow already where the digest was made.
    return case.until > today + timedelta(days=1)


def _with_days(case: Case, today: date, silent_days: int) -> Case:
    """The case with what its age says."""
    silent = (today - case.until).days
    told = list(case.reasons)
    if _is_ahead(case, today):
        text = f"It ends after today, on {day_and_year(case.until)}: a clock was wrong."
        told.append(Reason(kind=DAYS_TO_COME, text=text))
    elif silent >= silent_days:
        told.append(Reason(kind=NO_DIGEST, text=f"No digest for {silent} days."))
    return replace(case, reasons=tuple(sorted(told, key=lambda reason: _rank(reason.kind))))


def _urgency(case: Case) -> tuple[int, int, date, str, str]:
    """Most urgent kind first; then more reasons, then the older digest."""
    ranks = [_rank(reason.kind) for reason in case.reasons]
    return min(ranks, default=len(_RANKS) + 1), -len(ranks), case.until, case.code, case.file


# A digest that does not come is as urgent as practice that does not happen.
_RANKS: Mapping[str, int] = {
    **{kind.value: rank for rank, kind in enumerate(AlertKind)},
    NO_DIGEST: list(AlertKind).index(AlertKind.NO_PRACTICE),
}


def _rank(kind: str) -> int:
    """Of a kind that this program does not know: after those it does, before none at all."""
    return _RANKS.get(kind, len(_RANKS))


def _case(value: dict[str, Any], file: str) -> Case:
    plan, dose = value["plan"], value["dose"]
    first, last, until = (_day(value[name]) for name in ("first", "last", "until"))
    if not isinstance(value["alerts"], list):
        raise TypeError("alerts")
    if first > last or not first - timedelta(days=1) <= until <= last:
        raise ValueError("days")
    # Digests were once written without a code.
    code = _text(value.get("person", ""), _LONGEST_NAME)
    if code and not PERSON_CODE.fullmatch(code):
        raise ValueError("code")
    return Case(
        file=file,
        code=code,
        plan=_text(plan["name"], _LONGEST_NAME),
        plan_version=_whole(plan["version"]),
        simulated=bool(value["simulated"]),
        first=first,
        last=last,
        until=until,
        sessions=_whole(dose["sessions"]),
        sessions_planned=_number(dose["sessions_planned"]),
        reasons=tuple(_reason(alert) for alert in value["alerts"][:_MOST_REASONS]),
    )


def _reason(alert: Mapping[str, Any]) -> Reason:
    kind = _text(alert["kind"], _LONGEST_NAME)
    return Reason(
        kind=kind,
        text=_text(alert.get("text", kind), _LONGEST_REASON) or kind,
        evidence=_text(alert.get("evidence", ""), _LONGEST_REASON),
    )


def _day(value: Any) -> date:
    day = date.fromisoformat(value)
    if day.year not in YEARS:
        raise ValueError("year")
    return day


def _text(value: Any, longest: int) -> str:
    if not isinstance(value, str):
        raise TypeError("no text")
    return value if len(value) <= longest else value[: longest - 3] + "..."


def _whole(value: Any) -> int:
    if type(value) is not int or not 0 <= value <= _MOST_SESSIONS:
        raise ValueError("no number")
    return value


def _number(value: Any) -> float:
    if type(value) not in (int, float) or not isfinite(value) or not 0 <= value <= _MOST_SESSIONS:
        raise ValueError("no number")
    return float(value)
