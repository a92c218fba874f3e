"""Trials as a therapist reads them afterwards: what was practised, what was shown and chosen."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from drills.core.kinds import Foil, ItemSet, Kind, Side
from drills.core.meaning_json import from_json
from drills.core.meanings import Scene
from drills.core.records import Asked, Attempt, Trial, practice_day
from drills.digest.plain import day
from drills.digest.wording import FOILS, KINDS

HELP_SHOWN = "the answer was shown"


@dataclass(frozen=True, slots=True, kw_only=True)
class Practised:
    """A name that was practised, or checked, with its trials in the order in which they began.

    right: right alone at the first response.   of: trials that count.
    """

    kind: Kind
    name: str
    label: str
    item_set: ItemSet
    right: int
    of: int
    trials: tuple[Trial, ...]


def practised(trials: Sequence[Trial], labels: Mapping[str, str]) -> tuple[Practised, ...]:
    """Each name by kind, practice before checks; those with most trials wrong first."""
    found: dict[tuple[ItemSet, Kind, str], list[Trial]] = {}
    for trial in trials:
        if trial.attempts:
            asked = trial.asked
            found.setdefault((asked.item_set, asked.kind, asked.target.name), []).append(trial)
    names = []
    for (item_set, kind, name), own in found.items():
        judged = [trial for trial in own if trial.could_be_alone]
        names.append(
            Practised(
                kind=kind,
                name=name,
                label=labels.get(name, name),
                item_set=item_set,
                right=sum(trial.unaided_right for trial in judged),
                of=len(judged),
                trials=tuple(own),
            )
        )
    sets, kinds = list(ItemSet), list(Kind)
    return tuple(
        sorted(
            names,
            key=lambda each: (
                sets.index(each.item_set),
                kinds.index(each.kind),
                each.right - each.of,
                each.label,
            ),
        )
    )


SETS = {
    ItemSet.TREATED: "",
    ItemSet.PROBE: "check",
    ItemSet.RELATED: "check, related",
    ItemSet.CONTROL: "check, unrelated",
}


def name_line(each: Practised) -> str:
    """One line on a name: what it is, in which task, and how much was right alone."""
    where = ", ".join(part for part in (KINDS[each.kind], SETS[each.item_set]) if part)
    if not each.of:
        return f"not judged  {each.label} ({where})"
    return f"{f'{each.right} of {each.of}':>9}  {each.label} ({where})"


def trial_line(trial: Trial, *, day_turns_at_hour: int) -> str:
    """One line on a trial: its day, how it went, its sentence."""
    on = day(practice_day(trial.started_at, turns_at_hour=day_turns_at_hour))
    return f"{on:<10}  {_outcome(trial):<21}  {trial.asked.sentence}"


def _outcome(trial: Trial) -> str:
    first = trial.first
    if first is None:
        return "left out"
    if first.score is not None:
        return f"score {first.score}" if trial.counts else "not scored"
    if trial.unaided_right:
        return "right alone"
    if first.right:
        return f"right, help {first.cue_level}"
    foil = None if first.choice is None else trial.asked.foil(first.choice)
    return "wrong" if foil is None else _FIRST_WRONG[foil]


_FIRST_WRONG = {
    Foil.REVERSAL: "roles exchanged",
    Foil.VERB: "other action",
    Foil.NOUN: "other person, thing",
    Foil.WORD: "other small word",
}


def day_of(trial: Trial, *, day_turns_at_hour: int) -> date:
    return practice_day(trial.started_at, turns_at_hour=day_turns_at_hour)


def scenes_of(asked: Asked) -> tuple[Scene, ...]:
    """The pictures as they were shown, in their order; none where not all options were pictures.

    Drawn from the meanings that the record keeps. Raises: ValueError when one is no meaning.
    """
    rows = asked.options
    if not rows or any("meaning" not in row for row in rows):
        return ()
    return tuple(
        Scene(meaning=from_json(row["meaning"]), side=Side(row.get("side", Side.LEFT.value)))
        for row in rows
    )


def option_told(trial: Trial, option: int) -> str:
    """One option: its words, and whether it is right or what is wrong with it."""
    asked = trial.asked
    parts = [] if (words := asked.options[option].get("text")) is None else [str(words)]
    foil = asked.foil(option)
    parts.append("right" if foil is None else FOILS[foil].lower())
    return ", ".join(parts)


def chosen_told(trial: Trial, option: int) -> str:
    """When it was chosen; empty for never."""
    numbers = [number for number, each in enumerate(trial.attempts, 1) if each.choice == option]
    if not numbers:
        return ""
    names = {1: "first", 2: "second", 3: "third", 4: "fourth"}
    *before, last = [names.get(number, f"as number {number}") for number in numbers]
    return f"chosen {', '.join(before)} and {last}" if before else f"chosen {last}"


def attempt_lines(trial: Trial) -> tuple[str, ...]:
    """Every response in its order, and how it ended."""
    lines = [_attempt(number, each, trial) for number, each in enumerate(trial.attempts, 1)]
    if trial.skipped:
        lines.append("Then left out." if lines else "Left out without an answer.")
    elif not trial.ended:
        lines.append("Broken off.")
    return tuple(lines)


def _attempt(number: int, attempt: Attempt, trial: Trial) -> str:
    if attempt.score is not None:
        said = f"score {attempt.score}" if trial.counts else "not scored: pain or weakness"
    else:
        right = "right" if attempt.right else "wrong"
        said = right if attempt.choice is None else f"chose {attempt.choice + 1}, {right}"
    help_given = "no help" if attempt.cue_level == 0 else f"help {attempt.cue_level}"
    if attempt.cue_level and attempt.cue_level == trial.asked.top_level:
        help_given += f" ({HELP_SHOWN})"
    parts = [said, help_given]
    if attempt.latency_ms is not None:
        parts.append(f"{attempt.latency_ms / 1000:.1f} s")
    if attempt.replays:
        parts.append(f"heard again {attempt.replays} x")
    return f"{number}. {', '.join(parts)}"


def success_told(trial: Trial) -> str:
    """At which level of help it was right."""
    level = trial.level_at_success
    if not trial.attempts:
        return "No answer."
    if level is None:
        return "Never right before the answer was shown." if trial.ended else "Not right."
    return "Right with no help." if level == 0 else f"Right with help {level}."
