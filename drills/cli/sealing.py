"""`drills digest --seal`: the page to read, and the file to send."""

from __future__ import annotations

from pathlib import Path

from drills.core.plans import Plan
from drills.core.problems import BadInput, Failure
from drills.digest import Digest, render
from drills.digest.sealed_form import sealed_content
from drills.sealing import seal

FORMS = (None, "json", "html")
_ENDINGS = (".age", ".html", ".json")


def check_sealing(plan: Plan, out: str | None, form: str | None) -> None:
    """Raises: BadInput for what cannot be sealed, before the digest is made."""
    if form not in FORMS:
        raise BadInput(f"--seal seals numbers and page, no {form}. Leave --format out.")
    if out is None:
        raise BadInput("--seal needs a name for its two files: --out NAME.")
    if not Path(out).name or Path(out).is_dir():
        raise BadInput(f"--out {out}: This is a folder. Add a name: --out {Path(out) / 'week'}.")
    if not plan.sealing.recipient:
        raise BadInput(
            "The plan in force has no public key to seal to. The therapist makes one with "
            "`drills plan key` and writes it into the plan."
        )


def write_sealed(digest: Digest, recipient: str, out: str, form: str | None) -> None:
    """Write NAME.html, to be read first, and NAME.age, to be sent.

    form: "html" seals the page alone; else the numbers with the page.   Raises: Failure.
    """
    page = render(digest, "html")
    content = page.encode("utf-8") if form == "html" else sealed_content(digest, page)
    sealed = seal(content, recipient)
    chosen = Path(out)
    name = chosen.stem if chosen.suffix.lower() in _ENDINGS else chosen.name
    for ending, data in ((".html", page.encode("utf-8")), (".age", sealed)):
        path = chosen.with_name(f"{name}{ending}")
        try:
            path.write_bytes(data)
        except OSError as error:
            raise Failure(f"{path} could not be written: {error.strerror}.") from None
    also = "" if form == "html" else ", and each answer behind it"
    print(f"To read first: {chosen.with_name(name + '.html')}")
    print(f"To send: {chosen.with_name(name + '.age')}")
    print(f"The sealed file holds that page{also}. Only the therapist can open it.")
    print("Nothing has been sent. Do not want to send it? Then delete both files.")
