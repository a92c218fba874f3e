from __future__ import annotations

import hashlib
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.catalogue import load
from drills.catalogue.material import content_hash
from drills.core.meanings import Relation
from drills.core.plans import LOCALES
from drills.core.problems import BadInput, Problem

FILES = [
    "lexicon/people.toml",
    "lexicon/verbs.toml",
    "lexicon/things.toml",
    "lexicon/adjuncts.toml",
    "lexicon/kin.toml",
    "cloze.toml",
    "cloze_words.toml",
    "gestures.toml",
]

OPTIONAL = ("container", "still", "tenses")


@pytest.fixture(scope="module")
def small(content: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """Two blocks of each file: enough to spoil, quick to load.

    What verbs are done to is left out, as most of those things are.
    """
    blocks = {
        name: "\n[[".join((content / name).read_text(encoding="utf-8").split("\n[[")[:3]) + "\n"
        for name in FILES
    }
    return {name: re.sub(r"^things = .*\n", "", text, flags=re.M) for name, text in blocks.items()}


def write(folder: Path, files: dict[str, str]) -> Path:
    (folder / "lexicon").mkdir(parents=True, exist_ok=True)
    for name, text in files.items():
        (folder / name).write_text(text, encoding="utf-8", newline="\n")
    return folder


def faults(folder: Path) -> tuple[Problem, ...]:
    """What is wrong with the content of a folder; nothing when it loads."""
    try:
        load(folder, locale="en-US")
    except BadInput as bad:
        return bad.problems
    return ()


@pytest.mark.parametrize("locale", LOCALES)
def test_the_shipped_content_loads(locale: str, content: Path) -> None:
    material = load(content, locale=locale)
    assert material.lexicon.locale == locale
    assert material.gestures
    places = {word for contrast in material.cloze["C3"].contrasts.values() for word in contrast}
    assert places <= {relation.value for relation in Relation}


def test_what_a_patient_reads_is_short_and_plain(content: Path) -> None:
    """At most eight words a sentence and forty letters a line; common practice, no source."""
    material = load(content, locale="en-US")
    texts = [each.hint for level in material.cloze.values() for each in level.sets]
    texts += [text for each in material.gestures.values() for text in (each.prompt, each.hold)]
    for text in texts:
        assert len(text) <= 40
        assert "!" not in text
        assert all(len(sentence.split()) <= 8 for sentence in re.split(r"[.?]", text))


def test_every_line_that_is_lost_or_doubled_is_told_with_its_file(
    small: dict[str, str], tmp_path: Path
) -> None:
    folder = write(tmp_path, small)
    load(folder, locale="en-US")
    refused = 0
    for name, text in small.items():
        lines = text.split("\n")
        for index, line in enumerate(lines):
            # Remarks, the rows of a long list, and keys that need not be there may go.
            if not line or line[0] in "# ]" or line.startswith(OPTIONAL):
                continue
            for spoilt in ([], [line, line], [line.replace(" = ", "x = ")], [line + " ]"]):
                if spoilt == [line]:
                    continue
                changed = "\n".join(lines[:index] + spoilt + lines[index + 1 :])
                write(folder, {name: changed})
                told = faults(folder)
                assert told, changed
                assert all(problem.line for problem in told), changed
                assert all(problem.where.endswith(name) for problem in told), changed
                refused += 1
        write(folder, {name: text})
    assert refused > 150


@given(data=st.data())
def test_content_with_any_letter_changed_loads_or_is_refused(
    data: st.DataObject, small: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    name = data.draw(st.sampled_from(FILES))
    text = small[name]
    at = data.draw(st.integers(0, len(text) - 1))
    letter = data.draw(st.sampled_from('"[]=\n#\\x,0'))
    folder = tmp_path_factory.getbasetemp() / "changed"
    write(folder, small | {name: text[:at] + letter + text[at + 1 :]})
    assert all(problem.line for problem in faults(folder))


def test_faults_of_all_files_are_told_together(copied: Path) -> None:
    for name in ("cloze.toml", "gestures.toml"):
        (copied / name).unlink()
    assert [problem.where for problem in faults(copied)] == [
        "content/cloze.toml",
        "content/gestures.toml",
    ]


def test_the_hash_is_sha_256_over_names_lengths_and_bytes(tmp_path: Path) -> None:
    (tmp_path / "b").mkdir()
    (tmp_path / "b" / "x.toml").write_bytes(b"k = 1\r\n")
    (tmp_path / "a.toml").write_bytes(b"")
    whole = hashlib.sha256(b"a.toml\x000\x00" + b"b/x.toml\x006\x00" + b"k = 1\n").hexdigest()
    assert content_hash(tmp_path) == whole[:16]


def test_the_hash_changes_with_any_file_and_any_name(copied: Path) -> None:
    seen = {content_hash(copied)}
    path = copied / "lexicon" / "people.toml"
    path.write_bytes(path.read_bytes() + b"\n")
    seen.add(content_hash(copied))
    path.rename(path.with_name("persons.toml"))
    seen.add(content_hash(copied))
    (copied / "lexicon" / "more.toml").touch()
    seen.add(content_hash(copied))
    assert len(seen) == 4
