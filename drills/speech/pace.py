"""From words a minute, as a plan asks for them, to what espeak-ng can be set to."""

from __future__ import annotations

from bisect import bisect_left
from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Pace:
    """rate: espeak-ng's own.   word_gap: silence between words, in units of 10 ms."""

    rate: int
    word_gap: int


# Words a minute within phrases, the pauses between phrases not counted: measured over 12
# sentences of practice in 22 phrases, espeak-ng 1.52, American voice; the British one differs
# by 2 % at the most. Below rate 85 the voice slows no more; there the gap does it.
_BY_RATE = ((116, 85), (123, 90), (136, 100), (149, 110), (162, 120), (176, 130), (201, 150))
_BY_GAP_AT_90 = ((88, 10), (93, 8), (98, 6), (104, 4), (111, 2), (123, 0))


def pace_for(words_per_minute: int) -> Pace:
    """The nearest that the voice can do, from 88 to 201."""
    if words_per_minute < _BY_RATE[0][0]:
        return Pace(rate=90, word_gap=_between(_BY_GAP_AT_90, words_per_minute))
    return Pace(rate=_between(_BY_RATE, words_per_minute), word_gap=0)


def _between(table: tuple[tuple[int, int], ...], at: int) -> int:
    """The value at `at` on straight lines through `table`; its ends go on level."""
    right = bisect_left(table, (at,))
    if right == 0:
        return table[0][1]
    if right == len(table):
        return table[-1][1]
    (x0, y0), (x1, y1) = table[right - 1], table[right]
    return round(y0 + (y1 - y0) * (at - x0) / (x1 - x0))
