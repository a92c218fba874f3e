"""The guide as its tests read it: chapters, sections, passages, sentences, and their faults."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import textstat
from markdown_it import MarkdownIt
from markdown_it.token import Token
from rich.console import Console
from rich.markdown import Markdown

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
