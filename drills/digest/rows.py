"""The digest's lines as CSV for a spreadsheet: one row a construction or gesture in one task."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from io import StringIO
from typing import Any

from drills.core.items import Foil, Kind
from drills.core.question_words import GRID, level_of
from drills.digest import rows_over_time
from drills.digest.plain import inert
from drills.digest.question_wording import GRID_TITLE, cell_label
from drills.digest.values import Digest, Grid, GridCell, Line

# What a spreadsheet takes for the start of a formula; a line break or tab can hide one.
_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r", "\n")

COLUMNS = (
    "first",
    "last",
    "until",
    "over",
    "simulated",
    "plan",
    "plan_version",
    "kind",
    "name",
    "label",
    "set",
    "unaided_right",
    "unaided_of",
    "unaided_low",
    "unaided_high",
    "effective_k",
    "verdict",
    "aided_right",
    "aided_of",
    "mean_cue_level",
    "median_latency_ms",
    "earlier_right",
    "earlier_of",
    "change",
    "change_low",
    "change_high",
    *(f"error_{foil.value}" for foil in Foil),
    *(f"score_{score}" for score in range(4)),
    "mean_score",
    "mean_first_help",
    "hindered",
    *("d_prime", "criterion", "yes_to_true", "true_of", "yes_to_false", "false_of"),
    "checked_on",
    *("planned_on", "minutes_expected", "put_off"),
    *rows_over_time.COLUMNS,
)


def render_csv(digest: Digest) -> str:
    """A heading, and a row a line, a cell of the grid, a day of a check, and more (RFC 4180).

    `row` says of the rows over time what they are of, and is empty for the others.

    Shares go from 0 to 1. Text that a spreadsheet could run as a formula starts with an
    apostrophe; numbers stay numbers.
    """
    out = StringIO()
    writer = csv.DictWriter(out, COLUMNS, lineterminator="\r\n")
    writer.writeheader()
    for line in digest.lines:
        writer.writerow({key: _cell(value) for key, value in _row(digest, line).items()})
    for grid in digest.grids:
        for cell in grid.cells:
            writer.writerow(
                {key: _cell(value) for key, value in _grid_row(digest, grid, cell).items()}
            )
    for row in _check_rows(digest):
        writer.writerow({key: _cell(value) for key, value in row.items()})
    for row in _calendar_rows(digest):
        writer.writerow({key: _cell(value) for key, value in row.items()})
    for row in rows_over_time.rows_over_time(digest):
        told = {**_head(digest), **row}
        writer.writerow({key: _cell(value) for key, value in told.items()})
    return out.getvalue()


def _calendar_rows(digest: Digest) -> Iterator[dict[str, Any]]:
    """One row a practice day to come.   put_off: how many targets have no place in it."""
    for day in () if digest.calendar is None else digest.calendar.days:
        yield {
            **_head(digest),
            "planned_on": day.day.isoformat(),
            "minutes_expected": day.minutes,
            "put_off": len(day.put_off),
        }


def _check_rows(digest: Digest) -> Iterator[dict[str, Any]]:
    """One row a construction and day; `checked_on` is empty for practice."""
    for line in () if digest.checks is None else digest.checks.lines:
        for point in line.points:
            yield {
                **_head(digest),
                "kind": Kind.MATCH.value,
                "name": line.name,
                "label": line.label,
                "set": line.item_set.value,
                "unaided_right": point.right.right,
                "unaided_of": point.right.of,
                "unaided_low": point.interval.low,
                "unaided_high": point.interval.high,
                "verdict": None if point.verdict is None else point.verdict.value,
                "phase": point.phase.value,
                "checked_on": point.day.isoformat(),
            }


def _grid_row(digest: Digest, grid: Grid, cell: GridCell) -> dict[str, Any]:
    return {
        **_head(digest),
        "kind": Kind.QUESTION.value,
        "name": f"{GRID}:{level_of(cell.band, cell.grammar)}",
        "label": f"{GRID_TITLE}: {cell_label(cell)}",
        "set": grid.item_set.value,
        "unaided_right": cell.unaided.right,
        "unaided_of": cell.unaided.of,
        "unaided_low": cell.interval.low,
        "unaided_high": cell.interval.high,
    }


def _head(digest: Digest) -> dict[str, Any]:
    return {
        "first": digest.first.isoformat(),
        "last": digest.last.isoformat(),
        "until": digest.until.isoformat(),
        "over": "yes" if digest.is_over else "no",
        "simulated": "yes" if digest.simulated else "no",
        "plan": inert(digest.plan_name),
        "plan_version": digest.plan_version,
    }


def _row(digest: Digest, line: Line) -> dict[str, Any]:
    change, gesture = line.change, line.gesture
    between = None if change is None else change.interval
    row: dict[str, Any] = {
        **_head(digest),
        "kind": line.kind.value,
        "name": line.name,
        "label": line.label,
        "set": line.item_set.value,
        "unaided_right": line.unaided.right,
        "unaided_of": line.unaided.of,
        "unaided_low": line.interval.low,
        "unaided_high": line.interval.high,
        "effective_k": line.effective_k,
        "verdict": None if line.verdict is None else line.verdict.value,
        "aided_right": line.aided.right,
        "aided_of": line.aided.of,
        "mean_cue_level": line.cues.mean_level,
        "median_latency_ms": line.latency.median_ms,
        "earlier_right": None if change is None else change.earlier.right,
        "earlier_of": None if change is None else change.earlier.of,
        "change": None if change is None else change.points,
        "change_low": None if between is None else between.low,
        "change_high": None if between is None else between.high,
        "mean_score": None if gesture is None else gesture.mean,
        "mean_first_help": None if gesture is None else gesture.mean_help,
        "hindered": None if gesture is None else gesture.hindered,
    }
    row.update({f"error_{foil.value}": count for foil, count in line.errors.items()})
    if line.detection is not None:
        row |= {
            "d_prime": line.detection.d_prime,
            "criterion": line.detection.criterion,
            "yes_to_true": line.detection.hits,
            "true_of": line.detection.true,
            "yes_to_false": line.detection.false_alarms,
            "false_of": line.detection.false,
        }
    if gesture is not None:
        row.update({f"score_{score}": count for score, count in enumerate(gesture.scores)})
    return row


def _cell(value: Any) -> Any:
    if isinstance(value, float):
        return f"{value:.4f}"
    if isinstance(value, str) and value.lstrip(" ").startswith(_FORMULA_STARTS):
        return f"'{value}"
    return value
