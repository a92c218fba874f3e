"""A real browser and an accessibility checker, where this machine has them.

DRILLS_CHROMIUM names the browser, else it is looked for on the path. DRILLS_AXE names a file
axe.min.js, else the package that brings one is asked (the extra `bench`).
"""

from __future__ import annotations

import html
import json
import os
import re
import shutil
import subprocess
from functools import cache
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest

# Points; the margins at the sides are 11 mm each.
PAPERS = {"A4": (595, 842), "letter": (612, 792)}
SIDES_MM = 22
_QUIET = [
    "--headless",
    "--no-sandbox",
    "--disable-gpu",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-extensions",
    "--no-pdf-header-footer",
]


@cache
def chromium() -> str | None:
    names = [os.environ.get("DRILLS_CHROMIUM", ""), "chromium", "chromium-browser", "google-chrome"]
    return next((found for name in names if name and (found := shutil.which(name))), None)


@cache
def axe() -> Path | None:
    named = os.environ.get("DRILLS_AXE")
    package = find_spec("axe_playwright_python")
    places = [Path(named)] if named else []
    if package is not None and package.origin is not None:
        places.append(Path(package.origin).with_name("axe.min.js"))
    return next((place for place in places if place.is_file()), None)


def needs_browser() -> None:
    if chromium() is None:
        pytest.skip("no Chromium on this machine: install it, or name it in DRILLS_CHROMIUM")


def needs_checker() -> None:
    needs_browser()
    if axe() is None:
        pytest.skip("no axe-core on this machine: install the extra `bench`, or set DRILLS_AXE")


def _run(page: Path, *arguments: str) -> str:
    browser = chromium()
    assert browser is not None
    done = subprocess.run(
        [browser, *_QUIET, f"--user-data-dir={page.parent / 'browser'}", *arguments, page.as_uri()],
        capture_output=True,
        text=True,
        check=True,
        timeout=120,
    )
    return done.stdout


def as_pdf(page: str, folder: Path, paper: str) -> Path:
    """The page as the browser prints it on `paper`, one of PAPERS."""
    source, printed = folder / f"{paper}.html", folder / f"{paper}.pdf"
    sized = page.replace("@page {", f"@page {{ size: {paper};", 1)
    assert sized != page
    source.write_text(sized, encoding="utf-8")
    _run(source, f"--print-to-pdf={printed}")
    return printed


def _asked(page: str, folder: Path, name: str, script: str) -> Any:
    """What `script` finds in a copy of the page; it calls `tell` with a value, sooner or later."""
    tell = (
        "const tell = found => { const told = document.createElement('pre'); told.id = 'found'; "
        "told.textContent = JSON.stringify(found); document.body.append(told) };"
    )
    copy = folder / name
    copy.write_text(
        page.replace("</head>", f"{script}</head>", 1).replace("TELL", tell, 1), "utf-8"
    )
    written = _run(copy, "--virtual-time-budget=20000", "--dump-dom")
    told = re.search(r'<pre id="found">(.*?)</pre>', written, re.DOTALL)
    assert told is not None, "the browser told nothing"
    return json.loads(html.unescape(told[1]))


def violations(page: str, folder: Path) -> list[dict[str, Any]]:
    """What the checker finds wrong, all of its rules and advice; checked in a copy of the page."""
    checker = axe()
    assert checker is not None
    shutil.copy(checker, folder / "axe.min.js")
    script = (
        '<script src="axe.min.js"></script><script>TELL addEventListener("load", () => '
        "axe.run(document).then(found => "
        "tell({violations: found.violations, passes: found.passes.length})))</script>"
    )
    found = _asked(page, folder, "checked.html", script)
    # A checker that has looked at nothing finds nothing.
    assert found["passes"] >= 15
    return list(found["violations"])


def cut_off(page: str, folder: Path, *, width_mm: float) -> list[str]:
    """Words and drawings that stick out of a printed page as wide as this between its margins."""
    script = (
        f"<style>body {{ width: {width_mm}mm !important; }}</style>"
        "<script>TELL addEventListener('load', () => { "
        "const edge = document.body.getBoundingClientRect().right + 0.5; "
        "tell([...document.body.querySelectorAll('*')]"
        ".filter(each => each.getBoundingClientRect().right > edge)"
        ".map(each => each.tagName + ' ' + each.textContent.trim().slice(0, 40))) })</script>"
    )
    printed = page.replace("@media print", "@media all", 1)
    assert printed != page
    return list(_asked(printed, folder, f"{width_mm}.html", script))
