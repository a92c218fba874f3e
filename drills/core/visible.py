"""Text from outside, made safe to print."""

from __future__ import annotations


def visible(text: str) -> str:
    """`text` with every letter that a terminal may act on written out, but for line ends."""
    if text.isprintable():
        return text
    return "".join(
        letter if letter.isprintable() or letter == "\n" else _out(letter) for letter in text
    )


def _out(letter: str) -> str:
    if letter.isspace() and ord(letter) >= 0x80 and letter not in "\x85\u2028\u2029":
        return letter  # spaces of other widths
    code = ord(letter)
    return f"\\x{code:02x}" if code < 0x100 else f"\\u{code:04x}"
