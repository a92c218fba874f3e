"""Whether a meaning and its reversal can be told apart as they are shown in an item."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from drills.core.kinds import Side
from drills.core.meanings import Act, Place, Scene
from drills.pictures import tells_apart

COLUMNS = 38
LARGE_LINES = 15
"""Rows of one of two pictures."""
SMALL_LINES = 9
"""Rows of one of three or four pictures."""

# By rows, and by whether the two trade places: with these acts no two of the cast fall short, by
# a margin of 0.02. To compare two pictures takes about a hundredth of a second, so a deal asks only
# of the rest. Measured over every pair of the lexicon; a redrawn act is to be measured anew.
_NEVER_ALIKE: Mapping[tuple[int, bool], frozenset[str]] = MappingProxyType(
    {
        (LARGE_LINES, True): frozenset(
            {
                "bandage",
                "feed",
                "film",
                "paint",
                "pay",
                "pull",
                "push",
                "tap",
                "tickle",
            }
        ),
        (LARGE_LINES, False): frozenset(
            {
                "bandage",
                "carry",
                "comb",
                "cover",
                "dry",
                "fan",
                "feed",
                "film",
                "kiss",
                "lead",
                "lift",
                "measure",
                "pay",
                "pull",
                "shelter",
                "splash",
                "stop",
                "tap",
                "tickle",
                "wake",
                "wash",
                "weigh",
            }
        ),
        (SMALL_LINES, True): frozenset(
            {
                "bandage",
                "chase",
                "fan",
                "feed",
                "film",
                "lead",
                "measure",
                "paint",
                "pay",
                "push",
                "tap",
                "tickle",
                "wash",
            }
        ),
        (SMALL_LINES, False): frozenset(
            {
                "carry",
                "comb",
                "cover",
                "dry",
                "fan",
                "feed",
                "film",
                "kiss",
                "lead",
                "measure",
                "pay",
                "shelter",
                "splash",
                "stop",
                "tap",
                "tickle",
                "wake",
            }
        ),
    }
)


def never_alike(verb: str, *, lines: int, trade_places: bool) -> bool:
    """Whether any two of the cast can be told from their reversal at this act."""
    return verb in _NEVER_ALIKE[lines, trade_places]


@dataclass(frozen=True, slots=True, kw_only=True)
class Showing:
    """How an item is shown: with how many pictures, and on which sides the doer stands."""

    options: int
    side: Side
    reversed_side: Side

    @property
    def is_small(self) -> bool:
        return self.options > 2

    def tells(self, meaning: Act | Place) -> bool:
        """Whether the meaning and its reversal can be told apart at the size they are shown."""
        lines = SMALL_LINES if self.is_small else LARGE_LINES
        # With the doer on one side in both, the two figures stand the other way round.
        trade_places = self.side is self.reversed_side
        if isinstance(meaning, Act) and never_alike(
            meaning.verb, lines=lines, trade_places=trade_places
        ):
            return True
        return tells_apart(
            Scene(meaning=meaning, side=self.side),
            Scene(meaning=meaning.reversed(), side=self.reversed_side),
            columns=COLUMNS,
            lines=lines,
        )
