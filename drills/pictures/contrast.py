"""How far two pictures of one size differ, to the eye."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from drills.pictures.cells import Cells

# sRGB to CIE XYZ, and the D65 white (2 degrees).   Source: IEC 61966-2-1.
_TO_XYZ = np.array([[0.4124, 0.3576, 0.1805], [0.2126, 0.7152, 0.0722], [0.0193, 0.1192, 0.9505]])
_WHITE = np.array([0.95047, 1.0, 1.08883])


def lab(colours: NDArray[np.float64]) -> NDArray[np.float64]:
    """sRGB, 0 to 255 in the last axis, as CIE L*a*b* under D65.   Source: CIE 15."""
    part = colours / 255
    linear = np.where(part <= 0.04045, part / 12.92, ((part + 0.055) / 1.055) ** 2.4)
    xyz = linear @ _TO_XYZ.T / _WHITE
    bent = np.where(xyz > (6 / 29) ** 3, np.cbrt(xyz), xyz / (3 * (6 / 29) ** 2) + 4 / 29)
    x, y, z = np.moveaxis(bent, -1, 0)
    return np.stack([116 * y - 16, 500 * (x - y), 200 * (y - z)], axis=-1)


def share_that_differs(a: Cells, b: Cells, *, threshold: float = 20.0) -> float:
    """The share of half-cells whose colours are further apart than `threshold` (Delta-E 1976).

    Both are in the encoding HALVES and of one size.
    """
    apart = np.linalg.norm(lab(_half_cells(a)) - lab(_half_cells(b)), axis=-1)
    return float((apart > threshold).mean())


def _half_cells(cells: Cells) -> NDArray[np.float64]:
    return np.array(
        [[[cell.ink, cell.paper] for cell in row] for row in cells.rows], dtype=np.float64
    )
