"""Digest: a range of records as numbers, and those numbers as text, page, JSON and CSV.

Holds the frozen Digest, how it is made and its renderers. May import core and measures; jinja2 and
matplotlib for the page only. Never reads records itself. Tested by tests/digest.
"""

from drills.core.problems import BadInput
from drills.digest.as_json import render_json
from drills.digest.making import make
from drills.digest.rows import render_csv
from drills.digest.text import render_text
from drills.digest.values import Digest
from drills.digest.weeks import range_of_week

FORMATS = ("text", "html", "json", "csv")


def render(digest: Digest, form: str) -> str:
    """The digest in one of FORMATS.   Raises: BadInput for another."""
    match form:
        case "text":
            return render_text(digest)
        case "html":
            # The page's template engine is slow to load and nothing else needs it.
            from drills.digest.page import render_page  # noqa: PLC0415

            return render_page(digest)
        case "json":
            return render_json(digest)
        case "csv":
            return render_csv(digest)
    raise BadInput(f"{form!r} is no format of the digest. Choose {', '.join(FORMATS)}.")


__all__ = ["FORMATS", "Digest", "make", "range_of_week", "render"]
