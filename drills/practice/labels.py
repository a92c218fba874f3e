"""Plain names of what is practised, for people to read."""

from __future__ import annotations

from collections.abc import Mapping

from drills.core.material import Material
from drills.core.question_words import GRID
from drills.language import CONSTRUCTIONS

_ACT_FORMS = {
    "who-did-what": "Who did what",
    "who-did-what+neither": "Who did what, or neither",
    "what-happened": "What happened",
    "yes-no": "Yes or no",
    "before-after": "First and last",
}
_QUESTIONS = {
    "who-did-what": "Who did what to whom",
    "who-did-what+neither": "Who did what to whom, or neither of them",
    "what-happened": "What happened to whom",
    "yes-no": "Yes or no: is it so",
    "kin": "Relatives",
    "kin:K1": "Relatives 1: whose is it (picture)",
    "kin:K2": "Relatives 2: the aunt's brother, woman or man",
    "kin:K3": "Relatives 3: with 's and with of",
    "kin:K4": "Relatives 4: one word for two",
    "kin:K5": "Relatives 5: both ways round",
    "kin:K6": "Relatives 6: three in a chain",
    "before-after": "Before and after: first and last",
    "comparison": "More and less: taller, less happy",
    GRID: "The grid: words against grammar",
}


def labels_of(material: Material) -> Mapping[str, str]:
    """Construction, cloze level or gesture key -> its plain name."""
    constructions = {name: each.label for name, each in CONSTRUCTIONS.items()}
    return {
        **_QUESTIONS,
        **constructions,
        **{
            f"{form}:{name}": f"{asked}. {label}"
            for form, asked in _ACT_FORMS.items()
            for name, label in constructions.items()
        },
        **{key: level.name for key, level in material.cloze.items()},
        **{key: gesture.name for key, gesture in material.gestures.items()},
    }
