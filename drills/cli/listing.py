"""`drills items --set probe`: the lists that checks ask, to see or to print."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable

from drills import wiring
from drills.core.items import Item
from drills.practice.checks import items_of_check, likeness
from drills.practice.labels import labels_of
from drills.schedule.checks import CheckList


def show_list(options: argparse.Namespace, described: Callable[[Item], str]) -> int:
    """The list of the plan in force, in its order; in text also how like practice it is."""
    plan = wiring.plan_in_force(wiring.practice_folder(options.folder))
    material = wiring.material(plan.locale).without_kin(plan.without_kin)
    items = items_of_check(plan, material, CheckList(letter=options.list))
    if options.format == "jsonl":
        for item in items:
            print(json.dumps(item.as_json(), ensure_ascii=False))
        return 0
    labels = labels_of(material)
    print(f"List {options.list}: {len(items)} sentences, no help, no feedback.\n")
    print("Standardised mean differences from what is practised (to 0.1 either way is like it):")
    for name, apart in likeness(plan, material).items():
        most = max(apart, key=lambda key: abs(apart[key]))
        print(
            f"  {labels.get(name, name)}: letters {apart['letters']:+.2f}, "
            f"frequency {apart['frequency']:+.2f}, most of any ({most}) {apart[most]:+.2f}"
        )
    for number, item in enumerate(items, 1):
        print(f"\n{number}. [{item.item_set.value}] {described(item)}")
    return 0
