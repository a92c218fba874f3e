"""Planted troubles that cannot be missed are flagged; `tests/bench/bench_flags.py` counts all."""

from __future__ import annotations

import pytest

from drills.core.material import Material
from tests.rehearsal.planting import TROUBLES, Course, quiet_profile, watch

SURE = (
    *("first noun", "no practice", "pain", "new signs", "fading", "left unseen"),
    *("liking for yes", "clock", "lenient scores"),
)


def test_what_is_planted_is_flagged_and_a_quiet_week_is_not(material: Material) -> None:
    troubles = tuple(trouble for trouble in TROUBLES if trouble.name in SURE)
    assert len(troubles) == len(SURE)
    seen = watch(0, material, troubles=troubles, quiet_weeks=1)
    assert seen.quiet == (frozenset(),)
    for trouble in troubles:
        assert trouble.kinds & seen.planted[trouble.name], trouble.name


def test_a_branch_leaves_what_it_began_from_as_it_was(material: Material) -> None:
    course = Course(3, material)
    course.week(quiet_profile(3, 0))
    branch = course.branched()
    one = branch.week(quiet_profile(3, 1))
    assert (course.weeks, branch.weeks) == (1, 2)
    assert course.week(quiet_profile(3, 1)) == one


@pytest.mark.parametrize("number", range(20))
def test_a_quiet_patient_gets_better_or_stays_well(number: int) -> None:
    before, after = (quiet_profile(number, week) for week in (0, 5))
    for name, share in before.knows.items():
        assert after.knows[name] > share + 0.3 or after.knows[name] == share >= 0.75
