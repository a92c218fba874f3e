"""Simulated weeks through the real session code."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
from scipy.stats import binomtest

from drills.catalogue import load_profiles, read_plan
from drills.core.items import Foil, Kind
from drills.core.material import Material
from drills.core.profiles import Profile
from drills.core.records import SessionOpened, Trial, latest_trials
from drills.rehearsal import MemoryRecords, Rehearsal
from tests.edges import QuietVoice

CONTENT = Path(__file__).parents[2] / "content"
PROFILES = load_profiles(CONTENT / "profiles.toml")
KNOWS_NOTHING = Profile(
    name="made for a test",
    label="guesses",
    knows=dict.fromkeys(
        ("active", "subject-cleft", "full-passive", "object-cleft", "locative", "C3", "C4"), 0.0
    ),
    words=1.0,
    first_noun=0.0,
    learning=0.0,
    cue_help=0.0,
    missed=0.0,
    tiring=0.0,
    latency_ms=3000,
)


def rehearsed(material: Material, profile: Profile, *, weeks: int, seed: int) -> MemoryRecords:
    records = MemoryRecords()
    Rehearsal(
        plan=read_plan(CONTENT / "plans" / "starter.toml"),
        material=material,
        records=records,
        voice=QuietVoice(),
        guide=(),
        program="0",
        profile=profile,
        first=date(2026, 1, 5),
        seed=seed,
    ).run(weeks)
    return records


def trials_of(records: MemoryRecords, *constructions: str) -> list[Trial]:
    """Those that were answered without help: a rule may let some begin with all of it."""
    return [
        trial
        for trial in latest_trials(records.entries())
        if trial.asked.construction in constructions
        and trial.asked.options
        and trial.first is not None
        and trial.first.cue_level == 0
    ]


def test_the_same_seed_gives_the_same_weeks(material: Material) -> None:
    profile = PROFILES["slow-but-steady"]
    one = rehearsed(material, profile, weeks=1, seed=5)
    two = rehearsed(material, profile, weeks=1, seed=5)
    assert one.entries() == two.entries()
    assert one.entries() != rehearsed(material, profile, weeks=1, seed=6).entries()


def test_every_session_is_marked_as_simulated(material: Material) -> None:
    records = rehearsed(material, PROFILES["tires-quickly"], weeks=1, seed=1)
    opened = [entry for entry in records.entries() if isinstance(entry, SessionOpened)]
    assert opened
    assert all(entry.simulated for entry in opened)


def test_who_guesses_roles_is_right_half_the_time(material: Material) -> None:
    """Chance is 1/2 by the exact binomial test (scipy), whatever the construction."""
    records = rehearsed(material, KNOWS_NOTHING, weeks=4, seed=11)
    for name in ("active", "full-passive", "subject-cleft", "object-cleft"):
        trials = trials_of(records, name)
        right = sum(trial.unaided_right for trial in trials)
        assert len(trials) > 40
        assert binomtest(right, len(trials), 0.5).pvalue > 0.001, name


def test_who_takes_the_first_noun_as_doer_reverses_every_passive(material: Material) -> None:
    records = rehearsed(material, replace(KNOWS_NOTHING, first_noun=1.0), weeks=2, seed=3)
    first_noun_is_doer = trials_of(records, "active", "subject-cleft")
    first_noun_is_done_to = trials_of(records, "full-passive", "object-cleft")
    assert first_noun_is_doer
    assert first_noun_is_done_to
    assert all(trial.unaided_right for trial in first_noun_is_doer)
    assert not any(trial.unaided_right for trial in first_noun_is_done_to)
    assert {trial.asked.foil(trial.first.choice) for trial in first_noun_is_done_to} == {
        Foil.REVERSAL
    }


@pytest.mark.parametrize("name", sorted(PROFILES))
def test_every_profile_practises(material: Material, name: str) -> None:
    records = rehearsed(material, PROFILES[name], weeks=2, seed=2)
    kinds = {trial.asked.kind for trial in latest_trials(records.entries())}
    # Who tires quickly may never reach the last block.
    assert kinds >= {Kind.MATCH, Kind.CLOZE}
