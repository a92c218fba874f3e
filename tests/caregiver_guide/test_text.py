"""The caregiver guide keeps its rules: short plain sentences, no promise, pages that fit."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import textstat

from drills.catalogue import load_guide
from tests.caregiver_guide.reading import (
    COLUMNS,
    FILES,
    FOLDER,
    GRADE,
    KEYS,
    LINES_A_SECTION,
    READ,
    crowded_bullets,
    every_token,
    explained,
    forbidden,
    formula_grade,
    grade,
    is_source,
    long_sentences,
    name,
    passages,
    prose,
    raw_html,
    rendered_lines,
    sections,
    sentences,
    words,
)

every_chapter = pytest.mark.parametrize("file", FILES, ids=name)


# Chapters


def test_the_chapters_come_in_order_each_with_its_key() -> None:
    assert [file.name for file in FILES] == [
        f"{number:02d}-{key}.md" for number, key in enumerate(KEYS, start=1)
    ]


@every_chapter
def test_a_chapter_opens_with_its_only_title(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    headings = re.findall(r"^(#+) ", text, flags=re.MULTILINE)
    assert text.startswith("# ")
    assert headings.count("#") == 1
    assert set(headings) == {"#", "##"}


def test_the_program_loads_every_chapter_in_order() -> None:
    chapters = load_guide(FOLDER)
    assert tuple(each.key for each in chapters) == KEYS
    assert [each.title for each in chapters] == [
        sections(file.read_text(encoding="utf-8"))[0].heading for file in FILES
    ]
    assert len({each.title for each in chapters}) == len(KEYS)


def test_every_chapter_that_the_guide_points_to_is_there() -> None:
    whole = "\n".join(file.read_text(encoding="utf-8") for file in FILES)
    named = re.findall(r"`drills guide ([\w-]+)`", whole)
    assert named
    assert set(named) <= set(KEYS)


# Plain words


@every_chapter
def test_no_sentence_is_longer_than_fifteen_words(file: Path) -> None:
    assert long_sentences(file.read_text(encoding="utf-8")) == []


@every_chapter
def test_a_chapter_reads_at_sixth_grade_or_below(file: Path) -> None:
    assert grade(file.read_text(encoding="utf-8")) <= GRADE


@every_chapter
def test_the_grade_holds_with_our_own_count_of_sentences(file: Path) -> None:
    """The library drops sentences of one or two words; counting them must not hide a hard text."""
    passages_ = prose(file.read_text(encoding="utf-8"))
    said = [sentence for passage in passages_ for sentence in sentences(passage)]
    counted = sum(len(words(sentence)) for sentence in said)
    syllables = sum(textstat.syllable_count(sentence) for sentence in said)
    ours = formula_grade(counted, syllables, len(said))
    assert ours <= GRADE
    assert ours == pytest.approx(grade(file.read_text(encoding="utf-8")), abs=1.0)


@every_chapter
def test_every_passage_ends_as_a_sentence_does(file: Path) -> None:
    """Else two bullets would be counted as one sentence, or a sentence would be missed."""
    for passage in prose(file.read_text(encoding="utf-8")):
        assert passage.rstrip('"').endswith((".", "?", ":")), passage


@every_chapter
def test_a_bullet_holds_one_idea(file: Path) -> None:
    assert crowded_bullets(file.read_text(encoding="utf-8")) == []


@every_chapter
def test_nothing_is_promised_named_or_gushed(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    assert forbidden(text) == []
    assert "!" not in text


@every_chapter
def test_a_source_is_one_that_was_read(file: Path) -> None:
    for passage in passages(file.read_text(encoding="utf-8")):
        if is_source(passage):
            named = passage.partition(": ")[2].removesuffix(".").split("; ")
            assert set(named) <= READ


def test_every_paper_that_was_read_for_the_guide_is_named_in_it() -> None:
    whole = "\n".join(file.read_text(encoding="utf-8") for file in FILES)
    assert [source for source in sorted(READ) if source not in whole] == []


@every_chapter
def test_a_number_of_people_has_a_source(file: Path) -> None:
    counts = (
        r"\bin (?:three|ten|100)\b|\d+ of \d+|\d+ studies|half of people|In one (?:study|trial)"
    )
    for part in sections(file.read_text(encoding="utf-8")):
        body = "\n".join(part.lines)
        if re.search(counts, body):
            assert re.search(r"^Sources?: ", body, flags=re.MULTILINE), part.heading


# The page


@every_chapter
def test_a_line_fits_the_page(file: Path) -> None:
    lines = file.read_text(encoding="utf-8").splitlines()
    assert [line for line in lines if len(line) > COLUMNS] == []


@every_chapter
def test_a_section_fits_one_page_as_rendered(file: Path) -> None:
    for part in sections(file.read_text(encoding="utf-8")):
        lines = rendered_lines(part)
        assert 0 < len(lines) <= LINES_A_SECTION, part.heading
        assert max(map(len, lines)) <= COLUMNS


@every_chapter
def test_a_chapter_is_plain_markdown(file: Path) -> None:
    text = file.read_text(encoding="utf-8")
    assert raw_html(text) == []
    assert text.isascii()
    assert {token.type for token in every_token(text)}.isdisjoint({"image", "link_open", "fence"})


# The checks themselves


@pytest.mark.parametrize(
    ("word_count", "syllable_count", "expected"), [(6, 6, -1.45), (8, 10, 2.28), (12, 16, 4.82)]
)
def test_the_library_and_the_formula_agree_with_the_worked_grades(
    word_count: int, syllable_count: int, expected: float
) -> None:
    """Figures: clinical brief, section 7, computed there by hand from the formula."""
    doubles = syllable_count - word_count
    sentence = " ".join(["garden"] * doubles + ["cup"] * (word_count - doubles)) + "."
    assert textstat.syllable_count(sentence) == syllable_count
    assert textstat.flesch_kincaid_grade(sentence) == pytest.approx(expected, abs=0.005)
    assert formula_grade(word_count, syllable_count, 1) == pytest.approx(expected, abs=0.005)


def test_a_hard_text_is_graded_above_the_limit() -> None:
    hard = "Interdisciplinary neurological rehabilitation necessitates individualised goals.\n"
    assert grade(hard) > GRADE


def test_a_sentence_of_sixteen_words_is_found() -> None:
    fine = "- " + " ".join(["word"] * 15) + ". Then a short one.\n"
    assert long_sentences(fine) == []
    assert long_sentences(fine.replace("word", "word word", 1)) != []


@pytest.mark.parametrize(
    "fault",
    [
        "This will cure it.",
        "It diagnoses aphasia.",
        "It is clinically proven.",
        "He is in the normal range.",
        "Keep your streak.",
        "It is not unusual.",
        "Call 911.",
    ],
)
def test_a_forbidden_wording_is_found(fault: str) -> None:
    assert forbidden(fault)


def test_a_secure_and_a_cursor_are_no_cure() -> None:
    assert forbidden("Move the cursor. The folder is secure. Nothing is obscured.") == []


@pytest.mark.parametrize("fault", ["<div>x</div>\n", "A <b>bold</b> word.\n", "<!-- x -->\n"])
def test_raw_html_is_found(fault: str) -> None:
    assert raw_html(fault)


def test_a_crowded_bullet_is_found() -> None:
    assert crowded_bullets("- One. Two. Three. Four.\n") == ["One. Two. Three. Four."]


def test_a_term_without_words_is_not_explained() -> None:
    assert not explained("- **grip**:\n- **size**: big\n", "grip")
    assert not explained("- **grip**:\n- **size**: big\n", "size")
