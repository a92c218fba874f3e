from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue import load_guide
from drills.core.problems import BadInput


def test_the_shipped_guide_loads() -> None:
    chapters = load_guide(Path(__file__).parents[2] / "caregiver_guide")
    assert len({chapter.key for chapter in chapters}) == len(chapters) > 4
    assert all(chapter.title and chapter.text for chapter in chapters)


def test_chapters_come_in_the_order_of_their_numbers(tmp_path: Path) -> None:
    (tmp_path / "10-last.md").write_text("text\n\n## The last ##\n# Another\n", encoding="utf-8")
    (tmp_path / "02-first-steps.md").write_text("# First steps\n", encoding="utf-8")
    (tmp_path / "notes.txt").write_text("no chapter", encoding="utf-8")
    found = [(chapter.key, chapter.title) for chapter in load_guide(tmp_path)]
    assert found == [("first-steps", "First steps"), ("last", "The last")]


@pytest.mark.parametrize(
    ("files", "said"),
    [
        ({}, "has no chapters"),
        ({"1-a.md": "# A"}, "1-a.md: This is no name for a chapter."),
        ({"01-a.md": "#No heading"}, "01-a.md:1: This chapter has no heading."),
        ({"01-a.md": "# A", "02-a.md": "# B"}, "02-a.md: There are two chapters `a`."),
    ],
)
def test_a_fault_of_the_guide_is_told(files: dict[str, str], said: str, tmp_path: Path) -> None:
    for name, text in files.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    with pytest.raises(BadInput) as told:
        load_guide(tmp_path)
    assert said in str(told.value)


def test_a_chapter_that_is_not_text_is_told(tmp_path: Path) -> None:
    (tmp_path / "01-a.md").write_bytes(b"# \xff")
    with pytest.raises(BadInput, match="UTF-8"):
        load_guide(tmp_path)
