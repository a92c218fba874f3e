from __future__ import annotations

from drills.core.items import CueKind, Kind
from drills.core.material import Material
from tests.exercises.batches import make


def test_a_gesture_is_asked_for_and_not_chosen(material: Material) -> None:
    batch = make(material, Kind.GESTURE, count=len(material.gestures))
    assert [item.gesture for item in batch] == list(material.gestures)
    for item in batch:
        gesture = material.gestures[item.target.name]
        assert item.prompt == item.spoken.text == gesture.prompt
        assert (item.options, item.answer, item.effective_k) == ((), None, 1)
        assert item.level == gesture.gesture_class.value


def test_help_rises_from_hearing_again_to_a_hand_that_asks_first(material: Material) -> None:
    for item in make(material, Kind.GESTURE, count=len(material.gestures)):
        assert [(cue.level, cue.kind) for cue in item.cues] == [
            (1, CueKind.REPLAY),
            (2, CueKind.PICTURE),
            (3, CueKind.HINT),
            (4, CueKind.MODEL),
            (5, CueKind.TOGETHER),
            (6, CueKind.HAND),
        ]
        assert item.cues[2].text == material.gestures[item.target.name].hold
        assert item.cues[-1].text.startswith("May your helper")
        assert item.cues[-1].text.endswith("You can say no.")
