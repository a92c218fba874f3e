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


# Severity 1.0.   Source: Machado, Oliveira & Fernandes 2009, table of the supplementary page.
_DEFICIENCIES = {
    "protan": np.array([[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216],
                        [-0.003882, -0.048116, 1.051998]]),
    "deutan": np.array([[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413],
                        [-0.011820, 0.042940, 0.968881]]),
    "tritan": np.array([[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602],
                        [0.004733, 0.691367, 0.303900]]),
}  # fmt: skip
DEFICIENCIES = tuple(_DEFICIENCIES)


def seen_by(deficiency: str, colours: NDArray[np.float64]) -> NDArray[np.float64]:
    """sRGB, 0 to 255 in the last axis, as somebody sees it who lacks one kind of cone."""
    part = np.asarray(colours, dtype=np.float64) / 255
    linear = np.where(part <= 0.04045, part / 12.92, ((part + 0.055) / 1.055) ** 2.4)
    seen = np.clip(linear @ _DEFICIENCIES[deficiency].T, 0.0, 1.0)
    coded = np.where(seen <= 0.0031308, seen * 12.92, 1.055 * seen ** (1 / 2.4) - 0.055)
    return np.asarray(coded * 255, dtype=np.float64)


def _half_cells(cells: Cells) -> NDArray[np.float64]:
    return np.array(
        [[[cell.ink, cell.paper] for cell in row] for row in cells.rows], dtype=np.float64
    )
