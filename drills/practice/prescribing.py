"""The next version of a plan put in force, with the record of who, when and why."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from drills.core.problems import Failure
from drills.core.therapist import Answer, Decision

if TYPE_CHECKING:
    from drills.core.plans import Plan
    from drills.core.suggestions import Suggestion
    from drills.practice.home import Home

BY_THERAPIST = "changed by the therapist"


def prescribe(
    home: Home,
    plan: Plan,
    *,
    by: str,
    why: str,
    changes: Sequence[str],
    suggestion: Suggestion | None = None,
    answer: Answer = Answer.CHANGED,
) -> Plan:
    """Put `plan` in force as the next version, and keep the decision; the plan in force then.

    changes: what differs, as it was shown; the evidence of a change that nothing suggested.
    Raises: BadInput for a plan with faults, Failure when it cannot be kept; nothing has changed
    then. Failure also when the plan is in force and the record alone is not kept, and it says so.
    """
    if home.plan_desk is None:
        raise Failure("There is no practice folder, so the plan cannot be changed.")
    if reason := home.therapist_log.reason:
        raise Failure(f"The plan cannot be changed now: {reason}.")
    before = home.plan
    now = home.clock.now()
    new = replace(plan, version=before.version + 1, written_on=now.date())
    home.plan_desk.put_in_force(new)
    home.take_up(new)
    decision = Decision(
        at=now,
        by=by,
        suggestion="" if suggestion is None else suggestion.id,
        answer=answer,
        rule=BY_THERAPIST if suggestion is None else suggestion.rule,
        evidence="; ".join(changes) if suggestion is None else suggestion.evidence,
        why=why,
        plan_name=new.name,
        plan_version_before=before.version,
        plan_version_after=new.version,
        says="" if suggestion is None else suggestion.says,
    )
    try:
        home.therapist_log.append(decision)
    except Failure as error:
        raise Failure(
            f"Version {new.version} is in force, but who and why are not kept: {error}"
        ) from error
    return new
