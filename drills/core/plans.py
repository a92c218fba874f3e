"""What the therapist prescribes. Every number here is a setting; the defaults are the brief's."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from drills.core.flag_settings import FlagSettings
from drills.core.kinds import ItemSet, Kind
from drills.core.probe_sets import ProbeSet, SetExemplar

PLAN_FORMAT = 1
LOCALES = ("en-US", "en-GB")

PERSON_CODE = re.compile(r"[A-Za-z0-9._-]{1,20}", re.ASCII)
"""Without blanks, so that a name is not written by habit."""


class CueDirection(StrEnum):
    """Where help begins: with none and one step up a failure, or with all and down again."""

    LEAST_TO_MOST = "least-to-most"
    MOST_TO_LEAST = "most-to-least"


class ShowText(StrEnum):
    """Whether the sentence is read as well as heard."""

    SHOWN = "shown"
    AFTER_CUE = "hidden until a cue"


class Layout(StrEnum):
    """Where options stand; left keeps them in the left two thirds of the screen."""

    SIDE_BY_SIDE = "side-by-side"
    STACKED = "stacked"
    LEFT = "left"


class Order(StrEnum):
    """Whether a block gives all its names at once, or opens one after the other is mastered."""

    TOGETHER = "together"
    SIMPLE_FIRST = "simple-to-complex"
    COMPLEX_FIRST = "complex-to-simple"


@dataclass(frozen=True, slots=True, kw_only=True)
class BlockPlan:
    """One block of a session.

    names: constructions (match, act-out, question), levels (cloze) or gesture keys (gesture).
    groups: verb groups or word contrasts; empty means all.
    options: 2 to 4 things to choose from; of act-out, figures to build an event with.
    """

    kind: Kind
    names: tuple[str, ...]
    trials: int
    options: int = 2
    groups: tuple[str, ...] = ()
    cues: CueDirection = CueDirection.LEAST_TO_MOST
    text: ShowText = ShowText.SHOWN
    order: Order = Order.TOGETHER


@dataclass(frozen=True, slots=True, kw_only=True)
class Dose:
    minutes_per_session: int = 25
    sessions_per_week: int = 5


@dataclass(frozen=True, slots=True, kw_only=True)
class SittingSettings:
    """How one session runs.

    response_gap_seconds: rest between an answer and the next trial.
    second_press_ms: a press within this time of the last is no answer.
    day_turns_at_hour: local hour at which a practice day begins.
    tired_rise: a rise of self-rated tiredness (1 to 5) that ends the session kindly.
    """

    rest_seconds: int = 120
    response_gap_seconds: float = 4.0
    second_press_ms: int = 400
    day_turns_at_hour: int = 4
    tired_rise: int = 2
    large_letters: bool = False
    animation: bool = True
    colour: bool = True
    layout: Layout = Layout.SIDE_BY_SIDE


@dataclass(frozen=True, slots=True, kw_only=True)
class CueSettings:
    """drop_after: successes in a row at a level before the help falls by one (most-to-least).

    rise_after: failures in a row before it rises by one.
    wait_seconds: without an answer, before help is offered (least-to-most); 0 is never.
    wait_gives_help: the help comes by itself then, one step, up to the last before the answer.
    suggest_percent: share right alone from which least-to-most is suggested.
    """

    drop_after: int = 2
    rise_after: int = 1
    wait_seconds: float = 10.0
    wait_gives_help: bool = False
    suggest_percent: int = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class SessionRules:
    """What changes a session while it runs; 0 switches a rule off.

    errors_to_full_help: unaided errors in a row, then full_help_trials trials begin with all help.
    errors_to_easier: unaided errors in a row, then an easier name for the rest of the block.
    perseverations_to_change: errors that repeat one of the last perseveration_look_back responses;
    then the block is left, and perseveration_gap_seconds lie between an answer and the next trial.
    fall_points: of a hundred, from the first to the last third of the trials of one kind.
    slower_times: the median wait of the last third against the first.
    fewest_trials: of one kind before thirds are compared.
    All but fewest_trials: common practice, no source.
    """

    errors_to_full_help: int = 3
    full_help_trials: int = 2
    errors_to_easier: int = 5
    perseverations_to_change: int = 2
    perseveration_look_back: int = 3
    perseveration_gap_seconds: float = 10.0
    fall_points: int = 20
    slower_times: float = 1.5
    fewest_trials: int = 18


@dataclass(frozen=True, slots=True, kw_only=True)
class SpeechSettings:
    """words_per_minute: 90 to 160.   pause_ms: at phrase boundaries, 0 to 1500."""

    read_aloud: bool = True
    words_per_minute: int = 120
    slow_words_per_minute: int = 95
    pause_ms: int = 400
    slow_pause_ms: int = 700


class SpacingPolicy(StrEnum):
    """LADDER: the gaps of the plan.   FITTED: gaps fitted to this person's own forgetting."""

    LADDER = "ladder"
    FITTED = "fitted"


