"""Simulated patients act out sentences, and their therapist reads of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest
from scipy.stats import binomtest

from drills.core.items import Foil, Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan, SessionRules
from drills.core.profiles import Profile
from drills.digest import render
from drills.exercises.events import CONSTRUCTIONS_ACTED
from drills.practice.home import Home
from drills.rehearsal import MemoryRecords, Rehearsal
from tests.edges import QuietVoice
from tests.rehearsal.test_weeks import KNOWS_NOTHING, trials_of

ACTED = Plan(
    name="Acted",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.ACT_OUT, names=CONSTRUCTIONS_ACTED, trials=40, options=3),
        BlockPlan(kind=Kind.ACT_OUT, names=("full-passive", "active"), trials=20, options=4),
    ),
    # No rule may cut the sessions short: chance is counted here.
    session_rules=SessionRules(
        errors_to_full_help=0, errors_to_easier=0, perseverations_to_change=0, fall_points=0
    ),
)
NOBODY = replace(KNOWS_NOTHING, knows=dict.fromkeys(CONSTRUCTIONS_ACTED, 0.0))


def practised(material: Material, profile: Profile) -> tuple[MemoryRecords, Home]:
    records = MemoryRecords()
    home = Rehearsal(
        plan=ACTED,
        material=material,
        records=records,
        voice=QuietVoice(),
        guide=(),
        program="0",
        profile=profile,
        first=date(2026, 1, 5),
        seed=2,
    ).run(1)
    return records, home


@pytest.fixture(scope="module")
def guessing(material: Material) -> tuple[MemoryRecords, Home]:
    return practised(material, NOBODY)


def test_who_guesses_roles_is_right_half_the_time_among_three_and_four_figures(
    guessing: tuple[MemoryRecords, Home],
) -> None:
    """Chance is 1/2 by the exact binomial test (scipy), since the words leave two events."""
    trials = trials_of(guessing[0], *CONSTRUCTIONS_ACTED)
    assert len(trials) > 200
    assert {len(trial.asked.options) for trial in trials} == {2, 6, 12}
    right = sum(trial.unaided_right for trial in trials)
    assert binomtest(right, len(trials), 0.5).pvalue > 0.001


def test_who_takes_the_first_noun_for_the_doer_exchanges_the_parts(material: Material) -> None:
    records, _ = practised(material, replace(NOBODY, first_noun=1.0))
    doer_first = ("active", "subject-cleft", "subject-relative", "dative")
    for trial in trials_of(records, *CONSTRUCTIONS_ACTED):
        first = trial.first
        assert first is not None
        assert first.choice is not None
        assert first.right == (trial.asked.construction in doer_first)
        if not first.right:
            assert trial.asked.foil(first.choice) is Foil.REVERSAL


def test_the_digest_has_a_line_for_each_construction_acted_out(
    guessing: tuple[MemoryRecords, Home],
) -> None:
    digest = guessing[1].digest(date(2026, 1, 5), date(2026, 1, 11))
    lines = {line.name: line for line in digest.lines}
    assert set(lines) == set(CONSTRUCTIONS_ACTED)
    for line in digest.lines:
        assert line.kind is Kind.ACT_OUT
        assert line.label
        assert line.effective_k == 2
    for form in ("text", "html"):
        assert "act it out" in render(digest, form)
    assert "act-out" in render(digest, "csv")
