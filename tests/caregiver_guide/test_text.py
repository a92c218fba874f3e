"""The caregiver guide keeps its rules: short plain sentences, no promise, nothing left unsaid."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
import textstat
from markdown_it import MarkdownIt
from markdown_it.token import Token
from rich.console import Console
from rich.markdown import Markdown
from scipy.stats import binomtest

from drills.catalogue import load_guide
from drills.core.gestures import GestureClass, Tick
from drills.core.items import Kind

FOLDER = Path(__file__).parents[2] / "caregiver_guide"
FILES = sorted(FOLDER.iterdir())
KEYS = (
    "getting-ready",
    "a-session",
    "helping",
    "gestures",
    "when-to-stop",
    "warning-signs",
    "reading-the-week",
    "your-own-rest",
)

# Clinical brief, text rules for caregivers: common practice, no source. The grade: patient
# materials at 6th grade at most (Badarudeen & Sabharwal 2010).
WORDS_A_SENTENCE = 15
GRADE = 6.0
COLUMNS = 66
LINES_A_SECTION = 15
# One idea a bullet, in what can be counted.
SENTENCES_A_BULLET = 3
WORDS_A_BULLET = 20

# Papers whose abstract or text was read for the clinical brief; no other may be named.
READ = {
    "Brady and others, 2016",  # Cochrane CD000425
    "Cumming and others, 2016",  # Int J Stroke 11:968
    "Dromerick and others, 2008",  # Arch Phys Med Rehabil 89:1589
    "Helm-Estabrooks and others, 1998",  # Aphasiology 12:689
    "Kagan and others, 2001",  # JSLHR 44:624
    "Nandan and others, 2023",  # J Int Med Res 51
    "Rose and others, 2013",  # Aphasiology 27:1090
    "Rowe and others, 2013",  # Biomed Res Int 719096
    "Simmons-Mackie and others, 2016",  # Arch Phys Med Rehabil 97:2202
}

FORBIDDEN = (
    r"cur(?:e|es|ed|ing|able)",
    r"diagnos\w*",
    r"prognos\w*",
    r"(?:clinically )?proven?",
    r"guarantee\w*",
    r"normal(?: range)?",
    r"brain[ -]training",
    r"rewir\w*",
    r"A\.?I\.?",
    r"sever(?:e|ity)",
    r"mild|moderate",
    r"will (?:get better|recover|improve)",
    r"full recovery",
    r"streaks?|hearts?|mascots?|badges?|trophy|trophies",
    r"patient|victim|suffer\w*|sufferer",
    r"not un\w+",
    r"911|999|112",
)


@dataclass(frozen=True)
class Section:
    heading: str
    lines: tuple[str, ...]


def name(file: Path) -> str:
    return file.stem


def chapter(key: str) -> str:
    return (FOLDER / f"{KEYS.index(key) + 1:02d}-{key}.md").read_text(encoding="utf-8")


def section(key: str, heading: str) -> str:
    (found,) = [part for part in sections(chapter(key)) if part.heading == heading]
    return "\n".join(found.lines)


def parsed(text: str) -> list[Token]:
    return MarkdownIt("commonmark").parse(text)


def sections(text: str) -> list[Section]:
    """What stands below each heading."""
    parts = re.split(r"^#+ (.+)$", text, flags=re.MULTILINE)
    return [
        Section(heading=heading, lines=tuple(body.strip().splitlines()))
        for heading, body in zip(parts[1::2], parts[2::2], strict=True)
    ]


def is_source(passage: str) -> bool:
    return re.match(r"Sources?: ", passage) is not None


def passages(text: str, *, inside: str | None = None) -> list[str]:
    """Paragraphs and bullets as plain text; `inside` keeps only those within such a token."""
    found: list[str] = []
    depth = 0
    in_heading = False
    for token in parsed(text):
        if token.type == "heading_open":
            in_heading = True
        elif token.type == "heading_close":
            in_heading = False
        elif inside is not None and token.type == f"{inside}_open":
            depth += 1
        elif inside is not None and token.type == f"{inside}_close":
            depth -= 1
        elif token.type == "inline" and not in_heading and (inside is None or depth):
            found.append(plain(token))
    return found


def plain(token: Token) -> str:
    pieces = (
        " " if child.type in ("softbreak", "hardbreak") else child.content
        for child in token.children or []
    )
    return "".join(pieces)


def prose(text: str) -> list[str]:
    return [passage for passage in passages(text) if not is_source(passage)]


def sentences(passage: str) -> list[str]:
    return re.split(r"(?<=[.?!])\s+|(?<=[.?!][\"')])\s+", passage)


def words(sentence: str) -> list[str]:
    return [word for word in sentence.split() if re.search(r"\w", word)]


def long_sentences(text: str) -> list[str]:
    return [
        sentence
        for passage in prose(text)
        for sentence in sentences(passage)
        if len(words(sentence)) > WORDS_A_SENTENCE
    ]


def crowded_bullets(text: str) -> list[str]:
    return [
        bullet
        for bullet in passages(text, inside="list_item")
        if len(sentences(bullet)) > SENTENCES_A_BULLET or len(words(bullet)) > WORDS_A_BULLET
    ]


def forbidden(text: str) -> list[str]:
    pattern = r"\b(?:" + "|".join(FORBIDDEN) + r")\b"
    return [found.group() for found in re.finditer(pattern, text, flags=re.IGNORECASE)]


def raw_html(text: str) -> list[str]:
    return [token.content for token in every_token(text) if token.type.startswith("html")]


def every_token(text: str) -> Iterator[Token]:
    for token in parsed(text):
        yield token
        yield from token.children or []


def rendered_lines(part: Section) -> list[str]:
    console = Console(width=COLUMNS, color_system=None)
    with console.capture() as capture:
        console.print(Markdown("\n".join(part.lines)))
    return [line.rstrip() for line in capture.get().strip("\n").splitlines()]


def explained(text: str, term: str) -> bool:
    """A bullet opens with the bold `term` and then says what it is, in three words or more."""
    found = re.search(rf"^- \*\*{re.escape(term)}\*\*:? (.+)$", text, flags=re.MULTILINE)
    return found is not None and len(words(found.group(1))) >= 3


def grade(text: str) -> float:
    return float(textstat.flesch_kincaid_grade(" ".join(prose(text))))


def formula_grade(word_count: int, syllable_count: int, sentence_count: int) -> float:
    """Flesch-Kincaid grade (Kincaid 1975, from memory)."""
    return 0.39 * word_count / sentence_count + 11.8 * syllable_count / word_count - 15.59


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


# What must be said


@pytest.mark.parametrize("kind", Kind)
def test_every_kind_of_exercise_is_explained(kind: Kind) -> None:
    assert explained(section("a-session", "The five kinds of exercise"), kind.value)


def test_the_number_of_kinds_is_the_one_that_the_heading_says() -> None:
    assert len(Kind) == 5


@pytest.mark.parametrize("tick", Tick)
def test_every_tick_is_explained(tick: Tick) -> None:
    assert explained(chapter("gestures"), tick.value)


def test_no_tick_is_explained_that_is_not_there() -> None:
    ticks = [
        term
        for part in sections(chapter("gestures"))
        if part.heading.startswith("Ticks")
        for term in re.findall(r"^- \*\*(.+?)\*\*", "\n".join(part.lines), flags=re.MULTILINE)
    ]
    assert sorted(ticks) == sorted(Tick)


@pytest.mark.parametrize("gesture_class", GestureClass)
def test_every_sort_of_gesture_is_explained(gesture_class: GestureClass) -> None:
    assert explained(section("gestures", "The four sorts of gesture"), gesture_class.value)


@pytest.mark.parametrize("score", range(4))
def test_every_score_is_explained(score: int) -> None:
    assert explained(section("gestures", "The score"), str(score))


@pytest.mark.parametrize("key", ["1 2 3 4", "Space", "H", "P", "G", "E", "S"])
def test_every_key_is_explained(key: str) -> None:
    assert explained(section("a-session", "The keys"), key)


@pytest.mark.parametrize(
    "phrase",
    [
        "face",
        "arm or a leg",
        "Speech is worse",
        "understand less",
        "sight",
        "balance",
        "headache",
        "suddenly",
    ],
)
def test_every_new_sign_of_a_stroke_is_named(phrase: str) -> None:
    assert phrase in section("warning-signs", "New signs of a stroke")


@pytest.mark.parametrize(
    ("heading", "phrase"),
    [
        ("What to do", "Call the emergency number now."),
        ("What to do", "number on the card. Your plan holds it."),
        ("What to do", "Note the time."),
        ("What to do", "last well"),
        ("Aphasia can hide a new stroke", "Suddenly worse than usual counts."),
        ("A seizure", "time when it starts"),
        ("A seizure", "Put nothing in the mouth."),
        ("A seizure", "roll them on to their side"),
        ("When a seizure needs the emergency number", "first one ever"),
        ("When a seizure needs the emergency number", "more than five minutes"),
        ("When a seizure needs the emergency number", "comes back"),
        ("When a seizure needs the emergency number", "hurt"),
        ("When a seizure needs the emergency number", "wake up"),
        ("Choking", "no food or drink"),
        ("Choking", "emergency number"),
        ("Check the card today", "therapist"),
    ],
)
def test_what_to_do_in_an_emergency_is_said(heading: str, phrase: str) -> None:
    assert phrase in section("warning-signs", heading)


@pytest.mark.parametrize(
    "thing",
    ["blades", "needles", "razors", "flames", "irons", "hot drinks", "glass", "medicines", "power"],
)
def test_everything_unsafe_is_named_as_never_to_be_used(thing: str) -> None:
    assert thing in section("gestures", "What never to use")


def test_the_example_of_luck_agrees_with_the_binomial() -> None:
    """Seven of twelve is no news with two pictures, ten of twelve is (scipy's exact test)."""
    guessing = section("reading-the-week", "Guessing")
    assert "seven of twelve can be" in guessing
    assert "Ten of twelve is hard" in guessing
    assert binomtest(7, 12, 0.5, alternative="greater").pvalue > 0.05
    assert binomtest(10, 12, 0.5, alternative="greater").pvalue < 0.05


@every_chapter
def test_every_chapter_leaves_the_decision_to_those_whose_it_is(file: Path) -> None:
    assert re.search(r"therapist|care team", file.read_text(encoding="utf-8"))


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
