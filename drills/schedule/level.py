"""How likely somebody is at a level by now, from all sessions and the rise that they show.

The share that is right is taken to stand still or to rise steadily from session to session,
whichever fits the answers, to waver a little besides, and seldom to be anywhere anew. Bayes' rule
over a grid: a hidden Markov model's forward pass (Rabiner 1989, Proceedings of the IEEE 77:257,
from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from math import exp, log

STEP = 0.2
"""Of the grid, in log odds. In 200 simulated people a steady rise of so much, and a wavering of as
much, told best who is ready (`tests/bench/bench_progression.py`)."""
RISES = (0, 1)
"""Steps a session: none, or one."""
WAVER = 0.2
"""Standard deviation from session to session, in log odds."""
ANEW = 0.02
"""Chance that from one session to the next it has come to be anywhere: somebody has got the knack,
or lost it. Without it a leap would count for less than a slow rise. Invented."""

_LOWEST, _HIGHEST = -4.0, 5.0
_FURTHEST = 3


@lru_cache(maxsize=4096)
def chance_at_least(
    level: float,
    sessions: tuple[tuple[int, int], ...],
    *,
    guess: float = 0.0,
    rises: tuple[int, ...] = RISES,
    waver: float = WAVER,
    anew: float = ANEW,
) -> float:
    """How likely the share right alone is `level` or more in the newest session.

    sessions: right and asked, oldest first.   guess: nobody is taken to be below it; where it
    reaches the level by itself, 0: no answer speaks for that.
    Before the first session every share above it is as likely, standing still as rising.
    """
    if guess >= level:
        return 0.0
    shares = _grid()
    prior = [
        share * (1 - share) if share > guess else 0.0
        for share in shares  # log odds are finer at the ends; this makes shares alike
    ]
    whole = sum(prior) * len(rises)
    begun = [weight / whole for weight in prior]
    states = [begun for _ in rises]
    weights = _weights(waver)
    for number, (right, asked) in enumerate(sessions):
        likely = [share**right * (1 - share) ** (asked - right) for share in shares]
        for place, rise in enumerate(rises):
            before = states[place]
            if number:
                moved = _moved(before, rise, weights, prior)
                before = [
                    (1 - anew) * weight + anew * fresh
                    for weight, fresh in zip(moved, begun, strict=True)
                ]
            states[place] = [weight * each for weight, each in zip(before, likely, strict=True)]
        total = sum(map(sum, states))
        states = [[weight / total for weight in state] for state in states]
    return sum(
        weight * _above(share, level)
        for state in states
        for share, weight in zip(shares, state, strict=True)
        if weight
    )


@lru_cache(maxsize=1)
def _grid() -> tuple[float, ...]:
    count = round((_HIGHEST - _LOWEST) / STEP) + 1
    return tuple(1 / (1 + exp(-(_LOWEST + STEP * at))) for at in range(count))


def _above(share: float, level: float) -> float:
    """How much of the cell around a share lies at the level or above it."""
    if not 0 < level < 1:
        return float(share >= level)
    places = (log(share / (1 - share)) - log(level / (1 - level))) / STEP + 0.5
    return min(1.0, max(0.0, places))


def _weights(waver: float) -> tuple[float, ...]:
    """Of going so many steps down or up by wavering."""
    if not waver:
        return (1.0,)
    reach = range(-_FURTHEST, _FURTHEST + 1)
    weights = [exp(-((STEP * step / waver) ** 2) / 2) for step in reach]
    return tuple(weight / sum(weights) for weight in weights)


def _moved(
    state: Sequence[float], rise: int, weights: Sequence[float], prior: Sequence[float]
) -> list[float]:
    """The state one session later; what would leave the grid stays at its end."""
    size, reach = len(state), len(weights) // 2
    lowest = next(at for at, weight in enumerate(prior) if weight)
    # By whole rows: it is done for every session of every name.
    low, high = reach, reach + rise
    wide = [0.0] * (size + low + high)
    for step, share in enumerate(weights):
        at = step + rise
        wide[at : at + size] = [
            before + share * weight
            for before, weight in zip(wide[at : at + size], state, strict=True)
        ]
    moved = wide[low : low + size]
    moved[lowest] += sum(wide[: low + lowest])
    moved[:lowest] = [0.0] * lowest
    moved[-1] += sum(wide[low + size :])
    return moved
