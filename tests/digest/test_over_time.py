"""Patterns, weeks, retention, agreement of raters and the course, and the same in every form."""

from __future__ import annotations

import csv
import json
import re
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from io import StringIO
from typing import Any

import pytest
from scipy.stats import binomtest
from statsmodels.stats.inter_rater import cohens_kappa
from statsmodels.stats.proportion import confint_proportions_2indep, proportion_confint

from drills.core.gestures import Tick
from drills.core.kinds import Side
from drills.core.records import latest_trials
from drills.digest import Digest, make, render
from drills.digest.figure_wording import missing
from drills.digest.outcomes import Phase
from drills.measures.accuracy import Share
from drills.measures.missing import Lack, Missing
from tests.digest.invented import FIRST, LABELS, LAST, PLAN, closed, digest, opened, week
from tests.digest.over_time import course, made, practised, scored_twice, with_checks
from tests.measures.made import MONDAY, WAVE, asked, trial


def flat(of: Digest, form: str = "text") -> str:
    return " ".join(render(of, form).replace("\xa0", " ").split())


# Patterns


def test_thirds_are_of_each_block_so_that_an_easy_block_before_a_hard_one_is_no_decline() -> None:
    at = MONDAY
    trials = [
        trial("right" if block == 0 else "wrong", session="m", block=block, at=at)
        for block in (0, 1)
        for _ in range(9)
    ]
    found = digest([opened("m", at), *trials, closed("m", at)], earlier=()).patterns.decline
    assert not isinstance(found, Missing)
    assert (found.first, found.last) == (Share(right=3, of=6), Share(right=3, of=6))


def test_a_fall_within_blocks_is_told_with_newcombes_interval_and_the_times() -> None:
    trials = [
        trial("right" if place < 6 else "wrong", session="m", latency_ms=2000) for place in range(9)
    ] + [trial("right", session="m", block=1, latency_ms=2000) for _ in range(9)]
    of = digest([opened("m", MONDAY), *trials], earlier=())
    found = of.patterns.decline
    assert not isinstance(found, Missing)
    assert (found.first, found.last) == (Share(right=6, of=6), Share(right=3, of=6))
    low, high = confint_proportions_2indep(6, 6, 3, 6, method="newcomb", compare="diff")
    assert (found.interval.low, found.interval.high) == pytest.approx((low, high))
    assert "first thirds 6/6 (100%), last thirds 3/6 (50%): -50 points" in flat(of)


def test_a_place_is_preferred_only_beyond_chance_for_all_places_together() -> None:
    def of(first: int, second: int) -> Digest:
        rows = [trial("right", session="m") for _ in range(first)]
        rows += [trial("wrong", session="m") for _ in range(second)]
        return digest([opened("m", MONDAY), *rows], earlier=())

    # 15 of 20: two-sided p .0414, so .083 for two places; 17 of 20: .0026 and .0052.
    assert 2 * binomtest(15, 20).pvalue > 0.05 > 2 * binomtest(17, 20).pvalue
    assert of(5, 15).patterns.places[0].preferred is None
    assert of(3, 17).patterns.places[0].preferred == 1
    assert "chosen first 3, second 17 of 20: second preferred" in flat(of(3, 17))
    assert json.loads(render(of(3, 17), "json"))["patterns"]["places"][0]["preferred"] == 1


def test_sides_and_what_was_left_without_an_answer_have_their_n() -> None:
    def given(side: Side, *responses: str) -> list[Any]:
        item = replace(asked(), side=side)
        return [
            trial(*([] if each == "none" else [each]), of=item, session="m", skipped=each == "none")
            for each in responses
        ]

    entries = [
        opened("m", MONDAY),
        *given(Side.LEFT, *["right"] * 6, *["wrong"] * 2, *["none"]),
        *given(Side.RIGHT, *["right"] * 2, *["wrong"] * 6, *["none"] * 4),
    ]
    of = digest(entries, earlier=())
    text = flat(of)
    assert "left 6/8 (75%), right 2/8 (25%): +50 points" in text
    assert "no answer: left 1/9 (11%), right 4/12 (33%)" in text


# Weeks


def test_the_last_week_of_weeks_is_the_range_and_hours_add_up() -> None:
    of = made([2, 3, 4], [5, 6, 7, 8])
    assert [each.last for each in of.dose_weeks] == [
        LAST - timedelta(weeks=back) for back in (3, 2, 1, 0)
    ]
    last = of.dose_weeks[-1]
    assert (last.minutes, last.sessions, last.minutes_planned, last.minutes_share) == (
        of.dose.minutes,
        of.dose.sessions,
        of.dose.minutes_planned,
        of.dose.minutes_share,
    )
    # Four sessions of ten minutes.
    assert last.hours == pytest.approx(40 / 60)
    assert "10, 10, 10, 10 of 125 each; 0.7 hours in all" in flat(of)


