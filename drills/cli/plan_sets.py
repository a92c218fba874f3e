"""`drills plan sets`: choose what checks ask once, and write it into the plan."""

from __future__ import annotations

import argparse
from collections.abc import Mapping
from pathlib import Path

from drills import wiring
from drills.catalogue import plan_text
from drills.cli.new_files import write_new_text
from drills.core.plans import Plan
from drills.core.problems import BadInput
from drills.core.visible import visible
from drills.exercises.probes import BALANCED
from drills.exercises.probes.sets import SetReport
from drills.practice.labels import labels_of
from drills.practice.sets import set_reports, with_sets

LARGEST_SEED = 99_999


def make_sets(options: argparse.Namespace) -> int:
    path = Path(options.file)
    plan = wiring.checked_plan(path, sets=False)
    material = wiring.material(plan.locale).without_kin(plan.without_kin)
    made = with_sets(plan, material, seed=_seed(options.seed))
    if options.out is not None:
        write_new_text(Path(options.out), plan_text(made))
    print(visible(_told(set_reports(made, material), made, labels_of(material))))
    if options.out is None:
        print("\nNothing is written. To write the plan with these sets, add: --out FILE")
    else:
        print(f"\n{options.out} is written, with seed = {made.probes.seed}.")
    return 0


def _seed(chosen: int | None) -> int | None:
    if chosen is not None and not 1 <= chosen <= LARGEST_SEED:
        raise BadInput(f"--seed is {chosen}. Choose from 1 to {LARGEST_SEED}.")
    return chosen


def _told(found: tuple[SetReport, ...], plan: Plan, labels: Mapping[str, str]) -> str:
    roles = {each.construction: each.role for each in plan.probes.sets}
    lines = [
        f"{len(found)} sets, matched on letters and frequency of their words, verb groups and",
        f"sides. Standardised mean differences, to {BALANCED} either way is alike (Austin 2009):",
    ]
    for each in found:
        name = labels.get(each.construction, each.construction)
        lines += [
            "",
            f"{name}, {roles[each.construction]}: {each.items} sentences of {each.words:.1f} "
            f"words, the doer left in {each.doer_left}",
            f"    from what is practised: {_figures(each.from_practice)}",
        ]
        lines += [
            f"    from {labels.get(other, other)}: {_figures(apart)}"
            for other, apart in each.between.items()
        ]
    furthest = max(each.furthest for each in found)
    if furthest > BALANCED:
        lines += [
            "",
            f"Not all are alike: up to {furthest:.2f} apart. Try another --seed, or other names",
            "under related and control.",
        ]
    return "\n".join(lines)


def _figures(apart: Mapping[str, float]) -> str:
    groups = {key: value for key, value in apart.items() if key not in ("letters", "frequency")}
    told = f"letters {apart['letters']:+.2f}, frequency {apart['frequency']:+.2f}"
    if not groups:
        return f"{told}, no verb groups in common"
    most = max(groups, key=lambda key: abs(groups[key]))
    return f"{told}, verb groups up to {groups[most]:+.2f} ({most})"
