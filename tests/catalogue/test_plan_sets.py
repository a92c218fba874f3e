"""Sets in a plan: every fault of form is one sentence with its line."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.catalogue import line_in_plan, read_plan
from drills.core.kinds import ItemSet
from drills.core.probe_sets import SetExemplar
from drills.core.problems import BadInput

HEAD = """format = 1
name = "A plan"
version = 1
locale = "en-US"

[probes]
items = 20

[[block]]
kind = "match"
names = ["active"]
trials = 5
"""
WORDS = [f"{letter}-word" for letter in "abcdefg"]
PAIRS = [(one, other) for one in WORDS for other in WORDS if one < other][:20]
FIRST_LINE = 17


def set_text(*, act: str = "push", name: str = "active", role: str = "treated") -> str:
    lines = "".join(f'    "{act}: {one}, {other}",\n' for one, other in PAIRS)
    return f'\n[[set]]\nrole = "{role}"\nconstruction = "{name}"\nexemplars = [\n{lines}]\n'


def faults(text: str, path: Path) -> list[tuple[int | None, str]]:
    path.write_text(text, encoding="utf-8")
    with pytest.raises(BadInput) as caught:
        read_plan(path)
    return [(each.line, each.message) for each in caught.value.problems]


def test_a_set_is_read_in_its_order(tmp_path: Path) -> None:
    path = tmp_path / "plan.toml"
    path.write_text(HEAD + set_text(), encoding="utf-8")
    (made,) = read_plan(path).probes.sets
    assert (made.item_set, made.role, made.construction) == (ItemSet.PROBE, "treated", "active")
    assert [str(each) for each in made.exemplars] == [f"push: {a}, {b}" for a, b in PAIRS]
    assert read_plan(path, sets=False).probes.sets == ()


def test_an_exemplar_is_found_on_its_own_line_however_it_is_spaced(tmp_path: Path) -> None:
    path = tmp_path / "plan.toml"
    one, other = PAIRS[3]
    text = (HEAD + set_text()).replace(f"push: {one}, {other}", f"push :  {one},{other}")
    path.write_text(text.replace("push :", "push:"), encoding="utf-8")
    lines = path.read_text().splitlines()
    line = line_in_plan(path, f"set 1, push: {one}, {other}")
    assert line is not None
    assert f"{one},{other}" in lines[line - 1]
    header = line_in_plan(path, "set 1")
    assert header is not None
    assert lines[header - 1] == "[[set]]"


@pytest.mark.parametrize(
    ("change", "message"),
    [
        (("push: a-word, b-word", "push a-word b-word"), "is no exemplar"),
        (("push: a-word, b-word", "push: a-word, a-word"), "is no exemplar"),
        (('    "push: a-word, b-word",\n', ""), "has 19 exemplars"),
        (("push: a-word, b-word", "push: c-word, a-word"), "is asked already"),
        (('role = "treated"', 'role = "practised"'), "`role` cannot be"),
        (('role = "treated"', 'rôle = "treated"'), "not valid TOML"),
        (('construction = "active"', ""), "`construction` is missing"),
        (('role = "treated"', 'role = "treated"\nwords = 3'), "no setting `words`"),
    ],
)
def test_what_is_wrong_with_a_set_is_told_with_its_line(
    change: tuple[str, str], message: str, tmp_path: Path
) -> None:
    found = faults((HEAD + set_text()).replace(*change), tmp_path / "plan.toml")
    assert any(message in told for _, told in found)
    assert all(line is not None and line > FIRST_LINE - 5 for line, _ in found)


def test_an_exemplar_that_is_none_is_told_once(tmp_path: Path) -> None:
    text = (HEAD + set_text()).replace("push: a-word, b-word", "push a-word b-word")
    ((_, told),) = faults(text, tmp_path / "plan.toml")
    assert "is no exemplar" in told


def test_two_sets_of_one_construction_or_with_one_pair_are_refused(tmp_path: Path) -> None:
    twice = HEAD + set_text() + set_text(act="pull")
    assert any("already" in told for _, told in faults(twice, tmp_path / "plan.toml"))
    shared = HEAD + set_text() + set_text(name="full-passive")
    assert len(faults(shared, tmp_path / "plan.toml")) == len(PAIRS)


@given(
    act=st.from_regex(r"[a-z][a-z ]{0,12}[a-z]", fullmatch=True),
    first=st.from_regex(r"[a-z]{1,12}", fullmatch=True),
    second=st.from_regex(r"[A-Z]{1,12}", fullmatch=True),
)
def test_an_exemplar_reads_back_from_its_text(act: str, first: str, second: str) -> None:
    made = SetExemplar(act=act, first=first, second=second)
    assert SetExemplar.parse(str(made)) == made


@given(text=st.text(max_size=30))
def test_any_text_is_an_exemplar_or_refused(text: str) -> None:
    try:
        made = SetExemplar.parse(text)
    except ValueError:
        return
    assert SetExemplar.parse(str(made)) == made
