from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue.cloze import group_name, read_cloze
from drills.core.material import ClozeLevel
from drills.core.problems import Problem

LEVEL = '[[level]]\nkey = "C3"\nname = "Place"\n'
SET = (
    '[[set]]\nlevel = "C3"\nframe = "place"\nhint = "Look."\n'
    'contrasts = [["in", "on"], ["behind", "in front of"]]\n'
)


def read(tmp_path: Path, text: str) -> tuple[dict[str, ClozeLevel], list[str]]:
    (tmp_path / "cloze.toml").write_text(text, encoding="utf-8")
    problems: list[Problem] = []
    levels = read_cloze(tmp_path, problems)
    return levels, [str(problem).partition("/")[2] for problem in problems]


def test_a_contrast_is_named_by_its_words_and_belongs_to_its_set(tmp_path: Path) -> None:
    levels, problems = read(tmp_path, LEVEL + SET)
    assert not problems
    assert levels["C3"].contrasts == {
        "in-on": ("in", "on"),
        "behind-in_front_of": ("behind", "in front of"),
    }
    assert group_name(("is", "are")) == "is-are"
    (only,) = levels["C3"].sets
    assert levels["C3"].set_of("in-on") == only
    assert (only.frame, only.hint) == ("place", "Look.")
    with pytest.raises(KeyError):
        levels["C3"].set_of("on-in")


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ('["in", "on"]', '["in"]', "`contrasts` is not a list of contrasts."),
        ('["in", "on"]', '["in", 3]', "`contrasts` is not a list of contrasts."),
        ('["in", "on"], ["behind", "in front of"]', "", "`contrasts` is not a list"),
        ('["in", "on"]', '["in", "in", "on"]', "has a word twice"),
        ('["in", "on"]', '["behind", "in front of"]', "There are two contrasts"),
        ('["in", "on"]', '["on", "onto"]', "Choose words of which only one can fit."),
        ('["in", "on"]', '["inside", "in"]', "`in` and `inside` can both be right."),
        ('["in", "on"]', '["who", "which", "that"]', "`who` and `that` can both be right."),
    ],
)
def test_a_wrong_contrast_is_noted_at_its_line(
    old: str, new: str, said: str, tmp_path: Path
) -> None:
    _, problems = read(tmp_path, LEVEL + SET.replace(old, new))
    assert problems
    assert all(problem.startswith("cloze.toml:8: ") for problem in problems)
    assert said in problems[0]


def test_two_levels_of_one_key_are_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL + SET + LEVEL)
    assert problems == ["cloze.toml:10: There are two levels `C3`. Remove one."]


def test_one_contrast_in_two_sets_of_a_level_is_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL + SET + SET)
    assert problems == [
        "cloze.toml:13: There are two contrasts `in-on`. Remove one.",
        "cloze.toml:13: There are two contrasts `behind-in_front_of`. Remove one.",
    ]


def test_a_set_of_a_level_that_is_not_there_is_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL + SET.replace('level = "C3"', 'level = "C4"'))
    assert problems == ["cloze.toml:5: There is no level `C4` above. It can be: C3."]


def test_a_set_without_contrasts_is_noted_at_its_header(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL + SET[: SET.index("contrasts")])
    assert problems == ["cloze.toml:4: `contrasts` is missing. Add `contrasts = ...` to [[set]]."]


def test_a_key_that_nobody_reads_is_noted(tmp_path: Path) -> None:
    _, problems = read(tmp_path, LEVEL + "nmae = 1\n" + SET)
    assert problems == ["cloze.toml:4: There is no setting `nmae` here. Did you mean `name`?"]
