"""Gesture: show a movement; the caregiver scores it."""

from __future__ import annotations

from drills.core.gestures import Gesture
from drills.core.items import Item, Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.exercises.choices import GESTURE_RULES, kept
from drills.exercises.cues import gesture_ladder, say_text
from drills.exercises.exercise import Batch, Exercise, with_id


def _names(material: Material) -> tuple[str, ...]:
    return tuple(material.gestures)


def _targets(block: BlockPlan, _material: Material) -> tuple[Target, ...]:
    return tuple(Target(kind=Kind.GESTURE, name=name) for name in block.names)


def _make(batch: Batch) -> tuple[Item, ...]:
    return tuple(
        _item(batch, target, batch.material.gestures[target.name]) for target in batch.targets
    )


def _item(batch: Batch, target: Target, gesture: Gesture) -> Item:
    spoken = say_text(gesture.prompt)
    item = Item(
        id="",
        kind=Kind.GESTURE,
        target=target,
        construction="",
        level=gesture.gesture_class.value,
        prompt=gesture.prompt,
        sentence="",
        spoken=spoken,
        restated=spoken,
        options=(),
        answer=None,
        effective_k=1,
        cues=gesture_ladder(gesture),
        gesture=gesture.key,
        item_set=batch.item_set,
        content_hash=batch.material.content_hash,
    )
    return with_id(kept(item, batch.material, GESTURE_RULES))


GESTURE = Exercise(
    kind=Kind.GESTURE,
    names=_names,
    targets=_targets,
    make=_make,
)
