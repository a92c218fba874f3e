"""Text, page, JSON and CSV say the same numbers, and hostile words do no harm in any of them."""

from __future__ import annotations

import csv
import io
import json
import re
import string
import unicodedata
from dataclasses import replace
from datetime import date, timedelta
from html.parser import HTMLParser

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from drills.core.gestures import Tick
from drills.core.items import Foil, ItemSet
from drills.core.problems import BadInput
from drills.digest import FORMATS, render
from drills.digest.text import WIDTH
from drills.digest.wording import inert
from tests.digest.invented import DUES, LABELS, digest, opened, week
from tests.measures.made import MONDAY, PASSIVE, WAVE, asked, trial

HOSTILE = "<script>alert('x')</script> & \x1b[31mred\x1b[0m \u202egnp.exe =cmd()|'/c calc'!A0"
VOID = {"meta", "br", "rect", "path", "link", "img", "input", "hr"}


class Page(HTMLParser):
    """Reads a page and holds on to what tests ask for; refuses what is not nested well."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.open: list[str] = []
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self.feed(html)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        if self.open and self.open[-1] not in ("style", "script"):
            self.words.append(data)

    @property
    def text(self) -> str:
        return " ".join(" ".join(self.words).split())

    def all(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.tags if name == tag]


def all_forms(of=None) -> dict[str, str]:
    return {form: render(of or digest(), form) for form in FORMATS}


def line_rows(text: str) -> list[dict[str, str]]:
    """The rows of names in the range, without those over time."""
    return [row for row in csv.DictReader(io.StringIO(text, newline="")) if not row["row"]]


def flat(text: str) -> str:
    return " ".join(text.split())


# The same numbers everywhere


def test_text_page_json_and_csv_agree_on_every_line():
    of = digest()
    forms = all_forms(of)
    data = json.loads(forms["json"])
    rows = line_rows(forms["csv"])
    page, text = Page(forms["html"]).text, flat(forms["text"])
    assert [row["name"] for row in data["lines"]] == [line.name for line in of.lines]
    for line, row, told in zip(of.lines, data["lines"], rows, strict=True):
        assert row["kind"] == told["kind"] == line.kind
        assert (row["label"], told["label"]) == (line.label, line.label)
        for side in ("unaided", "aided"):
            share = getattr(line, side)
            assert (row[side]["right"], row[side]["of"]) == (share.right, share.of)
            assert (int(told[f"{side}_right"]), int(told[f"{side}_of"])) == (share.right, share.of)
            if line.gesture is None:
                # The text leaves out what was right with help: the mean help tells as much.
                assert f"{share.right}/{share.of}" in text or side == "aided"
                assert f"{share.right}/{share.of}" in page
        assert row["unaided"]["low"] == line.interval.low
        assert float(told["unaided_low"]) == pytest.approx(line.interval.low, abs=5e-5)
        assert line.label in text
        assert line.label in page
    passive = next(row for row in data["lines"] if row["name"] == "full_passive")
    assert passive["chance"] == {
        "effective_k": 2,
        "guess": 0.5,
        "verdict": "not distinguishable",
    }
    assert passive["errors"]["reversal"] == 7
    # Newcombe's interval of 2/10 - 5/10 as statsmodels gives it: -.5999 to .1067.
    assert "-30 (-60 to 11) from 5/10" in text
    assert "-30 points (-60 to 11), from 5/10" in page
    for form in (text, page):
        assert "2/10 (20%)" in form
        assert "6 to 51" in form
        assert "Sessions 2 of 5 (40%)" in form
        assert "Minutes 16 of 125 (13%)" in form
        assert "Active minutes 14" in form
        assert "14 of 125" not in form
    assert (data["dose"]["minutes"], data["dose"]["active_minutes"]) == (16, 14)


def test_json_holds_what_the_contract_names():
    data = json.loads(render(digest(), "json"))
    assert data["format"] == 1
    assert {
        "trial",
        "item",
        "target",
        "sentence",
        "first_choice",
        "right",
        "level_at_success",
        "score",
    } <= set(data["answers"][0])
    assert len(data["answers"]) == 28
    assert data["answers"][0]["target"] == "match/full_passive/contact"
    line = data["lines"][1]
    assert {"kind", "name", "label", "unaided", "aided", "chance", "errors"} <= set(line)
    assert set(line["unaided"]) == {"right", "of", "low", "high"}
    assert data["dose"]["by_day"]["2026-11-23"] == 6
    assert data["upcoming"][0]["due"][0]["open_since"] == "2026-11-25"
    assert data["lines"][3]["gesture"]["scores"] == [1, 0, 1, 1]


def test_the_same_records_render_the_same_every_time():
    entries = week()
    assert all_forms(digest(entries)) == all_forms(digest(entries))


def test_an_unknown_form_is_refused_with_the_known_ones():
    with pytest.raises(BadInput, match="text, html, json, csv"):
        render(digest(), "pdf")


# Honest numbers


def test_percentages_are_hidden_below_five_trials_and_n_is_not():
    forms = all_forms()
    for form in (flat(forms["text"]), Page(forms["html"]).text):
        assert "2/4" in form
        assert "2/4 (" not in form
        assert "too few" in form


def test_no_p_values_norms_or_verdicts_on_the_person():
    for form in ("text", "html"):
        told = render(digest(), form).lower()
        visible = Page(told).text if form == "html" else told
        for word in ("p =", "p<", "p <", "significant", "normal", "severe", "mild", "prognosis"):
            assert word not in visible
        assert "no diagnosis" in visible


def test_simulated_practice_is_marked_at_the_top_of_every_form():
    forms = all_forms(digest(week(simulated=True)))
    assert forms["text"].startswith("SIMULATED PATIENT")
    assert Page(forms["html"]).all("p")[0] == {"class": "simulated"}
    assert json.loads(forms["json"])["simulated"] is True
    assert line_rows(forms["csv"])[0]["simulated"] == "yes"
    assert not any("SIMULATED" in form for form in all_forms().values())


def test_pain_and_pauses_are_told_before_any_number():
    text = render(digest(), "text")
    assert text.index("Pain was noted: Tue 24 Nov.") < text.index("PRACTICE AGAINST PLAN")
    assert "No practice for 5 days: Wed 25 to Sun 29 Nov." in text


def test_what_is_due_says_when_and_why_and_what_was_put_off():
    forms = all_forms()
    text, page = flat(forms["text"]), Page(forms["html"]).text
    due = {
        row["target"]: row for day in json.loads(forms["json"])["upcoming"] for row in day["due"]
    }
    assert (
        "Mon 30 Nov, pictures, open since Wed 25 Nov: Passive sentences 1 "
        "Mon 30 Nov, missing word: Place words 1 (new) Wed 2 Dec, pictures: Active sentences 1"
    ) in text
    assert (
        "Mon 30 Nov, open since Wed 25 Nov Passive sentences 1; Place words 1 (new). "
        "Wed 2 Dec Active sentences 1."
    ) in page
    assert due["match/active/contact"]["reason"] == (
        "right alone in a row: contact 10; last on Tue 24 Nov"
    )
    for form in (text, page):
        assert "As it stands now: each practice moves these days." in form
        assert "nothing due" not in form
        assert "Thu 3 Dec" not in form


def test_where_nothing_is_due_practice_still_goes_on():
    forms = all_forms(digest(upcoming=()))
    for form in (flat(forms["text"]), Page(forms["html"]).text):
        assert "sessions go on as planned" in form
    assert json.loads(forms["json"])["upcoming"] == []


def test_a_range_that_is_not_over_says_so_in_every_form():
    forms = all_forms(digest(today=date(2026, 11, 25)))
    told = "Mon 23 Nov 2026 to Sun 29 Nov 2026, not over yet: counted to Wed 25 Nov"
    for form in (flat(forms["text"]), Page(forms["html"]).text):
        assert told in form
        assert "Sessions 2 of 2.1 planned so far (93%)" in form.replace("\xa0", " ")
        assert "Minutes 16 of 53.6 planned so far (30%)" in form.replace("\xa0", " ")
    data = json.loads(forms["json"])
    assert (data["until"], data["over"]) == ("2026-11-25", False)
    row = line_rows(forms["csv"])[0]
    assert (row["until"], row["over"]) == ("2026-11-25", "no")
    entries = week()
    over = all_forms(digest(entries, earlier=(), today=date(2026, 11, 29)))
    assert over == all_forms(digest(entries, earlier=()))
    assert "not over yet" not in over["text"]
    assert json.loads(over["json"])["over"] is True


def test_a_range_to_come_is_no_failing():
    forms = all_forms(digest([], today=date(2026, 11, 20)))
    for form in (flat(forms["text"]), Page(forms["html"]).text):
        assert "not begun yet" in form
        assert "(0%)" not in form
        assert "Sessions 0. Minutes 0. Active" in form or "Sessions 0 Minutes 0 Active" in form


def test_gestures_alone_and_the_help_before_are_the_same_in_every_form():
    shown = [trial(3, target=WAVE, levels=(6,), session="t") for _ in range(3)]
    forms = all_forms(digest([*week(), *shown]))
    # Six scored tries: alone 2 of 6, help (0 + 0 + 0 + 6 + 6 + 6) / 6, score (3 + 2 + 0 + 9) / 6.
    # Shown at the top of the ladder is no success with help: 2 of 6 there too.
    assert "wave goodbye 6 2/6 (33%) 3.0 2.3 1 0 1 4 2/6" in flat(forms["text"])
    assert "wave goodbye 6 2/6 (33%) 3.0 2.3 1 0 1 4 2/6 (33%)" in Page(forms["html"]).text
    (line,) = [each for each in json.loads(forms["json"])["lines"] if each["name"] == "wave"]
    assert (line["unaided"]["right"], line["unaided"]["of"]) == (2, 6)
    assert line["gesture"]["mean_help"] == 3
    (row,) = [each for each in line_rows(forms["csv"]) if each["name"] == "wave"]
    assert (row["unaided_right"], row["unaided_of"]) == ("2", "6")
    assert (float(row["mean_first_help"]), row["hindered"]) == (3, "1")


def test_groups_of_one_name_are_counted_together_and_told_apart_in_the_json_in_plain_words():
    other = replace(DUES[0], target=replace(PASSIVE, group="behind-in_front_of"), run=3)
    forms = all_forms(digest(upcoming=(DUES[0], other)))
    assert "Passive sentences 2" in flat(forms["text"])
    told = [row["reason"] for row in json.loads(forms["json"])["upcoming"][0]["due"]]
    assert told[1].startswith("right alone in a row: behind / in front of 3; last on Mon 23 Nov")


# Text


@settings(deadline=None)
@given(st.text(max_size=200), st.text(max_size=60))
@example(HOSTILE, HOSTILE)
@example("a" * 300, "b" * 90)
def test_every_line_of_text_fits_and_holds_no_control_character(note: str, label: str):
    text = render(digest(week(note=note), labels=dict.fromkeys(LABELS, label)), "text")
    for line in text.splitlines():
        assert len(line) <= WIDTH
    assert not [c for c in text if c != "\n" and unicodedata.category(c) in ("Cc", "Cf", "Cs")]


@settings(deadline=None)
@given(st.text())
def test_inert_text_is_one_harmless_line_and_plain_words_stay(text: str):
    made = inert(text)
    assert not [c for c in made if unicodedata.category(c) in ("Cc", "Cf", "Cs", "Zl", "Zp")]
    assert inert(made) == made
    assert inert(f"Two {text} words").startswith("Two ")


def test_escape_sequences_are_shown_and_not_obeyed():
    assert "\\x1b[31mred" in render(digest(week(note=HOSTILE)), "text")


# Page


def test_the_page_is_well_formed_named_and_in_the_plans_language():
    page = Page(render(digest(), "html"))
    assert page.all("html") == [{"lang": "en-GB"}]
    assert len(page.all("h1")) == 1
    headings = [name for name, _ in page.tags if re.fullmatch("h[1-6]", name)]
    assert headings == ["h1"] + ["h2"] * (len(headings) - 1)
    assert page.all("title") == [{}]


def test_every_table_has_headers_with_scope_and_every_drawing_has_words():
    page = Page(render(digest(), "html"))
    assert len(page.all("table")) == 5
    assert all(cell.get("scope") in ("col", "row", "rowgroup") for cell in page.all("th"))
    drawings = page.all("svg")
    assert drawings
    assert all(d.get("role") == "img" and d.get("aria-label") for d in drawings)
    assert "right alone 2/10 (20%), interval 6 to 51, like guessing (1 in 2)" in [
        flat(d["aria-label"] or "") for d in drawings
    ]


def test_the_page_needs_no_script_and_no_network():
    html = render(digest(week(note=HOSTILE)), "html")
    page = Page(html)
    assert not page.all("script")
    assert not page.all("link")
    for _, attributes in page.tags:
        assert not any(name.startswith("on") for name in attributes)
        assert not {"src", "href"} & set(attributes)
    assert "url(" not in html
    assert "@import" not in html
    assert "http" not in html


def test_hostile_words_reach_the_page_as_words():
    hostile_label = dict.fromkeys(LABELS, '"><img src=x onerror=alert(1)>')
    entries = week(note=HOSTILE)
    entries.append(trial("wrong", of=asked(sentence="</td><script>1</script>"), session="t"))
    page = Page(render(digest(entries, labels=hostile_label), "html"))
    assert not page.all("script")
    assert not page.all("img")
    assert "<script>alert('x')</script>" in page.text
    assert "</td><script>1</script>" in page.text
    assert '"><img src=x onerror=alert(1)>' in page.text


def test_the_page_uses_greys_only():
    # A colour is grey when its three channels are equal; then nothing is lost in a grey print.
    html = render(digest(), "html")
    colours = re.findall(r"#([0-9a-f]{3}|[0-9a-f]{6})\b", html)
    assert colours
    for colour in colours:
        size = len(colour) // 3
        assert len({colour[i : i + size] for i in range(0, len(colour), size)}) == 1


def test_quiet_text_on_the_page_has_the_contrast_that_wcag_asks_for():
    # WCAG 2.2, 1.4.6: at least 7 to 1. Oracles for the formula: #595959 on white 7.00.
    def contrast(colour: str) -> float:
        value = int(colour, 16) / 255
        light = value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4
        return 1.05 / (light + 0.05)

    assert contrast("59") == pytest.approx(7.00, abs=0.005)
    for colour in re.findall(r"[^-]color: #([0-9a-f])", render(digest(), "html")):
        assert contrast(colour * 2) >= 7


# Each page is drawn anew, so that there are fewer of them.
@settings(deadline=None, max_examples=40)
@given(st.text(max_size=60))
@example(HOSTILE)
def test_any_note_leaves_the_page_well_formed(note: str):
    page = Page(render(digest(week(note=note)), "html"))
    assert page.all("h1") == [{}]
    assert flat(inert(note)) in page.text


# CSV


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", " =", "\n="])
def test_a_cell_that_a_spreadsheet_could_run_is_made_text(start: str):
    # The characters that OWASP's page on CSV injection names.
    labels = dict.fromkeys(LABELS, f"{start}cmd()")
    rows = line_rows(render(digest(labels=labels), "csv"))
    assert {row["label"] for row in rows} == {f"'{start}cmd()"}


def test_a_falling_share_stays_a_number_in_the_spreadsheet():
    rows = {row["name"]: row for row in line_rows(render(digest(), "csv"))}
    assert float(rows["full_passive"]["change"]) == pytest.approx(-0.3)
    assert rows["C3"]["change"] == ""
    assert rows["wave"]["verdict"] == ""
    assert [rows["wave"][f"score_{score}"] for score in range(4)] == ["1", "0", "1", "1"]


@settings(deadline=None)
@given(st.text(string.printable, min_size=1, max_size=40))
def test_labels_come_back_from_the_csv(label: str):
    text = render(digest(labels=dict.fromkeys(LABELS, label)), "csv")
    rows = line_rows(text)
    assert len(rows) == 4
    for row in rows:
        assert row["label"].removeprefix("'") == label.removeprefix("'")


# JSON


@settings(deadline=None)
@given(st.text(max_size=60))
@example("\ud800 half a character")
def test_notes_come_back_from_the_json_and_it_can_be_written(note: str):
    text = render(digest(week(note=note or "-")), "json")
    text.encode("utf-8")
    told = json.loads(text)["notes"]
    assert [each["text"] for each in told] == ([note or "-"] if (note or "-").strip() else [])


# Ends of the range


def test_an_empty_week_and_one_trial_render_in_every_form():
    empty = all_forms(digest([], upcoming=(), earlier=()))
    assert "None practised." in empty["text"]
    assert line_rows(empty["csv"]) == []
    Page(empty["html"])
    one = all_forms(digest([opened("m", MONDAY), trial("right", session="m")], earlier=()))
    assert "1/1" in one["text"]
    assert "1/1" in Page(one["html"]).text
    assert json.loads(one["json"])["lines"][0]["unaided"]["of"] == 1


def test_only_hindered_gestures_and_only_skipped_trials_still_render():
    entries = [
        opened("m", MONDAY),
        trial(0, target=WAVE, ticks=(Tick.BODY,), session="m"),
        trial(skipped=True, session="m", at=MONDAY + timedelta(minutes=1)),
    ]
    forms = all_forms(digest(entries, earlier=()))
    for form in (flat(forms["text"]), Page(forms["html"]).text):
        assert "hindered, not scored 1" in form
        assert "Sessions 1 of 5" in form
        assert "wave goodbye 0 - - - 0 0 0 0" in form
    assert json.loads(forms["json"])["lines"][0]["gesture"]["hindered"] == 1
    assert line_rows(forms["csv"])[0]["hindered"] == "1"


def test_probe_lines_are_named_in_text_and_page():
    probe = trial("right", of=asked(item_set=ItemSet.PROBE, top_level=0), session="m")
    forms = all_forms(digest([*week(), probe]))
    assert "Passive sentences (probe) 1/1" in flat(forms["text"])
    assert "pictures, probe" in Page(forms["html"]).text


def test_every_kind_of_foil_has_a_word_for_people():
    entries = [opened("m", MONDAY)] + [
        trial("wrong", of=asked(foils=(foil.value,)), session="m") for foil in Foil
    ]
    text = render(digest(entries), "text")
    for told in (
        "Roles exchanged: 1",
        "Other action: 1",
        "Other person or thing: 1",
        "Also small word or ending 1.",
    ):
        assert told in text
