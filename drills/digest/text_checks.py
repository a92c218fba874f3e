"""Checks and outcomes as plain text."""

from __future__ import annotations

from collections.abc import Iterator

from drills.digest import check_wording, outcome_wording
from drills.digest.checks import Checks
from drills.digest.folding import fold


def checks(of: Checks) -> Iterator[str]:
    """The phases, and each construction with all its checks and what they came to."""
    yield from fold(check_wording.counted(of))
    if of.outcomes.phases:
        yield from fold(outcome_wording.phases(of.outcomes))
    for line, outcome in zip(of.lines, of.outcomes.lines, strict=True):
        yield from fold(check_wording.heading(line))
        told = f"{check_wording.course(line)}; newest {check_wording.newest(line)}"
        yield from fold(told, indent=4)
        yield from fold(check_wording.together(line), indent=4)
        for effect in outcome.effects:
            yield from fold(outcome_wording.effect(effect), indent=4)
        yield from fold(outcome_wording.same_items(outcome), indent=4)
    yield from fold(check_wording.FOOT)
    if of.outcomes.lines:
        yield from fold(outcome_wording.EFFECTS)
