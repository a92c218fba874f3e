"""A block of the plan: what it practises, what is wrong with it, and items for it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from difflib import get_close_matches
from random import Random
from types import MappingProxyType

from drills.core.items import Item, ItemSet, Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput, Problem
from drills.exercises.act_out import ACT_OUT
from drills.exercises.cloze import CLOZE
from drills.exercises.exercise import Batch, Exercise
from drills.exercises.gesture import GESTURE
from drills.exercises.match import MATCH
from drills.exercises.question import QUESTION

EXERCISES: Mapping[Kind, Exercise] = MappingProxyType(
    {each.kind: each for each in (MATCH, ACT_OUT, CLOZE, QUESTION, GESTURE)}
)
KINDS = tuple(EXERCISES)
"""Every kind that can be given."""

FEWEST_OPTIONS, MOST_OPTIONS = 2, 4


def names_of(kind: Kind, material: Material) -> tuple[str, ...]:
    """What a block of this kind may name.   Raises: KeyError for a kind that is not given."""
    return EXERCISES[kind].names(material)


def targets_of(block: BlockPlan, material: Material) -> tuple[Target, ...]:
    """What the block practises, in the order of its names and of the content.

    Raises: BadInput when `check_block` finds a problem.
    """
    if problems := check_block(block, material):
        raise BadInput(problems)
    return EXERCISES[block.kind].targets(block, material)


def check_block(block: BlockPlan, material: Material) -> tuple[Problem, ...]:
    """Every name, group and number of options that cannot be practised, with the nearest one."""
    where = f"{block.kind.value} block"
    exercise = EXERCISES[block.kind]
    problems: list[Problem] = []
    if not block.names:
        problems.append(Problem(where=where, message="names nothing to practise."))
    names = exercise.names(material)
    refused = {name: why for name in block.names if (why := exercise.refuses(name))}
    problems += [
        Problem(where=where, message=f"{name!r} is not asked with {block.kind.value}: {why}.")
        for name, why in refused.items()
    ]
    asked = [name for name in block.names if name not in refused]
    problems += _unknown(where, "name", asked, names)
    good = [name for name in block.names if name in names]
    groups = exercise.groups(material, good)
    if good:
        problems += _unknown(where, "group", block.groups, groups)
    if not FEWEST_OPTIONS <= block.options <= MOST_OPTIONS:
        problems.append(
            Problem(
                where=where,
                message=f"options is {block.options}.",
                mend=f"Use {FEWEST_OPTIONS} to {MOST_OPTIONS}.",
            )
        )
    if problems:
        return tuple(problems)
    problems += exercise.faults(block, material)
    if not problems and not exercise.targets(block, material):
        problems.append(
            Problem(where=where, message="there are no words in the content to practise it with.")
        )
    return tuple(problems)


def make_items(
    targets: Sequence[Target],
    *,
    options: int,
    material: Material,
    rng: Random,
    item_set: ItemSet = ItemSet.TREATED,
) -> tuple[Item, ...]:
    """One item for each target, in their order, balanced against each other.

    options: 2 to 4; a cloze contrast and a question may have fewer to offer.
    Raises: BadInput for a target that the material does not hold.
    """
    if problems := _bad_request(targets, options, material):
        raise BadInput(problems)
    items: dict[int, Item] = {}
    for kind, exercise in EXERCISES.items():
        indices = [index for index, target in enumerate(targets) if target.kind is kind]
        made = exercise.make(
            Batch(
                targets=[targets[index] for index in indices],
                options=options,
                material=material,
                rng=rng,
                item_set=item_set,
            )
        )
        items.update(zip(indices, made, strict=True))
    return tuple(items[index] for index in range(len(targets)))


def _bad_request(
    targets: Sequence[Target], options: int, material: Material
) -> tuple[Problem, ...]:
    problems: list[Problem] = []
    for target in dict.fromkeys(targets):
        block = BlockPlan(
            kind=target.kind,
            names=(target.name,),
            trials=1,
            options=options,
            groups=(target.group,) if target.group else (),
        )
        found = check_block(block, material)
        if not found and target not in EXERCISES[target.kind].targets(block, material):
            found = (
                Problem(where=str(target), message="this is no target.", mend="Name a group."),
            )
        problems += found
    return tuple(problems)


def _unknown(where: str, what: str, given: Sequence[str], known: Sequence[str]) -> list[Problem]:
    problems = []
    for word in given:
        if word in known:
            continue
        if not known:
            problems.append(
                Problem(
                    where=where,
                    message=f"{what} {word!r} is not known; there are no {what}s here.",
                    mend="Leave it out.",
                )
            )
            continue
        near = get_close_matches(word, known, n=1, cutoff=0.5)
        mend = f"Did you mean {near[0]!r}?" if near else f"Use one of: {', '.join(known)}."
        problems.append(Problem(where=where, message=f"{what} {word!r} is not known.", mend=mend))
    return problems
