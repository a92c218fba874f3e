"""What a session asks of whoever sits before it: the screen, or a simulated patient."""

from __future__ import annotations

from dataclasses import dataclass

from drills.core.items import Cue, Item, Kind
from drills.core.plans import CueDirection
from drills.core.records import CloseReason
from drills.core.utterances import Utterance


@dataclass(frozen=True, slots=True, kw_only=True)
class CheckIn:
    """Glasses, hearing aid, water, toilet, pain, tiredness. Answer: `Session.check_in`."""

    minutes: int
    resumed: bool
    is_check: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """Ask `item`. Answer: `choose`, `score`, `skip`; help: `help`, `heard_again`.

    block, blocks, number, total: where we are, 0-based block, 1-based number in the block.
    removed: options that a cue took away.   cue: the help that is showing, None at level 0.
    direction: of help in this block.   hides_text: it is heard only, until a cue shows it.
    """

    item: Item
    block: int
    blocks: int
    number: int
    total: int
    cue: Cue | None = None
    removed: frozenset[int] = frozenset()
    direction: CueDirection = CueDirection.LEAST_TO_MOST
    hides_text: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Rest:
    """A rest between blocks, or where one is due. Answer: `Session.rested`.

    within: the block goes on after it.
    """

    done_blocks: int
    blocks: int
    next_kind: Kind
    seconds: int
    within: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Finish:
    """The end. done, right_alone, right_helped: trials of this sitting that count.

    is_check: it asked to find out, so nothing is said of right and wrong.
    by_rule: a rule of the plan ended it, and nobody said to be tired.
    """

    reason: CloseReason
    done: int
    right_alone: int
    right_helped: int
    by_rule: bool = False
    is_check: bool = False


Step = CheckIn | Ask | Rest | Finish


@dataclass(frozen=True, slots=True, kw_only=True)
class Feedback:
    """What is shown after a response, once it is on disk.

    text: plain words.   spoken: said with it.   right: None after a gesture score.
    over: the trial has ended; `Session.advance` gives the next step. When not over, the same
    item goes on with the next cue: `Session.step` already shows it.
    """

    right: bool | None
    text: str
    spoken: Utterance | None
    over: bool
    answer: int | None = None