@dataclass(frozen=True, slots=True, kw_only=True)
class SpacingSettings:
    """ladder_days: days to the next practice after each success in a row.

    retention: the share that should still be known when a target comes back, fitted gaps only.
    fitted_least_recalls: answers after a pause below which fitted gaps are the ladder's.
    fitted_most_times: a fitted gap is at most so many times longer or shorter than the ladder's.
    most_givings: of one due target in a session before the others have had a turn.

    steps_back: after a failure.   run_two_options, run_three_options, run_four_options: unaided
    successes in a row that beat guessing (5/5 with two options p = .031, 3/3 with four p = .016).
    """

    ladder_days: tuple[int, ...] = (1, 2, 4, 7, 14, 28, 56)
    steps_back: int = 2
    run_two_options: int = 5
    run_three_options: int = 3
    run_four_options: int = 3
    policy: SpacingPolicy = SpacingPolicy.LADDER
    retention: float = 0.85
    fitted_least_recalls: int = 60
    fitted_most_times: float = 3.0
    most_givings: int = 2


@dataclass(frozen=True, slots=True, kw_only=True)
class ProgressionSettings:
    """When to suggest moving on from a name, and when to hand it back. Percents are of 100.

    Moving on asks of the newest sessions, least_sessions and least_trials of them at the least:
    at least sure_percent sure that right_percent are right alone by now; guessing would do
    it in fewer than guess_percent of 100; mean help of most_help at the most.
    Handing back: below guessing in below_sessions running; no rise in flat_sessions;
    ceiling_percent right in ceiling_probes checks running, of fewest_in_a_check each.
    All but sure_percent: common practice, no source.
    """

    right_percent: int = 80
    sure_percent: int = 65
    least_sessions: int = 3
    least_trials: int = 20
    guess_percent: int = 5
    most_help: float = 1.0
    below_sessions: int = 3
    flat_sessions: int = 8
    ceiling_probes: int = 2
    ceiling_percent: int = 90
    fewest_in_a_check: int = 10


PROBED = (
    *("active", "subject-cleft", "full-passive", "object-cleft"),
    *("subject-relative", "object-relative-right", "object-relative-centre"),
    *("subject-question-which", "object-question-which"),
    "locative",
)
"""Constructions that can be probed: both of a pair are named, so a new pair is a new sentence."""

PROBE_ROLES = ("treated", "finished", "related", "control")


@dataclass(frozen=True, slots=True, kw_only=True)
class Probed:
    """A construction to be probed, and what it stands for.   exemplars: none are the seed's."""

    construction: str
    item_set: ItemSet
    exemplars: tuple[SetExemplar, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class ProbeSettings:
    """Checks without help, on exemplars that are never practised.

    on: whether checks fall due; without it they can still be given.
    treated: constructions of match that are practised; none, and none finished, means all of the
    plan's that can be probed.   finished: practised in an earlier version, and still checked.
    related, control: constructions that are not practised.
    items: exemplars of each, an even number; half of them in a weekly check.
    baseline: whole checks before practice begins.
    weekly_days: from one check to the next while there is practice; 0 for none.
    maintenance_weeks: whole checks so many weeks after the last practice.
    seed: fixes the orders, and without sets which exemplars; another seed makes other checks.
    sets: one of each construction asked, `items` exemplars long; or none.
    """

    on: bool = False
    treated: tuple[str, ...] = ()
    finished: tuple[str, ...] = ()
    related: tuple[str, ...] = ()
    control: tuple[str, ...] = ()
    items: int = 20
    baseline: int = 3
    weekly_days: int = 7
    maintenance_weeks: tuple[int, ...] = (1, 4, 12)
    seed: int = 1
    sets: tuple[ProbeSet, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SafetySettings:
    emergency_number: str = "911"
    therapist_contact: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SealingSettings:
    """recipient: the therapist's public key, to which a digest can be sealed; empty for none."""

    recipient: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A plan in force or to be checked.

    code: of the person, never the name; tells one digest from another's.
    version: counts up; every trial keeps the version it was made under.
    without_kin: words for relatives that are never said ("father"), and nobody meant who may be
    called so.
    """

    name: str
    version: int
    locale: str
    blocks: tuple[BlockPlan, ...]
    written_on: date | None = None
    code: str = ""
    therapist: str = ""
    note: str = ""
    without_kin: tuple[str, ...] = ()
    dose: Dose = field(default_factory=Dose)
    sitting: SittingSettings = field(default_factory=SittingSettings)
    cues: CueSettings = field(default_factory=CueSettings)
    session_rules: SessionRules = field(default_factory=SessionRules)
    speech: SpeechSettings = field(default_factory=SpeechSettings)
    spacing: SpacingSettings = field(default_factory=SpacingSettings)
    progression: ProgressionSettings = field(default_factory=ProgressionSettings)
    flags: FlagSettings = field(default_factory=FlagSettings)
    probes: ProbeSettings = field(default_factory=ProbeSettings)
    safety: SafetySettings = field(default_factory=SafetySettings)
    sealing: SealingSettings = field(default_factory=SealingSettings)
    plan_format: int = PLAN_FORMAT
