"""One session's deal. Where an order can be improved is held against trying every order."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from datetime import timedelta
from itertools import groupby, pairwise, permutations
from random import Random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from drills.core.due import Due
from drills.core.items import Kind, Target
from drills.core.plans import BlockPlan, Dose, Plan, SpacingSettings
from drills.core.problems import BadInput
from drills.schedule.sequence import arrange
from drills.schedule.sitting import deal, fit
from drills.schedule.spacing import LadderGaps
from tests.measures.made import MONDAY

TODAY = MONDAY.date()


def target(name: str, group: str = "") -> Target:
    return Target(kind=Kind.MATCH, name=name, group=group)


def due(of: Target, *, overdue: int = 0, rung: int = 0, run: int = 0) -> Due:
    day = TODAY - timedelta(days=overdue)
    last = day - timedelta(days=LadderGaps(settings=SpacingSettings()).days(rung))
    return Due(target=of, day=day, rung=rung, run=run, last=last, reason="told")


def plan(*trials: int, minutes: int = 25) -> Plan:
    return Plan(
        name="invented",
        version=1,
        locale="en-US",
        blocks=tuple(BlockPlan(kind=Kind.MATCH, names=("a",), trials=count) for count in trials),
        dose=Dose(minutes_per_session=minutes),
    )


def deal_one(trials: int, targets: list[Target], dues: list[Due], seed: int = 1):
    (block,) = deal(
        plan(trials), [targets], {d.target: d for d in dues}, today=TODAY, rng=Random(seed)
    )
    return block.targets


def longest_run(order, key) -> int:
    return max(sum(1 for _ in run) for _, run in groupby(order, key=key))


GRID = [target(name, group) for name in ("active", "passive") for group in ("g1", "g2", "g3")]


def test_a_first_session_spreads_its_trials_evenly_over_what_is_new():
    dealt = Counter(deal_one(12, GRID, []))
    assert dealt == dict.fromkeys(GRID, 2)


def test_the_most_overdue_for_its_gap_comes_before_the_longest_overdue():
    # Four days late on a gap of 28 is less than one day late on a gap of 1.
    long_gap, short_gap = target("a", "g1"), target("a", "g2")
    dues = [due(long_gap, overdue=4, rung=5), due(short_gap, overdue=1, rung=0)]
    assert deal_one(1, [long_gap, short_gap], dues) == (short_gap,)


def test_what_is_not_due_only_fills_up():
    waiting = [due(t, overdue=-5, rung=3) for t in GRID[3:]]
    late = [due(t, overdue=1) for t in GRID[:3]]
    dealt = Counter(deal_one(6, GRID, waiting + late))
    assert sum(dealt[t] for t in GRID[:3]) == 3 * 5 // 4
    assert sum(dealt.values()) == 6


def test_a_block_begins_and_ends_with_what_stands_surest():
    surest, second = GRID[0], GRID[1]
    dues = [due(surest, overdue=-3, rung=4, run=2), due(second, overdue=-3, rung=2, run=1)]
    dues += [due(t, overdue=2) for t in GRID[2:]]
    dealt = deal_one(10, GRID, dues)
    assert (dealt[0], dealt[-1]) == (second, surest)


def test_with_nothing_sure_the_block_is_dealt_all_the_same():
    assert len(deal_one(5, GRID, [due(t) for t in GRID])) == 5


def test_a_block_of_one_trial_goes_to_the_most_overdue_not_to_the_surest():
    dues = [due(GRID[0], overdue=-3, rung=4, run=2), due(GRID[1], overdue=2)]
    assert deal_one(1, GRID[:2], dues) == (GRID[1],)


def test_one_due_target_is_not_massed():
    dues = [due(t, overdue=-2, rung=3) for t in GRID[1:]] + [due(GRID[0], overdue=3)]
    assert Counter(deal_one(12, GRID, dues))[GRID[0]] == 2


def test_new_targets_take_at_most_half_of_a_block_that_has_other_work():
    met = [due(t, overdue=0) for t in GRID[:3]]
    dealt = Counter(deal_one(6, GRID, met))
    assert sum(dealt[t] for t in GRID[3:]) == 3


def test_new_targets_of_both_names_take_no_more_than_half_either():
    # Due ones: one active, one passive; at most two givings each.
    met = [due(t, overdue=0) for t in (GRID[0], GRID[3])]
    dealt = Counter(deal_one(8, GRID, met))
    assert dealt[GRID[0]] + dealt[GRID[3]] == 4


def test_what_is_due_today_comes_before_what_is_not_due():
    dues = [due(t, overdue=0) for t in GRID[::2]] + [due(t, overdue=-1) for t in GRID[1::2]]
    for seed in range(5):
        assert set(deal_one(3, GRID, dues, seed)) == set(GRID[::2])


def test_a_block_of_two_ends_with_the_surest_after_the_most_overdue():
    dues = [due(GRID[0], overdue=-3, rung=4, run=2), due(GRID[1], overdue=2)]
    assert deal_one(2, GRID[:2], dues) == (GRID[1], GRID[0])


def test_gestures_without_groups_do_not_come_twice_running():
    gestures = [target(f"gesture-{number}") for number in range(3)]
    for seed in range(10):
        dealt = deal_one(6, gestures, [], seed)
        assert all(a != b for a, b in pairwise(dealt))


def test_no_target_waits_for_weeks_to_be_met():
    # Six trials a day for sixteen targets, each due again the day after.
    grid = [target(f"n{name}", f"g{group}") for name in range(4) for group in range(4)]
    last: dict[Target, int] = {}
    for day in range(8):
        today = TODAY + timedelta(days=day)
        dues = {
            t: replace(due(t, run=1), day=TODAY + timedelta(days=on + 1)) for t, on in last.items()
        }
        (block,) = deal(plan(6), [grid], dues, today=today, rng=Random(day))
        last |= dict.fromkeys(block.targets, day)
    assert set(last) == set(grid)


def test_a_block_without_targets_is_told_with_its_number():
    with pytest.raises(BadInput, match="Block 1 of the plan"):
        deal(plan(3), [[]], {}, today=TODAY, rng=Random(1))


def test_the_same_seed_deals_the_same_and_another_seed_does_not():
    assert deal_one(12, GRID, [], seed=5) == deal_one(12, GRID, [], seed=5)
    assert len({deal_one(12, GRID, [], seed=seed) for seed in range(8)}) > 1


@st.composite
def blocks(draw: st.DrawFn):
    names = draw(st.integers(1, 4))
    groups = draw(st.integers(0, 4))
    grid = [
        target(f"n{name}", f"g{group}" if groups else "")
        for name in range(names)
        for group in range(max(groups, 1))
    ]
    dues = [
        due(
            t,
            overdue=draw(st.integers(-20, 40)),
            rung=draw(st.integers(0, 6)),
            run=draw(st.integers(0, 3)),
        )
        for t in grid
        if draw(st.booleans())
    ]
    return draw(st.integers(1, 24)), grid, dues, draw(st.integers(0, 10**6))


@settings(deadline=None)
@given(blocks())
def test_every_deal_is_full_and_no_name_runs_on(made):
    trials, grid, dues, seed = made
    dealt = deal_one(trials, grid, dues, seed)
    assert len(dealt) == trials
    assert set(dealt) <= set(grid)
    if len({t.name for t in grid}) > 1:
        assert longest_run(dealt, lambda t: t.name) <= 3
    sure = [d.target for d in dues if d.run > 0]
    if sure and trials >= 3:
        assert dealt[0] in sure
        assert dealt[-1] in sure


@settings(deadline=None)
@given(blocks(), st.integers(1, 60))
def test_a_shorter_session_keeps_each_block_alive_and_mixed(made, minutes):
    trials, grid, dues, seed = made
    prescribed = plan(trials, 8)
    dealt = deal(
        prescribed, [grid, GRID], {d.target: d for d in dues}, today=TODAY, rng=Random(seed)
    )
    cut = fit(dealt, minutes, prescribed)
    for before, after in zip(dealt, cut, strict=False):
        assert 1 <= len(after.targets) <= len(before.targets)
        assert not Counter(after.targets) - Counter(before.targets)
        if len({t.name for t in after.targets}) > 1:
            assert longest_run(after.targets, lambda t: t.name) <= 3
    whole = trials + 8
    if minutes >= 25:
        assert cut == dealt
    else:
        assert sum(len(b.targets) for b in cut) <= max(1, whole * minutes // 25)
        assert len(cut) == min(2, max(1, whole * minutes // 25))


def test_half_the_minutes_are_half_the_trials():
    prescribed = plan(12, 8, 4, minutes=24)
    dealt = deal(prescribed, [GRID] * 3, {}, today=TODAY, rng=Random(3))
    assert [len(block.targets) for block in fit(dealt, 12, prescribed)] == [6, 4, 2]


def test_later_blocks_are_left_out_only_below_one_trial_each():
    prescribed = plan(12, 8, 4, minutes=24)
    dealt = deal(prescribed, [GRID] * 3, {}, today=TODAY, rng=Random(3))
    assert [len(block.targets) for block in fit(dealt, 3, prescribed)] == [1, 1, 1]
    assert [len(block.targets) for block in fit(dealt, 2, prescribed)] == [1, 1]
    assert [len(block.targets) for block in fit(dealt, 1, prescribed)] == [1]


def test_the_longest_block_gives_back_what_the_short_ones_keep():
    prescribed = plan(20, 1, 1, minutes=22)
    dealt = deal(prescribed, [GRID] * 3, {}, today=TODAY, rng=Random(3))
    assert [len(block.targets) for block in fit(dealt, 5, prescribed)] == [3, 1, 1]


def test_a_cut_does_not_bring_one_group_together_where_that_can_be_avoided():
    prescribed = plan(12)
    for seed in range(30):
        dealt = deal(prescribed, [GRID], {}, today=TODAY, rng=Random(seed))
        for minutes in range(1, 25):
            (cut,) = fit(dealt, minutes, prescribed)
            assert all(a.group != b.group for a, b in pairwise(cut.targets))


def test_a_cut_block_still_ends_with_what_stands_surest():
    dues = [due(GRID[0], overdue=-3, rung=4, run=2)] + [due(t, overdue=2) for t in GRID[1:]]
    prescribed = plan(12)
    dealt = deal(prescribed, [GRID], {d.target: d for d in dues}, today=TODAY, rng=Random(2))
    (cut,) = fit(dealt, 12, prescribed)
    assert (cut.targets[0], cut.targets[-1]) == (GRID[0], GRID[0])


def test_no_minutes_are_refused_in_one_sentence():
    with pytest.raises(BadInput, match="1 minute or more"):
        fit((), 0, plan(3))


@settings(deadline=None)
@given(
    st.lists(st.sampled_from(GRID[:4]), min_size=1, max_size=7),
    st.integers(0, 99),
)
def test_a_group_meets_itself_no_more_often_than_in_the_best_of_all_orders(drawn, seed):
    # Trying every order with itertools.permutations is the reference.
    def meets(order) -> int:
        return sum(a.group == b.group for a, b in pairwise(order))

    def allowed(order) -> bool:
        return names < 2 or longest_run(order, lambda t: t.name) <= 3

    names = len({t.name for t in drawn})
    everything = [order for order in permutations(drawn) if allowed(order)]
    counts = {t: drawn.count(t) for t in dict.fromkeys(drawn)}
    dealt = arrange(counts, first=None, last=None, names=names, rng=Random(seed))
    assert Counter(dealt) == Counter(drawn)
    if everything:
        assert allowed(dealt)
        assert meets(dealt) == min(map(meets, everything))
