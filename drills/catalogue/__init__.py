"""Catalogue: files -> checked values, or every Problem with its file and line.

Reads content (words, cloze levels, gestures), the caregiver guide, and plans; writes plans.
May import core only. Never makes a sentence, an item or a picture.   tests/catalogue.
"""

from typing import TYPE_CHECKING

from drills.core.late import late

if TYPE_CHECKING:
    from drills.catalogue.guide import load_guide
    from drills.catalogue.lexicon import load_lexicon
    from drills.catalogue.material import load
    from drills.catalogue.plan_writing import plan_text
    from drills.catalogue.plans import in_locale, line_in_plan, read_plan
    from drills.catalogue.profiles import load_profiles
    from drills.catalogue.word_counts import read_word_counts

__all__ = [
    "in_locale",
    "line_in_plan",
    "load",
    "load_guide",
    "load_lexicon",
    "load_profiles",
    "plan_text",
    "read_plan",
    "read_word_counts",
]

# The first screen needs one or two of these and must come soon.
__getattr__ = late(
    __name__,
    {
        "in_locale": "plans",
        "line_in_plan": "plans",
        "load": "material",
        "load_guide": "guide",
        "load_lexicon": "lexicon",
        "load_profiles": "profiles",
        "plan_text": "plan_writing",
        "read_plan": "plans",
        "read_word_counts": "word_counts",
    },
)
