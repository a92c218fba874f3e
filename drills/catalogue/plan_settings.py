"""Every setting of a plan that has a range: its table, its words, its limits.

The reader and the writer of plans both go by this list, so they cannot disagree.
"""

from __future__ import annotations

from drills.core.flag_settings import FlagSettings
from drills.core.plans import (
    CueSettings,
    Dose,
    ProbeSettings,
    ProgressionSettings,
    SafetySettings,
    SealingSettings,
    SessionRules,
    SittingSettings,
    SpacingSettings,
    SpeechSettings,
)
from drills.core.settings import Section, Setting

EMERGENCY_NUMBERS = {"en-US": "911", "en-GB": "999"}


def _setting(key: str, low: float, high: float, says: str) -> Setting:
    return Setting(key=key, low=low, high=high, says=says)


def _switch(key: str, says: str) -> Setting:
    return Setting(key=key, says=says)


SECTIONS = (
    Section(
        name="dose",
        made=Dose,
        says="How much practice.",
        settings=(
            _setting("minutes_per_session", 5, 90, "length of one session"),
            _setting("sessions_per_week", 1, 21, "sessions in a week"),
        ),
    ),
    Section(
        name="sitting",
        made=SittingSettings,
        says="How one session runs.",
        settings=(
            _setting("rest_seconds", 0, 900, "rest between blocks, seconds"),
            _setting("response_gap_seconds", 0, 20, "from an answer to the next trial, seconds"),
            _setting("second_press_ms", 0, 2000, "a press this soon is no answer, ms"),
            _setting("day_turns_at_hour", 0, 12, "local hour at which a new day begins"),
            _setting("tired_rise", 1, 4, "rise in tiredness (1 to 5) that ends the session"),
            _switch("large_letters", "larger letters"),
            _switch("animation", "moving pictures"),
            _switch("colour", "pictures in colour"),
            _switch("layout", "side-by-side, stacked, or left (right side not seen)"),
        ),
    ),
    Section(
        name="cues",
        made=CueSettings,
        says="How help comes and goes. Its direction is set in each block.",
        settings=(
            _setting("drop_after", 1, 10, "right in a row, then one step less (most-to-least)"),
            _setting("rise_after", 1, 10, "wrong in a row, then one step more (most-to-least)"),
            _setting("wait_seconds", 0, 120, "no answer for so long: help is offered; 0 never"),
            _switch("wait_gives_help", "true: after that wait one step of help comes by itself"),
            _setting("suggest_percent", 0, 100, "right alone: least-to-most is suggested"),
        ),
    ),
    Section(
        name="session_rules",
        made=SessionRules,
        says="What changes a session while it runs. 0 switches a rule off.",
        settings=(
            _setting("errors_to_full_help", 0, 20, "unaided errors in a row, then full help"),
            _setting("full_help_trials", 1, 10, "for so many trials"),
            _setting("errors_to_easier", 0, 20, "unaided errors in a row, then an easier name"),
            _setting("perseverations_to_change", 0, 10, "old answers again, then another task"),
            _setting("perseveration_look_back", 1, 10, "answers back that count as old"),
            _setting("perseveration_gap_seconds", 0, 20, "gap after each answer from then on"),
            _setting("fall_points", 0, 100, "fewer right, of 100, in the last third: rest, end"),
            _setting("slower_times", 0, 10, "times slower in the last third: rest, then end"),
            _setting("fewest_trials", 6, 60, "trials of one kind before thirds are compared"),
        ),
    ),
    Section(
        name="speech",
        made=SpeechSettings,
        says="How sentences are read aloud.",
        settings=(
            _switch("read_aloud", "read aloud"),
            _setting("words_per_minute", 90, 160, "speed"),
            _setting("slow_words_per_minute", 90, 160, "speed of the slow replay"),
            _setting("pause_ms", 0, 1500, "pause between phrases, ms"),
            _setting("slow_pause_ms", 0, 1500, "the same in the slow replay, ms"),
        ),
    ),
    Section(
        name="spacing",
        made=SpacingSettings,
        says="When a target comes back.",
        settings=(
            _setting("ladder_days", 1, 365, "days to wait after each success in a row"),
            _setting("steps_back", 1, 10, "steps back after a failure"),
            _setting("run_two_options", 1, 20, "right answers in a row to move up, two options"),
            _setting("run_three_options", 1, 20, "the same, three options"),
            _setting("run_four_options", 1, 20, "the same, four options"),
            _switch("policy", "ladder, or fitted: gaps from this person's own forgetting"),
            _setting("retention", 0.6, 0.95, "share still known when it comes back (fitted)"),
            _setting("fitted_least_recalls", 20, 1000, "answers before gaps are fitted"),
            _setting("fitted_most_times", 1, 10, "most that a fitted gap differs from the ladder"),
            _setting("most_givings", 1, 20, "of one due target before the others in a session"),
        ),
    ),
    Section(
        name="progression",
        made=ProgressionSettings,
        says="What the digest suggests on each name. Nothing changes by itself.",
        settings=(
            _setting("right_percent", 50, 100, "right alone before moving on, of 100"),
            _setting("sure_percent", 0, 99, "how sure that it is so by now, of 100"),
            _setting("least_sessions", 1, 20, "in so many of the newest sessions at the least"),
            _setting("least_trials", 5, 200, "and so many trials"),
            _setting("guess_percent", 1, 20, "guessing would do it in fewer than this, of 100"),
            _setting("most_help", 0, 7, "mean level of help at the most"),
            _setting("below_sessions", 2, 20, "below guessing so often running: hand back"),
            _setting("flat_sessions", 4, 40, "no rise in so many sessions: hand back"),
            _setting("ceiling_probes", 1, 10, "so many checks running at the ceiling: hand back"),
            _setting("ceiling_percent", 50, 100, "the ceiling, right of 100"),
            _setting("fewest_in_a_check", 5, 40, "answers that a check must hold for that"),
        ),
    ),
    Section(
        name="flags",
        made=FlagSettings,
        says="What the digest calls the therapist's attention to.",
        settings=(
            _setting("quiet_percent", 0, 50, "weeks flagged by mere chance, of 100; 0: no tests"),
            _setting("fewest_compared", 5, 100, "trials on each side of a comparison"),
            _setting("least_points", 0, 50, "points of 100 that a difference must have"),
            _setting("drop_weeks", 1, 12, "weeks before that a sudden drop is held against"),
            _setting("times_slower", 1, 10, "times slower in the last third of a session"),
            _setting("old_act_percent", 5, 90, "an old act again, of 100 gestures not right"),
            _setting("cue_weeks", 2, 12, "weeks in which help does not fade"),
            _setting("cue_help", 0, 7, "mean level of help in each of them, above this"),
            _setting("cue_fall", 0, 7, "and a fall of the mean that would be fading"),
            _setting("fewest_flat_sessions", 8, 60, "sessions without a rise"),
            _setting("flat_points", 1, 50, "a rise of so many points of 100 is ruled out"),
            _setting("days_without_practice", 1, 60, "days running without practice"),
            _setting("adherence_percent", 0, 100, "of the sessions asked for, fewer than this"),
            _setting("adherence_weeks", 1, 8, "in each of so many weeks running"),
            _setting("double_scores", 5, 100, "gestures scored twice before scores are trusted"),
            _setting("double_score_one_in", 1, 20, "one gesture in so many is to be scored twice"),
            _setting("kappa", 0, 1, "weighted kappa that trusts the scores"),
            _setting("exact_percent", 0, 100, "or the same score, of 100"),
        ),
    ),
    Section(
        name="probes",
        made=ProbeSettings,
        says="Checks without help or feedback, on sentences that are never practised.",
        settings=(
            _switch("on", "true: the first screen says when a check is due"),
            _switch("treated", "practised constructions; none: all of this plan's"),
            _switch("finished", "once practised, no longer; their checks go on"),
            _switch("related", 'related, not practised, as ["object-cleft"]'),
            _switch("control", 'unrelated, not practised, as ["locative"]'),
            _setting("items", 20, 40, "sentences of each, even; half in a weekly check"),
            _setting("baseline", 0, 10, "whole checks before practice begins"),
            _setting("weekly_days", 0, 60, "days from check to check; 0: none"),
            _setting("maintenance_weeks", 1, 104, "whole checks, weeks after the last practice"),
            _setting("seed", 1, 99_999, "never change it once checks have begun"),
        ),
    ),
    Section(
        name="safety",
        made=SafetySettings,
        says="Shown on the card for new stroke signs.",
        settings=(
            _setting("emergency_number", 1, 20, "local emergency number"),
            _setting("therapist_contact", 0, 120, "how to reach the therapist"),
        ),
    ),
    Section(
        name="sealing",
        made=SealingSettings,
        says="For a digest that only the therapist can open: `drills plan key` makes the key.",
        settings=(_setting("recipient", 0, 100, "the therapist's public key, age1..."),),
    ),
)
