"""What is still to be given in a sitting, and what the trials so far have changed about it."""

from __future__ import annotations

from collections.abc import Sequence

from drills.core.items import Item, ItemSet, Kind, Target
from drills.core.plans import CueDirection, Plan, ShowText
from drills.core.records import Trial
from drills.practice.asking import Asking
from drills.practice.cueing import HelpLevel, fullest_help, help_key
from drills.practice.dealing import Block
from drills.practice.easier import EasierItems
from drills.practice.order import Dealt, places
from drills.practice.past import Past
from drills.practice.rules import Decision, Rule, decide
from drills.practice.steps import Ask, Rest


class Course:
    """The places of a sitting, in order, and with how much help each begins.

    done: ordinals that were given before.   past: practice before this sitting, if any.
    easier: makes easier items; None where there are none to be had.
    """

    def __init__(
        self,
        blocks: Sequence[Block],
        plan: Plan,
        *,
        done: frozenset[int],
        past: Past | None,
        easier: EasierItems | None,
    ) -> None:
        self._blocks = tuple(blocks)
        self._items = [list(block.items) for block in blocks]
        self._plan = plan
        self._easier = easier
        self._queue = [dealt for dealt in places(blocks) if dealt.ordinal not in done]
        self._trials: list[Trial] = []
        self._levels = {} if past is None else dict(past.levels)
        self._alone = {} if past is None else dict(past.alone)
        self._full_help, self._full_help_block = 0, 0
        self._rested_after: int | None = None
        self.gap_seconds = plan.sitting.response_gap_seconds
        self.is_ending = False

    @property
    def next(self) -> Dealt | None:
        return self._queue[0] if self._queue else None

    def take(self) -> Dealt:
        """The next place, which is then given."""
        dealt = self._queue.pop(0)
        self._full_help = max(0, self._full_help - 1)
        return dealt

    def item(self, dealt: Dealt) -> Item:
        return self._items[dealt.block][dealt.number - 1]

    def ask(self, dealt: Dealt, asking: Asking) -> Ask:
        """What is asked at a place, as the trial there stands."""
        block = self._plan.blocks[dealt.block]
        return Ask(
            item=asking.item,
            block=dealt.block,
            blocks=len(self._blocks),
            number=dealt.number,
            total=dealt.total,
            cue=asking.cue,
            removed=asking.removed,
            direction=block.cues,
            hides_text=block.text is ShowText.AFTER_CUE,
        )

    def rest_before(self, dealt: Dealt, *, within: bool) -> Rest:
        """A rest before a place.   within: the block that was being given goes on there."""
        return Rest(
            done_blocks=dealt.block,
            blocks=len(self._blocks),
            next_kind=dealt.kind,
            seconds=self._plan.sitting.rest_seconds,
            within=within,
        )

    def help_at_start(self, dealt: Dealt) -> int:
        """The level of help that the item of the next place begins with, 0 for none."""
        item = self.item(dealt)
        if item.is_probe:
            return 0
        if self._full_help and dealt.block == self._full_help_block:
            return fullest_help(item)
        if self._plan.blocks[dealt.block].cues is CueDirection.LEAST_TO_MOST:
            return 0
        level = self._levels.get(help_key(item.target), HelpLevel()).level
        return fullest_help(item) if level is None else level

    def leave_gestures_out(self) -> None:
        self._queue = [dealt for dealt in self._queue if dealt.kind is not Kind.GESTURE]

    def clear(self) -> None:
        self._queue = []

    def took(self, trial: Trial) -> Decision | None:
        """Count a trial that is over; what it changes, None for nothing. Probes change nothing."""
        if trial.asked.item_set is not ItemSet.TREATED:
            return None
        key = help_key(trial.asked.target)
        self._levels[key] = self._levels.get(key, HelpLevel()).after(trial, self._plan.cues)
        if trial.counts:
            self._alone[trial.asked.target] = trial.unaided_right
        self._trials.append(trial)
        if self.is_ending or not self._queue:
            return None
        goes_on = self._queue[0].block == trial.block
        decision = decide(
            self._trials,
            self._plan.session_rules,
            block_goes_on=goes_on,
            has_easier=lambda: (
                self._easier is not None and self._easier.has_any(trial.asked.target)
            ),
            rested_after=self._rested_after,
        )
        if decision is not None:
            self._change(decision, trial)
        return decision

    def _change(self, decision: Decision, trial: Trial) -> None:
        match decision.rule:
            case Rule.FULL_HELP:
                self._full_help = self._plan.session_rules.full_help_trials
                self._full_help_block = trial.block
            case Rule.EASIER:
                self._make_easier(trial)
            case Rule.CHANGE_TASK:
                self.gap_seconds = max(
                    self.gap_seconds, self._plan.session_rules.perseveration_gap_seconds
                )
                others = [dealt for dealt in self._queue if dealt.block != trial.block]
                if others:
                    self._queue = others
                    self._full_help = 0
                else:
                    self._end_on_a_sure_one()
            case Rule.REST:
                self._rested_after = len(self._trials)
            case Rule.END:
                self._end_on_a_sure_one()

    def _make_easier(self, trial: Trial) -> None:
        rest = [dealt for dealt in self._queue if dealt.block == trial.block]
        if self._easier is None or not rest:
            return
        items = self._easier.instead_of(
            [self.item(dealt) for dealt in rest],
            failed=trial.asked.target,
            options=self._plan.blocks[trial.block].options,
        )
        for dealt, item in zip(rest, items, strict=True):
            self._items[dealt.block][dealt.number - 1] = item

    def _end_on_a_sure_one(self) -> None:
        """Leave one more trial, of what was right alone when last asked; none where there is none.

        One of the same kind is preferred, and no gesture is asked for in place of words.
        """
        kind = self._trials[-1].asked.kind
        sure = [dealt for dealt in self._queue if self._is_sure(self.item(dealt).target)]
        sure.sort(key=lambda dealt: dealt.kind is not kind)
        self._queue = [
            dealt for dealt in sure if dealt.kind is kind or dealt.kind is not Kind.GESTURE
        ][:1]
        self._full_help = 0
        self.is_ending = True

    def _is_sure(self, target: Target) -> bool:
        return self._alone.get(target, False)
