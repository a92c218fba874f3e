"""Trials as a therapist reads them afterwards."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from datetime import timedelta
from random import Random

import pytest

from drills import wiring
from drills.core.kinds import ItemSet, Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.core.records import Asked, Trial, latest_trials
from drills.core.therapist import SecondScore
from drills.digest.raters import agreement_of
from drills.exercises import make_items, targets_of
from drills.practice.double_scoring import agreement_told, is_picked, picked
from drills.practice.home import Home
from drills.practice.reviewing import (
    attempt_lines,
    chosen_told,
    option_told,
    practised,
    scenes_of,
    success_told,
)
from drills.rehearsal import MemoryRecords, Rehearsal
from tests.edges import MORNING, QuietVoice

FIRST = MORNING.date()
KINDS = (
    BlockPlan(kind=Kind.MATCH, names=("active", "full-passive", "locative"), trials=6, options=4),
    BlockPlan(kind=Kind.ACT_OUT, names=("object-cleft",), trials=4),
    BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=3),
    BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=3),
)


@pytest.fixture(scope="module")
def home(material: Material) -> Home:
    plan = wiring.starter_plan("en-US")
    return Rehearsal(
        plan=plan,
        material=material,
        records=MemoryRecords(),
        voice=QuietVoice(),
        guide=(),
        program="0",
        profile=wiring.profiles()["first-noun"],
        first=FIRST,
        seed=3,
    ).run(1)


@pytest.fixture(scope="module")
def trials(home: Home) -> tuple[Trial, ...]:
    return latest_trials(home.records.entries())


@pytest.mark.parametrize("block", KINDS, ids=lambda block: block.kind.value)
def test_pictures_read_back_from_the_record_are_those_of_the_item(
    block: BlockPlan, material: Material
) -> None:
    targets = targets_of(block, material)[:12]
    for item in make_items(targets, options=block.options, material=material, rng=Random(5)):
        shown = tuple(option.scene for option in item.options)
        expected = shown if shown and None not in shown else ()
        assert scenes_of(Asked.of(item)) == expected


def test_counts_of_a_name_are_those_of_the_digest(home: Home, trials: tuple[Trial, ...]) -> None:
    digest = home.digest(FIRST, FIRST + timedelta(days=6))
    told = {
        (line.item_set, line.kind, line.name): (line.unaided.right, line.unaided.of)
        for line in digest.lines
    }
    assert len(told) > 5
    names = practised(trials, home.labels)
    # The digest's lines are of practice; checks stand apart there.
    assert {
        (each.item_set, each.kind, each.name): (each.right, each.of)
        for each in names
        if each.item_set is ItemSet.TREATED
    } == told
    assert sum(len(each.trials) for each in names) == sum(bool(t.attempts) for t in trials)


def test_each_response_is_told_in_its_order_and_each_choice_once(
    trials: tuple[Trial, ...],
) -> None:
    chosen = [trial for trial in trials if trial.attempts and trial.asked.options]
    assert any(len(trial.attempts) > 1 for trial in chosen)
    for trial in chosen:
        lines = attempt_lines(trial)
        for number, (attempt, line) in enumerate(zip(trial.attempts, lines, strict=False), 1):
            assert attempt.choice is not None
            assert line.startswith(f"{number}. chose {attempt.choice + 1}, ")
            assert ("right" in line) is attempt.right
        right = [
            place for place, _ in enumerate(trial.asked.options) if "right" in _told(trial, place)
        ]
        assert right == [trial.asked.answer]
        times = Counter(attempt.choice for attempt in trial.attempts)
        for place in range(len(trial.asked.options)):
            told = chosen_told(trial, place)
            assert bool(told) is bool(times[place])


def _told(trial: Trial, place: int) -> str:
    # The last part says what it is; words of the option may be anything.
    return option_told(trial, place).split(", ")[-1]


def test_the_level_at_success_is_told_as_the_record_has_it(trials: tuple[Trial, ...]) -> None:
    for trial in trials:
        level, told = trial.level_at_success, success_told(trial)
        assert (level == 0) is (told == "Right with no help.")
        if level:
            assert told == f"Right with help {level}."


def test_one_gesture_in_so_many_is_picked_whatever_its_score(trials: tuple[Trial, ...]) -> None:
    (first, *_) = trials
    many = [
        Trial(
            session=f"s{number // 40}",
            trial=f"t{number}",
            started_at=first.started_at,
            at=first.at,
            block=0,
            asked=first.asked,
            attempts=first.attempts,
            ended=True,
        )
        for number in range(4000)
    ]
    share = sum(is_picked(trial, one_in=5) for trial in many) / len(many)
    # Three standard errors of 1 in 5 among 4,000.
    assert abs(share - 0.2) < 0.019
    assert all(is_picked(trial, one_in=1) for trial in many)


def test_only_scored_gestures_are_picked_newest_first(trials: tuple[Trial, ...]) -> None:
    found = [each.trial for each in picked(trials, (), one_in=1)]
    assert found
    assert all(trial.asked.kind is Kind.GESTURE and trial.counts for trial in found)
    assert found == sorted(found, key=lambda trial: trial.started_at, reverse=True)
    fewer = [each.trial for each in picked(trials, (), one_in=3)]
    assert set(map(id, fewer)) <= set(map(id, found))


def test_agreement_gives_a_number_only_where_there_is_one(trials: tuple[Trial, ...]) -> None:
    scored = [each.trial for each in picked(trials, (), one_in=1)]

    def told(count: int, *, lower: int) -> tuple[str, ...]:
        second = [
            SecondScore(
                at=trial.at,
                by="Sam",
                session=f"{trial.session}-{number}",
                trial=trial.trial,
                score=max(0, (trial.attempts[0].score or 0) - lower),
            )
            for number, trial in enumerate((scored * 9)[:count])
        ]
        first = [
            replace(trial, session=f"{trial.session}-{number}")
            for number, trial in enumerate((scored * 9)[:count])
        ]
        return agreement_told(agreement_of(second, first))

    assert told(0, lower=0) == ("Nothing is scored twice yet.",)
    assert told(19, lower=0)[1].startswith("Kappa, linear weights: not given before 20 are")
    exact, kappa, lenience = told(20, lower=0)
    assert (exact, kappa) == (
        "The same score: 20 of 20 (100%).",
        "Kappa, linear weights: 1.00. Scored twice: 20.",
    )
    assert lenience == "Neither scores higher on the whole."
    assert told(20, lower=1)[2].startswith("The caregiver scores higher, by ")
