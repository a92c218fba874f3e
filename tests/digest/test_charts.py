"""Charts: the numbers they are drawn from, words in them as words, nothing that needs a page."""

from __future__ import annotations

import re
import subprocess
import sys
from datetime import date, timedelta
from pathlib import Path
from xml.etree import ElementTree

import pytest

from drills.core.items import ItemSet, Kind
from drills.core.question_words import Grammar
from drills.core.words import Band
from drills.digest.charts import canvas, svg
from drills.digest.charts_checks import checks_chart
from drills.digest.charts_shares import grid_chart, retention_chart
from drills.digest.charts_weeks import cues_chart, dose_chart
from drills.digest.checks import CheckLine, CheckPoint
from drills.digest.outcomes import Phase
from drills.digest.spans import CueWeek, CueWeeks, DoseWeek
from drills.digest.values import Grid, GridCell
from drills.measures.accuracy import Share
from drills.measures.chance import verdict
from drills.measures.cues import CueUse
from drills.measures.intervals import wilson
from drills.measures.retention import INTERVALS_DAYS, Retained

ROOT = Path(__file__).parents[2]
HOSTILE = '</svg><script>1</script>"$x^2$\\frac'
MONDAY = date(2026, 10, 12)


def element(chart: str) -> ElementTree.Element:
    return ElementTree.fromstring(chart)  # noqa: S314 - our own drawing


def weeks(count: int) -> list[tuple[date, date]]:
    return [
        (MONDAY + timedelta(weeks=at), MONDAY + timedelta(weeks=at, days=6)) for at in range(count)
    ]


def checks(rights: list[int], *, of: int = 10, label: str = "Passive") -> CheckLine:
    """Three before practice, the last after it."""
    phases = [Phase.BASELINE] * 3 + [Phase.PRACTICE] * (len(rights) - 4) + [Phase.MAINTENANCE]
    return CheckLine(
        item_set=ItemSet.PROBE,
        name="full-passive",
        label=label,
        points=tuple(
            CheckPoint(
                day=MONDAY + timedelta(days=at),
                phase=phase,
                right=Share(right=right, of=of),
                interval=wilson(right, of),
                verdict=verdict(right, [0.5] * of),
            )
            for at, (right, phase) in enumerate(zip(rights, phases, strict=True))
        ),
    )


def dose(minutes: list[float]) -> list[DoseWeek]:
    return [
        DoseWeek(
            first=first,
            last=last,
            minutes=done,
            minutes_planned=125,
            minutes_share=done / 125,
            active_minutes=done / 2,
            sessions=3,
            sessions_planned=5,
            trials=90,
            hours=done / 60,
        )
        for (first, last), done in zip(weeks(len(minutes)), minutes, strict=True)
    ]


def cues(levels: list[float | None], label: str = "Passive") -> CueWeeks:
    return CueWeeks(
        kind=Kind.MATCH,
        name="full-passive",
        label=label,
        weeks=tuple(
            CueWeek(
                first=first,
                last=last,
                use=CueUse(of=0 if level is None else 12, mean_level=level, dependence=None),
            )
            for (first, last), level in zip(weeks(len(levels)), levels, strict=True)
        ),
    )


def kept(rights: list[tuple[int, int]]) -> list[Retained]:
    return [
        Retained(days=days, share=Share(right=right, of=of), interval=wilson(right, of))
        for days, (right, of) in zip(INTERVALS_DAYS, rights, strict=True)
    ]


def grid() -> Grid:
    rights = {"everyday": (9, 5), "rare": (4, 2)}
    return Grid(
        item_set=ItemSet.TREATED,
        cells=tuple(
            GridCell(
                band=band,
                grammar=grammar,
                unaided=Share(right=right, of=10),
                interval=wilson(right, 10),
            )
            for band, both in zip(Band, rights.values(), strict=True)
            for grammar, right in zip(Grammar, both, strict=True)
        ),
    )


SIZE = {"width_mm": 60.0, "height_mm": 32.0}


def all_charts(label: str = "Passive") -> dict[str, str]:
    some = kept([(9, 12), (7, 10), (3, 4), (0, 0), (2, 6), (0, 0), (0, 0)])
    return {
        "checks": checks_chart(checks([1, 0, 2, 5, 7, 8, 9], label=label), **SIZE),
        "dose": dose_chart(dose([70, 125, 0]), **SIZE),
        "cues": cues_chart(cues([4.0, None, 1.5], label), most=4, **SIZE),
        "retention": retention_chart([("sentences", some), ("gestures", some)], **SIZE),
        "grid": grid_chart(grid(), **SIZE),
    }


def marks(chart: str) -> list[tuple[float, float]]:
    """Where the closed marks of a chart stand, in points, y downwards."""
    return [
        (float(x), float(y))
        for path in re.findall(r"<path [^>]*>", chart)
        if " z" in path and "C" in path
        for x, y in re.findall(r"translate\(([\d.]+) ([\d.]+)\)", path)
    ]


