"""`drills items`: see what would be asked."""

from __future__ import annotations

import argparse
import json
from itertools import cycle, islice
from random import Random

from drills import wiring
from drills.cli.listing import show_list
from drills.cli.names import in_words, nearest
from drills.cli.types import any_number, positive_number
from drills.core.items import Item, ItemSet, Kind
from drills.core.material import Material
from drills.core.plans import LOCALES, BlockPlan
from drills.core.problems import BadInput
from drills.exercises import EXERCISES, KINDS, check_block, make_items, names_of, targets_of
from drills.exercises.cloze.blind import blind_text
from drills.exercises.cloze.coverage import coverage
from drills.language import CONSTRUCTIONS
from drills.schedule.checks import LETTERS


def add(items: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    items.add_argument("--kind", choices=[kind.value for kind in KINDS])
    items.add_argument(
        "--construction", metavar="NAME", help="a construction (match, act-out, question)"
    )
    items.add_argument("--level", metavar="NAME", help="a cloze level, question or gesture")
    items.add_argument("--count", type=positive_number, default=10, metavar="N")
    items.add_argument("--options", type=int, choices=(2, 3, 4), default=2)
    items.add_argument("--locale", choices=LOCALES, default=None)
    items.add_argument("--seed", type=any_number, metavar="N", help="the same items every time")
    items.add_argument("--format", choices=("text", "jsonl"), default="text")
    items.add_argument(
        "--coverage", action="store_true", help="how much of spoken English the cloze asks for"
    )
    items.add_argument(
        "--blind", action="store_true", help="cloze items without their key, for readers to check"
    )
    items.add_argument(
        "--set",
        choices=(ItemSet.TREATED.value, ItemSet.PROBE.value),
        default=ItemSet.TREATED.value,
        help="probe: what the checks of the plan in force ask",
    )
    items.add_argument("--list", choices=LETTERS, default=LETTERS[0], help="of --set probe")
    items.set_defaults(action=show_items)


def show_items(options: argparse.Namespace) -> int:
    if options.set == ItemSet.PROBE:
        return show_list(options, _described)
    if options.kind is None:
        raise BadInput(f"Say of which kind: --kind {', '.join(kind.value for kind in KINDS)}.")
    material = wiring.material(options.locale or wiring.locale_of())
    if (options.coverage or options.blind) and options.kind != Kind.CLOZE:
        raise BadInput("--coverage and --blind are of cloze items. Add --kind cloze.")
    if options.coverage:
        return _show_coverage(material)
    block = BlockPlan(
        kind=Kind(options.kind),
        names=_names(options, material),
        trials=options.count,
        options=options.options,
    )
    targets = targets_of(block, material)
    if options.construction and block.kind is Kind.QUESTION:
        targets = tuple(
            target for target in targets if target.name.rpartition(":")[2] == options.construction
        )
        if not targets:
            raise BadInput(f"No question of this level is asked of {options.construction!r}.")
    seed = wiring.new_seed() if options.seed is None else options.seed
    items = make_items(
        tuple(islice(cycle(targets), options.count)),
        options=block.options,
        material=material,
        rng=Random(seed),
    )
    if options.blind:
        print(blind_text(items, picture_names=[_picture_words(item) for item in items]))
        return 0
    for item in items:
        if options.format == "jsonl":
            print(json.dumps(item.as_json(), ensure_ascii=False))
        else:
            print(_described(item), end="\n\n")
    return 0


def _show_coverage(material: Material) -> int:
    found = coverage(material, wiring.word_counts())
    for word, target in found.asked.items():
        print(f"{word:<12} {target}")
    print(f"\n{len(found.asked)} words, {found.share:.1%} of the small words of spoken English.")
    missing = ", ".join(list(found.missing)[:_SHOWN_MISSING])
    print(f"Not asked for, the commonest first: {missing}.")
    return 0


_SHOWN_MISSING = 12


def _picture_words(item: Item) -> str:
    return "" if item.picture is None else in_words(item.picture)


def _names(options: argparse.Namespace, material: Material) -> tuple[str, ...]:
    kind = Kind(options.kind)
    known = names_of(kind, material)
    if options.construction is not None and options.construction not in CONSTRUCTIONS:
        raise BadInput(
            f"There is no construction {options.construction!r}. "
            f"{nearest(options.construction, CONSTRUCTIONS)}"
        )
    if options.construction is not None and kind in (Kind.MATCH, Kind.ACT_OUT):
        name = options.construction
    elif options.level is not None:
        name = options.level
    else:
        return known
    if why := EXERCISES[kind].refuses(name):
        raise BadInput(f"{kind.value} items have no {name!r}: {why}.")
    if name not in known:
        raise BadInput(f"{kind.value} items have no {name!r}. {nearest(name, known)}")
    problems = check_block(BlockPlan(kind=kind, names=(name,), trials=1), material)
    if problems:
        raise BadInput(problems)
    return (name,)


def _described(item: Item) -> str:
    lines = [f"{item.target}   (guessing: 1 in {item.effective_k})"]
    context = item.context.split("\n")
    asked = item.sentence.endswith("?")
    shown = (item.prompt, *(() if asked else context), item.sentence, *(context if asked else ()))
    lines += [f"  {text}" for text in shown if text]
    if item.picture is not None:
        lines.append(f"  picture: {in_words(item.picture)}")
    for index, option in enumerate(item.options):
        words = option.text or (in_words(option.scene) if option.scene else "")
        why = "right" if index == item.answer else f"{option.foil}: {option.why_wrong}"
        lines.append(f"  {index + 1}  {words}   ({why})")
    return "\n".join(lines)
