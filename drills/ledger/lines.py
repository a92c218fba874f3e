"""Rows as numbered lines of a file, each with a checksum, and what is left of them after damage.

A line is `{"crc32":"cbf43926","line":7,"row":{...}}`. The checksum is CRC-32 (as in zlib, gzip and
PNG) of the bytes between it and the last brace: `"line":7,"row":{...}`. Lines count from 1, so that
one that is gone, moved or there twice is seen as well. Text in a row has its quotes escaped, so the
mark that begins a line can stand nowhere else, and reading finds its feet again after damage.
"""

from __future__ import annotations

import json
import re
import zlib
from bisect import bisect_left
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from enum import StrEnum
from typing import Any

Row = Mapping[str, Any]

_MARK = b'{"crc32":"'
_LINE = re.compile(rb'\{"crc32":"([0-9a-f]{8})",("line":([1-9][0-9]{0,8}),"row":(\{.*\}))\}', re.S)
_DECODER = json.JSONDecoder()
_ENCODER = json.JSONEncoder(separators=(",", ":"), allow_nan=False, check_circular=False)


def checksum(data: bytes, before: int = 0) -> str:
    """CRC-32 as eight lower-case hexadecimal digits."""
    return f"{zlib.crc32(data, before):08x}"


def line_of(row: Row, number: int) -> bytes:
    """Raises: TypeError or ValueError for what JSON cannot hold."""
    body = f'"line":{number},"row":{_ENCODER.encode(row)}'.encode("ascii")
    return b'{"crc32":"%08x",%b}\n' % (zlib.crc32(body), body)


def lines_of(rows: list[Row]) -> bytes:
    return b"".join(line_of(row, number) for number, row in enumerate(rows, start=1))


class Fault(StrEnum):
    """What damage is like; a torn line is the last one, cut off in its middle."""

    BYTES = "bytes"
    TORN = "torn"
    MISSING = "missing"
    MOVED = "moved"
    TWICE = "twice"


@dataclass(frozen=True, slots=True, kw_only=True)
class Damage:
    """line: where in the file, 1-based.   count: of bytes, or of lines that are missing."""

    fault: Fault
    line: int
    count: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """rows: in the order in which they were written, each with the line it stands on."""

    rows: tuple[tuple[int, Row], ...]
    damage: tuple[Damage, ...]
    size: int


@dataclass(frozen=True, slots=True)
class _Found:
    number: int
    row: Row
    line: int
    start: int
    end: int


def read_lines(data: bytes, *, first: int = 1) -> Reading:
    """Every row whose bytes are exactly what was written, and all that is wrong with the rest.

    first: the number that the first line has.
    """
    found, damage = _find(data)
    kept = _in_order(data, found, damage, first)
    damage.sort(key=lambda each: each.line)
    rows = tuple((each.line, each.row) for each in kept)
    return Reading(rows=rows, damage=tuple(damage), size=len(data))


def sound_rows(lines: Iterable[bytes]) -> Iterator[Row]:
    """Each row of a file that has no damage at all, one in memory at a time.

    lines: with their line ends.   Raises: ValueError where there is any damage.
    """
    for number, line in enumerate(lines, start=1):
        found, row = _whole(line[:-1])
        if row is None or found != number or not line.endswith(b"\n"):
            raise ValueError(f"line {number} is damaged")
        yield row


def next_number(data: bytes) -> int:
    """What a line that is put at the end of `data` is to be numbered: after the last whole one."""
    end = len(data)
    while end > 0:
        start = data.rfind(b"\n", 0, end - 1) + 1
        number, row = _whole(data[start:end].removesuffix(b"\n"))
        if row is not None:
            return number + 1
        end = start
    return 1


def _find(data: bytes) -> tuple[list[_Found], list[Damage]]:
    """Whole lines in the order in which they stand, and the bytes that belong to none."""
    found: list[_Found] = []
    damage: list[Damage] = []
    line = 1
    starts = _marks(data)
    # What stands before the first mark belongs to no row.
    for start, end in zip([0, *starts], [*starts, len(data)], strict=True):
        number, row, length = _row_at(data[start:end])
        rest = start + length
        ended = row is None or data[rest : rest + 1] == b"\n"
        if row is not None:
            found.append(_Found(number, row, line, start, rest))
            rest += ended
        if rest < end or not ended:
            at = line + data.count(b"\n", start, rest)
            torn = end == len(data) and not data.endswith(b"\n")
            fault = Fault.TORN if torn else Fault.BYTES
            damage.append(Damage(fault=fault, line=at, count=max(end - rest, 1)))
        line += data.count(b"\n", start, end)
    return found, damage


def _in_order(data: bytes, found: list[_Found], damage: list[Damage], first: int) -> list[_Found]:
    """`found` by number, each line once; adds to `damage` what was out of place."""
    numbers = sorted({each.number for each in found})
    broken = {each.line for each in damage}
    seen: set[bytes] = set()
    kept: list[_Found] = []
    expected, before = first, 1
    for each in found:
        line = data[each.start : each.end]
        if line in seen:
            damage.append(Damage(fault=Fault.TWICE, line=each.line))
            continue
        seen.add(line)
        kept.append(each)
        if each.number < expected:
            damage.append(Damage(fault=Fault.MOVED, line=each.line))
        # Damaged bytes in between say already that something is lost there.
        elif broken.isdisjoint(range(before, each.line + 1)):
            elsewhere = bisect_left(numbers, each.number) - bisect_left(numbers, expected)
            missing = each.number - expected - elsewhere
            if missing:
                damage.append(Damage(fault=Fault.MISSING, line=each.line, count=missing))
        expected, before = max(expected, each.number + 1), each.line
    return sorted(kept, key=lambda each: each.number)


def _marks(data: bytes) -> list[int]:
    starts = []
    at = data.find(_MARK)
    while at != -1:
        starts.append(at)
        at = data.find(_MARK, at + 1)
    return starts


def _row_at(piece: bytes) -> tuple[int, Row | None, int]:
    """The number and row that `piece` begins with and how many bytes they take; None for damage."""
    end = piece.find(b"\n")
    number, row = _whole(piece[:end]) if end != -1 else (0, None)
    if row is None and piece.startswith(_MARK):
        # The line end itself may be what is damaged or cut off.
        try:
            _, end = _DECODER.raw_decode(piece.decode("latin-1"))
        except (ValueError, RecursionError):
            return 0, None, 0
        number, row = _whole(piece[:end])
    return (0, None, 0) if row is None else (number, row, end)


def _whole(line: bytes) -> tuple[int, Row | None]:
    match = _LINE.fullmatch(line)
    if match is None or int(match[1], 16) != zlib.crc32(match[2]):
        return 0, None
    try:
        return int(match[3]), json.loads(match[4])
    except (ValueError, RecursionError):
        return 0, None
