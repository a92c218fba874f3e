"""The next version of a plan, on disk, with who and why."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from drills import wiring
from drills.core.plans import Plan
from drills.core.problems import BadInput, Failure
from drills.core.therapist import Decision
from drills.ledger import TherapistFiles, plan_path
from drills.practice.home import Home
from drills.practice.prescribing import prescribe


@pytest.fixture
def home(tmp_path: Path) -> Iterator[Home]:
    home = wiring.home(tmp_path, speak=False, seed=1)
    yield home
    home.close()


def shorter(plan: Plan) -> Plan:
    # A machine in no known region has a plan without an emergency number.
    safety = replace(plan.safety, emergency_number="999")
    return replace(plan, dose=replace(plan.dose, minutes_per_session=15), safety=safety)


def put(home: Home, plan: Plan) -> Plan:
    return prescribe(home, plan, by="Sam", why="tires", changes=["shorter"])


def test_two_changes_are_two_versions_and_the_first_is_kept(home: Home, tmp_path: Path) -> None:
    before = home.plan
    first = put(home, shorter(home.plan))
    assert first == home.plan == wiring.plan_in_force(tmp_path)
    second = put(home, replace(first, note="new"))
    assert [before.version, first.version, second.version] == [1, 2, 3]
    (older,) = (tmp_path / "plans").iterdir()
    assert wiring.read_plan(older) == first
    decisions = [each for each in home.therapist_log.entries() if isinstance(each, Decision)]
    assert [(each.plan_version_before, each.plan_version_after) for each in decisions] == [
        (1, 2),
        (2, 3),
    ]
    assert {(each.by, each.why, each.evidence) for each in decisions} == {
        ("Sam", "tires", "shorter")
    }


def test_a_plan_with_faults_changes_nothing_and_says_them(home: Home, tmp_path: Path) -> None:
    before = home.plan
    block = replace(before.blocks[0], names=("no-such-name",))
    with pytest.raises(BadInput, match="no-such-name"):
        put(home, replace(shorter(before), blocks=(block,)))
    assert home.plan == before
    assert not plan_path(tmp_path).exists()
    assert not home.therapist_log.entries()


def test_a_plan_that_says_no_emergency_number_is_not_put_in_force(home: Home) -> None:
    unknown = replace(home.plan.safety, emergency_number=wiring.YOUR_NUMBER)
    with pytest.raises(BadInput, match="no emergency number yet"):
        put(home, replace(home.plan, safety=unknown))


def test_a_record_that_is_not_kept_is_told_since_the_plan_is_in_force(
    home: Home, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise Failure("Not saved, because the disk is full.")

    monkeypatch.setattr(TherapistFiles, "append", refuse)
    with pytest.raises(Failure, match=r"Version 2 is in force, but .* the disk is full"):
        put(home, shorter(home.plan))
    assert wiring.plan_in_force(tmp_path).version == home.plan.version == 2


def test_a_folder_in_use_elsewhere_is_not_written(home: Home, tmp_path: Path) -> None:
    other = wiring.home(tmp_path, speak=False, seed=1)
    try:
        with pytest.raises(Failure, match="cannot be changed now"):
            put(other, shorter(other.plan))
    finally:
        other.close()
    assert not plan_path(tmp_path).exists()
