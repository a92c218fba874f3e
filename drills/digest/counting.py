"""From trials to the digest's lines."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from drills.core.items import Foil, ItemSet, Kind
from drills.core.plans import Plan
from drills.core.records import Trial
from drills.digest.values import (
    FEWEST_FOR_PERCENT,
    Change,
    ErrorLine,
    Example,
    Line,
)
from drills.measures import accuracy, chance, cues, detection, errors, latency
from drills.measures.intervals import newcombe_difference, wilson

EXAMPLES = 2

Key = tuple[ItemSet, Kind, str]


def lines_of(
    trials: Sequence[Trial], earlier: Sequence[Trial], plan: Plan, labels: Mapping[str, str]
) -> tuple[Line, ...]:
    """One line per set, task and name that was tried, in the order of the plan.

    A gesture that was only hindered has a line too: it says so, and nothing else.
    """
    now, before = _by_key(trials), _by_key(earlier)
    planned = [(block.kind, name) for block in plan.blocks for name in block.names]
    place = {key: number for number, key in enumerate(planned)}
    sets = list(ItemSet)

    def order(key: Key) -> tuple[bool, int, int, str, str]:
        item_set, kind, name = key
        where = place.get((kind, name), len(place))
        return kind is Kind.GESTURE, sets.index(item_set), where, kind.value, name

    return tuple(
        _line(key, now[key], before.get(key, []), labels) for key in sorted(now, key=order)
    )


def errors_of(trials: Sequence[Trial], labels: Mapping[str, str]) -> tuple[ErrorLine, ...]:
    """Kinds of wrong first response, the most frequent first."""
    counts = errors.by_foil(trials)
    kinds = sorted((foil for foil in Foil if counts[foil]), key=lambda foil: -counts[foil])
    return tuple(
        ErrorLine(foil=foil, count=counts[foil], examples=_examples(trials, foil, labels))
        for foil in kinds
    )


def _by_key(trials: Sequence[Trial]) -> dict[Key, list[Trial]]:
    found: dict[Key, list[Trial]] = {}
    for trial in trials:
        if trial.attempts:
            key = (trial.asked.item_set, trial.asked.kind, trial.asked.target.name)
            found.setdefault(key, []).append(trial)
    return found


def _line(
    key: Key, trials: Sequence[Trial], earlier: Sequence[Trial], labels: Mapping[str, str]
) -> Line:
    item_set, kind, name = key
    counted = accuracy.count(trials)
    judged = [trial for trial in trials if trial.counts]
    guessed = kind is not Kind.GESTURE and bool(judged)
    alone = [trial for trial in judged if trial.could_be_alone] if guessed else []
    chances = [1 / max(1, trial.asked.effective_k) for trial in alone]
    return Line(
        kind=kind,
        name=name,
        label=labels.get(name, name),
        item_set=item_set,
        unaided=counted.unaided,
        interval=wilson(counted.unaided.right, counted.unaided.of),
        aided=counted.aided,
        effective_k=min(trial.asked.effective_k for trial in judged) if guessed else None,
        chance=sum(chances) / len(chances) if chances else None,
        verdict=chance.verdict(counted.unaided.right, chances),
        cues=cues.summarise(trials),
        latency=latency.summarise(trials),
        errors=errors.by_foil(trials),
        change=_change(counted.unaided, accuracy.count(earlier).unaided),
        gesture=errors.gesture_scores(trials) if kind is Kind.GESTURE else None,
        detection=detection.count(trials),
    )


def _change(now: accuracy.Share, earlier: accuracy.Share) -> Change | None:
    if not earlier.of:
        return None
    if min(now.of, earlier.of) < FEWEST_FOR_PERCENT:
        return Change(earlier=earlier, points=None, interval=None)
    return Change(
        earlier=earlier,
        points=now.right / now.of - earlier.right / earlier.of,
        interval=newcombe_difference(now.right, now.of, earlier.right, earlier.of),
    )


def _examples(
    trials: Sequence[Trial], foil: Foil, labels: Mapping[str, str]
) -> tuple[Example, ...]:
    """The newest, each sentence once."""
    found: dict[str, Example] = {}
    for trial in reversed(trials):
        first = trial.first
        if errors.foil_of(trial) is not foil or first is None or first.choice is None:
            continue
        found.setdefault(
            trial.asked.sentence,
            Example(
                trial=trial.trial,
                item=trial.asked.item_id,
                label=labels.get(trial.asked.target.name, trial.asked.target.name),
                sentence=trial.asked.sentence,
                context=trial.asked.context,
                why=str(trial.asked.options[first.choice].get("why_wrong") or ""),
            ),
        )
        if len(found) == EXAMPLES:
            break
    return tuple(found.values())
