"""How answers were given: whether they fell off, kept to a place or side, or came again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from drills.core.records import Trial
from drills.measures import decline, perseveration, sides
from drills.measures.accuracy import Share
from drills.measures.decline import Decline
from drills.measures.missing import Missing
from drills.measures.perseveration import Perseveration
from drills.measures.sides import PlaceBias, SideDifference

# What a chance as small as this is of is told as a liking (common practice, no source).
SMALL = 0.05


@dataclass(frozen=True, slots=True, kw_only=True)
class Places:
    """First choices among items with one number of options, by place, the first first."""

    options: int
    bias: PlaceBias | Missing

    @property
    def preferred(self) -> int | None:
        """The place, from 0, chosen oftener than by chance, all places taken into account."""
        bias = self.bias
        if isinstance(bias, Missing):
            return None
        found = [
            place
            for place, p in enumerate(bias.p)
            if p * self.options < SMALL and bias.chosen[place] * self.options > bias.of
        ]
        return max(found, key=bias.chosen.__getitem__, default=None)


@dataclass(frozen=True, slots=True, kw_only=True)
class Patterns:
    """decline: the thirds of each block of each session, put together.

    Blocks follow each other and differ in how hard they are, so that the thirds of a whole session
    would compare blocks.   old_acts: of gestures not right, those with an earlier act.
    """

    decline: Decline | Missing
    places: tuple[Places, ...]
    sides: SideDifference
    perseveration: Perseveration | Missing
    old_acts: Share

    @property
    def repeats(self) -> bool:
        """Errors repeat earlier responses oftener than the options alone would have it."""
        found = self.perseveration
        return not isinstance(found, Missing) and found.p < SMALL


def patterns_of(sessions: Sequence[Sequence[Trial]]) -> Patterns:
    """sessions: trials of practice, each as last written, in the order in which they began."""
    trials = [trial for session in sessions for trial in session]
    return Patterns(
        decline=decline.decline(
            decline.answers_of(block) for session in sessions for block in _blocks(session)
        ),
        places=tuple(
            Places(options=options, bias=sides.place_bias(choices, options))
            for options, choices in sides.choices_of(trials).items()
            if options > 1
        ),
        sides=sides.side_difference(trials),
        perseveration=perseveration.perseveration(map(perseveration.responses_of, sessions)),
        old_acts=perseveration.old_acts(trials),
    )


def _blocks(session: Sequence[Trial]) -> list[list[Trial]]:
    found: dict[int, list[Trial]] = {}
    for trial in session:
        found.setdefault(trial.block, []).append(trial)
    return list(found.values())
