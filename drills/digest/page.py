"""The digest as one page to print: no script, no network, legible without colour."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from jinja2 import Environment, StrictUndefined, Template

from drills.core.items import ItemSet
from drills.digest import calendar_wording, check_wording, question_wording, wording
from drills.digest.values import FEWEST_FOR_PERCENT, Digest


def render_page(digest: Digest) -> str:
    """One self-contained HTML page for A4 and Letter paper."""
    return _template().render(
        digest=digest,
        words=wording,
        asked=question_wording,
        checked=check_wording,
        ahead=calendar_wording,
        fewest=FEWEST_FOR_PERCENT,
        most_minutes=max(digest.dose.by_day.values(), default=0.0),
        treated=ItemSet.TREATED,
    )


@cache
def _template() -> Template:
    environment = Environment(
        autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
    )
    environment.filters["inert"] = wording.inert
    source = files("drills.digest").joinpath("digest_page.html.j2").read_text(encoding="utf-8")
    return environment.from_string(source)
