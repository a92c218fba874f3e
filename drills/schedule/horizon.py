"""How far back trials can still decide a due day: a start need not read years beyond that."""

from __future__ import annotations

from datetime import UTC, date, datetime

from drills.core.plans import SpacingPolicy, SpacingSettings


def days_that_decide(settings: SpacingSettings) -> int:
    """Days within which a target that is right each time has climbed from nothing to the top.

    At worst it is given once a visit, with a guess as likely as the plan allows, and each visit
    comes after the longest gap. So what lies further back changes no due day of such a target. One
    that was long left alone, or that goes up and down, may be placed lower than all its records
    would have it, and then comes sooner. Gaps fitted to the person rest on this time's answers.
    """
    longest_run = max(
        settings.run_two_options, settings.run_three_options, settings.run_four_options
    )
    longest_gap = max(settings.ladder_days)
    if settings.policy is SpacingPolicy.FITTED:
        longest_gap = round(longest_gap * settings.fitted_most_times)
    return len(settings.ladder_days) * longest_run * longest_gap


def history_begins(settings: SpacingSettings, today: date) -> datetime:
    """The beginning, UTC, of the year in which the oldest day that decides lies.

    It stays the same for a year, so that what was folded of the trials since can be gone on from.
    """
    oldest = today.toordinal() - days_that_decide(settings)
    year = (date.fromordinal(oldest) if oldest > 0 else date.min).year
    return datetime(max(year, 2), 1, 1, tzinfo=UTC)
