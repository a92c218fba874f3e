"""The content folder -> Material, or every fault in it at once."""

from __future__ import annotations

import hashlib
from pathlib import Path

from drills.catalogue.cloze import read_cloze
from drills.catalogue.cloze_words import read_cloze_words
from drills.catalogue.gestures import read_gestures
from drills.catalogue.lexicon import read_lexicon
from drills.core.material import Material
from drills.core.problems import BadInput, Problem

_HASH_LENGTH = 16


def load(folder: Path, *, locale: str) -> Material:
    """Everything that the content files say, checked.

    folder: the content folder.   Raises: BadInput with every fault, its file and its line.
    """
    problems: list[Problem] = []
    lexicon = read_lexicon(folder, locale=locale, problems=problems)
    cloze = read_cloze(folder, problems)
    cloze_words = read_cloze_words(folder, lexicon, problems)
    gestures = read_gestures(folder, problems)
    if problems:
        raise BadInput(problems)
    return Material(
        lexicon=lexicon,
        cloze=cloze,
        cloze_words=cloze_words,
        gestures=gestures,
        content_hash=content_hash(folder),
    )


def content_hash(folder: Path) -> str:
    """16 hexadecimal digits (64 bits of SHA-256) that change when any content file does."""
    digest = hashlib.sha256()
    files = {path.relative_to(folder).as_posix(): path for path in folder.rglob("*.toml")}
    for name in sorted(files):
        # A checkout with other line ends is the same content.
        body = files[name].read_bytes().replace(b"\r\n", b"\n")
        digest.update(f"{name}\0{len(body)}\0".encode() + body)
    return digest.hexdigest()[:_HASH_LENGTH]
