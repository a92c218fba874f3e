"""Catalogue: files -> checked values, or every Problem with its file and line.

Reads content (words, cloze levels, gestures), the caregiver guide, and plans; writes plans.
May import core only. Never makes a sentence, an item or a picture.   tests/catalogue.
"""

from drills.catalogue.lexicon import LOCALES, load_lexicon

__all__ = ["LOCALES", "load_lexicon"]
