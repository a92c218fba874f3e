from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue import load_profiles
from drills.core.problems import BadInput


@pytest.fixture
def shipped(content: Path) -> str:
    return (content / "profiles.toml").read_text(encoding="utf-8")


def test_the_shipped_profiles_load_in_order(content: Path, shipped: str) -> None:
    profiles = load_profiles(content / "profiles.toml")
    order = [line.split('"')[1] for line in shipped.splitlines() if line.startswith("name = ")]
    assert list(profiles) == order
    assert all(profiles[name].name == name for name in order)


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("active = 0.9", "active = 1.5", "`knows` is not a table of shares."),
        ("active = 0.9", "active = true", "`knows` is not a table of shares."),
        ("active = 0.9", "active = nan", "`knows` is not a table of shares."),
        ("words = ", "word = ", "`words` is missing."),
        ("missed = 0.", "missed = 9.", "Choose from 0 to 1."),
        ("[[profile]]", "[[profiles]]", "Did you mean `profile`?"),
    ],
)
def test_a_fault_of_a_profile_is_told_with_its_line(
    old: str, new: str, said: str, shipped: str, tmp_path: Path
) -> None:
    assert old in shipped
    path = tmp_path / "profiles.toml"
    path.write_text(shipped.replace(old, new, 1), encoding="utf-8")
    with pytest.raises(BadInput) as told:
        load_profiles(path)
    assert said in str(told.value.problems[0])
    assert all(problem.line for problem in told.value.problems)


def test_two_profiles_of_one_name_are_told(shipped: str, tmp_path: Path) -> None:
    path = tmp_path / "profiles.toml"
    path.write_text(shipped + shipped[shipped.index("[[") :], encoding="utf-8")
    with pytest.raises(BadInput, match="There are two profiles"):
        load_profiles(path)
