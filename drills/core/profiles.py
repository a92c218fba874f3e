"""What is known of a simulated patient; the truth that a rehearsal's records come from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """A simulated patient. Every share is 0 to 1.

    knows: construction, cloze level or "gesture" -> share of trials understood at the start.
    words: share of trials in which the content words are known.
    first_noun: of the trials not understood, the share in which the first noun is taken as doer.
    learning: how much of the gap closes with each trial of the same name.
    cue_help: how much of the gap each cue level closes, within a trial.
    missed: share of practice days without practice.   tiring: rise of tiredness with each block.
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
