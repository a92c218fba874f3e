"""Words as large letters of half blocks, for eyes that need more than the terminal's font.

The shapes are the bitmap font that comes with Pillow, one sub-pixel of space added after each
letter; smoothed letters of this size were tried, and "the" read as "tha".
"""

from __future__ import annotations

from functools import lru_cache

_BLOCKS = {(False, False): " ", (True, False): "▀", (False, True): "▄", (True, True): "█"}


@lru_cache(maxsize=128)
def lettered(text: str) -> tuple[str, ...]:
    """`text` in lines of large letters, as few as hold it; none where it cannot be drawn.

    Only printable ASCII is drawn: the font has no other sign.
    """
    if not text.strip() or not text.isascii() or not text.isprintable():
        return ()
    from PIL import ImageFont  # noqa: PLC0415 - few plans ask for large letters

    font = ImageFont.load_default_imagefont()
    rows: list[list[bool]] = []
    for letter in text:
        mask = font.getmask(letter, mode="L")
        width, height = mask.size
        rows = rows or [[] for _ in range(height)]
        for y, row in enumerate(rows):
            row.extend(bool(mask.getpixel((x, y))) for x in range(width))
            row.append(False)
    while rows and not any(rows[0]):
        del rows[0]
    while rows and not any(rows[-1]):
        del rows[-1]
    if len(rows) % 2:
        rows.append([False] * len(rows[0]))
    return tuple(
        "".join(_BLOCKS[pair] for pair in zip(upper, lower, strict=True)).rstrip()
        for upper, lower in zip(rows[::2], rows[1::2], strict=True)
    )
