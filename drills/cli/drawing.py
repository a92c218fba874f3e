"""`drills picture`: draw a meaning, the pictures of an item, or every verb."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Collection, Sequence
from pathlib import Path

from drills import wiring
from drills.cli.names import in_words, nearest
from drills.cli.types import cell_size
from drills.core.cells import Encoding
from drills.core.kinds import Side
from drills.core.meaning_json import from_json
from drills.core.meanings import Act, Meaning, Place, Relation, Scene
from drills.core.problems import BadInput, Failure
from drills.core.records import latest_trials
from drills.core.words import Lexicon
from drills.pictures import ansi, can_draw, draw, drawing


def add(picture: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
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


def show_picture(options: argparse.Namespace) -> int:
    encoding = options.encoding or wiring.encoding_of()
    columns, lines = options.cells
    scenes = _scenes(options)
    if options.out is None:
        for scene in scenes:
            (cells,) = draw([scene], columns=columns, lines=lines, encoding=encoding)
            print(in_words(scene))
            sys.stdout.write(ansi.write(cells))
        return 0
    if len(scenes) > 1:
        raise BadInput("--out takes one picture. Name a meaning, as in: push nurse baker.")
    _save(scenes[0], Path(options.out), columns, lines, encoding)
    print(f"{options.out} is written.")
    return 0


def _save(scene: Scene, path: Path, columns: int, lines: int, encoding: Encoding) -> None:
    # These load the drawing libraries, which a picture in the terminal may do without.
    from drills.pictures import png, svg  # noqa: PLC0415

    kind = path.suffix.lower()
    try:
        if kind == ".svg":
            text = svg.write(drawing(scene, columns=columns, lines=lines))
            path.write_text(text, encoding="utf-8")
        elif kind == ".png":
            (cells,) = draw([scene], columns=columns, lines=lines, encoding=encoding)
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
            scenes = tuple(
                Scene(meaning=from_json(row["meaning"]), side=Side(row["side"]))
                for row in trial.asked.options
                if "meaning" in row
            )
            if not scenes:
                raise BadInput(f"Item {item_id!r} has no pictures to choose from.")
            return scenes
    raise BadInput(f"No item {item_id!r} was given in this practice folder.")


def _every_verb(lexicon: Lexicon) -> Sequence[Scene]:
    """Each verb once, with doers and done-tos taken in turn through the cast."""
    scenes = []
    for number, verb in enumerate(lexicon.verbs.values()):
        acts = [
            Act(verb=verb.key, doer=doer.key, done_to=done_to.key)
            for doer, done_to in lexicon.partners(verb)
        ]
        if drawn := [act for act in acts if can_draw(act)]:
            scenes.append(Scene(meaning=drawn[(number * 11) % len(drawn)], side=Side.LEFT))
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
