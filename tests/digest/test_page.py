"""The page: well-formed, readable by ear and in grey; its numbers are those of the JSON."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from collections import Counter
from collections.abc import Iterator
from dataclasses import replace
from datetime import date, timedelta
from itertools import pairwise
from pathlib import Path
from xml.etree.ElementTree import Element

import html5lib
import pytest

from drills.catalogue import load_profiles, read_plan
from drills.core.kinds import Kind
from drills.core.material import Material
from drills.digest import Digest, render
from drills.digest.charts_weeks import cues_chart
from drills.digest.page_summary import summary
from drills.digest.page_tables import cue_lines, cue_told, kept_series, most_help
from drills.digest.spans import CueWeek, CueWeeks
from drills.measures.cues import CueUse
from drills.rehearsal import MemoryRecords, Rehearsal
from tests.digest.invented import LABELS, digest, week
from tests.edges import QuietVoice

ROOT = Path(__file__).parents[2]
PROFILES = load_profiles(ROOT / "content" / "profiles.toml")
STARTER = read_plan(ROOT / "content" / "plans" / "starter.toml")
MONDAY, WEEKS = date(2026, 10, 12), 3
HOSTILE = '"><script>alert(1)</script>$x^2$'


@pytest.fixture(scope="module")
def rehearsed(material: Material) -> Digest:
    """The third week of a simulated patient who takes the first noun for the doer."""
    home = Rehearsal(
        plan=STARTER,
        material=material,
        records=MemoryRecords(),
        voice=QuietVoice(),
        guide=(),
        program="0.0.0",
        profile=PROFILES["first-noun"],
        first=MONDAY,
        seed=11,
    ).run(WEEKS)
    monday = MONDAY + timedelta(weeks=WEEKS - 1)
    return home.digest(monday, monday + timedelta(days=6))


@pytest.fixture(scope="module")
def pages(rehearsed: Digest) -> dict[str, str]:
    of = {
        "rehearsed": rehearsed,
        "invented": digest(),
        "empty": digest([], upcoming=(), earlier=()),
        "hostile": digest(week(note=HOSTILE), labels=dict.fromkeys(LABELS, HOSTILE)),
    }
    return {name: render(each, "html") for name, each in of.items()}


NAMES = ("rehearsed", "invented", "empty", "hostile")


def parsed(page: str) -> Element:
    """By the rules of HTML itself, which every error breaks off."""
    found = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False).parse(page)
    assert isinstance(found, Element)
    return found


def all_of(page: str, *tags: str) -> Iterator[Element]:
    for each in parsed(page).iter():
        if isinstance(each.tag, str) and each.tag.rsplit("}", 1)[-1] in tags:
            yield each


def words_of(element: Element) -> str:
    return " ".join(" ".join(element.itertext()).split())


def contrast(colour: str, ground: str = "#ffffff") -> float:
    """WCAG 2.2, relative luminance and contrast ratio; greys only."""
    lights = []
    for each in (colour, ground):
        level = int(each[1:][: len(each[1:]) // 3] * (3 - len(each[1:]) // 3), 16) / 255
        light = level / 12.92 if level <= 0.04045 else ((level + 0.055) / 1.055) ** 2.4
        lights.append(light + 0.05)
    return max(lights) / min(lights)


# Form


@pytest.mark.parametrize("name", NAMES)
def test_the_page_is_html_without_an_error_and_names_its_language(
    pages: dict[str, str], name: str
) -> None:
    root = parsed(pages[name])
    assert root.attrib["lang"] in ("en-US", "en-GB")
    (title,) = all_of(pages[name], "title")
    assert words_of(title).startswith("Practice digest, ")
    for tag in ("header", "main", "footer", "h1"):
        assert len(list(all_of(pages[name], tag))) == 1, tag


@pytest.mark.parametrize("name", NAMES)
def test_headings_go_down_one_step_at_a_time(pages: dict[str, str], name: str) -> None:
    levels = [int(each.tag[1]) for each in all_of(pages[name], "h1", "h2", "h3", "h4")]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


@pytest.mark.parametrize("name", NAMES)
def test_each_table_has_heads_that_say_what_they_head(pages: dict[str, str], name: str) -> None:
    for table in all_of(pages[name], "table"):
        heads = list(table.iter("th"))
        assert {each.attrib["scope"] for each in heads} <= {"col", "row", "rowgroup", "colgroup"}
        assert all(words_of(each) for each in heads)
        widths = {
            sum(int(cell.attrib.get("colspan", 1)) for cell in row) for row in table.iter("tr")
        }
        assert len(widths) == 1


@pytest.mark.parametrize("name", NAMES)
def test_each_drawing_is_an_image_told_in_words(pages: dict[str, str], name: str) -> None:
    for drawing in all_of(pages[name], "svg"):
        assert drawing.attrib["role"] == "img"
        assert len(drawing.attrib["aria-label"]) > 10


@pytest.mark.parametrize("name", NAMES)
def test_ids_are_there_once_and_what_is_named_by_one_is_there(
    pages: dict[str, str], name: str
) -> None:
    everything = list(parsed(pages[name]).iter())
    ids = Counter(each.attrib["id"] for each in everything if "id" in each.attrib)
    assert not [name for name, count in ids.items() if count > 1]
    named = {
        each.attrib["aria-labelledby"] for each in everything if "aria-labelledby" in each.attrib
    }
    assert named
    assert named <= set(ids)


@pytest.mark.parametrize("name", NAMES)
def test_the_page_stands_alone_and_is_small(pages: dict[str, str], name: str) -> None:
    page = pages[name]
    assert not list(all_of(page, "script", "link", "img", "iframe", "object"))
    for word in ("http", "url(", "@import", "src=", "href"):
        assert word not in page
    assert len(page.encode()) < 300_000


# Grey


@pytest.mark.parametrize("name", NAMES)
def test_every_colour_is_a_grey_and_words_stand_out(pages: dict[str, str], name: str) -> None:
    # Oracles for the formula, WCAG: black 21, #767676 4.54, #777777 4.48, #595959 7.00.
    for colour, ratio in (("#000", 21), ("#767676", 4.54), ("#777777", 4.48), ("#595959", 7.0)):
        assert contrast(colour) == pytest.approx(ratio, abs=0.006)
    page = pages[name]
    colours = set(re.findall(r"#(?:[0-9a-f]{6}|[0-9a-f]{3})\b", page))
    assert all(len(set(re.findall(f".{{{len(each) // 3}}}", each[1:]))) == 1 for each in colours)
    for colour in re.findall(r"[; {]color: (#[0-9a-f]+)", page):
        assert contrast(colour) >= 4.5
    for drawing in all_of(page, "svg"):
        for each in drawing.iter():
            drawn = f"{each.attrib.get('style', '')} {each.attrib.get('stroke', '')}"
            if each.tag.rsplit("}", 1)[-1] == "text":
                assert "fill" not in drawn
                continue
            # What carries a number: lines and marks; WCAG 1.4.11.
            strokes = re.findall(r"stroke: (#[0-9a-f]{6})", drawn)
            assert all(contrast(colour) >= 3 for colour in strokes)


# The same numbers


def test_the_summary_answers_what_is_asked_first(rehearsed: Digest) -> None:
    told = {line.about: line.told for line in summary(rehearsed)}
    dose = rehearsed.dose
    assert f"{dose.sessions} sessions of 5" in told["Practice"].replace("\xa0", " ")
    below = [line for line in rehearsed.word_lines if line.verdict == "below"]
    assert below
    for line in below:
        assert f"{line.label} {line.unaided.right}/{line.unaided.of}" in told[
            "Below guessing"
        ].replace("\xa0", " ")
    assert "roles exchanged more often than guessing would" in told["Below guessing"]
    # What is like guessing shows no habit.
    assert "roles exchanged" not in told.get("Like guessing", "")
    assert {"Changed", "Checks", "Due next"} <= set(told)


def test_what_few_tries_cannot_tell_is_not_called_guessing() -> None:
    # Five of five by guessing one of two: .03125, two-sided more than .05.
    (line,) = [each for each in digest().word_lines if each.name == "active"]
    few = replace(line, unaided=replace(line.unaided, right=5, of=5), verdict=None)
    from drills.measures.chance import verdict  # noqa: PLC0415 - beside its use

    few = replace(few, verdict=verdict(5, [0.5] * 5))
    told = {each.about: each.told for each in summary(replace(digest(), lines=(few,)))}
    assert "Too few to tell" in told
    assert "Like guessing" not in told


def test_charts_and_tables_of_the_page_have_the_numbers_of_the_json(
    pages: dict[str, str], rehearsed: Digest
) -> None:
    told = json.loads(render(rehearsed, "json"))
    page = pages["rehearsed"]
    labels = " ".join(each.attrib["aria-label"] for each in all_of(page, "svg"))
    words = words_of(parsed(page)).replace("\xa0", " ")
    for line in told["checks"]["lines"]:
        for point in line["days"]:
            assert f"{point['right']}/{point['of']}" in words
            assert f" {point['right']}/{point['of']}" in labels
    for week_of in told["dose_weeks"]:
        assert f"{week_of['minutes']:.1f}".removesuffix(".0") in labels
    for line in told["lines"]:
        if line["kind"] != "gesture":
            assert f"{line['unaided']['right']}/{line['unaided']['of']}" in words
    assert f"{told['dose']['minutes']:.1f}".removesuffix(".0") in words


def test_a_range_of_charts_stands_on_the_page(pages: dict[str, str]) -> None:
    labels = [each.attrib["aria-label"] for each in all_of(pages["rehearsed"], "svg")]
    for start in (
        "Minutes of sessions",
        "right alone ",
        "Mean level of help",
        "Checks of ",
        "Right alone after days",
        "scores 3, 2, 1, 0",
    ):
        assert any(label.startswith(start) for label in labels), start


def test_hostile_words_are_in_no_chart_as_elements(pages: dict[str, str]) -> None:
    assert not list(all_of(pages["hostile"], "script"))
    assert HOSTILE in words_of(parsed(pages["hostile"]))


# Determinism and cost


def test_the_same_digest_makes_the_same_page_in_another_process() -> None:
    script = (
        "import sys; from tests.digest.invented import digest; from drills.digest import render; "
        "sys.stdout.write(render(digest(), 'html'))"
    )
    runs = [
        subprocess.run(
            [sys.executable, "-c", script],
            cwd=ROOT,
            capture_output=True,
            text=True,
            encoding="utf-8",
            check=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": str(ROOT), "PYTHONUTF8": "1"},
        ).stdout
        for seed in ("1", "2")
    ]
    assert runs[0] == runs[1] == render(digest(), "html")


@pytest.mark.parametrize("form", ["text", "json", "csv"])
def test_nothing_that_draws_is_loaded_for_another_form(form: str) -> None:
    script = (
        "import sys; from tests.digest.invented import digest; from drills.digest import render; "
        f"render(digest(), {form!r}); "
        "sys.exit(any(name in sys.modules for name in ('matplotlib', 'jinja2', 'numpy')))"
    )
    done = subprocess.run([sys.executable, "-c", script], cwd=ROOT, check=False)
    assert done.returncode == 0


# What a printed page says of itself


def test_a_printed_page_has_its_days_the_code_and_its_number() -> None:
    of = replace(digest(), person='K-17"}</style>')
    page = render(of, "html")
    style = words_of(next(iter(all_of(page, "style"))))
    days = "Mon 23 Nov 2026 to Sun 29 Nov 2026"
    # What could end the text or the style sheet is written as its number.
    assert f'"{days}, code K-17\\22 \\7d \\3c \\2f style\\3e "' in style
    assert 'content: "Page " counter(page) " of " counter(pages)' in style
    assert "Code K-17" in words_of(parsed(page))
    assert "Code K-17" in render(of, "text")
    assert "Code" not in render(digest(), "text")


def test_what_is_due_after_a_week_long_past_is_told_from_today_on() -> None:
    of = digest(today=date(2026, 12, 20))
    for form in ("html", "text"):
        assert "from today, sun 20 dec 2026, on" in render(of, form).lower()
        assert "from today" not in render(digest(), form).lower()
    assert json.loads(render(of, "json"))["as_of"] == "2026-12-20"
    assert json.loads(render(digest(), "json"))["as_of"] is None


def test_one_word_is_used_for_what_cannot_be_told_from_guessing(pages: dict[str, str]) -> None:
    for name in NAMES:
        assert "not distinguishable" not in pages[name]
    assert "Like guessing: could be guessing." in words_of(parsed(pages["rehearsed"]))


# Help by week


def helped(*weeks: tuple[int, float]) -> CueWeeks:
    """Weeks with so many trials and such a mean level, of 4 at most."""
    return CueWeeks(
        kind=Kind.MATCH,
        name="active",
        label="Active",
        weeks=tuple(
            CueWeek(
                first=MONDAY + timedelta(weeks=at),
                last=MONDAY + timedelta(weeks=at, days=6),
                use=CueUse(
                    of=of,
                    mean_level=level if of else None,
                    dependence=level / 4 if of else None,
                ),
            )
            for at, (of, level) in enumerate(weeks)
        ),
    )


def test_help_now_is_said_only_of_a_week_with_enough_trials() -> None:
    assert plain(cue_told(helped((9, 3.0), (8, 2.0)))) == "3.0, now 2.0"
    assert plain(cue_told(helped((9, 3.0), (8, 2.0), (4, 1.0)))) == "last 2.0 (week of 19 Oct)"
    assert plain(cue_told(helped((9, 3.0), (0, 0.0)))) == "last 3.0 (week of 12 Oct)"
    assert cue_lines([helped((4, 3.0), (4, 2.0))]) == []


def test_help_is_drawn_up_to_its_top_level() -> None:
    assert most_help([helped((9, 3.0)), helped((9, 1.0))]) == 4
    assert most_help([helped((9, 0.0))]) == 1


def test_weeks_with_few_trials_are_hollow_and_joined_to_nothing() -> None:
    size = {"most": 4, "width_mm": 43, "height_mm": 12.5}
    few = str(cues_chart(helped((9, 3.0), (4, 2.0), (9, 1.0)), **size))
    enough = str(cues_chart(helped((9, 3.0), (5, 2.0), (9, 1.0)), **size))
    assert few.count("fill: #ffffff") == 1
    assert "fill: #ffffff" not in enough


def plain(told: str) -> str:
    return told.replace("\xa0", " ")


def test_steps_that_nothing_has_come_to_are_not_drawn(rehearsed: Digest) -> None:
    for _, steps in kept_series(rehearsed.kept):
        assert steps[-1].days < 28
    assert {each.days for each in rehearsed.kept.words} >= {28, 56}
