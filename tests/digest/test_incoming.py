"""What comes from outside is a digest, or one sentence."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.problems import BadInput
from drills.digest import render
from drills.digest.as_json import DIGEST_FORMAT, as_json
from drills.digest.incoming import page_in, read_digest, read_fields
from drills.digest.sealed_form import sealed_content
from tests.digest.invented import digest

DIGEST = digest()
PAGE = render(DIGEST, "html")
SEALED = sealed_content(DIGEST, PAGE)


def test_the_sealed_content_is_the_digests_json_and_its_page() -> None:
    value = read_digest(SEALED, "F")
    assert value.pop("page") == PAGE
    assert value == json.loads(render(DIGEST, "json"))
    assert value == json.loads(json.dumps(as_json(DIGEST)))


def test_the_page_comes_out_whole_behind_words_that_let_nothing_run() -> None:
    for content in (SEALED, PAGE.encode()):
        guard, _, page = page_in(content, "F").partition("<!DOCTYPE html>\n<html")
        assert f"<!DOCTYPE html>\n<html{page}" == PAGE
        assert "default-src 'none'" in guard
        assert guard.startswith("<!DOCTYPE html>\n<meta http-equiv=")


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"", "F is empty. Ask for it again."),
        (b" \n", "F is empty. Ask for it again."),
        (b"hello", "F is damaged, or no digest. Ask for it again."),
        (SEALED[:-1], "F is damaged, or no digest. Ask for it again."),
        (b'{"format": 1, "dose": NaN}', "F is damaged, or no digest. Ask for it again."),
        (b"[" * 100_000, "F is damaged, or no digest. Ask for it again."),
        (b'{"format": ' + b"9" * 5000 + b"}", "F is damaged, or no digest. Ask for it again."),
        (b"[]", "F is no digest."),
        (b'{"format": 1}', "F is no digest."),
        (b'{"format": true, "dose": 1}', "F is no digest."),
        (b"\xff\xfe\x00", "F is no digest."),
        (PAGE.encode(), "F holds a page to read, not the numbers of a digest."),
    ],
    ids=lambda value: str(value)[:30],
)
def test_what_is_no_digest_is_told(data: bytes, told: str) -> None:
    with pytest.raises(BadInput) as raised:
        read_digest(data, "F")
    assert str(raised.value) == told
    with pytest.raises(BadInput) as raised:
        read_fields(data, "F", ("first",))
    assert str(raised.value) == told


@given(
    st.dictionaries(
        st.sampled_from(["format", "dose", "first", "x", "y"]) | st.text(max_size=3),
        st.recursive(
            st.none()
            | st.integers(-9, 9)
            | st.floats(allow_nan=False, allow_infinity=False)
            | st.text(max_size=4),
            lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner),
        ),
    ),
    st.sampled_from([None, 1]),
)
def test_fields_read_alone_are_those_of_the_whole(
    value: dict[str, Any], indent: int | None
) -> None:
    """Source: the JSON reader of the standard library over the whole text."""
    value = {**value, "format": 1, "dose": {"of": 1}}
    data = json.dumps(value, indent=indent).encode()
    whole = read_digest(data, "F")
    for names in ((), ("first",), ("x", "y", "first")):
        wanted = {"format", "dose", *names}
        assert read_fields(data, "F", names) == {
            name: field for name, field in whole.items() if name in wanted
        }


@given(st.binary(min_size=1, max_size=60), st.integers(0, 90))
def test_a_digest_with_other_bytes_in_it_is_read_or_told(other: bytes, at: int) -> None:
    data = json.dumps({"format": 1, "first": "2026-11-23", "dose": {"sessions": 2}}, indent=1)
    changed = data.encode()[:at] + other + data.encode()[at + len(other) :]
    try:
        told = ", ".join(read_fields(changed, "F", ("first",)))
    except BadInput as error:
        told = str(error)
    assert told.startswith(("F ", "format", "first", "dose"))
    assert "\n" not in told


def test_a_digest_that_is_cut_anywhere_is_told() -> None:
    plain = render(DIGEST, "json").encode()
    braces = [place for place, letter in enumerate(SEALED) if letter == ord("}")]
    cuts = [(SEALED, end) for end in (*range(1, len(SEALED) - 1, 997), *braces[:-1:20])]
    for data, end in [*cuts, *((plain, end) for end in range(1, len(plain) - 2, 997))]:
        with pytest.raises(BadInput):
            read_fields(data[:end], "F", ("first",))


def test_a_digest_of_a_newer_format_asks_for_an_update() -> None:
    newer = json.dumps({"format": DIGEST_FORMAT + 1, "dose": {}}).encode()
    with pytest.raises(BadInput, match="Update the program"):
        read_digest(newer, "F")


def test_a_digest_without_a_page_points_to_its_numbers() -> None:
    for page in (None, 7, "just words"):
        data = json.dumps({"format": 1, "dose": {}, "page": page}).encode()
        with pytest.raises(BadInput, match="holds no page"):
            page_in(data, "F")


def test_half_a_character_in_a_page_can_be_written() -> None:
    data = b'{"format": 1, "dose": {}, "page": "<!doctype html>\\ud800"}'
    assert page_in(data, "F").endswith("<!doctype html>?")


@given(
    st.binary(max_size=300)
    | st.text(max_size=200).map(lambda text: text.encode("utf-8", "replace"))
)
def test_any_bytes_are_told_of_in_one_sentence(data: bytes) -> None:
    for read in (read_digest, page_in, lambda data, where: read_fields(data, where, ("first",))):
        with pytest.raises(BadInput) as raised:
            read(data, "F")
        assert "\n" not in str(raised.value)
