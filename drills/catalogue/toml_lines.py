"""TOML values together with the lines on which they stand.

The standard reader gives lines only for broken syntax. So a scanner finds the headers and keys,
and a file in which it and the reader do not see the same is refused: no line is ever guessed.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from drills.core.problems import BadInput, Problem

_QUOTES = re.compile(r'"""|\'\'\'|"(?:\\.|[^"\\])*"|\'[^\']*\'|#.*')
_HEADER = re.compile(r"(\[\[?)\s*([A-Za-z0-9_-]+)\s*\]\]?")
_KEY = re.compile(r"([A-Za-z0-9_-]+)\s*=")
_AT_LINE = re.compile(r"\s*\(at line (\d+), column \d+\)|\s*\(at end of document\)")


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One `[name]` or `[[name]]` with its keys; name "" for the keys before any header.

    line: of the header, 1-based, None for "".   lines: of each key.
    """

    name: str
    line: int | None
    repeated: bool
    values: Mapping[str, Any]
    lines: Mapping[str, int]

    def line_of(self, key: str) -> int | None:
        return self.lines.get(key, self.line)


@dataclass(slots=True)
class _Seen:
    name: str
    line: int | None
    repeated: bool
    lines: dict[str, int] = field(default_factory=dict)


def read_text(path: Path, where: str) -> str:
    """The text of a file.   Raises: BadInput when it is not there or is not UTF-8."""
    try:
        # Editors on Windows may put a mark before the first letter.
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError:
        raise BadInput(
            [Problem(where=where, message="This file is not UTF-8 text.", mend="Save it as UTF-8.")]
        ) from None
    except OSError as error:
        reason = error.strerror or str(error)
        raise BadInput(
            [
                Problem(
                    where=where,
                    message=f"This file cannot be read ({reason}).",
                    mend="Check that it is there.",
                )
            ]
        ) from None


def read_blocks(text: str, where: str) -> tuple[Block, ...]:
    """Every block in the order of the file, the nameless one first.

    Raises: BadInput for broken syntax and for what would make a line uncertain.
    """
    # The reader takes both line ends for one; so must the scanner.
    text = text.replace("\r\n", "\n")
    try:
        values = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise BadInput([_broken(str(error), text, where)]) from None
    except ValueError:
        # Python reads no number of more than some thousand digits.
        raise BadInput(
            [Problem(where=where, message="A number is too long.", mend="Shorten it.")]
        ) from None
    except RecursionError:
        raise BadInput(
            [Problem(where=where, message="The brackets are too deep.", mend="Use flat lists.")]
        ) from None
    return _paired(values, _scan(text, where), where)


def _broken(message: str, text: str, where: str) -> Problem:
    at = _AT_LINE.search(message)
    line = None
    if at is not None:
        line = int(at[1]) if at[1] else text.rstrip("\n").count("\n") + 1
    return Problem(
        where=where,
        line=line,
        message=f"This is not valid TOML: {_AT_LINE.sub('', message)}.",
        mend="Compare this line with the lines around it.",
    )


def _scan(text: str, where: str) -> list[_Seen]:
    seen = [_Seen("", None, repeated=False)]
    depth = 0
    for number, line in enumerate(text.split("\n"), start=1):
        quotes = _QUOTES.findall(line)
        if '"""' in quotes or "'''" in quotes:
            problem = Problem(
                where=where,
                line=number,
                message="Text over several lines is not read here.",
                mend='Write it on one line between two " marks.',
            )
            raise BadInput([problem])
        bare = _QUOTES.sub(_without_inside, line).strip()
        if depth == 0 and (header := _HEADER.fullmatch(bare)):
            seen.append(_Seen(header[2], number, repeated=header[1] == "[["))
        elif depth == 0 and (key := _KEY.match(bare)):
            seen[-1].lines[key[1]] = number
        depth += bare.count("[") - bare.count("]")
    return seen


def _without_inside(quoted: re.Match[str]) -> str:
    return "" if quoted[0].startswith("#") else '""'


def _paired(values: dict[str, Any], seen: list[_Seen], where: str) -> tuple[Block, ...]:
    waiting = {
        key: list(value) if _is_blocks(value) else [value]
        for key, value in values.items()
        if _is_blocks(value) or isinstance(value, dict)
    }
    loose = {key: value for key, value in values.items() if key in seen[0].lines}
    blocks = [_block(seen[0], loose, where)]
    for each in seen[1:]:
        left = waiting.get(each.name)
        if not left or each.repeated != _is_blocks(values[each.name]):
            raise BadInput([_uncertain(where, each.line)])
        blocks.append(_block(each, left.pop(0), where))
    over = [key for key, left in waiting.items() if left and key not in loose]
    if over or set(values) != set(loose) | {each.name for each in seen[1:]}:
        raise BadInput([_uncertain(where, None)])
    return tuple(blocks)


def _is_blocks(value: object) -> bool:
    return isinstance(value, list) and bool(value) and all(isinstance(row, dict) for row in value)


def _block(seen: _Seen, values: Mapping[str, Any], where: str) -> Block:
    if set(values) != set(seen.lines):
        raise BadInput([_uncertain(where, seen.line)])
    return Block(
        name=seen.name,
        line=seen.line,
        repeated=seen.repeated,
        values=values,
        lines=seen.lines,
    )


def _uncertain(where: str, line: int | None) -> Problem:
    return Problem(
        where=where,
        line=line,
        message="The lines of this file cannot be told apart.",
        mend="Use plain [name] or [[name]] headers and one `key = value` a line.",
    )
