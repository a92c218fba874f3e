"""The rules for style sheets: one a screen, and every rule names its screen.

A sheet stays in force on every later screen, so a rule without its screen would leak.
"""

from __future__ import annotations

import re
from pathlib import Path

import pytest

SCREENS = Path(__file__).parents[2] / "drills" / "tui" / "screens"
SHEETS = sorted(SCREENS.glob("*.tcss"))


def selectors(text: str) -> list[str]:
    without_comments = re.sub(r"/\*.*?\*/", "", text, flags=re.DOTALL)
    heads = re.findall(r"([^{}]+)\{[^{}]*\}", without_comments)
    return [selector.strip() for head in heads for selector in head.split(",")]


@pytest.mark.parametrize("sheet", SHEETS, ids=lambda sheet: sheet.stem)
def test_every_rule_starts_with_the_class_of_its_screen(sheet: Path) -> None:
    source = sheet.with_suffix(".py").read_text(encoding="utf-8")
    (name,) = re.findall(r"^class (\w+Screen)\(", source, re.MULTILINE)
    found = selectors(sheet.read_text(encoding="utf-8"))
    assert found
    assert [text for text in found if not re.match(rf"{name}(?![\w-])", text)] == []


def test_every_screen_that_has_a_sheet_names_it_and_every_sheet_has_a_screen() -> None:
    named = {
        path.stem: re.findall(r'CSS_PATH = "([\w.]+)"', path.read_text(encoding="utf-8"))
        for path in SCREENS.glob("*.py")
    }
    assert {stem for stem, sheets in named.items() if sheets} == {s.stem for s in SHEETS}
    assert all(sheets in ([], [f"{stem}.tcss"]) for stem, sheets in named.items())


def test_the_check_finds_a_rule_without_its_screen() -> None:
    assert selectors("HomeScreen { a: b; }\nLabel, HomeScreen .x { c: d; }") == [
        "HomeScreen",
        "Label",
        "HomeScreen .x",
    ]


def test_the_app_stays_thin() -> None:
    app = SCREENS.parent / "app.py"
    assert len(app.read_text(encoding="utf-8").splitlines()) <= 165
