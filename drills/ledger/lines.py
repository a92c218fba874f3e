"""Rows as lines of a file, each with a checksum, and what can be read back from damaged bytes.

A line is `{"crc32":"cbf43926","row":{...}}`: the checksum is CRC-32 (as in zlib, gzip and PNG) of
the row as canonical JSON: ASCII, keys sorted, no spaces. Text in a row has its quotes escaped, so
the mark that begins a line can stand nowhere else, and reading finds its feet again after damage.
"""

from __future__ import annotations

import json
import zlib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

Row = Mapping[str, Any]

_MARK = b'{"crc32":"'
_DECODER = json.JSONDecoder()


def checksum(body: bytes) -> str:
    """CRC-32 as eight lower-case hexadecimal digits."""
    return f"{zlib.crc32(body):08x}"


def canonical(row: Row) -> str:
    """Raises: TypeError or ValueError for what JSON cannot hold."""
    return json.dumps(row, sort_keys=True, separators=(",", ":"), allow_nan=False)


def line_of(row: Row) -> bytes:
    body = canonical(row)
    return f'{{"crc32":"{checksum(body.encode())}","row":{body}}}\n'.encode()


@dataclass(frozen=True, slots=True, kw_only=True)
class Damage:
    """Bytes that are no whole line.

    line: 1-based.   torn: the file ends in the middle of it, as after a loss of power.
    """

    line: int
    start: int
    end: int
    torn: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """rows: with the number of the line each stands on."""

    rows: tuple[tuple[int, Row], ...]
    damage: tuple[Damage, ...]


def read_lines(data: bytes) -> Reading:
    """Every row whose bytes are exactly what was written, and where the other bytes are."""
    rows: list[tuple[int, Row]] = []
    damage: list[Damage] = []
    line = 1
    starts = _marks(data)
    # What stands before the first mark belongs to no row.
    for start, end in zip([0, *starts], [*starts, len(data)], strict=True):
        row, length = _row_at(data[start:end])
        if row is not None:
            rows.append((line, row))
        rest = start + length
        ended = row is None or data[rest : rest + 1] == b"\n"
        if row is not None and ended:
            rest += 1
        if rest < end or not ended:
            at = line + data.count(b"\n", start, rest)
            torn = end == len(data) and not data.endswith(b"\n")
            damage.append(Damage(line=at, start=rest, end=end, torn=torn))
        line += data.count(b"\n", start, end)
    return Reading(rows=tuple(rows), damage=tuple(damage))


def _marks(data: bytes) -> list[int]:
    starts = []
    at = data.find(_MARK)
    while at != -1:
        starts.append(at)
        at = data.find(_MARK, at + 1)
    return starts


def _row_at(piece: bytes) -> tuple[Row | None, int]:
    """The row that `piece` begins with and how many bytes it takes; None, 0 for damage.

    It counts only when writing it again gives the same bytes: then not one of them has changed.
    """
    try:
        read, length = _DECODER.raw_decode(piece.decode("latin-1"))
        row = read["row"]
        whole = line_of(row)[:-1] == piece[:length]
    except (ValueError, TypeError, KeyError, RecursionError):
        return None, 0
    return (row, length) if whole else (None, 0)
