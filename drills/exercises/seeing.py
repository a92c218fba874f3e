"""How a drawing looks in half cells, kept so that a foil dealt anew costs one drawing, not four.

Imported late, since it loads numpy.
"""

from __future__ import annotations

from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from drills.pictures import Encoding
from drills.pictures.contrast import lab
from drills.pictures.encode import encode
from drills.pictures.shapes import Drawing

Seen = NDArray[np.float64]

_THRESHOLD = 20.0
"""Delta-E 1976 from which two half cells differ."""


@lru_cache(maxsize=256)
def halves_seen(drawing: Drawing, *, columns: int, lines: int) -> Seen:
    """CIE L*a*b* of the two halves of each cell."""
    cells = encode(drawing, columns=columns, lines=lines, encoding=Encoding.HALVES)
    colours = [[(cell.ink, cell.paper) for cell in row] for row in cells.rows]
    return lab(np.array(colours, dtype=np.float64))


def share_unlike(one: Seen, other: Seen) -> float:
    """The same measure as `share_that_differs`, of what has been seen before."""
    return float((np.linalg.norm(one - other, axis=-1) > _THRESHOLD).mean())
