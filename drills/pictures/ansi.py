"""Cells as text with colour escapes, for a terminal without screens (ECMA-48 SGR)."""

from __future__ import annotations

from drills.pictures.cells import Cells


def write(cells: Cells) -> str:
    """Lines of 24-bit colour, each closed with a reset."""
    lines = []
    for row in cells.rows:
        parts = []
        colours = None
        for cell in row:
            if (cell.ink, cell.paper) != colours:
                colours = (cell.ink, cell.paper)
                ink = ";".join(str(part) for part in cell.ink)
                paper = ";".join(str(part) for part in cell.paper)
                parts.append(f"\x1b[38;2;{ink};48;2;{paper}m")
            parts.append(cell.character)
        lines.append("".join(parts) + "\x1b[0m\n")
    return "".join(lines)
