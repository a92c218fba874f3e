"""What an item to be acted out must hold, one function a rule."""

from __future__ import annotations

from itertools import permutations

from drills.core.items import Foil, Item
from drills.core.material import Material
from drills.core.meanings import Act, Transfer
from drills.core.problems import Problem
from drills.exercises.choices import (
    Rule,
    fault,
    ladder_climbs,
    one_right_option,
    options_differ,
    reasons_given,
)
from drills.exercises.events import Event, event_told, figure_of, names_both, parts, recast, said


def only_events(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Every option is an event that can be shown, and its place is right."""
    if len(_events(item)) != len(item.options):
        return fault(item, "an option is no event that can be acted out.")
    return ()


def every_event_once(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Any of the figures can be given either part, and nothing else differs."""
    events = _events(item)
    casts = [parts(event) for event in events]
    figures = dict.fromkeys(key for cast in casts for key in cast)
    if casts != list(permutations(figures, 2)):
        return fault(item, f"not every event of {', '.join(figures)} is offered once.")
    if any(recast(event, *parts(events[0])) != events[0] for event in events):
        return fault(item, "its events differ in more than who plays in them.")
    return ()


def right_event(item: Item, _material: Material) -> tuple[Problem, ...]:
    """The right event is the one that the sentence tells."""
    events = _events(item)
    if item.meaning is None or item.answer is None or item.answer >= len(events):
        return fault(item, "its sentence tells no event.")
    wanted, shown = event_told(item.meaning), event_told(events[item.answer])
    if any(part not in (None, is_shown) for part, is_shown in zip(wanted, shown, strict=True)):
        return fault(item, "the right event is not the one that the sentence tells.")
    if not names_both(item.construction) and len(events) > 2:
        return fault(item, "more than one could be the doer whom the sentence does not name.")
    return ()


def foils_are_of_their_kind(item: Item, _material: Material) -> tuple[Problem, ...]:
    """A reversal exchanges the two; every other foil brings one in who is not named."""
    events = _events(item)
    if item.answer is None or item.answer >= len(events):
        return fault(item, "it has no right event.")
    right = parts(events[item.answer])
    for event, option in zip(events, item.options, strict=True):
        is_reversal = parts(event) == right[::-1]
        if parts(event) != right and option.foil is not (
            Foil.REVERSAL if is_reversal else Foil.NOUN
        ):
            return fault(item, f"{option.text!r} is called {option.foil}.")
    return ()


def figures_differ(item: Item, material: Material) -> tuple[Problem, ...]:
    looks: dict[str, str] = {}
    for event in _events(item):
        for key in parts(event):
            look = figure_of(key, material.lexicon)
            if looks.setdefault(look, key) != key:
                return fault(item, f"{key} and {looks[look]} look the same.")
    return ()


def one_side(item: Item, _material: Material) -> tuple[Problem, ...]:
    """The doer has one place in the picture, whoever it is."""
    sides = [option.scene.side for option in item.options if option.scene is not None]
    if any(side is not sides[0] for side in sides):
        return fault(item, "the side of the doer tells the events apart.")
    return ()


def words_said(item: Item, material: Material) -> tuple[Problem, ...]:
    """Each option says in words what would be performed."""
    for event, option in zip(_events(item), item.options, strict=False):
        if option.text != said(event, material.lexicon).text:
            return fault(item, f"{option.text!r} is not what would be performed.")
    return ()


def chance_counted(item: Item, _material: Material) -> tuple[Problem, ...]:
    """Chance counts the events of the right two: they are what the words alone leave."""
    casts = [parts(event) for event in _events(item)]
    right = casts[item.answer] if item.answer is not None and item.answer < len(casts) else ()
    count = sum(sorted(cast) == sorted(right) for cast in casts)
    if item.effective_k != count or count != 2:
        return fault(item, f"it counts {item.effective_k} choices by chance where {count} are.")
    return ()


def removal_is_of_one(item: Item, _material: Material) -> tuple[Problem, ...]:
    """What one step of help takes away are all the events of one figure."""
    casts = [parts(event) for event in _events(item)]
    for cue in item.cues:
        gone = [cast for index, cast in enumerate(casts) if index in cue.removes]
        shared = set.intersection(*(set(cast) for cast in gone)) if gone else set()
        left = [cast for index, cast in enumerate(casts) if index not in cue.removes]
        if gone and not (len(shared) == 1 and not any(shared & set(cast) for cast in left)):
            return fault(item, "a cue takes away something else than one figure.")
    return ()


def _events(item: Item) -> list[Event]:
    meanings = [None if each.scene is None else each.scene.meaning for each in item.options]
    return [meaning for meaning in meanings if isinstance(meaning, Act | Transfer)]


ACT_OUT_RULES: tuple[Rule, ...] = (
    only_events,
    one_right_option,
    reasons_given,
    options_differ,
    every_event_once,
    right_event,
    foils_are_of_their_kind,
    figures_differ,
    one_side,
    words_said,
    chance_counted,
    ladder_climbs,
    removal_is_of_one,
)
