"""Checks in the digest: apart from practice, and the same numbers in every form."""

from __future__ import annotations

import csv
import json
import re
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
from tests.digest.over_time import check as check_of
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


@pytest.mark.parametrize(
    ("form", "told"),
    [
        ("text", "all before practice 9/60 (15%) [8 to 26], below guessing"),
        ("text", "all since practice began 7/50 (14%) [7 to 26], below guessing"),
        ("html", "all before practice 9/60 (15%) [8 to 26], below guessing"),
        ("html", "all since practice began 7/50 (14%) [7 to 26], below guessing"),
        ("html", "All since practice began: "),
        ("html", "7/50 (14%), below guessing, first 2/20 (practised)."),
    ],
)
def test_all_checks_of_a_phase_are_judged_together_where_the_newest_alone_is_too_few(
    form: str, told: str
) -> None:
    digest = pooled()
    # The newest alone, 2 of 10, could be guessing.
    assert binomtest(2, 10).pvalue > 0.05
    assert digest.checks is not None
    assert digest.checks.lines[0].points[-1].verdict is Verdict.SAME
    for share, (right, of) in zip(
        json.loads(render(digest, "json"))["checks"]["lines"][0]["phases"],
        [(9, 60), (7, 50)],
        strict=True,
    ):
        assert (share["right"], share["of"]) == (right, of)
        assert (share["low"], share["high"]) == pytest.approx(
            proportion_confint(right, of, method="wilson")
        )
        assert binomtest(right, of, alternative="less").pvalue < 0.025
        assert share["verdict"] == "below"
    page = " ".join(re.sub(r"<[^>]+>", "", render(digest, form)).replace("\xa0", " ").split())
    assert told in page


def pooled() -> Digest:
    """Three checks of 20 before practice, then five of 10: 2, 0, 2, 1 and 2 right."""
    counts = [(2, 20), (3, 20), (4, 20), (2, 10), (0, 10), (2, 10), (1, 10), (2, 10)]
    days = [MONDAY + timedelta(days=each) for each in (-30, -29, -28, -14, -10, -7, -4, 2)]
    trials = [
        each
        for at, (right, of) in zip(days, counts, strict=True)
        for each in check_of(at, {ItemSet.PROBE: right}, of=of)
    ]
    return make(
        week(),
        replace(PLAN, probes=SETTINGS),
        first=FIRST,
        last=LAST,
        upcoming=(),
        labels=LABELS,
        checked=Checked(
            trials=trials, days=[day.date() for day in days], next_day=LAST + timedelta(days=3)
        ),
        practice_days=[(MONDAY - timedelta(days=20)).date(), FIRST],
    )


def test_when_the_next_check_is_due_is_told_in_every_form() -> None:
    digest = pooled()
    assert json.loads(render(digest, "json"))["checks"]["next_day"] == "2026-12-02"
    for form in ("text", "html"):
        told = " ".join(render(digest, form).replace("\xa0", " ").split())
        assert "Next check due from Wed 2 Dec on." in told
    # None is told of where none is due.
    assert "Next check" not in render(with_checks()[0], "text")
