"""Plain names of what is practised, for people to read."""

from __future__ import annotations

from collections.abc import Mapping

from drills.core.material import Material
from drills.language import CONSTRUCTIONS


def labels_of(material: Material) -> Mapping[str, str]:
    """Construction, cloze level or gesture key -> its plain name."""
    constructions = {name: each.label for name, each in CONSTRUCTIONS.items()}
    return {
        "who-did-what": "Who did what to whom",
        **constructions,
        **{
            f"who-did-what:{name}": f"Who did what. {label}"
            for name, label in constructions.items()
        },
        **{key: level.name for key, level in material.cloze.items()},
        **{key: gesture.name for key, gesture in material.gestures.items()},
    }
