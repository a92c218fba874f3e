"""content/gestures.toml -> the gestures that can be asked for."""

from __future__ import annotations

from pathlib import Path

from drills.catalogue.sections import read_sections
from drills.core.gestures import Gesture, GestureClass
from drills.core.problems import Problem

FILE = "gestures.toml"

# A prompt is one line of a patient's screen; common practice, no source.
_LONGEST_PROMPT = 40


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
        if gesture.key in gestures:
            fields.note(f"There are two gestures `{gesture.key}`.", "Remove one.", key="key")
        gestures[gesture.key] = gesture
    return gestures
