"""Ten thousand cloze items of every level against every rule, and what a block costs to make.

python -m pytest tests/bench/bench_cloze.py -s
"""

from __future__ import annotations

import time
from collections import Counter
from itertools import cycle, islice
from random import Random

from drills.core.items import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.exercises import make_items, names_of, targets_of
from drills.exercises.choices import broken
from drills.exercises.rules import CLOZE_RULES, answers_come_out_even, answers_take_turns

ITEMS = 10_000
BLOCK = 20


def test_ten_thousand_items_break_no_rule(material: Material) -> None:
    """Blocks of twenty at random seeds, over all levels, with two, three and four words."""
    names = names_of(Kind.CLOZE, material)
    levels: Counter[str] = Counter()
    words: Counter[int] = Counter()
    faults = []
    started = time.perf_counter()
    for number in range(ITEMS // BLOCK):
        rng = Random(number)
        options = 2 + number % 3
        level = names[number % len(names)]
        block = BlockPlan(kind=Kind.CLOZE, names=(level,), trials=BLOCK, options=options)
        targets = list(targets_of(block, material))
        rng.shuffle(targets)
        items = make_items(
            tuple(islice(cycle(targets), BLOCK)), options=options, material=material, rng=rng
        )
        faults += answers_take_turns(items)
        faults += answers_come_out_even(items, material)
        for item in items:
            faults += broken(item, material, CLOZE_RULES)
            levels[item.level] += 1
            words[len(item.options)] += 1
    taken = time.perf_counter() - started
    print(f"\n{levels.total()} items, {len(faults)} violations of {len(CLOZE_RULES)} + 2 rules")
    print(f"levels {dict(levels)}; words offered {dict(words)}")
    print(f"{taken:.1f} s: {1000 * taken / levels.total():.2f} ms an item, checked twice")
    assert levels.total() == ITEMS
    assert set(levels) == set(names)
    assert faults == []
