"""content/spoken-function-words.tsv -> how often each small word is said."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from drills.core.problems import BadInput, Problem

FILE = "spoken-function-words.tsv"
_WORD, _SHARE = 1, 3


def read_word_counts(folder: Path) -> Mapping[str, float]:
    """Word -> its share of all closed-class words in transcribed speech, the commonest first.

    Source: the file's own first lines.   Raises: BadInput with file and line.
    """
    where = f"{folder.name}/{FILE}"
    try:
        lines = (folder / FILE).read_text(encoding="utf-8").splitlines()
    except OSError as error:
        raise BadInput(
            [Problem(where=where, message=f"It cannot be read: {error.strerror}.")]
        ) from None
    shares: dict[str, float] = {}
    for number, line in enumerate(lines, start=1):
        if line.startswith("#") or not line.strip():
            continue
        try:
            columns = line.split("\t")
            shares[columns[_WORD]] = float(columns[_SHARE])
        except (IndexError, ValueError):
            problem = Problem(
                where=where,
                line=number,
                message="This line has no word and share.",
                mend="Write rank, word, count and share, with tabs between them.",
            )
            raise BadInput([problem]) from None
    return shares