def test_help_over_weeks_falls_as_more_is_right_alone() -> None:
    of = made([2, 3, 4], [5, 6, 7, 8])
    (line,) = of.cue_weeks
    # A wrong answer comes right at level 1; 0, 1, 2 and 3 of 6 are right alone.
    assert [week.use.mean_level for week in line.weeks] == pytest.approx([1, 5 / 6, 4 / 6, 3 / 6])
    assert [week.use.of for week in line.weeks] == [6] * 4


def test_weeks_before_anybody_practised_are_left_out_and_there_are_eight_at_the_most() -> None:
    assert len(digest(earlier=()).dose_weeks) == 1
    assert len(made([2, 3, 4], range(12)).dose_weeks) == 8


def test_retention_is_by_the_days_between_and_the_same_day_is_apart() -> None:
    of = made([2, 3, 4], [5, 6, 7, 8])
    by_days = {each.days: each.share for each in of.kept.words}
    # Each Monday's first active sentence: none, one, two, three right of six, the first right
    # from the second week on.
    assert by_days[7] == Share(right=3, of=3)
    assert of.kept.words_same_day.share == Share(right=0 + 0 + 1 + 2, of=4 * 5)
    low, high = proportion_confint(3, 3, method="wilson")
    step = next(each for each in of.kept.words if each.days == 7)
    assert (step.interval.low, step.interval.high) == pytest.approx((low, high))
    assert "7 to 13 days 3/3 [too few]" in flat(of)


# Agreement


def test_kappa_of_a_table_agrees_with_statsmodels_and_lenience_is_the_caregivers() -> None:
    tries = [trial(score, target=WAVE, session="t") for score in SCORES_ONE]
    second = [
        replace(scored, trial=each.trial, score=score)
        for each, scored, score in zip(tries, _second(len(tries)), SCORES_OTHER, strict=True)
    ]
    of = make(
        [*week(), *tries],
        PLAN,
        first=FIRST,
        last=LAST,
        upcoming=(),
        labels=LABELS,
        second_scores=second,
    ).agreement
    assert of is not None
    assert of.pairs == 24
    table = [[0] * 4 for _ in range(4)]
    for one, other in zip(SCORES_ONE, SCORES_OTHER, strict=True):
        table[one][other] += 1
    for weights, value in (
        (None, of.scores.kappa),
        ("linear", of.scores.linear),
        ("quadratic", of.scores.quadratic),
    ):
        assert value == pytest.approx(cohens_kappa(table, wt=weights, return_results=True).kappa)
    assert of.scores.lenience == pytest.approx((sum(SCORES_ONE) - sum(SCORES_OTHER)) / 24)


SCORES_ONE = [3, 3, 2, 1, 0, 2, 3, 1, 2, 2, 3, 0, 1, 1, 2, 3, 3, 2, 0, 1, 2, 3, 1, 2]
SCORES_OTHER = [3, 2, 2, 1, 0, 1, 3, 1, 2, 3, 3, 0, 0, 1, 2, 3, 2, 2, 1, 1, 2, 3, 1, 1]


def _second(count: int) -> list[Any]:
    from drills.core.therapist import SecondScore  # noqa: PLC0415 - beside its use

    return [
        SecondScore(at=MONDAY, by="x", session="t", trial=f"{number}", score=0)
        for number in range(count)
    ]


def test_few_pairs_have_no_kappa_and_say_why_and_a_tick_is_counted_by_who_set_it() -> None:
    of = scored_twice(6)
    assert of.agreement is not None
    assert of.agreement.scores.kappa == Missing(lack=Lack.PAIRS, have=6, need=20)
    (grip,) = of.agreement.ticks
    assert (grip.tick, grip.both, grip.neither) == (Tick.GRIP, 3, 3)
    text = flat(of)
    assert "scored the same 6/6 (100%) tries" in text
    assert "20 pairs of scores are needed; there are 6" in text
    assert "Ticks on which both agree: grip 6/6" in text


def test_a_second_score_of_a_try_that_is_not_there_is_counted_apart() -> None:
    of = digest()
    assert of.agreement is None
    more = replace(_second(1)[0], trial="gone")
    found = make(
        week(),
        PLAN,
        first=FIRST,
        last=LAST,
        upcoming=(),
        labels=LABELS,
        second_scores=[more],
    ).agreement
    assert found is not None
    assert (found.pairs, found.without_first, found.scores.lenience) == (0, 1, None)


# Course


def test_a_course_begins_with_its_phases_and_holds_the_last_days_against_the_first() -> None:
    of = course()
    assert of.course is not None
    assert of.course.phase is Phase.MAINTENANCE
    assert (of.course.practice_days, of.course.first_practice) == (4, FIRST - timedelta(weeks=3))
    text = flat(of)
    assert text.startswith("SUMMARY OF THE COURSE")
    assert "Report after practice" in text
    assert "THE WEEK TO COME" not in text
    assert text.index("CHECKS WITHOUT HELP") < text.index("SENTENCES AND WORDS")
    # 22 days from first to last: eleven at either end; weeks 1 and 2 against weeks 3 and 4.
    (line,) = of.lines
    assert line.unaided == Share(right=2 + 3, of=12)
    assert line.change is not None
    assert line.change.earlier == Share(right=0 + 1, of=12)
    # Four sessions in 22 days that the plan asks 5 a week of.
    assert (of.dose.sessions, of.dose.sessions_planned) == (4, pytest.approx(5 * 22 / 7))


