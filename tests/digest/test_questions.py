"""Yes and no, and words against grammar, in the digest and in each of its forms."""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from statistics import NormalDist

import pytest
from scipy.stats import binomtest

from drills.core.items import ItemSet, Kind, Target
from drills.core.question_words import GRID, Grammar, cell_of, level_of
from drills.core.records import Entry
from drills.core.words import Band
from drills.digest import render
from drills.digest.question_wording import YES_AND_NO
from tests.digest.invented import LABELS, closed, digest, opened
from tests.digest.test_renderers import Page, flat
from tests.measures.made import MONDAY, asked, trial

PASSIVE = Target(kind=Kind.QUESTION, name="yes-no:full-passive", group="moving")
CELLS = {
    "everyday/easy": (10, 10),
    "everyday/hard": (5, 10),
    "rare/easy": (9, 10),
    "rare/hard": (2, 4),
}


def yes_no(
    target: Target,
    *,
    true: bool,
    right: bool,
    level: str = "yes-no",
    item_set: ItemSet = ItemSet.TREATED,
) -> Entry:
    key, other = ("yes", "no") if true else ("no", "yes")
    rows = (
        {"text": key, "foil": None, "why_wrong": None},
        {"text": other, "foil": "reversal", "why_wrong": "false_role"},
    )
    of = replace(asked(target), options=rows, level=level, item_set=item_set)
    return trial("right" if right else "wrong", of=of, session="y")


def week(trials: Sequence[Entry]) -> list[Entry]:
    return [opened("y", MONDAY), *trials, closed("y", MONDAY + timedelta(hours=1))]


def yes_week(*, hits: int, true: int, false_alarms: int, false: int) -> list[Entry]:
    return week(
        [
            *(yes_no(PASSIVE, true=True, right=number < hits) for number in range(true)),
            *(yes_no(PASSIVE, true=False, right=number >= false_alarms) for number in range(false)),
        ]
    )


def grid_week(item_set: ItemSet = ItemSet.TREATED) -> list[Entry]:
    target = Target(kind=Kind.QUESTION, name=GRID)
    return week(
        [
            yes_no(
                target, true=number % 2 == 0, right=number < right, level=level, item_set=item_set
            )
            for level, (right, of) in CELLS.items()
            for number in range(of)
        ]
    )


def forms(entries: list[Entry]) -> tuple[str, str, dict, list[dict[str, str]]]:
    """Text, page, JSON and CSV."""
    of = digest(entries, earlier=[], labels={**LABELS, GRID: "The grid"})
    return (
        flat(render(of, "text")),
        Page(render(of, "html")).text,
        json.loads(render(of, "json")),
        [row for row in csv.DictReader(io.StringIO(render(of, "csv"))) if not row["row"]],
    )


def test_yes_and_no_are_told_by_d_and_c_in_every_form() -> None:
    """The sample of tests/measures/test_detection.py: 20 of 25, 10 of 25."""
    text, page, data, rows = forms(yes_week(hits=20, true=25, false_alarms=10, false=25))
    for form in (text, page):
        assert "d' 1.04, c -0.28, n 50: yes and no about as often" in form
        assert "yes to 20 of 25 true, 10 of 25 false" in form
        assert flat(YES_AND_NO) in form
    (line,) = data["lines"]
    assert line["yes_no"]["d_prime"] == pytest.approx(1.0445, abs=5e-5)
    assert line["yes_no"]["criterion"] == pytest.approx(-0.2788, abs=5e-5)
    assert (line["yes_no"]["hits"], line["yes_no"]["false"]) == (20, 25)
    (row,) = rows
    assert (row["d_prime"], row["criterion"]) == ("1.0445", "-0.2788")
    assert (row["yes_to_true"], row["true_of"]) == ("20", "25")
    assert (row["yes_to_false"], row["false_of"]) == ("10", "25")


