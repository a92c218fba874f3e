"""When the digest raises a flag: thresholds of the plan's section [flags]."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagSettings:
    """Percents are of 100. All are common practice, no source, but for kappa's band.

    quiet_percent: of weeks without any trouble, those that chance may flag, all tests that go by
    chance together; each of them and each name in it gets its share of it. 0 for no such test.
    fewest_compared: trials on each side of a comparison, or of a name held against guessing.
    least_points: of a hundred, that a difference must have beside not being luck.
    drop_weeks: before the range, that are the level of before.
    times_slower: the median wait of the last third against the first.
    old_act_percent: of gestures not right, those with an earlier act, from which chance is asked.
    cue_weeks, cue_help, cue_fall: so many weeks, each with a mean help above that, and the last
    less than cue_fall below the first.   fewest_flat_sessions, flat_points: from the first half of
    so many sessions to the last half a rise of so many points is ruled out.
    adherence_percent: of the sessions asked for, in each of adherence_weeks weeks.
    double_score_one_in: one try of a gesture in so many is picked to be scored twice.
    double_scores, kappa, exact_percent: before the caregiver's scores of gestures are trusted;
    weighted kappa from .61 on is called substantial (Landis and Koch 1977).
    """

    quiet_percent: float = 5.0
    fewest_compared: int = 10
    least_points: int = 10
    drop_weeks: int = 2
    times_slower: float = 1.5
    old_act_percent: int = 20
    cue_weeks: int = 3
    cue_help: float = 1.0
    cue_fall: float = 0.4
    fewest_flat_sessions: int = 22
    flat_points: int = 8
    days_without_practice: int = 5
    adherence_percent: int = 50
    adherence_weeks: int = 2
    double_scores: int = 20
    double_score_one_in: int = 5
    kappa: float = 0.6
    exact_percent: int = 80
