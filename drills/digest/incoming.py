"""Digests that come from outside: nothing in them is trusted."""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Collection
from typing import Any, NoReturn

from drills.core.problems import BadInput
from drills.digest.as_json import DIGEST_FORMAT

MOST_BYTES = 16_000_000
"""Twice a year of five sessions a week of 60 trials, at the 525 bytes an answer that were measured.

A file is read whole, so a larger one could fill the memory.
"""

PAGE = "page"
"""The field of a sealed digest that holds its page."""

# Whoever has the public key can seal anything. These words come before all of the page: its
# scripts do not run and nothing is fetched, whatever it asks for.
_GUARD = (
    "<!DOCTYPE html>\n"
    '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; '
    "style-src 'unsafe-inline'; img-src data:; form-action 'none'; base-uri 'none'\">\n"
)


def read_digest(data: bytes, where: str) -> dict[str, Any]:
    """The JSON of a digest, its format known and no more.

    where: the file, for the sentence.   Raises: BadInput.
    """
    return _checked(_text(data, where), where, _DECODER.decode)


def read_fields(data: bytes, where: str, names: Collection[str]) -> dict[str, Any]:
    """The fields `names` of a digest; the rest is not read once these are found.

    Most of a digest is answers and days to come, and of many digests none of that is asked for.
    The file must still end as a digest does.   Raises: BadInput.
    """
    wanted = {*names, "format", "dose"}
    return _checked(_text(data, where), where, lambda text: _fields(text, wanted))


def _checked(text: str, where: str, read: Callable[[str], Any]) -> dict[str, Any]:
    if _is_page(text):
        raise BadInput(f"{where} holds a page to read, not the numbers of a digest.")
    try:
        value = read(text)
    except (ValueError, RecursionError):
        raise BadInput(f"{where} is damaged, or no digest. Ask for it again.") from None
    written = value.get("format") if isinstance(value, dict) else None
    if not isinstance(value, dict) or type(written) is not int or "dose" not in value:
        raise BadInput(f"{where} is no digest.")
    if written > DIGEST_FORMAT:
        raise BadInput(
            f"{where} is of format {min(written, 9999)}; this program reads up to {DIGEST_FORMAT}. "
            "Update the program."
        )
    return value


def _fields(text: str, wanted: Collection[str]) -> Any:
    """`wanted` of a JSON object; what is no object as it is.   Raises: ValueError."""
    at = _past_space(text, 0)
    # Of indented JSON the last brace alone begins a line, so one that was cut is noticed.
    if text[at : at + 1] != "{" or not text.rstrip().endswith("\n}"):
        value = _DECODER.decode(text)
        return (
            value
            if not isinstance(value, dict)
            else {name: value[name] for name in wanted if name in value}
        )
    found: dict[str, Any] = {}
    at = _past_space(text, at + 1)
    while text[at : at + 1] != "}":
        name, at = _DECODER.raw_decode(text, at)
        at = _past_space(text, at)
        if not isinstance(name, str) or text[at : at + 1] != ":":
            raise ValueError("no field")
        value, at = _DECODER.raw_decode(text, _past_space(text, at + 1))
        if name in wanted:
            found[name] = value
            if len(found) == len(wanted):
                return found
        at = _past_space(text, at)
        if text[at : at + 1] == ",":
            at = _past_space(text, at + 1)
        elif text[at : at + 1] != "}":
            raise ValueError("no end")
    return found


def _past_space(text: str, at: int) -> int:
    space = _SPACE.match(text, at)
    return at if space is None else space.end()


def page_in(data: bytes, where: str) -> str:
    """The page of an opened digest, made so that nothing in it runs or is fetched.

    Raises: BadInput.
    """
    text = _text(data, where)
    if not _is_page(text):
        page = read_digest(data, where).get(PAGE)
        if not isinstance(page, str) or not _is_page(page):
            raise BadInput(f"{where} holds no page. See its numbers with --format json.")
        text = page
    # Half characters fit no file.
    return _GUARD + text.encode("utf-8", "replace").decode("utf-8")


def _text(data: bytes, where: str) -> str:
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise BadInput(f"{where} is no digest.") from None
    if not text.strip():
        raise BadInput(f"{where} is empty. Ask for it again.")
    return text


def _is_page(text: str) -> bool:
    return text[:15].lower() == "<!doctype html>"


def _refuse(constant: str) -> NoReturn:
    raise ValueError(constant)


_DECODER = json.JSONDecoder(parse_constant=_refuse)
_SPACE = re.compile(r"[ \t\n\r]*")
