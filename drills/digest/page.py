"""The digest as one page to print: no script, no network, legible without colour."""

from __future__ import annotations

from functools import cache, partial
from importlib.resources import files

from jinja2 import Environment, StrictUndefined, Template

from drills.core.items import ItemSet
from drills.digest import (
    calendar_wording,
    check_wording,
    outcome_wording,
    pattern_wording,
    question_wording,
    suggestion_wording,
    week_wording,
    wording,
)
from drills.digest.charts_checks import checks_chart
from drills.digest.charts_shares import grid_chart, retention_chart
from drills.digest.charts_weeks import cues_chart, dose_chart
from drills.digest.page_summary import MOST_NAMES, summary
from drills.digest.page_tables import (
    by_rule,
    check_days,
    cue_lines,
    cue_told,
    flagged,
    kept_series,
    most_help,
    newest,
    notes_told,
    quality_told,
    suggested,
)
from drills.digest.plain import kept
from drills.digest.values import FEWEST_FOR_PERCENT, Digest

MOST_SUGGESTIONS = 6
# From score 3 to 0; white has its outline.
SCORE_GREYS = ("#333", "#888", "#ccc", "#fff")


def render_page(digest: Digest) -> str:
    """One self-contained HTML page for A4 and Letter paper."""
    drawn = cue_lines(digest.cue_weeks)
    return _template().render(
        digest=digest,
        corner=_corner(digest),
        words=wording,
        asked=question_wording,
        checked=check_wording,
        ahead=calendar_wording,
        results=outcome_wording,
        habits=pattern_wording,
        advice=suggestion_wording,
        weeks=week_wording,
        fewest=FEWEST_FOR_PERCENT,
        treated=ItemSet.TREATED,
        score_greys=SCORE_GREYS,
        summary=summary,
        most_names=MOST_NAMES,
        most_suggestions=MOST_SUGGESTIONS,
        check_days=check_days,
        newest=newest,
        notes_told=notes_told,
        quality_told=quality_told,
        flagged=flagged(digest),
        suggested=suggested,
        by_rule=by_rule,
        cue_lines=cue_lines,
        cue_told=cue_told,
        kept_series=kept_series,
        dose_chart=partial(dose_chart, width_mm=68, height_mm=20),
        # One scale for all, so that the charts can be held against each other.
        cues_chart=partial(cues_chart, most=most_help(drawn), width_mm=43, height_mm=12.5),
        checks_chart=partial(checks_chart, width_mm=58, height_mm=21),
        retention_chart=partial(retention_chart, width_mm=48, height_mm=23),
        grid_chart=partial(grid_chart, width_mm=62, height_mm=27),
    )


def _corner(digest: Digest) -> str:
    """The days, and the code of the person, as they may stand within quotes of a style sheet."""
    told = wording.range_told(digest)
    if digest.person:
        told = f"{told}, code {wording.inert(digest.person)}"
    return "".join(
        each if each in " ,:-" or (each.isascii() and each.isalnum()) else f"\\{ord(each):x} "
        for each in told
    )


@cache
def _template() -> Template:
    environment = Environment(
        autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    environment.filters["inert"] = wording.inert
    environment.filters["kept"] = kept
    source = files("drills.digest").joinpath("digest_page.html.j2").read_text(encoding="utf-8")
    return environment.from_string(source)
