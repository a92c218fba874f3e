from __future__ import annotations

import json
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.catalogue.toml_lines import Block, read_blocks, read_text
from drills.core.problems import BadInput, Problem

# Every sign that could lead a scanner astray.
_TRICKY = st.text(alphabet="ab #=[]\"'\\,\u2028\x0b", max_size=12)
_KEYS = st.text(alphabet="abcXYZ019_-", min_size=1, max_size=6)
_SCALARS = st.one_of(st.integers(-9, 9), st.booleans(), _TRICKY)
_VALUES = st.one_of(
    _SCALARS, st.lists(_TRICKY, max_size=3), st.lists(st.lists(_TRICKY), max_size=3)
)
_FILLERS = st.sampled_from(["", "# a remark", '# "a [[remark]]', "   ", "# key = '''"])


def written(value: Any, *, spread: bool) -> str:
    """A value as TOML; a list over several lines when `spread`."""
    if isinstance(value, list):
        ends = ("[\n  ", ",\n  ", ",\n]") if spread and value else ("[", ", ", "]")
        rows = (written(each, spread=spread) for each in value)
        return ends[0] + ends[1].join(rows) + ends[2]
    return json.dumps(value)


@given(st.data())
def test_every_key_and_header_is_found_on_its_own_line(data: st.DataObject) -> None:
    # One name is never both a table, a list of tables and a loose key.
    names = data.draw(st.lists(_KEYS, min_size=1, max_size=3, unique=True))
    loose = data.draw(st.dictionaries(_KEYS.filter(lambda key: key not in names), _VALUES))
    many = {name: data.draw(st.booleans()) for name in names}
    order = [name for name in names if not many[name]]
    order += data.draw(st.lists(st.sampled_from(names), max_size=5))
    expected: list[tuple[str, int | None, dict[str, Any], dict[str, int]]] = []
    text = ""
    once: set[str] = set()
    for name in ["", *order]:
        if name in once:
            continue
        values = loose if name == "" else data.draw(st.dictionaries(_KEYS, _VALUES, max_size=3))
        line = None
        if name:
            line = text.count("\n") + 1
            text += f"[[{name}]]\n" if many[name] else f"[ {name} ] # here\n"
            if not many[name]:
                once.add(name)
        lines = {}
        for key, value in values.items():
            text += data.draw(_FILLERS) + "\n"
            lines[key] = text.count("\n") + 1
            spread = data.draw(st.booleans())
            text += f"{key} = {written(value, spread=spread)} # x\n"
        expected.append((name, line, values, lines))
    found = read_blocks(text, "file")
    assert [(b.name, b.line, dict(b.values), dict(b.lines)) for b in found] == expected
    windows = read_blocks(text.replace("\n", "\r\n"), "file")
    assert [block.lines for block in windows] == [block.lines for block in found]


def _read_or_refused(text: str) -> tuple[Any, ...]:
    """Blocks, or problems."""
    try:
        return read_blocks(text, "file")
    except BadInput as bad:
        return bad.problems


def _together(blocks: tuple[Block, ...]) -> dict[str, Any]:
    whole: dict[str, Any] = dict(blocks[0].values)
    for block in blocks[1:]:
        if block.repeated:
            whole.setdefault(block.name, []).append(dict(block.values))
        else:
            whole[block.name] = dict(block.values)
    return whole


@given(
    st.lists(
        st.sampled_from(
            [
                "[a]",
                "[[a]]",
                "[[b]]",
                "[a.b]",
                "a = 1",
                "b = [",
                "]",
                '"a" = 2',
                "a.c = 3",
                "[[1]],",
                "[[1]]",
                "'''",
                '"""',
                "# x",
                "c = '[[a]]'",
                "d = {e = 1}",
                "[ [ 2 ] ]",
                'f = """',
                "]]",
            ]
        ),
        max_size=7,
    ).map("\n".join)
)
def test_odd_files_are_read_rightly_or_refused(text: str) -> None:
    read = _read_or_refused(text)
    assert all(isinstance(each, Problem) for each in read) or (
        _together(read) == tomllib.loads(text)
    )


@given(st.text(max_size=40))
def test_any_text_at_all_is_read_or_refused(text: str) -> None:
    assert _read_or_refused(text)


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ('[[word]]\nkey = "a"\nnote = """two\nlines"""\nplural = 3\n', 3),
        ("a = 1\nb = '''x'''\n", 2),
        ("[[word]]\nkey = \n", 2),
        ("[[word]]\nkey = 1\nkey = 2\n", 3),
        ('a = 1\nb = "never closed', 2),
    ],
)
def test_a_fault_has_its_line(text: str, line: int) -> None:
    with pytest.raises(BadInput) as refused:
        read_blocks(text, "file")
    assert [problem.line for problem in refused.value.problems] == [line]


def test_a_text_that_only_looks_like_several_lines_is_read() -> None:
    (top,) = read_blocks("note = \"it's '''not''' that\"\n", "file")
    assert top.values == {"note": "it's '''not''' that"}


def test_deep_brackets_are_refused_and_not_a_crash() -> None:
    with pytest.raises(BadInput):
        read_blocks("a = " + "[" * 100_000, "file")


def test_a_file_that_is_not_text_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "words.toml"
    path.write_bytes(b"a = '\xff'")
    with pytest.raises(BadInput, match="UTF-8"):
        read_text(path, "words.toml")
    with pytest.raises(BadInput, match="cannot be read"):
        read_text(tmp_path / "nothing.toml", "nothing.toml")
    with pytest.raises(BadInput, match="cannot be read"):
        read_text(tmp_path, "folder")


def test_a_mark_before_the_first_letter_is_skipped(tmp_path: Path) -> None:
    path = tmp_path / "words.toml"
    path.write_bytes(b"\xef\xbb\xbfa = 1\n")
    assert read_text(path, "words.toml") == "a = 1\n"


def test_a_number_of_thousands_of_digits_is_refused_in_one_sentence() -> None:
    with pytest.raises(BadInput, match="A number is too long"):
        read_blocks(f"format = {'9' * 5000}\n", "plan.toml")
