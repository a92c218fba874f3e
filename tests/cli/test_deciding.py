"""The therapist's answers at the command line, over rehearsed weeks."""

from __future__ import annotations

import json
import shutil
from datetime import timedelta
from pathlib import Path

import pytest

from drills import wiring
from drills.catalogue import plan_text
from drills.cli.run import run
from drills.ledger import open_ledger, put_plan_in_force
from drills.rehearsal import Rehearsal
from drills.speech import start_voice


@pytest.fixture(scope="module")
def rehearsed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Three weeks up to yesterday of a patient with something to decide on."""
    folder = tmp_path_factory.mktemp("home") / "practice"
    plan = wiring.starter_plan("en-US")
    put_plan_in_force(folder, plan_text(plan))
    records = open_ledger(folder)
    today = wiring.SystemClock().now().date()
    Rehearsal(
        plan=plan,
        material=wiring.material("en-US"),
        records=records,
        voice=start_voice(on=False),
        guide=(),
        program="0",
        profile=wiring.profiles()["first-noun"],
        first=today - timedelta(days=21),
        seed=3,
    ).run(3)
    records.close()
    return folder


@pytest.fixture
def folder(rehearsed: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(rehearsed, tmp_path / "practice"))


def plan(folder: Path, *arguments: str) -> int:
    return run(["plan", *arguments, "--folder", str(folder)])


def suggestions(folder: Path, capsys: pytest.CaptureFixture[str]) -> list[dict]:
    capsys.readouterr()
    assert plan(folder, "suggestions", "--format", "json") == 0
    told = json.loads(capsys.readouterr().out)
    assert told["format"] == 1
    return told["suggestions"]


def test_suggestions_are_numbered_with_rule_and_numbers(folder, capsys) -> None:
    found = suggestions(folder, capsys)
    assert [each["number"] for each in found] == list(range(1, len(found) + 1))
    assert plan(folder, "suggestions") == 0
    text = capsys.readouterr().out
    for each in found:
        assert f"{each['number']}. {each['says']}" in text
        assert each["rule"] in text
        assert each["evidence"] in text


def test_accepting_ignoring_and_changing_are_told_and_kept(folder, tmp_path, capsys) -> None:
    found = suggestions(folder, capsys)
    chosen = next(each for each in found if each["changes"])
    accept = ("answer", str(chosen["number"]), "accept", "--by", "T", "--why", "time to")
    assert plan(folder, *accept) == 0
    assert "Version 2 of the plan is in force." in capsys.readouterr().out

    left = suggestions(folder, capsys)
    assert chosen["id"] not in [each["id"] for each in left]
    assert plan(folder, "answer", left[0]["id"], "ignore", "--by", "T") == 0
    left = suggestions(folder, capsys)
    assert len(left) < len(found)
    own = tmp_path / "own.toml"
    own.write_text(plan_text(wiring.plan_in_force(folder)), encoding="utf-8")
    if left:
        assert plan(folder, "answer", "1", "change", str(own), "--by", "T") == 0

    capsys.readouterr()
    assert plan(folder, "history") == 0
    history = capsys.readouterr().out
    assert "Version 1, from" in history
    assert f"Accepted by T, version 1 to 2. {chosen['says']}" in history
    assert "Why: time to" in history
    assert "Ignored by T, version 2." in history
    assert run(["records", "verify", "--folder", str(folder)]) == 0


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("answer", "99", "accept", "--by", "T"), "There is no suggestion '99'"),
        (("answer", "1", "change", "--by", "T"), "Name the plan file to put in force"),
        (("answer", "1", "ignore", "own.toml", "--by", "T"), "no plan file is named"),
        (("answer", "1", "accept"), "--by"),
        (("answer", "1", "ignore", "--by", " "), "who decides"),
        (("answer", "1", "agree", "--by", "T"), "agree"),
    ],
)
def test_a_wrong_answer_is_told_in_one_sentence_and_changes_nothing(
    arguments, said, folder, capsys
) -> None:
    before = sorted(path.name for path in folder.rglob("*.toml"))
    assert plan(folder, *arguments) == 2
    error = capsys.readouterr().err
    assert error.count("\n") == 1
    assert said in error
    assert sorted(path.name for path in folder.rglob("*.toml")) == before
    assert not list((folder / "therapist").glob("*.jsonl"))


def test_a_folder_without_practice_has_nothing_to_suggest(tmp_path, capsys) -> None:
    assert plan(tmp_path / "new", "suggestions") == 0
    assert "Nothing is suggested just now." in capsys.readouterr().out
    assert plan(tmp_path / "new", "history") == 0
    assert "No plan has been put in force yet." in capsys.readouterr().out
