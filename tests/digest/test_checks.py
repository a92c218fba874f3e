"""Checks in the digest: apart from practice, and the same numbers in every form."""

from __future__ import annotations

import csv
import json
from dataclasses import replace
from datetime import timedelta
from io import StringIO

import pytest
from scipy.stats import binomtest
from statsmodels.stats.proportion import proportion_confint

from drills.core.items import ItemSet, Kind, Target
from drills.core.plans import ProbeSettings
from drills.core.records import Entry, Trial
from drills.digest import Digest, make, render
from drills.digest.checks import ROLES, Checked
from drills.measures.chance import Verdict
from tests.digest.invented import FIRST, LABELS, LAST, PLAN, closed, opened, week
from tests.measures.made import MONDAY, asked, trial

RIGHT = {ItemSet.PROBE: 12, ItemSet.RELATED: 15, ItemSet.CONTROL: 4}
ASKED = 20
SETTINGS = ProbeSettings(on=True)
CHECKED_ON = MONDAY + timedelta(days=2)


def answers(session: str, at) -> list[Trial]:
    return [
        trial(
            "right" if number < RIGHT[role] else "wrong",
            of=replace(
                asked(Target(kind=Kind.MATCH, name="full_passive"), item_set=role), top_level=0
            ),
            at=at + timedelta(seconds=10 * (number + ASKED * place)),
            seconds=10,
            session=session,
        )
        for place, role in enumerate(ROLES)
        for number in range(ASKED)
    ]


def with_checks(*, settings: ProbeSettings = SETTINGS) -> tuple[Digest, Digest]:
    """The invented week with one check on its Wednesday, and the same week without."""
    before = answers("b", MONDAY - timedelta(days=30))
    own = answers("c", CHECKED_ON)
    check: list[Entry] = [
        replace(opened("c", CHECKED_ON), check="A"),
        *own,
        closed("c", CHECKED_ON + timedelta(minutes=12)),
    ]
    days = ((MONDAY - timedelta(days=30)).date(), CHECKED_ON.date())
    plan = replace(PLAN, probes=settings)

    def made(entries: list[Entry], checked: Checked | None) -> Digest:
        return make(
            entries,
            plan,
            first=FIRST,
            last=LAST,
            upcoming=(),
            labels=LABELS,
            checked=checked,
        )

    return (
        made([*week(), *check], Checked(trials=[*before, *own], days=days)),
        made(week(), None),
    )


def test_a_check_changes_nothing_of_practice() -> None:
    checked, bare = with_checks()
    assert checked.dose == bare.dose
    assert checked.lines == bare.lines
    assert checked.sittings == bare.sittings
    assert [(error.foil, error.count) for error in checked.errors] == [
        (error.foil, error.count) for error in bare.errors
    ]


def test_each_role_is_told_by_day_with_its_interval_and_time_apart() -> None:
    checks = with_checks()[0].checks
    assert checks is not None
    assert (checks.sittings, checks.minutes) == (1, pytest.approx(12))
    assert (checks.baseline_done, checks.baseline) == (2, 3)
    assert [line.item_set for line in checks.lines] == list(ROLES)
    for line in checks.lines:
        assert len(line.points) == 2
        for point in line.points:
            right = RIGHT[line.item_set]
            assert (point.right.right, point.right.of) == (right, ASKED)
            low, high = proportion_confint(right, ASKED, method="wilson")
            assert (point.interval.low, point.interval.high) == pytest.approx((low, high))
    # Exact binomial, both tails, by guessing one of two: 12 of 20 p = .50, 15 p = .041, 4 p = .012.
    verdicts = [line.points[0].verdict for line in checks.lines]
    assert verdicts == [Verdict.SAME, Verdict.ABOVE, Verdict.BELOW]
    assert [binomtest(RIGHT[role], ASKED).pvalue < 0.05 for role in ROLES] == [False, True, True]


def test_text_page_json_and_csv_agree_on_every_check() -> None:
    digest = with_checks()[0]
    text, page = render(digest, "text"), render(digest, "html")
    told = json.loads(render(digest, "json"))["checks"]
    rows = [row for row in csv.DictReader(StringIO(render(digest, "csv"))) if row["checked_on"]]
    assert digest.checks is not None
    points = [(line, point) for line in digest.checks.lines for point in line.points]
    assert len(rows) == len(points) == 6
    for row, (line, point) in zip(rows, points, strict=True):
        assert (row["set"], row["checked_on"]) == (line.item_set.value, point.day.isoformat())
        assert (int(row["unaided_right"]), int(row["unaided_of"])) == (
            point.right.right,
            point.right.of,
        )
        of_line = next(each for each in told["lines"] if each["set"] == line.item_set.value)
        of_day = next(each for each in of_line["days"] if each["day"] == point.day.isoformat())
        assert (of_day["right"], of_day["of"]) == (point.right.right, point.right.of)
        assert of_day["low"] == pytest.approx(float(row["unaided_low"]), abs=1e-4)
        share = f"{point.right.right}/{point.right.of}"
        assert share in text
        assert share in page
    for form in (text, page):
        assert "Baseline: 2 of 3 checks done." in " ".join(form.split())
        assert "unrelated, not practised" in form


def test_a_plan_without_checks_tells_of_none() -> None:
    digest = with_checks(settings=ProbeSettings())[1]
    assert digest.checks is None
    assert "CHECKS" not in render(digest, "text")


def test_a_plan_that_wants_checks_says_how_many_are_done_before_the_first() -> None:
    assert "Baseline: 0 of 3 checks done." in render(with_checks()[1], "text")


def test_of_many_checks_text_shows_the_first_and_the_last_and_says_how_many_lie_between() -> None:
    trials = [
        each for number in range(14) for each in answers("c", MONDAY - timedelta(days=7 * number))
    ]
    digest = make(
        week(),
        replace(PLAN, probes=SETTINGS),
        first=FIRST,
        last=LAST,
        upcoming=(),
        labels=LABELS,
        checked=Checked(trials=trials, days=()),
    )
    assert render(digest, "text").count("5 more between") == 3
    assert len(json.loads(render(digest, "json"))["checks"]["lines"][0]["days"]) == 14
