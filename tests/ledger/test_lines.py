from __future__ import annotations

import json
import zlib

from drills.ledger.lines import (
    Fault,
    checksum,
    line_of,
    lines_of,
    next_number,
    read_lines,
    sound_rows,
)

ROWS = [{"n": 1}, {"text": 'a "quoted" {"crc32":" mark\n'}, {"deep": {"list": [1, None, "é"]}}]


def test_the_checksum_gives_the_published_check_value() -> None:
    # Source: the "check" of CRC-32/ISO-HDLC in the CRC RevEng catalogue, CRC of "123456789".
    assert checksum(b"123456789") == "cbf43926"


def test_a_line_is_json_that_any_reader_can_check() -> None:
    for number, row in enumerate(ROWS, start=1):
        line = line_of(row, number)
        read = json.loads(line)
        assert read["row"] == row
        assert read["line"] == number
        assert int(read["crc32"], 16) == zlib.crc32(line[len('{"crc32":"cbf43926",') : -2])


def test_lines_are_read_back_with_their_numbers() -> None:
    reading = read_lines(lines_of(ROWS))
    assert reading.rows == tuple(enumerate(ROWS, start=1))
    assert reading.damage == ()


def test_a_lost_line_end_loses_neither_of_its_neighbours() -> None:
    lines = lines_of(ROWS).splitlines(keepends=True)
    reading = read_lines(lines[0][:-1] + lines[1] + lines[2])
    assert [row for _, row in reading.rows] == ROWS
    assert [damage.fault for damage in reading.damage] == [Fault.BYTES]


def test_what_stands_before_the_first_line_is_damage() -> None:
    reading = read_lines(b"\0\0\0\n" + line_of(ROWS[0], 1))
    assert reading.rows == ((2, ROWS[0]),)
    assert [(d.fault, d.line, d.count) for d in reading.damage] == [(Fault.BYTES, 1, 4)]


MANY = [{"n": number} for number in range(1, 9)]
LINES = lines_of(MANY).splitlines(keepends=True)


def faults(lines: list[bytes]) -> tuple[list[int], list[tuple[str, int, int]]]:
    reading = read_lines(b"".join(lines))
    rows = [row["n"] for _, row in reading.rows]
    return rows, [(d.fault.value, d.line, d.count) for d in reading.damage]


def test_lines_that_are_gone_are_found_and_counted() -> None:
    for first in range(8):
        for last in range(first, 7):
            rows, found = faults(LINES[:first] + LINES[last + 1 :])
            assert rows == [n for n in range(1, 9) if not first < n <= last + 1]
            assert found == [("missing", first + 1, last - first + 1)]


def test_lines_in_another_order_are_found_and_put_in_order() -> None:
    for one in range(8):
        for other in range(one + 1, 8):
            changed = list(LINES)
            changed[one], changed[other] = changed[other], changed[one]
            rows, found = faults(changed)
            assert rows == list(range(1, 9))
            assert found
            assert {fault for fault, _, _ in found} == {"moved"}


def test_a_line_that_stands_there_twice_counts_once() -> None:
    for at in range(8):
        rows, found = faults([*LINES[: at + 1], *LINES[at:]])
        assert rows == list(range(1, 9))
        assert found == [("twice", at + 2, 1)]


def test_another_line_under_the_same_number_is_kept_and_told() -> None:
    rows, found = faults([*LINES[:4], line_of({"n": 40}, 4), *LINES[4:]])
    assert rows == [1, 2, 3, 4, 40, 5, 6, 7, 8]
    assert found == [("moved", 5, 1)]


def test_a_number_out_of_all_bounds_costs_nothing() -> None:
    rows, found = faults([*LINES, line_of({"n": 9}, 999_999_999)])
    assert rows == list(range(1, 10))
    assert found == [("missing", 9, 999_999_990)]


def test_sound_rows_are_those_of_a_file_in_which_reading_finds_no_damage() -> None:
    data = lines_of(MANY)
    assert list(sound_rows(LINES)) == MANY
    changed = [data[:cut] for cut in range(1, len(data))]
    changed += [bytes([*data[:at], data[at] ^ 1, *data[at + 1 :]]) for at in range(len(data))]
    changed += [b"".join([*LINES[:at], *LINES[at + 1 :]]) for at in range(7)]
    changed += [b"".join([*LINES[: at + 1], *LINES[at:]]) for at in range(8)]
    for each in changed:
        try:
            rows = list(sound_rows(each.splitlines(keepends=True)))
        except ValueError:
            assert read_lines(each).damage
        else:
            # Cut off at the end of a line: what is there is sound.
            assert not read_lines(each).damage
            assert rows == MANY[: len(rows)]


def test_a_line_is_numbered_after_the_last_whole_one() -> None:
    data = lines_of(MANY)
    ends = [len(b"".join(LINES[:number])) for number in range(9)]
    for cut in range(len(data) + 1):
        # The line end is no part of a row.
        assert next_number(data[:cut]) == sum(end - 1 <= cut for end in ends[1:]) + 1
    assert next_number(LINES[6]) == 8
    assert next_number(data + b"\0\0\n") == 9