@pytest.mark.parametrize(
    ("hits", "false_alarms", "told"),
    [(24, 20, "says yes to most"), (4, 2, "says no to most"), (14, 11, "about as often")],
)
def test_a_liking_is_told_in_plain_words(hits: int, false_alarms: int, told: str) -> None:
    """Source: scipy.stats.binomtest of yes against one half."""
    text, page, *_ = forms(yes_week(hits=hits, true=25, false_alarms=false_alarms, false=25))
    assert told in text
    assert told in page
    is_sure = binomtest(hits + false_alarms, 50).pvalue <= 0.05
    assert is_sure == (told != "about as often")


def test_what_a_d_of_one_and_two_is_said_to_be_is_so() -> None:
    """Source: statistics.NormalDist; with no liking both shares right are Phi(d' / 2)."""
    for value, share in ((1, 69), (2, 84)):
        assert round(100 * NormalDist().cdf(value / 2)) == share
        assert f"{value} " in YES_AND_NO
        assert f"as {share}" in YES_AND_NO


def test_a_few_yes_and_no_are_not_judged() -> None:
    text, page, *_ = forms(yes_week(hits=2, true=2, false_alarms=0, false=2))
    for form in (text, page):
        assert "too few yes and no to tell, n 4" in form
        assert "d' 1" not in form


def test_a_week_without_yes_and_no_says_nothing_of_them() -> None:
    for form in ("text", "html", "json"):
        told = render(digest(), form)
        assert "d'" not in told
        assert "yes_no" not in told
        assert "rammar" not in told
    assert json.loads(render(digest(), "json"))["grids"] == []
    rows = csv.DictReader(io.StringIO(render(digest(), "csv")))
    assert all(not row["d_prime"] for row in rows)


def test_the_grid_is_a_table_of_two_by_two_in_every_form() -> None:
    """Intervals: Wilson's, as statsmodels gives them: 10/10 72 to 100, 5/10 24 to 76, 9/10 60 to
    98."""
    text, page, data, rows = forms(grid_week())
    for form in (text, page):
        assert "Everyday words 10/10 (100%) [72 to 100] 5/10 (50%) [24 to 76]" in form
        assert "Rare words 9/10 (90%) [60 to 98] 2/4 [too few]" in form
        assert "Rare words 9/10 (in easy grammar), hard grammar 5/10 (in everyday words)." in form
        assert "they name no illness" in form
    (grid,) = data["grids"]
    assert grid["set"] == "treated"
    assert {
        f"{cell['words']}/{cell['grammar']}": (cell["right"], cell["of"]) for cell in grid["cells"]
    } == CELLS
    cells = {row["name"]: row for row in rows if row["name"].startswith("grid:")}
    assert {
        name: (int(row["unaided_right"]), int(row["unaided_of"])) for name, row in cells.items()
    } == {f"grid:{level}": share for level, share in CELLS.items()}
    assert cells["grid:everyday/hard"]["label"] == (
        "Words against grammar: everyday words, hard grammar"
    )
    assert cells["grid:everyday/hard"]["unaided_low"] == "0.2366"
    # The whole grid has its line too, with its d'.
    assert data["lines"][0]["unaided"]["of"] == 34
    assert "yes_no" in data["lines"][0]


def test_probes_have_a_grid_of_their_own() -> None:
    both = [*grid_week(), *grid_week(ItemSet.PROBE)[1:-1]]
    text, page, data, _ = forms(both)
    assert [grid["set"] for grid in data["grids"]] == ["treated", "probe"]
    assert "right alone (probe)" in text
    assert "interval (probe)" in page


def test_the_text_of_the_grid_fits_the_width() -> None:
    lines = render(digest(grid_week(), earlier=[]), "text").splitlines()
    assert max(map(len, lines)) <= 78
    assert any(re.match(r"^  right alone +easy grammar +hard grammar$", line) for line in lines)


def test_a_level_of_the_grid_is_read_back() -> None:
    for band in Band:
        for grammar in Grammar:
            assert cell_of(level_of(band, grammar)) == (band, grammar)
    assert cell_of("C4") is None
    assert cell_of("rare/odd") is None
