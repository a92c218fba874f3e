"""Flags that go by chance: each fires on what is planted, and a quiet week stays quiet."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date, timedelta
from random import Random

import pytest

from drills.core.flag_settings import FlagSettings
from drills.core.gestures import Tick
from drills.core.items import Kind
from drills.core.kinds import Side
from drills.core.question_words import NO, YES
from drills.core.records import Trial
from drills.digest import flag_tests
from drills.digest.flag_tests import PARTS
from drills.digest.flag_values import Alert, AlertKind
from tests.digest.flagged import answered, sittings
from tests.measures.made import MONDAY

FIRST = MONDAY.date()
LABELS = {"active": "Active sentences"}


def flags(
    trials: Sequence[Trial],
    before: Sequence[Trial] = (),
    *,
    settings: FlagSettings | None = None,
    first: date = FIRST,
) -> tuple[Alert, ...]:
    return flag_tests.tested_flags(
        sittings(trials),
        before,
        LABELS,
        settings or FlagSettings(),
        first=first,
        turns_at_hour=4,
    )


def only(found: Sequence[Alert]) -> Alert:
    (one,) = found
    assert one.rule
    assert one.evidence
    return one


def exactly(right: int, of: int, **more) -> list[Trial]:
    """`right` of `of`, evenly mixed."""
    return [
        answered((number + 1) * right // of > number * right // of, days=number / 1000, **more)
        for number in range(of)
    ]


def test_a_sudden_drop_is_told_with_both_counts():
    before = exactly(36, 40, name="active")
    before = [replace(each, started_at=each.started_at - timedelta(days=9)) for each in before]
    found = only(flags(exactly(20, 40), before))
    # Fisher's exact test of 20/40 against 36/40: p = .0001 (scipy, one-sided), see test_strata.
    assert found.kind is AlertKind.SUDDEN_DROP
    assert found.evidence == "Right alone 20 of 40 now, right alone 36 of 40 before."
    assert "10 points below the 2 weeks before" in found.rule


def test_a_drop_in_one_name_of_many_is_named():
    now, before = [], []
    for number in range(8):
        name = "active" if number == 0 else f"name {number}"
        before += exactly(19, 20, name=name)
        now += exactly(8 if number == 0 else 19, 20, name=name)
    before = [replace(each, started_at=each.started_at - timedelta(days=9)) for each in before]
    found = only([each for each in flags(now, before) if each.kind is AlertKind.SUDDEN_DROP])
    assert (found.subject, found.label) == ("active", "Active sentences")


def test_a_drop_on_the_last_two_days_is_seen_within_the_week():
    before = exactly(57, 60)
    before = [replace(each, started_at=each.started_at - timedelta(days=9)) for each in before]
    now = [
        replace(each, started_at=each.started_at + timedelta(days=day), session=f"day {day}")
        for day, right in enumerate((12, 12, 12, 6, 6))
        for each in exactly(right, 12)
    ]
    found = only(flags(now, before))
    assert found.days == (FIRST + timedelta(days=3), FIRST + timedelta(days=4))


def test_what_came_with_help_is_no_drop_and_nothing_below_guessing():
    before = exactly(36, 40)
    before = [replace(each, started_at=each.started_at - timedelta(days=9)) for each in before]
    assert flags(exactly(0, 40, cue_level=2), before) == ()


def test_what_is_longer_ago_than_the_weeks_before_is_no_level():
    before = exactly(36, 40)
    long_ago = [replace(each, started_at=each.started_at - timedelta(weeks=6)) for each in before]
    assert flags(exactly(24, 40), long_ago) == ()


def test_the_weeks_before_add_to_what_a_few_trials_show_to_be_below_guessing():
    # Binomial table: n = 12, p = .5, P(X <= 3) = .0730; n = 36, P(X <= 9) = .0020.
    now = exactly(3, 12, name="active")
    assert flags(now) == ()
    before = exactly(6, 24, name="active")
    before = [replace(each, started_at=each.started_at - timedelta(days=9)) for each in before]
    found = only(flags(now, before))
    assert found.kind is AlertKind.BELOW_CHANCE
    assert found.evidence.endswith("in the weeks before right alone 6 of 24.")


def test_as_many_right_as_guessing_gives_are_not_below_it_whatever_was_before():
    before = exactly(2, 40, name="active")
    before = [replace(each, started_at=each.started_at - timedelta(days=9)) for each in before]
    assert flags(exactly(6, 12, name="active"), before) == ()


def test_fewer_right_than_guessing_gives_is_told_with_the_turned_roles():
    # Binomial table: n = 20, p = .5, P(X <= 3) = .0013.
    found = only(flags(exactly(3, 20, name="active")))
    assert found.kind is AlertKind.BELOW_CHANCE
    assert found.subject == "active"
    assert found.evidence == (
        "Right alone 3 of 20, guessing gives 10; who did it was turned round in 17 of 17 errors."
    )
    # P(X <= 5) = .0207 is more than its part of 5 of 100 weeks.
    assert flags(exactly(5, 20)) == ()


def test_fewer_right_in_the_last_third_is_told_and_harder_names_there_are_not():
    worse, mixed = [], []
    for day in range(5):
        for number in range(12):
            is_last = number >= 8
            at = day + number / 1000
            worse.append(answered(not is_last or number == 8, days=at))
            # The last third gives the hard name, which is always at 2 of 4.
            mixed.append(answered(number % 2 == 0 or not is_last, days=at, name=f"n{is_last}"))
    assert only(flags(worse)).kind is AlertKind.DECLINE
    assert AlertKind.DECLINE not in [each.kind for each in flags(mixed)]


def test_slower_answers_in_the_last_third_are_told():
    slow = [
        answered(True, days=day + number / 1000, latency_ms=6000 if number >= 8 else 3000)
        for day in range(5)
        for number in range(12)
    ]
    found = only(flags(slow))
    assert found.kind is AlertKind.DECLINE
    assert "Right answers took 2.0 times as long." in found.evidence


def test_one_side_of_the_picture_is_told():
    found = only(
        flags(
            [
                answered(side is Side.RIGHT or number % 3 == 0, days=number / 1000, side=side)
                for number in range(30)
                for side in Side
            ]
        )
    )
    assert found.kind is AlertKind.SIDE
    assert "left: right alone 10 of 30; on the right: right alone 30 of 30" in found.evidence


def test_one_place_of_the_options_is_told():
    found = only(
        flags(
            [
                answered(wanted == 1 or number % 3 == 0, days=number / 1000, wanted=wanted)
                for number in range(30)
                for wanted in (0, 1)
            ]
        )
    )
    assert found.kind is AlertKind.PLACE
    assert "place 1: right alone 10 of 30; elsewhere: right alone 30 of 30" in found.evidence


def test_what_is_false_by_another_word_says_nothing_of_a_liking():
    words = (YES, NO)
    trials = [
        answered(
            wanted == 1 or number % 3 == 0,
            days=number / 1000,
            wanted=wanted,
            words=words,
            kind=Kind.QUESTION,
        )
        for number in range(30)
        for wanted in (0, 1)
    ]
    seen_through = [
        replace(each, asked=replace(each.asked, effective_k=1 + (each.asked.answer == 0)))
        for each in trials
    ]
    assert [each.kind for each in flags(trials)] == [AlertKind.YES]
    assert AlertKind.YES not in [each.kind for each in flags(seen_through)]


@pytest.mark.parametrize("liked", [YES, NO])
def test_a_liking_for_yes_or_no_is_told(liked: str):
    words = (YES, NO)
    found = only(
        flags(
            [
                answered(
                    words[wanted] == liked or number % 3 == 0,
                    days=number / 1000,
                    wanted=wanted,
                    words=words,
                    kind=Kind.QUESTION,
                )
                for number in range(30)
                for wanted in (0, 1)
            ]
        )
    )
    assert found.kind is AlertKind.YES
    assert found.evidence.endswith(f"A liking for {liked.lower()}.")


def test_words_that_come_again_are_told():
    words = ("in", "on", "under", "behind", "by", "near", "at", "over")
    trials: list[Trial] = []
    rng = Random(2)
    for number in range(60):
        # Every other answer is the word of the answer before.
        wanted = rng.randrange(8)
        again = trials[-1].attempts[0].choice if number % 2 else None
        trials.append(
            answered(
                again is None or again == wanted,
                days=number / 1000,
                wanted=wanted,
                chosen=again,
                options=8,
                words=words,
                kind=Kind.CLOZE,
            )
        )
    assert AlertKind.PERSEVERATION in [each.kind for each in flags(trials)]


def test_earlier_acts_that_come_again_are_told():
    trials = [
        answered(
            False,
            kind=Kind.GESTURE,
            name="wave",
            days=number / 1000,
            ticks=(Tick.OLD_ACT,) if number % 3 else (Tick.GRIP,),
        )
        for number in range(24)
    ]
    found = only(flags(trials))
    assert found.kind is AlertKind.PERSEVERATION
    assert found.evidence == "An earlier act in 16 of 24 gestures not right."


def test_a_few_of_the_same_troubles_are_no_flag():
    assert flags(exactly(0, 4)) == ()
    assert flags([answered(False, days=n / 1000, side=Side.LEFT) for n in range(4)]) == ()


def test_no_test_is_made_where_chance_may_flag_no_week():
    assert flags(exactly(0, 40), settings=FlagSettings(quiet_percent=0)) == ()


def test_the_parts_of_a_quiet_week_add_up_to_all_of_it():
    level = FlagSettings().quiet_percent / 100
    assert sum(level * part / sum(PARTS.values()) for part in PARTS.values()) == pytest.approx(0.05)


QUIET: dict[str, Callable[[Random], float]] = {
    "learning": lambda rng: rng.uniform(0.6, 0.95),
    "guessing": lambda _: 0.5,
}


@pytest.mark.parametrize("kind", QUIET)
def test_few_quiet_weeks_are_flagged_over_all_tests_together(kind: str):
    """300 invented weeks of six names each: no more than chance may flag, with room for luck.

    Binomial, 300 weeks at .05: more than 24 in fewer than 1 of 100 (table, from memory: 15 +- 3.8).
    """
    rng = Random(f"quiet {kind}")
    flagged = 0
    for _ in range(300):
        now, before = [], []
        for number in range(6):
            share = QUIET[kind](rng)
            for into, back in ((now, 0), (before, 9)):
                into.extend(
                    answered(
                        rng.random() < share,
                        name=f"n{number}",
                        days=place / 3 - back,
                        wanted=rng.randrange(2),
                        side=rng.choice(list(Side)),
                    )
                    for place in range(15)
                )
        now.sort(key=lambda each: each.started_at)
        flagged += bool(flags(now, before))
    print(f"{kind}: {flagged} of 300 quiet weeks flagged")
    assert flagged <= 24
