"""Rows of the CSV that are not of one name in the range: weeks, phases, intervals, habits."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from drills.core.kinds import ItemSet, Kind
from drills.digest.values import Digest
from drills.measures.missing import Missing

COLUMNS = (
    "row",
    *("week_first", "week_last", "minutes", "minutes_planned", "sessions", "hours"),
    *("cue_trials", "cue_dependence"),
    "retention_days",
    *("trend_sessions", "trend_tau", "trend_slope", "advice"),
    *("phase", "baseline_points", "phase_points", "newest_points"),
    *("gain", "nap", "tau", "tau_u", "standardised_gain"),
    *("same_items_before", "same_items_after", "same_items", "gained", "lost", "over_control"),
    *("score_pairs", "same_score", "lenience", "kappa", "kappa_linear", "kappa_quadratic"),
)


def rows_over_time(digest: Digest) -> Iterator[dict[str, Any]]:
    """`row` says what each is of; numbers that rest on too little are empty."""
    for made in (_dose_weeks, _cue_weeks, _kept, _trends, _progress, _outcomes, _agreement):
        yield from made(digest)


def _dose_weeks(digest: Digest) -> Iterator[dict[str, Any]]:
    for week in digest.dose_weeks:
        yield {
            "row": "dose of a week",
            "week_first": week.first.isoformat(),
            "week_last": week.last.isoformat(),
            "minutes": week.minutes,
            "minutes_planned": week.minutes_planned,
            "sessions": week.sessions,
            "hours": week.hours,
        }


def _cue_weeks(digest: Digest) -> Iterator[dict[str, Any]]:
    for line in digest.cue_weeks:
        for week in line.weeks:
            yield {
                **_name("help in a week", line.kind, line.name, line.label),
                "week_first": week.first.isoformat(),
                "week_last": week.last.isoformat(),
                "cue_trials": week.use.of,
                "mean_cue_level": week.use.mean_level,
                "cue_dependence": week.use.dependence,
            }


def _kept(digest: Digest) -> Iterator[dict[str, Any]]:
    kept = digest.kept
    for what, steps in (
        ("words", (kept.words_same_day, *kept.words)),
        ("gestures", (kept.gestures_same_day, *kept.gestures)),
    ):
        for step in (each for each in steps if each.share.of):
            yield {
                "row": f"kept: {what}",
                "retention_days": step.days,
                "unaided_right": step.share.right,
                "unaided_of": step.share.of,
                "unaided_low": step.interval.low,
                "unaided_high": step.interval.high,
            }


def _trends(digest: Digest) -> Iterator[dict[str, Any]]:
    for line in digest.trends:
        found = None if isinstance(line.trend, Missing) else line.trend
        yield {
            **_name("trend", line.kind, line.name, line.label),
            "trend_sessions": line.sessions,
            "trend_tau": None if found is None else _known(found.tau),
            "trend_slope": None if found is None else found.slope,
        }


def _progress(digest: Digest) -> Iterator[dict[str, Any]]:
    for each in digest.progress:
        yield {**_name("advice", each.kind, each.name, ""), "advice": each.advice.value}


def _outcomes(digest: Digest) -> Iterator[dict[str, Any]]:
    for line in () if digest.checks is None else digest.checks.outcomes.lines:
        same, beyond = line.same_items, line.over_control
        for effect in line.effects:
            yield {
                **_name("outcome of a phase", Kind.MATCH, line.name, line.label, line.item_set),
                "phase": effect.phase.value,
                "baseline_points": effect.baseline,
                "phase_points": effect.points,
                "newest_points": effect.after,
                "gain": _known(effect.gain),
                "nap": None if isinstance(effect.nap, Missing) else effect.nap.value,
                "tau": _known(effect.tau),
                "tau_u": None if isinstance(effect.tau_u, Missing) else effect.tau_u.value,
                "standardised_gain": (
                    None if isinstance(effect.standardised, Missing) else effect.standardised.value
                ),
            }
        if not isinstance(same, Missing):
            yield {
                **_name("same items", Kind.MATCH, line.name, line.label, line.item_set),
                "same_items_before": same.before.right,
                "same_items_after": same.after.right,
                "same_items": same.before.of,
                "gained": same.gained,
                "lost": same.lost,
                "over_control": (
                    None if beyond is None or isinstance(beyond, Missing) else beyond.points
                ),
            }


def _agreement(digest: Digest) -> Iterator[dict[str, Any]]:
    if digest.agreement is None:
        return
    scores = digest.agreement.scores
    yield {
        "row": "agreement on gestures",
        "kind": Kind.GESTURE.value,
        "score_pairs": scores.exact.of,
        "same_score": scores.exact.right,
        "lenience": scores.lenience,
        "kappa": _known(scores.kappa),
        "kappa_linear": _known(scores.linear),
        "kappa_quadratic": _known(scores.quadratic),
    }


def _name(
    row: str, kind: Kind, name: str, label: str, item_set: ItemSet = ItemSet.TREATED
) -> dict[str, Any]:
    return {"row": row, "kind": kind.value, "name": name, "label": label, "set": item_set.value}


def _known(value: float | Missing) -> float | None:
    return None if isinstance(value, Missing) else value
