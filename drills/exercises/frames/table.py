"""Every frame by its name."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from drills.exercises.frames.bound import BOUND
from drills.exercises.frames.determiners import DETERMINERS
from drills.exercises.frames.endings import ENDINGS
from drills.exercises.frames.frame import Frame
from drills.exercises.frames.links import LINKS
from drills.exercises.frames.parts import PARTS
from drills.exercises.frames.pictured import PICTURED
from drills.exercises.frames.pointing import POINTING
from drills.exercises.frames.pronouns import PRONOUNS
from drills.exercises.frames.referents import REFERENTS
from drills.exercises.frames.times import TIMES
from drills.exercises.frames.verbs import VERBS

FRAMES: Mapping[str, Frame] = MappingProxyType(
    {
        frame.name: frame
        for frame in (
            *PICTURED, *ENDINGS, *VERBS, *DETERMINERS, *POINTING, *PRONOUNS, *REFERENTS, *LINKS,
            *TIMES, *BOUND, *PARTS,
        )
    }
)  # fmt: skip
