"""How much help a trial begins with, from the trials before it.

Least-to-most begins each trial with none. Most-to-least begins with all help, takes one step away
after successes and gives one back after failures (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from drills.core.kinds import CueKind, ItemSet, Kind, Target
from drills.core.plans import CueDirection, CueSettings, Plan
from drills.core.records import Trial
from drills.core.suggestions import CueAdvice
from drills.measures.accuracy import Share

if TYPE_CHECKING:
    from drills.core.items import Item

# Fewer first responses say little about a direction of help, and old ones say little of today.
FEWEST_TO_SUGGEST = 5
MOST_TO_SUGGEST = 20
# Of any name; with years of practice at hand the rest need not be gone through.
MOST_LOOKED_AT = 2000

HelpKey = tuple[Kind, str]
"""What a level of help belongs to: the name that is practised, whatever the verb group."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HelpLevel:
    """level: with which help the next trial begins; None before the first, when all is given.

    right_running, wrong_running: first responses in a row at this level.
    """

    level: int | None = None
    right_running: int = 0
    wrong_running: int = 0

    def after(self, trial: Trial, settings: CueSettings) -> HelpLevel:
        """The level after one more trial of the same name.

        A confirmed answer is a success here, since it is how help at the top is used up; it is
        still never counted as right. Right with more help than was given says nothing, nor do
        probes.
        """
        first = trial.first
        if first is None or not trial.counts or trial.asked.item_set is not ItemSet.TREATED:
            return self
        top = fullest_level(trial.asked.kind, trial.asked.top_level)
        level = top if self.level is None else min(self.level, top)
        if not first.right:
            wrong = self.wrong_running + 1
            if wrong < settings.rise_after:
                return replace(self, level=level, right_running=0, wrong_running=wrong)
            return HelpLevel(level=min(top, max(level, first.cue_level) + 1))
        if first.cue_level > level:
            return replace(self, level=level)
        right = self.right_running + 1
        if right < settings.drop_after:
            return HelpLevel(level=level, right_running=right)
        # An item may lack a level; the one that was really given counts.
        return HelpLevel(level=max(0, first.cue_level - 1))


def help_key(target: Target) -> HelpKey:
    return target.kind, target.name


def help_levels(trials: Iterable[Trial], settings: CueSettings) -> Mapping[HelpKey, HelpLevel]:
    """The level of help of every name that was practised, `trials` oldest first."""
    levels: dict[HelpKey, HelpLevel] = {}
    for trial in trials:
        key = help_key(trial.asked.target)
        levels[key] = levels.get(key, HelpLevel()).after(trial, settings)
    return levels


def fullest_level(kind: Kind, top_level: int) -> int:
    """The most help that a trial may begin with.

    The last step of a gesture is the helper's hand, which needs leave and is only asked for.
    """
    return max(0, top_level - 1) if kind is Kind.GESTURE else top_level


def fullest_help(item: Item) -> int:
    return fullest_level(item.kind, item.top_level)


def last_before_answer(item: Item) -> int:
    """The most help that does not show the answer, nor touch the patient."""
    levels = [cue.level for cue in item.cues if cue.kind not in (CueKind.ANSWER, CueKind.HAND)]
    return max(levels, default=0)


def suggested_direction(trials: Iterable[Trial], settings: CueSettings) -> CueDirection | None:
    """What the share right alone of the newest speaks for; None for too few without help.

    trials: oldest first.   Only a suggestion to the therapist: the plan alone decides.
    """
    share = newest_alone(trials)
    if share.of < FEWEST_TO_SUGGEST:
        return None
    enough = 100 * share.right >= settings.suggest_percent * share.of
    return CueDirection.LEAST_TO_MOST if enough else CueDirection.MOST_TO_LEAST


def newest_alone(trials: Iterable[Trial]) -> Share:
    """How many of the newest first responses without help were right; trials oldest first."""
    alone = [
        trial
        for trial in trials
        if trial.counts and trial.first is not None and trial.first.cue_level == 0
    ]
    newest = alone[-MOST_TO_SUGGEST:]
    return Share(right=sum(trial.unaided_right for trial in newest), of=len(newest))


def other_directions(
    plan: Plan, targets: Sequence[Sequence[Target]], history: Sequence[Trial]
) -> Mapping[int, CueDirection]:
    """What is suggested where the plan has it otherwise, by the number of the block from 1."""
    return {each.block: each.direction for each in advice_on_directions(plan, targets, history)}


def advice_on_directions(
    plan: Plan, targets: Sequence[Sequence[Target]], history: Sequence[Trial]
) -> tuple[CueAdvice, ...]:
    """Where the newest answers speak for another direction than the plan's.

    targets: of each block.   history: of practice, oldest first.
    """
    found = []
    newest = history[-MOST_LOOKED_AT:]
    for number, (block, own) in enumerate(zip(plan.blocks, targets, strict=True), 1):
        trials = [trial for trial in newest if trial.asked.target in own]
        suggested = suggested_direction(trials, plan.cues)
        if suggested is not None and suggested is not block.cues:
            share = newest_alone(trials)
            found.append(
                CueAdvice(block=number, direction=suggested, right=share.right, of=share.of)
            )
    return tuple(found)
