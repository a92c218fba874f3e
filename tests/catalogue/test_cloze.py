from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue.cloze import group_name, read_cloze
from drills.core.material import ClozeLevel
from drills.core.problems import Problem

LEVEL = (
    '[[level]]\nkey = "C3"\nname = "Place"\nhint = "Look."\n'
    'contrasts = [["in", "on"], ["behind", "in front of"]]\n'
)


def read(tmp_path: Path, text: str) -> tuple[dict[str, ClozeLevel], list[str]]:
    (tmp_path / "cloze.toml").write_text(text, encoding="utf-8")
    problems: list[Problem] = []
    levels = read_cloze(tmp_path, problems)
    return levels, [str(problem).partition("/")[2] for problem in problems]


def test_a_contrast_is_named_by_its_words(tmp_path: Path) -> None:
    levels, problems = read(tmp_path, LEVEL)
    assert not problems
    assert levels["C3"].contrasts == {
        "in-on": ("in", "on"),
        "behind-in_front_of": ("behind", "in front of"),
    }
    assert group_name(("is", "are")) == "is-are"


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('["in", "on"]', '["in"]', "`contrasts` is not a list of contrasts."),
        ('["in", "on"]', '["in", 3]', "`contrasts` is not a list of contrasts."),
        ('["in", "on"], ["behind", "in front of"]', "", "`contrasts` is not a list"),
        ('["in", "on"]', '["in", "in", "on"]', "has a word twice"),
        ('["in", "on"]', '["behind", "in front of"]', "There are two contrasts"),
        ('["in", "on"]', '["on", "onto"]', "Choose words of which only one can fit."),
    ],
)
def test_a_wrong_contrast_is_noted_at_its_line(
    old: str, new: str, said: str, tmp_path: Path
) -> None:
    _, problems = read(tmp_path, LEVEL.replace(old, new))
    assert len(problems) == 1
    assert problems[0].startswith("cloze.toml:5: ")
    assert said in problems[0]


def test_two_levels_of_one_key_are_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL + LEVEL)
    assert problems == ["cloze.toml:7: There are two levels `C3`. Remove one."]


def test_a_level_without_contrasts_is_noted_at_its_header(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL[: LEVEL.index("contrasts")])
    assert problems == ["cloze.toml:1: `contrasts` is missing. Add `contrasts = ...` to [[level]]."]


def test_a_key_that_nobody_reads_is_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL + "nmae = 1\n")
    assert problems == ["cloze.toml:6: There is no setting `nmae` here. Did you mean `name`?"]
