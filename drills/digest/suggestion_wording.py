"""Suggestions and what the therapist decided, in plain words."""

from __future__ import annotations

from typing import NamedTuple

from drills.core.suggestions import Part, PlanChange, Suggestion
from drills.core.therapist import Answer, Decision
from drills.digest.plain import day_and_year, inert

NONE = "None."
FOOT = "Only the therapist changes the plan: drills plan suggestions."

_ANSWERS = {
    Answer.ACCEPTED: "Accepted",
    Answer.CHANGED: "Plan changed",
    Answer.IGNORED: "Ignored",
}

_MOVES = {
    Part.NAME_ON: "add {name} to block {block}",
    Part.NAME_OFF: "take {name} out of block {block}",
}


class SuggestionRow(NamedTuple):
    """number: for `drills plan answer`.   change: empty where only the therapist can say."""

    number: int
    says: str
    evidence: str
    rule: str
    change: str


def suggestion_rows(
    suggestions: tuple[Suggestion, ...], *, with_keys: bool = False
) -> list[SuggestionRow]:
    """Numbered from 1, in the order in which they are answered.

    with_keys: each name also as the plan file has it.
    """
    return [
        SuggestionRow(
            number=number,
            says=inert(each.says),
            evidence=inert(each.evidence),
            rule=inert(each.rule),
            change="; ".join(change(one, with_key=with_keys) for one in each.changes),
        )
        for number, each in enumerate(suggestions, 1)
    ]


def change(of: PlanChange, *, with_key: bool = False) -> str:
    """`add "Place words" to block 2`, or `direction of help in block 2: most-to-least`."""
    if of.part in _MOVES:
        key = f" ({inert(str(of.value))})" if with_key and of.label else ""
        return _MOVES[of.part].format(
            name=f'"{inert(of.label or str(of.value))}"{key}', block=of.block
        )
    where = "" if of.block is None else f" {of.block}"
    return f"{of.part.value}{where}: {inert(str(of.value))}"


def decision(of: Decision) -> str:
    """Who answered what and when, with the versions of the plan, the evidence and the reason."""
    versions = (
        f"version {of.plan_version_before}"
        if of.plan_version_after == of.plan_version_before
        else f"version {of.plan_version_before} to {of.plan_version_after}"
    )
    by = f" by {inert(of.by)}" if of.by.strip() else ""
    said = f"{day_and_year(of.at.date())}: {_ANSWERS[of.answer]}{by}, {versions}."
    what = f" {inert(of.says)}" if of.says.strip() else ""
    why = f" Why: {inert(of.why)}" if of.why.strip() else ""
    return f"{said}{what} {inert(of.evidence)}{why}".rstrip()
