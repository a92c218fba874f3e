"""What is known of a simulated patient; the truth that a rehearsal's records come from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from drills.core.kinds import Side


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """A simulated patient. Every share is 0 to 1.

    knows: construction, cloze level or "gesture" -> share of trials understood at the start.
    words: share of trials in which the content words are known.
    first_noun: of the trials not understood, the share in which the first noun is taken as doer.
    learning: how much of the gap closes with each trial of the same name.
    cue_help: how much of the gap each cue level closes, within a trial.
    missed: share of practice days without practice.   tiring: rise of tiredness with each block.

    The rest keeps its default where there is no such trouble.
    forgetting: power of the days since a trial with which its effect fades; 0 keeps all.
    fading: of what was understood, the share lost with each point of tiredness above 1.
    guessing: share of trials answered blindly, whatever is understood.
    yes_bias: of yes-or-no trials not understood, the share answered yes; the rest are guessed.
    neglected, neglect: a side, and the share of trials in which options on it go unseen.
    rare_words: of what is understood in everyday words, the share understood in rare ones.
    place, place_liking: a place among the options, from 1, and the share of trials in which it is
    taken, whatever is understood.
    perseveration: of trials in which a response of the last three is on offer, the share in which
    one of them comes again; of gestures, the share in which an earlier act does.
    drop, drop_after_days: of what was understood, the share lost from that day on, 0 the first.
    wearing: of what is understood after a rest, the share lost with each trial since.
    pain, new_signs: share of sessions that begin with the word of it.
    lenience: of gestures not scored highest, the share in which the caregiver scores one more.
    clock_back: share of sessions in which the computer's clock is set back by an hour.
    """

    name: str
    label: str
    knows: Mapping[str, float]
    words: float
    first_noun: float
    learning: float
    cue_help: float
    missed: float
    tiring: float
    latency_ms: int
    forgetting: float = 0.0
    fading: float = 0.0
    guessing: float = 0.0
    yes_bias: float = 0.0
    neglected: Side | None = None
    neglect: float = 0.0
    rare_words: float = 1.0
    place: int | None = None
    place_liking: float = 0.0
    perseveration: float = 0.0
    drop: float = 0.0
    drop_after_days: int = 0
    wearing: float = 0.0
    pain: float = 0.0
    new_signs: float = 0.0
    lenience: float = 0.0
    clock_back: float = 0.0
