"""`drills plan sets`: what checks ask, chosen once and written into the plan."""

from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue import read_plan
from drills.cli import run


@pytest.fixture
def plan(tmp_path: Path) -> Path:
    path = tmp_path / "plan.toml"
    assert run(["plan", "new", "--out", str(path)]) == 0
    return path


def test_sets_are_written_told_and_accepted(
    plan: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "with-sets.toml"
    assert run(["plan", "sets", str(plan), "--out", str(out), "--seed", "3"]) == 0
    told = capsys.readouterr().out
    assert "Standardised mean differences" in told
    assert told.count("the doer left in 10") == 3
    assert "Not all are alike" not in told
    made = read_plan(out)
    assert [each.role for each in made.probes.sets] == ["treated", "treated", "related"]
    assert made.probes.seed == 3
    assert read_plan(plan).probes.sets == ()
    assert run(["plan", "check", str(out)]) == 0
    assert "plan sets" not in capsys.readouterr().out
    # Nothing that is there is written over.
    assert run(["plan", "sets", str(plan), "--out", str(out)]) == 2


def test_without_a_file_to_write_nothing_is_written(
    plan: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = sorted(plan.parent.iterdir())
    assert run(["plan", "sets", str(plan)]) == 0
    assert "Nothing is written" in capsys.readouterr().out
    assert sorted(plan.parent.iterdir()) == before


def test_a_broken_exemplar_is_one_sentence_with_file_and_line_and_can_be_made_anew(
    plan: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "with-sets.toml"
    assert run(["plan", "sets", str(plan), "--out", str(out)]) == 0
    lines = out.read_text().splitlines()
    at = next(number for number, line in enumerate(lines) if line.startswith('    "'))
    lines[at] = '    "push: nurse, farmer",'
    out.write_text("\n".join(lines))
    capsys.readouterr()
    assert run(["plan", "check", str(out)]) == 2
    error = capsys.readouterr().err.strip()
    assert f"with-sets.toml:{at + 1}: set 1, push: nurse, farmer: practice may give" in error
    assert len(error.splitlines()) == 1
    assert run(["plan", "sets", str(out), "--out", str(tmp_path / "anew.toml")]) == 0
    assert run(["plan", "check", str(tmp_path / "anew.toml")]) == 0


def test_a_seed_out_of_range_is_refused(plan: Path) -> None:
    assert run(["plan", "sets", str(plan), "--seed", "0"]) == 2
