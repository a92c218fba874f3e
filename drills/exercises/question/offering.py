"""All forms of question as one kind of exercise."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from drills.core.items import Item, Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan
from drills.exercises.exercise import Batch, Exercise
from drills.exercises.question.acts import TELLING
from drills.exercises.question.before_after import BEFORE_AFTER
from drills.exercises.question.comparing import COMPARISON
from drills.exercises.question.form import BETWEEN, Form, form_of
from drills.exercises.question.grid import GRID_FORM
from drills.exercises.question.kin import KIN
from drills.exercises.question.what_happened import WHAT_HAPPENED
from drills.exercises.question.who_did_what import WHO_DID_WHAT, WITH_NEITHER
from drills.exercises.question.yes_no import YES_NO
from drills.exercises.scenes import verb_groups

FORMS: Mapping[str, Form] = MappingProxyType(
    {
        form.name: form
        for form in (
            WHO_DID_WHAT,
            WITH_NEITHER,
            WHAT_HAPPENED,
            YES_NO,
            KIN,
            BEFORE_AFTER,
            COMPARISON,
            GRID_FORM,
        )
    }
)


def _names(_material: Material) -> tuple[str, ...]:
    """Forms, their parts; a construction alone is asked for who did what."""
    return (*(name for form in FORMS.values() for name in form.names), *TELLING)


def _whole(name: str) -> str:
    return f"{WHO_DID_WHAT.name}{BETWEEN}{name}" if name in TELLING else name


def _form(name: str) -> Form:
    return FORMS[name.partition(BETWEEN)[0]]


def _groups(material: Material, names: Sequence[str]) -> tuple[str, ...]:
    if any(_form(_whole(name)).by_verbs for name in names):
        return verb_groups(material.lexicon)
    return ()


def _targets(block: BlockPlan, material: Material) -> tuple[Target, ...]:
    found: list[Target] = []
    groups = [
        group
        for group in verb_groups(material.lexicon)
        if not block.groups or group in block.groups
    ]
    for name in map(_whole, block.names):
        form = _form(name)
        for each in form.spread(name, material):
            if form.by_verbs:
                found += [Target(kind=Kind.QUESTION, name=each, group=group) for group in groups]
            else:
                found.append(Target(kind=Kind.QUESTION, name=each))
    return tuple(dict.fromkeys(found))


def _make(batch: Batch) -> tuple[Item, ...]:
    made: dict[int, Item] = {}
    for name, form in FORMS.items():
        indices = [index for index, target in enumerate(batch.targets) if form_of(target) == name]
        if indices:
            of_form = Batch(
                targets=[batch.targets[index] for index in indices],
                options=batch.options,
                material=batch.material,
                rng=batch.rng,
                item_set=batch.item_set,
            )
            made.update(zip(indices, form.make(of_form), strict=True))
    return tuple(made[index] for index in range(len(batch.targets)))


QUESTION = Exercise(
    kind=Kind.QUESTION,
    names=_names,
    groups=_groups,
    targets=_targets,
    make=_make,
)
