"""`drills picture`: draw a meaning, the pictures of an item, or every verb."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Sequence
from pathlib import Path

from drills import wiring
from drills.cli.meaning_forms import EXAMPLES, parse
from drills.cli.meaning_words import words_of
from drills.cli.names import in_words
from drills.cli.types import cell_size
from drills.core.cells import Encoding
from drills.core.kinds import Side
from drills.core.meaning_json import from_json
from drills.core.meanings import Act, Asked, Meaning, Scene, Undergone
from drills.core.problems import BadInput, Failure
from drills.core.records import Trial
from drills.core.words import Lexicon
from drills.language import as_drawn
from drills.ledger import open_ledger
from drills.pictures import ansi, can_draw, draw, drawing, why_not


def add(picture: argparse.ArgumentParser, _: argparse.ArgumentParser) -> None:
    picture.add_argument(
        "meaning", nargs="*", metavar="WORD", help="a meaning, in one of the forms below"
    )
    picture.add_argument("--item", metavar="ID", help="the pictures of an item that was given")
    picture.add_argument("--cells", type=cell_size, default=(38, 15), metavar="38x15")
    picture.add_argument(
        "--encoding", type=Encoding, choices=list(Encoding), help="characters to draw with"
    )
    picture.add_argument("--side", type=Side, choices=list(Side), default=Side.LEFT)
    picture.add_argument("--out", metavar="FILE", help="a .png or .svg file")
    picture.formatter_class = argparse.RawDescriptionHelpFormatter
    width = max(map(len, EXAMPLES)) + 2
    forms = "\n".join(f"  {words:{width}}{says}" for words, says in EXAMPLES.items())
    picture.epilog = (
        f"forms of a meaning:\n{forms}\n\n"
        "Every form of a word will do (pushed, nurses, the baker). A meaning may also be given as\n"
        "the JSON that `drills items --format jsonl` prints. With no words, every verb is drawn."
    )
    picture.set_defaults(action=show_picture)


def show_picture(options: argparse.Namespace) -> int:
    encoding = options.encoding or wiring.encoding_of()
    columns, lines = options.cells
    scenes = _scenes(options)
    if options.out is None:
        for scene in scenes:
            (cells,) = draw([scene], columns=columns, lines=lines, encoding=encoding)
            print(in_words(scene))
            if unclear := why_not(scene.meaning, lines=lines):
                print(f"Hard to make out at this size: {unclear}.")
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
        return (scene_of(read_meaning(options.meaning, lexicon), options.side, lexicon),)
    return _every_verb(lexicon)


def _scenes_of_item(item_id: str, options: argparse.Namespace) -> Sequence[Scene]:
    ledger = open_ledger(wiring.practice_folder(options.folder))
    try:
        # Most often it was given lately: years of sessions before it are not read.
        asked = next(
            entry.asked
            for entry in ledger.each(newest_first=True)
            if isinstance(entry, Trial) and entry.asked.item_id == item_id
        )
    except StopIteration:
        raise BadInput(f"No item {item_id!r} was given in this practice folder.") from None
    finally:
        ledger.close()
    try:
        scenes = tuple(
            Scene(meaning=from_json(row["meaning"]), side=Side(row["side"]))
            for row in asked.options
            if "meaning" in row
        )
    except (ValueError, KeyError, TypeError, AttributeError):
        raise BadInput(f"The record of item {item_id!r} holds no pictures to draw.") from None
    if not scenes:
        raise BadInput(f"Item {item_id!r} has no pictures to choose from.")
    return scenes


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


def read_meaning(words: Sequence[str], lexicon: Lexicon) -> Meaning:
    """A meaning in plain words, or as the JSON that `drills items --format jsonl` prints.

    Raises: BadInput that says what is wrong and how to mend it.
    """
    text = " ".join(words).strip()
    return _from_json(text) if text.startswith(("{", "[")) else parse(words, lexicon)


def _from_json(text: str) -> Meaning:
    mend = "Give one line of `drills items --format jsonl`, or its meaning."
    try:
        row = json.loads(text)
        meaning = from_json(row.get("meaning", row))
        # Values of a wrong type are not found until they are used.
        why_not(meaning)
        words_of(meaning)
    except json.JSONDecodeError as error:
        raise BadInput(f"This is no JSON, from character {error.pos + 1} on. {mend}") from None
    except (ValueError, TypeError, AttributeError, KeyError, RecursionError):
        raise BadInput(f"This JSON is no meaning. {mend}") from None
    return meaning


def scene_of(meaning: Meaning, side: Side, lexicon: Lexicon) -> Scene:
    """The scene that shows `meaning`; who is not named is somebody that suits it.

    Raises: BadInput with the reason when no picture can show it.
    """
    others = tuple(lexicon.nouns)
    match meaning:
        case Undergone():
            shown: tuple[Meaning, ...] = tuple(meaning.by(other) for other in others)
        case Asked():
            shown = tuple(meaning.answered(other) for other in others)
        case _:
            shown = (meaning,)
    drawn = [as_drawn(each, lexicon) for each in shown]
    for each in drawn:
        if can_draw(each):
            return Scene(meaning=each, side=side)
    raise BadInput(
        f"{words_of(meaning)!r} is not drawn: {why_not(drawn[0])}. "
        "Try another, as in: nurse push baker."
    )
