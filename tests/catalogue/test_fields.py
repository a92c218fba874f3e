from __future__ import annotations

from collections.abc import Callable
from enum import StrEnum
from typing import Any

import pytest

from drills.catalogue.fields import Fields, nearest
from drills.catalogue.toml_lines import read_blocks
from drills.core.problems import Problem


class Hue(StrEnum):
    RED = "red"
    GREEN = "green"


def taken(line: str, take: Callable[[Fields], Any]) -> tuple[Any, list[Problem]]:
    """What `take` gets from a block with one key on line 3, and the faults it notes."""
    problems: list[Problem] = []
    block = read_blocks(f"[[word]]\n# a remark\n{line}\n", "words.toml")[1]
    fields = Fields(block, "words.toml", problems)
    value = take(fields)
    fields.close()
    return value, problems


@pytest.mark.parametrize(
    ("line", "take", "value"),
    [
        ('key = "cup"', lambda f: f.text("key"), "cup"),
        ('key = ""', lambda f: f.text("key", default=""), ""),
        ("", lambda f: f.text("key", default="cup"), "cup"),
        ('key = ["a", "b"]', lambda f: f.texts("key"), ("a", "b")),
        ("", lambda f: f.texts("key", default=()), ()),
        ("key = 3", lambda f: f.whole("key", 1, 3), 3),
        ("key = [1, 2]", lambda f: f.wholes("key", 1, 3), (1, 2)),
        ("key = 2", lambda f: f.number("key", 1, 3), 2.0),
        ("key = 2.5", lambda f: f.number("key", 1, 3), 2.5),
        ("key = true", lambda f: f.flag("key"), True),
        ("", lambda f: f.flag("key", default=False), False),
        ('key = "green"', lambda f: f.choice("key", Hue), Hue.GREEN),
        ('key = ["green"]', lambda f: f.choices("key", Hue), (Hue.GREEN,)),
        ("", lambda f: f.day("key"), None),
    ],
)
def test_a_right_value_is_taken_without_a_fault(
    line: str, take: Callable[[Fields], Any], value: Any
) -> None:
    assert taken(line, take) == (value, [])


@pytest.mark.parametrize(
    ("line", "take", "said"),
    [
        ("key = 3", lambda f: f.text("key"), "`key` is 3. It needs text"),
        ('key = " "', lambda f: f.text("key"), "`key` is empty."),
        ('key = "abcd"', lambda f: f.text("key", longest=3), "Use at most 3 letters."),
        ('key = "a"', lambda f: f.texts("key"), "It needs a list"),
        ('key = ["a", 1]', lambda f: f.texts("key"), "It needs a list"),
        ('key = ["a", "a"]', lambda f: f.texts("key"), '`key` has "a" twice.'),
        ('key = ["a", ""]', lambda f: f.texts("key"), "has an empty entry"),
        ("key = []", lambda f: f.texts("key"), "Give at least one entry."),
        ("key = 4", lambda f: f.whole("key", 1, 3), "Choose from 1 to 3."),
        ("key = true", lambda f: f.whole("key", 1, 3), "`key` is true. It needs a whole"),
        ("key = 1.0", lambda f: f.whole("key", 1, 3), "It needs a whole number."),
        ("key = [2, 1]", lambda f: f.wholes("key", 1, 3), "`key` does not rise."),
        ("key = [1, true]", lambda f: f.wholes("key", 1, 3), "It needs a list"),
        ("key = []", lambda f: f.wholes("key", 1, 3), "Give at least one number."),
        ("key = nan", lambda f: f.number("key", 1, 3), "out of range"),
        ("key = inf", lambda f: f.number("key", 1, 3), "out of range"),
        ('key = "2"', lambda f: f.number("key", 1, 3), "It needs a number."),
        ("key = 1", lambda f: f.flag("key"), "It needs true or false."),
        ('key = "gren"', lambda f: f.choice("key", Hue), "Did you mean `green`?"),
        ("key = 1", lambda f: f.choice("key", Hue), "It can be: red, green."),
        ('key = ["blue"]', lambda f: f.choices("key", Hue), "It can be: red, green."),
        ('key = "2026-01-02"', lambda f: f.day("key"), "It needs a date"),
        ("key = 2026-01-02T10:00:00", lambda f: f.day("key"), "It needs a date"),
        ("keys = 1", lambda f: f.flag("key", default=True), "Did you mean `key`?"),
    ],
)
def test_a_wrong_value_is_noted_once_at_its_line(
    line: str, take: Callable[[Fields], Any], said: str
) -> None:
    _, problems = taken(line, take)
    assert len(problems) == 1
    assert said in str(problems[0])
    assert str(problems[0]).startswith("words.toml:3: ")


def test_what_is_missing_is_noted_at_the_header() -> None:
    _, problems = taken("", lambda fields: fields.text("key"))
    assert [str(each) for each in problems] == [
        "words.toml:1: `key` is missing. Add `key = ...` to [[word]]."
    ]


def test_a_long_wrong_value_is_cut_short() -> None:
    _, problems = taken(f"key = {list(range(200))}", lambda fields: fields.flag("key"))
    assert len(str(problems[0])) < 140


def test_a_word_far_from_all_others_gets_the_whole_list() -> None:
    assert nearest("zzz", ["red", "green"]) == "It can be: red, green."
