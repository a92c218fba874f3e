from __future__ import annotations

import json
import zlib

from drills.ledger.lines import checksum, line_of, read_lines

ROWS = [{"n": 1}, {"text": 'a "quoted" {"crc32":" mark\n'}, {"deep": {"list": [1, None, "é"]}}]


def test_the_checksum_gives_the_published_check_value() -> None:
    # Source: the "check" of CRC-32/ISO-HDLC in the CRC RevEng catalogue, CRC of "123456789".
    assert checksum(b"123456789") == "cbf43926"


def test_a_line_is_json_that_any_reader_can_check() -> None:
    for row in ROWS:
        line = line_of(row)
        read = json.loads(line)
        assert read["row"] == row
        body = line[line.index(b'"row":') + 6 : -2]
        assert int(read["crc32"], 16) == zlib.crc32(body)


def test_lines_are_read_back_with_their_numbers() -> None:
    reading = read_lines(b"".join(map(line_of, ROWS)))
    assert reading.rows == tuple(enumerate(ROWS, start=1))
    assert reading.damage == ()


def test_a_lost_line_end_loses_neither_of_its_neighbours() -> None:
    lines = [line_of(row) for row in ROWS]
    reading = read_lines(lines[0][:-1] + lines[1] + lines[2])
    assert [row for _, row in reading.rows] == ROWS
    (damage,) = reading.damage
    assert not damage.torn


def test_what_stands_before_the_first_line_is_damage() -> None:
    reading = read_lines(b"\0\0\0\n" + line_of(ROWS[0]))
    assert reading.rows == ((2, ROWS[0]),)
    assert [(d.line, d.start, d.end) for d in reading.damage] == [(1, 0, 4)]