@pytest.mark.parametrize("name", all_charts())
def test_a_chart_is_one_image_with_its_numbers_in_words(name: str) -> None:
    root = element(all_charts()[name])
    assert (root.tag, root.attrib["role"]) == ("svg", "img")
    told = root.attrib["aria-label"]
    numbers = {
        "checks": ("Mon 12 Oct (before) 1/10 (10%), interval 2 to 40, below", "9/10 (90%)"),
        "dose": ("week from 12 Oct: 70 of 125", "week from 26 Oct: 0 of 125"),
        "cues": ("week from 12 Oct: 4.0, n 12", "week from 26 Oct: 1.5"),
        "retention": ("1 days 9/12 (75%) [47 to 91]", "4 days 3/4 [too few]"),
        "grid": ("rare words, hard grammar: 2/10 (20%) [6 to 51]",),
    }
    for number in numbers[name]:
        assert number in told


@pytest.mark.parametrize("name", all_charts())
def test_a_chart_has_no_id_reference_style_or_date(name: str) -> None:
    chart = all_charts()[name]
    for word in (" id=", "url(", "href", "<style", "<defs", "http", 'class="st', "<metadata", "<!"):
        assert word not in chart, word
    elements = {each.tag for each in element(chart).iter()}
    assert elements <= {"svg", "g", "path", "text", "tspan"}


@pytest.mark.parametrize("name", all_charts())
def test_a_chart_is_grey(name: str) -> None:
    colours = re.findall(r"#([0-9a-f]{6})", all_charts()[name])
    assert colours
    assert all(colour[:2] == colour[2:4] == colour[4:] for colour in colours)


@pytest.mark.parametrize("name", ["checks", "cues"])
def test_hostile_words_stay_words(name: str) -> None:
    chart = all_charts(HOSTILE)[name]
    assert "<script" not in chart
    assert HOSTILE in element(chart).attrib["aria-label"]


def test_words_drawn_into_a_chart_are_text_and_no_formula() -> None:
    with canvas(width_mm=60, height_mm=30) as (figure, axes):
        axes.set_title(HOSTILE)
        drawn = element(svg(figure, HOSTILE))
    assert HOSTILE in [each.text for each in drawn.iter("text")]


def test_marks_of_checks_stand_as_high_as_their_shares() -> None:
    rights = [1, 0, 2, 5, 7, 8]
    chart = checks_chart(checks([*rights, 9]), **SIZE)
    heights = [y for _, y in marks(chart)]
    assert len(heights) == len(rights)
    # A linear scale: from the heights of two shares follow all others.
    unit = (heights[1] - heights[5]) / 8
    assert unit > 0
    for right, height in zip(rights, heights, strict=True):
        assert height == pytest.approx(heights[1] - right * unit, abs=0.03)


def test_phases_are_parted_by_lines_and_named() -> None:
    chart = checks_chart(checks([1, 0, 2, 5, 7, 8, 9]), **SIZE)
    words = [each.text for each in element(chart).iter("text")]
    assert {"before", "practice"} <= set(words)
    upright = [
        found
        for found in re.findall(r"M ([\d.]+) ([\d.]+) L ([\d.]+) ([\d.]+)", chart)
        if found[0] == found[2]
    ]
    whole = max(abs(float(top) - float(foot)) for _, top, _, foot in upright)
    lines = {
        x
        for x, top, _, foot in upright
        if abs(float(top) - float(foot)) == pytest.approx(whole, abs=0.1)
    }
    assert len(lines) == 2


def test_what_was_tried_less_than_five_times_has_no_mark() -> None:
    chart = retention_chart(
        [("x", kept([(9, 12), (7, 10), (3, 4), (0, 0), (2, 6), (0, 0), (0, 0)]))], **SIZE
    )
    assert len(marks(chart)) == 3


def test_settings_of_the_machine_change_nothing(tmp_path: Path) -> None:
    script = (
        "from tests.digest.test_charts import all_charts; import sys; "
        "sys.stdout.write(chr(10).join(all_charts().values()))"
    )
    (tmp_path / "matplotlibrc").write_text("font.size: 30\naxes.facecolor: red\n", encoding="utf-8")
    runs = [
        subprocess.run(
            [sys.executable, "-c", script],
            cwd=ROOT,
            capture_output=True,
            text=True,
            check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT), **more},
        ).stdout
        for seed, more in (
            ("1", {"HOME": str(tmp_path)}),
            ("2", {"HOME": str(tmp_path), "MATPLOTLIBRC": str(tmp_path), "TZ": "Asia/Tokyo"}),
        )
    ]
    assert len(runs[0]) > 5000
    assert runs[0] == runs[1]
