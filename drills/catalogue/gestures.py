"""content/gestures.toml -> the gestures that can be asked for."""

from __future__ import annotations

import re
from pathlib import Path

from drills.catalogue.sections import read_sections
from drills.core.gestures import Gesture, GestureClass
from drills.core.problems import Problem

FILE = "gestures.toml"

# A prompt is one line of a patient's screen; common practice, no source.
_LONGEST_PROMPT = 40

# Nothing sharp, hot or breakable, and no medicine, even in pretence; common practice, no source.
_UNSAFE = re.compile(
    r"\b(blades?|candles?|cigarettes?|drills?|flames?|glass|hot (?:drink|food|pan|water)s?"
    r"|irons?|kettles?|knife|knives"
    r"|lighters?|matches|medicines?|needles?|pills?|razors?|saws?|scissors|scalpels?|stoves?"
    r"|tablets?)\b",
    re.IGNORECASE,
)


def read_gestures(folder: Path, problems: list[Problem]) -> dict[str, Gesture]:
    """Gestures by key, in the order of the file; faults are added to `problems`."""
    gestures: dict[str, Gesture] = {}
    for fields in read_sections(
        folder / FILE, f"{folder.name}/{FILE}", problems, many=("gesture",)
    ):
        gesture = Gesture(
            key=fields.text("key"),
            gesture_class=fields.choice("class", GestureClass),
            name=fields.text("name"),
            prompt=fields.text("prompt", longest=_LONGEST_PROMPT),
            hold=fields.text("hold"),
            right=fields.texts("right"),
            drawing=fields.text("drawing"),
            still=fields.flag("still", default=False),
        )
        fields.close()
        for key in ("name", "prompt", "hold", "right"):
            if found := _UNSAFE.search(str(fields.raw(key))):
                mend = "Choose a gesture with nothing sharp, hot, breakable or swallowed."
                fields.note(f"`{key}` names something unsafe: {found[0]}.", mend, key=key)
        if gesture.key in gestures:
            fields.note(f"There are two gestures `{gesture.key}`.", "Remove one.", key="key")
        gestures[gesture.key] = gesture
    return gestures
