from __future__ import annotations

import sys
import unicodedata

from drills.core.visible import visible


def test_no_letter_of_unicode_comes_through_that_a_terminal_acts_on() -> None:
    # Source: the general categories of the Unicode character database.
    for code in range(sys.maxunicode + 1):
        letter = chr(code)
        shown = visible(letter)
        if letter == "\n" or unicodedata.category(letter)[0] not in "CZ":
            assert shown == letter
        else:
            assert all(unicodedata.category(each) in {"Zs"} or each.isprintable() for each in shown)


def test_plain_text_stays_as_it_is() -> None:
    for text in ("", "Café, 25 °C\nnaïve", "日本語 \N{NO-BREAK SPACE}x"):
        assert visible(text) == text


def test_an_escape_sequence_is_spelt_out() -> None:
    assert visible("a\x1b[2J\x9b\u202e\ud800") == r"a\x1b[2J\x9b\u202e\ud800"