def test_before_practice_a_course_is_the_report_of_the_baseline() -> None:
    of = made([2, 4, 3], [], whole_course=True)
    text = flat(of)
    assert "Baseline report: before practice. No practice yet." in text
    assert of.dose.sessions_planned == 0
    assert "baseline from" in text


def test_an_empty_course_renders_in_every_form() -> None:
    of = make((), PLAN, first=FIRST, last=FIRST, upcoming=(), labels={}, whole_course=True)
    for form in ("text", "json", "csv"):
        assert render(of, form)


# Words


@pytest.mark.parametrize(
    ("lack", "have", "need", "told"),
    [
        (Lack.BASELINE, 2, 3, "3 baseline points are needed; there are 2"),
        (Lack.SESSIONS, 1, 3, "3 sessions are needed; there is 1"),
        (Lack.ITEMS, 0, 5, "5 items asked both times are needed; there is none"),
        (Lack.POINTS, 0, 1, "1 point in each phase is needed; there is none"),
        (Lack.SPREAD, 0, 0, "every value is the same"),
    ],
)
def test_what_is_missing_says_why(lack: Lack, have: int, need: int, told: str) -> None:
    assert missing(Missing(lack=lack, have=have, need=need)) == told


@pytest.mark.parametrize("lack", Lack)
def test_every_lack_has_words(lack: Lack) -> None:
    assert missing(Missing(lack=lack, have=2, need=3))


# The same numbers in every form


def shares_in(told: Any) -> Iterator[tuple[int, int]]:
    """Every share that the JSON holds, however deep."""
    if isinstance(told, dict):
        if isinstance(told.get("right"), int) and "of" in told:
            yield told["right"], told["of"]
        for value in told.values():
            yield from shares_in(value)
    elif isinstance(told, list):
        for value in told:
            yield from shares_in(value)


@pytest.mark.parametrize(
    "of",
    [digest(), with_checks(weeks=8), course(), scored_twice(25)],
    ids=["week", "checks", "course", "scored twice"],
)
def test_every_share_and_percent_of_the_text_stands_in_the_json(of: Digest) -> None:
    known = set(shares_in(json.loads(render(of, "json"))))
    # Of ticks the JSON holds the four counts, and the text how often both agree.
    known |= {(e.exact.right, e.exact.of) for e in (of.agreement.ticks if of.agreement else ())}
    told = re.findall(r"\b(\d+)/(\d+)(?: \((\d+)%\))?", flat(of))
    assert len(told) > 5
    for right, asked_of, percent in told:
        assert (int(right), int(asked_of)) in known
        assert bool(percent) <= (int(asked_of) >= 5)
        if percent:
            assert int(percent) == int(100 * int(right) / int(asked_of) + 0.5)


def test_what_the_csv_tells_over_time_is_what_the_json_tells() -> None:
    of = with_checks(weeks=8)
    told = json.loads(render(of, "json"))
    rows = list(csv.DictReader(StringIO(render(of, "csv"))))

    def of_row(name: str) -> list[dict[str, str]]:
        return [row for row in rows if row["row"] == name]

    def near(cell: str, value: float | None) -> bool:
        return cell == "" if value is None else float(cell) == pytest.approx(value, abs=5e-5)

    weeks = of_row("dose of a week")
    assert [row["week_last"] for row in weeks] == [week["last"] for week in told["dose_weeks"]]
    for row, week_told in zip(weeks, told["dose_weeks"], strict=True):
        assert near(row["minutes"], week_told["minutes"])
        assert near(row["hours"], week_told["hours"])
    helped = [each for line in told["cue_weeks"] for each in line["weeks"]]
    for row, week_told in zip(of_row("help in a week"), helped, strict=True):
        assert near(row["mean_cue_level"], week_told["use"]["mean_level"])
    for row, line in zip(of_row("trend"), told["trends"], strict=True):
        assert near(row["trend_tau"], line["trend"]["tau"])
    kept = [told["kept"]["words_same_day"], *told["kept"]["words"]]
    for row, step in zip(
        of_row("kept: words"), (each for each in kept if each["share"]["of"]), strict=True
    ):
        assert int(row["unaided_right"]) == step["share"]["right"]
    effects = [effect for line in told["checks"]["outcomes"]["lines"] for effect in line["effects"]]
    for row, effect in zip(of_row("outcome of a phase"), effects, strict=True):
        assert near(row["nap"], effect["nap"]["value"])
        assert near(row["gain"], effect["gain"])


def test_a_digest_of_a_past_week_is_not_changed_by_what_came_after() -> None:
    entries = [*practised(MONDAY, 3), *practised(MONDAY + timedelta(days=9), 6)]

    def of(known: list[Any]) -> Digest:
        return make(
            known,
            PLAN,
            first=FIRST,
            last=LAST,
            upcoming=(),
            labels=LABELS,
            history=latest_trials(known),
            today=date(2026, 12, 20),
        )

    assert of(entries) == of(entries[:8])
