"""Where large text breaks."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from drills.tui.layout import lines_of, short_lines

WORD = st.text("abcdefgh'", min_size=1, max_size=12)
PHRASES = st.lists(st.lists(WORD, min_size=1, max_size=6).map(" ".join), min_size=1, max_size=6)


def test_short_text_is_one_line() -> None:
    assert lines_of("The nurse pushed the baker.", width=40) == ("The nurse pushed the baker.",)


def test_long_text_breaks_between_phrases() -> None:
    phrases = ("The sailor that the painter", "followed", "was tired.", "Who was tired?")
    text = "The sailor that the painter followed was tired."
    assert lines_of(text, phrases, width=40) == (
        "The sailor that the painter followed",
        "was tired.",
    )


def test_two_sentences_stand_one_under_the_other_where_a_line_is_too_short() -> None:
    assert short_lines("The judge carried the waiter. The judge was tired.") == (
        "The judge carried the waiter.",
        "The judge was tired.",
    )
    assert short_lines("Yes. The nurse pushed the baker.") == ("Yes. The nurse pushed the baker.",)
    assert short_lines("") == ()


@given(PHRASES, st.integers(8, 60))
def test_no_line_is_too_long_and_no_word_is_lost(phrases: list[str], width: int) -> None:
    text = " ".join(phrases)
    lines = lines_of(text, phrases, width=width)
    assert all(len(line) <= width for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")
