"""Simulated patients at every form of question."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from random import Random

import pytest
from scipy.stats import binomtest

from drills.core.items import Foil, Item, Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.profiles import Profile
from drills.core.records import Trial, latest_trials
from drills.exercises.question.offering import FORMS
from drills.measures import detection
from drills.practice.labels import labels_of
from drills.rehearsal.patient import Patient
from tests.exercises.test_question import questions
from tests.rehearsal.test_weeks import PROFILES, rehearsed

PLAN = Plan(
    name="All questions",
    version=1,
    locale="en-US",
    without_kin=("father", "husband"),
    blocks=tuple(
        BlockPlan(kind=Kind.QUESTION, names=(name,), trials=12, options=3)
        for name in (*FORMS, "kin:K6")
    ),
)


def guesser(material: Material, **more: float) -> Patient:
    """Knows the words and none of the grammar of any form."""
    everything = _Everything()
    profile = Profile(
        name="made for a test",
        label="guesses",
        knows=everything,
        words=1.0,
        first_noun=more.get("first_noun", 0.0),
        learning=0.0,
        cue_help=0.0,
        missed=0.0,
        tiring=0.0,
        latency_ms=3000,
    )
    return Patient(profile, material.lexicon, Random(5))


class _Everything(dict[str, float]):
    """Nothing is understood, whatever its name."""

    def get(self, _key: object, _default: object = None) -> float:  # type: ignore[override]
        return 0.0


def share(
    patient: Patient, items: tuple[Item, ...], of: Callable[[Item], bool] = lambda _: True
) -> tuple[int, int]:
    chosen = [item for item in items if of(item)]
    right = [
        patient.choose(item, cue_level=0, removed=frozenset()) == item.answer for item in chosen
    ]
    return sum(right), len(right)


@pytest.mark.parametrize("form", [*FORMS, "kin:K6"])
def test_who_guesses_roles_is_right_by_effective_chance(form: str, material: Material) -> None:
    """By the exact binomial test (scipy), whatever the number of answers."""
    for options in (2, 3, 4):
        items = questions(material, form, count=200, options=options, seed=3)
        for choices in {item.effective_k for item in items}:
            right, of = share(
                guesser(material), items, lambda item, k=choices: item.effective_k == k
            )
            if choices == 1:
                assert right == of
            else:
                assert binomtest(right, of, 1 / choices).pvalue > 0.001, (form, options)


@pytest.mark.parametrize("form", ["who-did-what", "yes-no", "what-happened"])
def test_who_takes_the_first_noun_as_doer_is_always_wrong_in_non_canonical_order(
    form: str, material: Material
) -> None:
    patient = guesser(material, first_noun=1.0)
    for part in ("full-passive", "object-cleft", "object-relative-centre"):
        items = questions(material, f"{form}:{part}", count=60)
        right, _ = share(patient, items, lambda item: item.effective_k > 1)
        assert right == 0
    for part in ("active", "subject-cleft", "subject-relative"):
        items = questions(material, f"{form}:{part}", count=60)
        right, of = share(patient, items)
        assert right == of


def test_every_profile_practises_every_form(material: Material) -> None:
    for profile in PROFILES.values():
        # Old answers make a rule leave a block, and new signs end the session.
        eager = replace(profile, missed=0.0, tiring=0.0, perseveration=0.0, new_signs=0.0)
        records = rehearsed(material, eager, weeks=1, seed=4, plan=PLAN)
        trials = latest_trials(records.entries())
        met = {trial.asked.target.name.partition(":")[0] for trial in trials}
        assert met == set(FORMS)
        for trial in trials:
            words = f"{trial.asked.sentence} {trial.asked.options}"
            assert "father" not in words.replace("grandfather", "")
            assert "husband" not in words


def test_who_takes_the_first_noun_has_a_d_below_zero_on_passives(material: Material) -> None:
    block = BlockPlan(kind=Kind.QUESTION, names=("yes-no:full-passive",), trials=40)
    plan = replace(PLAN, blocks=(block,))
    profile = replace(PROFILES["first-noun"], missed=0.0, learning=0.0)
    records = rehearsed(material, profile, weeks=1, seed=4, plan=plan)
    found = detection.count(_unaided(latest_trials(records.entries())))
    assert found is not None
    assert found.of > 100
    assert found.d_prime < -1


def _unaided(trials: tuple[Trial, ...]) -> list[Trial]:
    return [trial for trial in trials if trial.first is not None and not trial.first.cue_level]


def test_every_target_has_a_plain_name(material: Material) -> None:
    labels = labels_of(material)
    for form in FORMS.values():
        for name in form.names:
            assert name in labels
            assert labels[name][0].isupper()
            assert ":" not in labels[name] or not labels[name].startswith(form.name)


def test_a_wrong_answer_of_the_guesser_is_a_reversal_or_an_order(material: Material) -> None:
    patient = guesser(material)
    for form in FORMS:
        for item in questions(material, form, count=80, options=4):
            choice = patient.choose(item, cue_level=0, removed=frozenset())
            if item.picture is None and choice != item.answer:
                assert item.options[choice].foil in (Foil.REVERSAL, Foil.WORD)
