"""Which of several tests stand out, all of them taken into account."""

from __future__ import annotations

from collections.abc import Sequence


def standing_out(chances: Sequence[float], level: float) -> tuple[int, ...]:
    """The places in `chances`, each a p, of those that stand out; none for none.

    Where nothing is there to be found, any at all stands out in at most `level` of all cases; of
    those that stand out, on average at most that share is luck.
    Source: Benjamini and Hochberg 1995, Journal of the Royal Statistical Society B 57:289; tests
    that do not hang together, or in the same sense.
    """
    order = sorted(range(len(chances)), key=lambda place: chances[place])
    last = max(
        (
            number
            for number, place in enumerate(order, start=1)
            if chances[place] * len(chances) <= level * number
        ),
        default=0,
    )
    return tuple(sorted(order[:last]))
