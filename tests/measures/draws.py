"""The same random inputs on every run: a check against a library sees all of them."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

DRAWS = 1000


def draws(count: int = DRAWS) -> Iterator[Random]:
    """`count` sources of chance, seeded 0 and up."""
    return (Random(seed) for seed in range(count))


def scores(source: Random, least: int, most: int, *, top: int = 6) -> list[float]:
    """Between `least` and `most` scores; half the time few values with many ties."""
    of = source.randint(least, most)
    if source.random() < 0.5:
        return [source.randint(0, top) for _ in range(of)]
    return [source.gauss(0, 10) for _ in range(of)]
