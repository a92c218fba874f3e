"""The cells that pictures are drawn to; they live in the core, so that asking for an encoding
loads no drawing.
"""

from drills.core.cells import Cell, Cells, Colour, Encoding

__all__ = ["Cell", "Cells", "Colour", "Encoding"]
