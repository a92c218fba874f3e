"""The page of rehearsed weeks as a real browser prints it and as a checker reads it."""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path

import pytest
from pypdf import PdfReader

from drills.catalogue import load_profiles, read_plan
from drills.core.material import Material
from drills.digest import Digest, render
from drills.rehearsal import MemoryRecords, Rehearsal
from tests.edges import QuietVoice
from tests.whole.printing import (
    PAPERS,
    SIDES_MM,
    as_pdf,
    cut_off,
    needs_browser,
    needs_checker,
    violations,
)

CONTENT = Path(__file__).parents[2] / "content"
PROFILES = load_profiles(CONTENT / "profiles.toml")
STARTER = read_plan(CONTENT / "plans" / "starter.toml")
MONDAY, WEEKS = date(2026, 10, 12), 6
SHOWN = ("first-noun", "slow-but-steady", "likes-yes", "left-unseen", "tires-quickly", "forgets")


def week_of(material: Material, profile: str, weeks: int = WEEKS) -> Digest:
    """The last of some weeks of a simulated patient."""
    home = Rehearsal(
        plan=STARTER,
        material=material,
        records=MemoryRecords(),
        voice=QuietVoice(),
        guide=(),
        program="0.0.0",
        profile=PROFILES[profile],
        first=MONDAY,
        seed=11,
    ).run(weeks)
    monday = MONDAY + timedelta(weeks=weeks - 1)
    return home.digest(monday, monday + timedelta(days=6))


@pytest.mark.parametrize("profile", SHOWN)
def test_a_usual_week_prints_on_two_pages_and_the_checker_finds_nothing(
    material: Material, profile: str, tmp_path: Path
) -> None:
    needs_browser()
    page = render(week_of(material, profile), "html")
    assert len(page.encode()) < 300_000
    for paper, size in PAPERS.items():
        printed = PdfReader(as_pdf(page, tmp_path, paper))
        assert [round(float(side)) for side in printed.pages[0].mediabox[2:]] == list(size)
        assert len(printed.pages) <= 2, paper
        told = " ".join(" ".join(each.extract_text() for each in printed.pages).split())
        # Nothing is lost between the first line and the last.
        assert "SIMULATED PATIENT" in told
        assert "not on practice." in told
        assert f"Page {len(printed.pages)} of {len(printed.pages)}" in told
        assert cut_off(page, tmp_path, width_mm=size[0] / 72 * 25.4 - SIDES_MM) == []
    needs_checker()
    assert violations(page, tmp_path) == []


def test_what_sticks_out_is_found(tmp_path: Path) -> None:
    needs_browser()
    wide = '<style>@media print {}</style></head><body><p style="width: 300mm">wide</p></body>'
    page = f"<!DOCTYPE html><html><head>{wide}</html>"
    assert cut_off(page, tmp_path, width_mm=188) == ["P wide"]


def test_the_checker_finds_what_is_planted(tmp_path: Path) -> None:
    needs_checker()
    page = (
        "<!DOCTYPE html><html><head><title>t</title></head><body><main><h1>t</h1>"
        '<p style="color: #aaa">pale</p><svg role="img"></svg></main></body></html>'
    )
    found = {each["id"] for each in violations(page, tmp_path)}
    assert {"html-has-lang", "color-contrast", "svg-img-alt"} <= found
