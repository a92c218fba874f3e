"""`drills items` and `drills picture`: see what would be asked and drawn."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Collection, Sequence
from itertools import cycle, islice
from pathlib import Path
from random import Random

from drills import wiring
from drills.cli.names import nearest
from drills.cli.types import Commands, any_number, cell_size, positive_number
from drills.core.items import Item, Kind
from drills.core.material import Material
from drills.core.meaning_json import as_json, from_json
from drills.core.meanings import Act, Meaning, Place, Relation, Scene, Side
from drills.core.plans import BlockPlan
from drills.core.problems import BadInput, Failure
from drills.core.records import latest_trials
from drills.core.words import Lexicon
from drills.exercises import KINDS, check_block, make_items, names_of, targets_of
from drills.language import CONSTRUCTIONS
from drills.pictures.cells import Cells, Encoding


def add(commands: Commands, everywhere: argparse.ArgumentParser) -> None:
    items = commands.add_parser("items", parents=[everywhere], help="see what would be asked")
    items.add_argument("--kind", required=True, choices=[kind.value for kind in KINDS])
    items.add_argument("--construction", metavar="NAME", help="a construction (match, question)")
    items.add_argument("--level", metavar="NAME", help="a cloze level, question or gesture")
    items.add_argument("--count", type=positive_number, default=10, metavar="N")
    items.add_argument("--options", type=int, choices=(2, 3, 4), default=2)
    items.add_argument("--locale", choices=wiring.LOCALES, default=None)
    items.add_argument("--seed", type=any_number, metavar="N", help="the same items every time")
    items.add_argument("--format", choices=("text", "jsonl"), default="text")
    items.set_defaults(action=show_items)

    picture = commands.add_parser(
        "picture", parents=[everywhere], help="draw a meaning, or the cast and the verbs"
    )
    picture.add_argument(
        "meaning", nargs="*", metavar="WORD", help="as in: push nurse baker, or: cup behind box"
    )
    picture.add_argument("--item", metavar="ID", help="the pictures of an item that was given")
    picture.add_argument("--cells", type=cell_size, default=(38, 15), metavar="38x15")
    picture.add_argument(
        "--encoding", type=Encoding, choices=list(Encoding), help="characters to draw with"
    )
    picture.add_argument("--side", type=Side, choices=list(Side), default=Side.LEFT)
    picture.add_argument("--out", metavar="FILE", help="a .png or .svg file")
    picture.set_defaults(action=show_picture)


# Items


def show_items(options: argparse.Namespace) -> int:
    material = wiring.material(options.locale or wiring.locale_of())
    block = BlockPlan(
        kind=Kind(options.kind),
        names=_names(options, material),
        trials=options.count,
        options=options.options,
    )
    targets = targets_of(block, material)
    if options.construction and block.kind is Kind.QUESTION:
        targets = tuple(target for target in targets if options.construction in str(target))
    seed = wiring.new_seed() if options.seed is None else options.seed
    items = make_items(
        tuple(islice(cycle(targets), options.count)),
        options=block.options,
        material=material,
        rng=Random(seed),
    )
    for item in items:
        if options.format == "jsonl":
            print(json.dumps(item.as_json(), ensure_ascii=False))
        else:
            print(_described(item), end="\n\n")
    return 0


def _names(options: argparse.Namespace, material: Material) -> tuple[str, ...]:
    kind = Kind(options.kind)
    known = names_of(kind, material)
    if options.construction is not None and options.construction not in CONSTRUCTIONS:
        raise BadInput(
            f"There is no construction {options.construction!r}. "
            f"{nearest(options.construction, CONSTRUCTIONS)}"
        )
    if options.construction is not None and kind is Kind.MATCH:
        name = options.construction
    elif options.level is not None:
        name = options.level
    else:
        return known
    if name not in known:
        raise BadInput(f"{kind.value} items have no {name!r}. {nearest(name, known)}")
    problems = check_block(BlockPlan(kind=kind, names=(name,), trials=1), material)
    if problems:
        raise BadInput(problems)
    return (name,)


def _described(item: Item) -> str:
    lines = [f"{item.target}   (guessing: 1 in {item.effective_k})"]
    lines += [f"  {text}" for text in (item.prompt, item.sentence) if text]
    if item.picture is not None:
        lines.append(f"  picture: {_in_words(item.picture)}")
    for index, option in enumerate(item.options):
        words = option.text or (_in_words(option.scene) if option.scene else "")
        why = "right" if index == item.answer else f"{option.foil}: {option.why_wrong}"
        lines.append(f"  {index + 1}  {words}   ({why})")
    return "\n".join(lines)


def _in_words(scene: Scene) -> str:
    meaning = scene.meaning
    if isinstance(meaning, Act):
        return f"{meaning.verb} {meaning.doer} {meaning.done_to}, doer {scene.side}"
    if isinstance(meaning, Place):
        return f"{meaning.thing} {meaning.relation} {meaning.landmark}"
    return ", ".join(f"{key} {value}" for key, value in as_json(meaning).items())


# Pictures


def show_picture(options: argparse.Namespace) -> int:
    encoding = options.encoding or wiring.encoding_of()
    columns, lines = options.cells
    scenes = _scenes(options)
    if options.out is None:
        from drills.pictures import draw  # noqa: PLC0415 - loads the drawing libraries
        from drills.pictures.ansi import write  # noqa: PLC0415

        for scene in scenes:
            (cells,) = draw([scene], columns=columns, lines=lines, encoding=encoding)
            print(_in_words(scene))
            sys.stdout.write(write(cells))
        return 0
    if len(scenes) > 1:
        raise BadInput("--out takes one picture. Name a meaning, as in: push nurse baker.")
    _save(scenes[0], Path(options.out), columns, lines, encoding)
    print(f"{options.out} is written.")
    return 0


def _save(scene: Scene, path: Path, columns: int, lines: int, encoding: Encoding) -> None:
    from drills.pictures import draw, drawing, png, svg  # noqa: PLC0415

    kind = path.suffix.lower()
    try:
        if kind == ".svg":
            text = svg.write(drawing(scene, columns=columns, lines=lines))
            path.write_text(text, encoding="utf-8")
        elif kind == ".png":
            cells: Cells = draw([scene], columns=columns, lines=lines, encoding=encoding)[0]
            png.picture(cells).save(path)
        else:
            raise BadInput(f"{path} is no .png or .svg file. End its name in one of these.")
    except OSError as error:
        raise Failure(f"{path} could not be written: {error.strerror or error}.") from None


def _scenes(options: argparse.Namespace) -> Sequence[Scene]:
    if options.item and options.meaning:
        raise BadInput("Give the words of a meaning, or --item, not both.")
    if options.item:
        return _scenes_of_item(options.item, options)
    lexicon = wiring.material(wiring.locale_of()).lexicon
    if options.meaning:
        return (Scene(meaning=parse_meaning(options.meaning, lexicon), side=options.side),)
    return _every_verb(lexicon)


def _scenes_of_item(item_id: str, options: argparse.Namespace) -> Sequence[Scene]:
    home = wiring.home(wiring.practice_folder(options.folder), speak=False)
    try:
        trials = latest_trials(home.records.entries())
    finally:
        home.close()
    for trial in reversed(trials):
        if trial.asked.item_id == item_id:
            return tuple(
                Scene(meaning=from_json(row["meaning"]), side=Side(row["side"]))
                for row in trial.asked.options
                if "meaning" in row
            )
    raise BadInput(f"No item {item_id!r} was given in this practice folder.")


def _every_verb(lexicon: Lexicon) -> Sequence[Scene]:
    """Each verb once, with doers and done-tos taken in turn through the cast."""
    scenes = []
    for number, verb in enumerate(lexicon.verbs.values()):
        pairs = lexicon.partners(verb)
        doer, done_to = pairs[(number * 11) % len(pairs)]
        scenes.append(
            Scene(meaning=Act(verb=verb.key, doer=doer.key, done_to=done_to.key), side=Side.LEFT)
        )
    return scenes


def parse_meaning(words: Sequence[str], lexicon: Lexicon) -> Meaning:
    """`push nurse baker` or `cup in front of box` as a meaning.

    Raises: BadInput that names the word and the nearest known one.
    """
    if words[0] in lexicon.verbs or (len(words) == 3 and words[1] in lexicon.nouns):
        if len(words) != 3:
            raise BadInput("Name a verb, its doer and the one it is done to: push nurse baker.")
        verb, doer, done_to = words
        _require(verb, lexicon.verbs, "verb")
        _require(doer, lexicon.nouns, "noun")
        _require(done_to, lexicon.nouns, "noun")
        pairs = {(a.key, b.key) for a, b in lexicon.partners(lexicon.verbs[verb])}
        if (doer, done_to) not in pairs:
            raise BadInput(
                f"{doer} and {done_to} make no pair for {verb}. Try: {verb} nurse baker."
            )
        return Act(verb=verb, doer=doer, done_to=done_to)
    thing, landmark, relation = words[0], words[-1], " ".join(words[1:-1])
    known = [word.value for word in Relation]
    if relation not in known:
        raise BadInput(
            "Name a verb and two people (push nurse baker), or two things and a place "
            f"(cup behind box). {' '.join(words)!r} is neither."
        )
    things = {noun.key: noun for noun in lexicon.things}
    _require(thing, things, "thing")
    _require(landmark, things, "thing")
    if thing == landmark:
        raise BadInput("Name two different things.")
    if relation == "in" and not things[landmark].container:
        raise BadInput(f"Nothing can be in a {landmark}.")
    return Place(relation=Relation(relation), thing=thing, landmark=landmark)


def _require(word: str, known: Collection[str], sort: str) -> None:
    if word not in known:
        raise BadInput(f"There is no {sort} {word!r}. {nearest(word, known)}")
