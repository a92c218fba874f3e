"""Why a number is not given, in words; and numbers with as many places as they can carry."""

from __future__ import annotations

from drills.digest.wording import whole_percent
from drills.measures.missing import Lack, Missing

_ONE = {
    Lack.TRIALS: "trial",
    Lack.ERRORS: "error",
    Lack.BASELINE: "baseline point",
    Lack.POINTS: "point in each phase",
    Lack.SESSIONS: "session",
    Lack.PAIRS: "pair of scores",
    Lack.RATED: "thing rated",
    Lack.ITEMS: "item asked both times",
}
_MANY = {
    Lack.POINTS: "points in each phase",
    Lack.PAIRS: "pairs of scores",
    Lack.RATED: "things rated",
    Lack.ITEMS: "items asked both times",
}
SAME = "every value is the same"


def missing(of: Missing) -> str:
    """`3 baseline points are needed; there are 2`."""
    if of.lack is Lack.SPREAD:
        return SAME
    one = _ONE[of.lack]
    needed = f"{one} is" if of.need == 1 else f"{_MANY.get(of.lack, f'{one}s')} are"
    there = {0: "there is none", 1: "there is 1"}.get(of.have, f"there are {of.have}")
    return f"{of.need} {needed} needed; {there}"


def two(value: float) -> str:
    """`0.60`, `-1.25`; never `-0.00`."""
    shown = f"{value:.2f}"
    return "0.00" if shown == "-0.00" else shown


def signed_two(value: float) -> str:
    """`+0.21`; 0 has no sign."""
    shown = two(value)
    return shown if shown == "0.00" or shown.startswith("-") else f"+{shown}"


def signed_points(value: float) -> str:
    """`+25 points`; 0 has no sign.   value: a difference of shares, -1 to 1."""
    moved = whole_percent(value)
    return f"{moved:+d} points" if moved else "0 points"


def points_span(value: float, low: float, high: float) -> str:
    """`+25 points (-10 to 53)`."""
    return f"{signed_points(value)} ({whole_percent(low)} to {whole_percent(high)})"
