"""What entries of every sort of word have in common."""

from __future__ import annotations

import re

from drills.catalogue.fields import Fields
from drills.core.words import Band

BANDS = tuple(band.value for band in Band)
HIGHEST_ZIPF = 8.0

_ONE_WORD = re.compile(r"[a-z]+")


def one_word(fields: Fields, key: str) -> str:
    """A form of a word; anything but one word in small letters is noted."""
    form = fields.text(key)
    if form and not _ONE_WORD.fullmatch(form):
        fields.note(f'`{key}` is "{form}".', "Use one word in small letters.", key=key)
    return form
