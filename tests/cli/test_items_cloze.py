"""What `drills items --kind cloze` tells: coverage, blind lists, context in its place."""

from __future__ import annotations

import re

import pytest

from drills.cli import run


def told(capsys: pytest.CaptureFixture[str], *arguments: str) -> str:
    assert run(["items", *arguments]) == 0
    return capsys.readouterr().out


def test_coverage_is_told_with_its_share(capsys: pytest.CaptureFixture[str]) -> None:
    text = told(capsys, "--kind", "cloze", "--coverage")
    assert re.search(r"^the +cloze/C5/", text, re.MULTILINE)
    (share,) = re.findall(r"(\d+\.\d)% of the small words of spoken English", text)
    assert float(share) >= 95


def test_a_blind_list_has_no_key(capsys: pytest.CaptureFixture[str]) -> None:
    text = told(capsys, "--kind", "cloze", "--blind", "--count", "30", "--seed", "4")
    assert "030" in text
    assert not re.search("right|agreement|collocation|cloze/", text)


def test_an_answer_stands_under_its_question_and_days_above(
    capsys: pytest.CaptureFixture[str],
) -> None:
    asked = told(capsys, "--kind", "cloze", "--level", "C11", "--count", "1", "--seed", "2")
    lines = [line.strip() for line in asked.splitlines()]
    assert lines[2].startswith("____")
    assert lines[3].endswith(".")
    days = told(capsys, "--kind", "cloze", "--level", "C12", "--count", "6", "--seed", "2")
    first = re.search(r"^  ([A-Z][a-z]{2}) \d+: \w+$", days, re.MULTILINE)
    assert first is not None
    assert "____" in days[first.end() :].split("\n\n")[0]


@pytest.mark.parametrize("flag", ["--coverage", "--blind"])
def test_what_is_of_cloze_alone_is_refused_elsewhere(
    flag: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert run(["items", "--kind", "match", flag]) == 2
    assert "Add --kind cloze." in capsys.readouterr().err
