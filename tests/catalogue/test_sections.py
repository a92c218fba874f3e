from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue.sections import read_sections
from drills.core.problems import Problem


def read(tmp_path: Path, text: str, *, top: bool = False) -> tuple[list[str], list[str]]:
    path = tmp_path / "file.toml"
    path.write_text(text, encoding="utf-8")
    problems: list[Problem] = []
    found = read_sections(path, "file", problems, many=("word",), once=("dose",), top=top)
    return [fields.block.name for fields in found], [str(each) for each in problems]


def test_sections_come_in_the_order_of_the_file(tmp_path: Path) -> None:
    text = "a = 1\n[[word]]\n[dose]\n[[word]]\n"
    assert read(tmp_path, text, top=True) == (["", "word", "dose", "word"], [])


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("[[wrod]]\n", "file:1: There is no section [[wrod]] here. Did you mean `word`?"),
        ("[word]\n", "file:1: This section is written [word]. Write [[word]]."),
        ("\n[[dose]]\n", "file:2: This section is written [[dose]]. Write [dose]."),
        ("a = 1\n", "file:1: `a` stands before any section. Put it under [[word]] or remove it."),
    ],
)
def test_a_section_that_does_not_belong_is_noted_and_left_out(
    text: str, said: str, tmp_path: Path
) -> None:
    assert read(tmp_path, text) == ([], [said])


def test_a_file_that_is_not_there_is_one_fault(tmp_path: Path) -> None:
    problems: list[Problem] = []
    assert read_sections(tmp_path / "no.toml", "no.toml", problems, many=("word",)) == []
    assert [problem.where for problem in problems] == ["no.toml"]
