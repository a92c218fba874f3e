"""The therapist's answer to a suggestion: the next version of the plan, and the record of it.

Nothing changes by itself: a suggestion becomes a plan here, and only when somebody says so.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date, timedelta
from enum import StrEnum
from typing import TYPE_CHECKING, TypeVar

from drills.core.plans import BlockPlan, CueDirection, Layout, Plan
from drills.core.problems import BadInput
from drills.core.progress import Advice
from drills.core.suggestions import Part, PlanChange, Suggestion
from drills.core.therapist import Answer, Decision
from drills.digest.flag_values import AlertKind
from drills.digest.suggesting import SuggestingGrounds, suggestions_of
from drills.digest.suggestion_wording import change
from drills.practice.cueing import advice_on_directions
from drills.practice.dealing import check_plan, plan_targets
from drills.practice.easier import harder_than
from drills.practice.prescribing import prescribe
from drills.practice.probe_faults import practised_in
from drills.practice.probed import treated_in

if TYPE_CHECKING:
    from drills.core.material import Material
    from drills.core.records import Trial
    from drills.digest import Digest
    from drills.practice.home import Home

Choice = TypeVar("Choice", bound=StrEnum)

# What flags of older days speak for has been overtaken by what was done since.
DAYS_PAST = timedelta(days=7)


def with_suggestions(home: Home, digest: Digest, practice: Sequence[Trial]) -> Digest:
    """The digest with what it speaks for changing, and what was decided in its days.

    practice: trials of practice so far, oldest first.
    """
    decisions = decisions_of(home)
    told = replace(
        digest,
        decisions=tuple(
            each for each in decisions if digest.first <= home.day(each.at) <= digest.last
        ),
    )
    if home.day() - digest.last > DAYS_PAST:
        return told
    targets = plan_targets(home.plan, home.material)
    harder = {
        (block.kind, name): found
        for block in home.plan.blocks
        for name in block.names
        if (found := harder_than(block, name, home.plan, home.material)) is not None
    }
    # Less help first for what is below guessing would take back what that speaks for.
    below = {each.name for each in digest.progress if each.advice is Advice.BELOW_CHANCE}
    below |= {each.subject for each in digest.alerts if each.kind is AlertKind.BELOW_CHANCE}
    grounds = SuggestingGrounds(
        alerts=digest.alerts,
        progress=digest.progress,
        dose_weeks=digest.dose_weeks,
        harder=harder,
        directions=[
            each
            for each in advice_on_directions(home.plan, targets, practice)
            if each.direction is CueDirection.MOST_TO_LEAST
            or not below.intersection(home.plan.blocks[each.block - 1].names)
        ],
    )
    spoken_for = suggestions_of(grounds, home.plan, home.labels, answered=decisions)
    return replace(told, suggestions=tuple(_labelled(each, home.labels) for each in spoken_for))


def _labelled(suggestion: Suggestion, labels: Mapping[str, str]) -> Suggestion:
    """With the plain words of each name that would come or go."""
    changes = tuple(
        replace(each, label=labels.get(str(each.value), ""))
        if each.part in (Part.NAME_ON, Part.NAME_OFF)
        else each
        for each in suggestion.changes
    )
    return replace(suggestion, changes=changes)


def decisions_of(home: Home) -> tuple[Decision, ...]:
    """Every decision that can be read, in the order of writing."""
    return tuple(each for each in home.therapist_log.entries() if isinstance(each, Decision))


def accepted_plan(plan: Plan, suggestion: Suggestion, material: Material, *, on: date) -> Plan:
    """The next version of `plan`, with the changes of `suggestion`; its note stays.

    Raises: BadInput, in one sentence, for a suggestion without changes or a plan that they break.
    """
    if not suggestion.changes:
        raise BadInput(
            "This suggestion has no change of its own. Answer it with a plan that you have changed."
        )
    changed = replace(
        suggested_plan(plan, suggestion, material),
        version=plan.version + 1,
        written_on=on,
    )
    problems = check_plan(changed, material)
    if problems:
        first = problems[0]
        raise BadInput(f"The plan would not be sound: {first.where}: {first.message} {first.mend}")
    return changed


def suggested_plan(plan: Plan, suggestion: Suggestion, material: Material) -> Plan:
    """`plan` with the changes of `suggestion`, and the checks as they were; not yet judged.

    Raises: BadInput, in one sentence, for a change that this plan cannot have.
    """
    return checked_as_before(plan, apply_changes(plan, suggestion.changes), material)


def apply_changes(plan: Plan, changes: Sequence[PlanChange]) -> Plan:
    """`plan` with all of `changes`, which are made together.

    Raises: BadInput, in one sentence, for a change that this plan cannot have.
    """
    for each in changes:
        plan = _changed(plan, each)
    if any(not block.names for block in plan.blocks):
        raise BadInput("A block would be left without a name.")
    return plan


def checked_as_before(before: Plan, plan: Plan, material: Material) -> Plan:
    """`plan` with the checks of `before`: what is no longer practised stays in them as finished.

    Otherwise a name that is known would leave the checks that have to show whether it lasts.
    """
    if not (before.probes.on or before.probes.treated or before.probes.sets):
        return plan
    asked, practised = treated_in(before), practised_in(plan, material)
    gone = tuple(name for name in asked if name not in practised)
    # Without sets a new name is checked as well, where the plan leaves it open which are.
    if not gone and not plan.probes.sets and set(asked) <= set(treated_in(plan)):
        return plan
    return replace(
        plan,
        probes=replace(
            plan.probes,
            treated=tuple(name for name in asked if name in practised),
            finished=(*plan.probes.finished, *gone),
        ),
    )


def accept(home: Home, suggestion: Suggestion, *, by: str, why: str = "") -> Plan:
    """Put the changes of `suggestion` in force; the plan in force then.

    Raises: BadInput and Failure, and then nothing has changed, but where the message says so.
    """
    plan = accepted_plan(home.plan, suggestion, home.material, on=home.clock.now().date())
    return _prescribed(home, suggestion, plan, Answer.ACCEPTED, by=by, why=why)


def change_instead(
    home: Home, suggestion: Suggestion, plan: Plan, *, by: str, why: str = ""
) -> Plan:
    """Put another `plan` in force than was suggested.   Raises: as `accept`."""
    return _prescribed(home, suggestion, plan, Answer.CHANGED, by=by, why=why)


def ignore(home: Home, suggestion: Suggestion, *, by: str, why: str = "") -> Decision:
    """Leave the plan as it is; the suggestion does not come back on the same evidence.

    Raises: BadInput without a name, Failure when it cannot be kept.
    """
    decision = Decision(
        at=home.clock.now(),
        by=_name(by),
        suggestion=suggestion.id,
        answer=Answer.IGNORED,
        rule=suggestion.rule,
        evidence=suggestion.evidence,
        why=why,
        plan_name=home.plan.name,
        plan_version_before=home.plan.version,
        plan_version_after=home.plan.version,
        says=suggestion.says,
    )
    home.therapist_log.append(decision)
    return decision


def _prescribed(
    home: Home, suggestion: Suggestion, plan: Plan, answer: Answer, *, by: str, why: str
) -> Plan:
    return prescribe(
        home,
        plan,
        by=_name(by),
        why=why,
        changes=[change(each) for each in suggestion.changes],
        suggestion=suggestion,
        answer=answer,
    )


def _name(by: str) -> str:
    if not by.strip():
        raise BadInput("It is not said who decides. Give a name or initials.")
    return by


def _changed(plan: Plan, of: PlanChange) -> Plan:
    match of.part:
        case Part.MINUTES:
            return replace(plan, dose=replace(plan.dose, minutes_per_session=_number(of)))
        case Part.SESSIONS:
            return replace(plan, dose=replace(plan.dose, sessions_per_week=_number(of)))
        case Part.LAYOUT:
            return replace(plan, sitting=replace(plan.sitting, layout=_one_of(of, Layout)))
    number = of.block or 0
    if not 1 <= number <= len(plan.blocks):
        raise BadInput(f"The plan has no block {of.block}.")
    block = _changed_block(plan.blocks[number - 1], of)
    return replace(plan, blocks=(*plan.blocks[: number - 1], block, *plan.blocks[number:]))


def _changed_block(block: BlockPlan, of: PlanChange) -> BlockPlan:
    match of.part:
        case Part.NAME_OFF:
            if of.value not in block.names:
                raise BadInput(f'Block {of.block} has no "{of.label or of.value}".')
            return replace(block, names=tuple(each for each in block.names if each != of.value))
        case Part.NAME_ON:
            if of.value in block.names:
                raise BadInput(f'Block {of.block} has "{of.label or of.value}" already.')
            return replace(block, names=(*block.names, str(of.value)))
        case Part.CUES:
            return replace(block, cues=_one_of(of, CueDirection))
        case Part.OPTIONS:
            return replace(block, options=_number(of))
        case Part.TRIALS:
            return replace(block, trials=_number(of))
    raise ValueError(f"{of.part} is no part of a block")


def _number(of: PlanChange) -> int:
    if not isinstance(of.value, int) or isinstance(of.value, bool):
        raise BadInput(f"{of.part.value}: {of.value!r} is no whole number.")
    return of.value


def _one_of(of: PlanChange, kind: type[Choice]) -> Choice:
    try:
        return kind(str(of.value))
    except ValueError:
        raise BadInput(f"{of.part.value}: {of.value!r} cannot be.") from None
