"""What the records speak for changing in the plan. It suggests; the therapist decides."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from hashlib import sha256
from math import ceil

from drills.core.kinds import Kind
from drills.core.plans import CueDirection, Layout, Order, Plan
from drills.core.progress import Advice, Progress
from drills.core.suggestions import CueAdvice, Part, PlanChange, Suggestion
from drills.core.therapist import Decision
from drills.digest.flag_values import Alert, AlertKind
from drills.digest.spans import DoseWeek

Key = tuple[Kind, str]

# Minutes by which a session is made shorter, and its least length in a plan.
STEP_MINUTES, LEAST_MINUTES = 5, 5
# One tired session is no reason to shorten all of them.
TIRED_SESSIONS = 2
# In these the order of words can be taken for who does what.
BY_ORDER = (Kind.MATCH, Kind.ACT_OUT, Kind.QUESTION)

_LOOK = {
    AlertKind.SUDDEN_DROP: "Find out what has changed{about}: the drop was sudden.",
    AlertKind.NO_RISE: "Look at how it is practised: there is no rise.",
    AlertKind.CUES: "Look at how help is given{about}: as much is needed as before.",
    AlertKind.UNTRUSTED: "Score some gestures yourself, to check the scores given at home.",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class SuggestingGrounds:
    """harder: the name to go on to, of each name that has one.

    directions: of help, where another than the plan's is spoken for.
    """

    alerts: Sequence[Alert]
    progress: Sequence[Progress]
    dose_weeks: Sequence[DoseWeek]
    harder: Mapping[Key, str]
    directions: Sequence[CueAdvice]


def suggestions_of(
    grounds: SuggestingGrounds,
    plan: Plan,
    labels: Mapping[str, str],
    *,
    answered: Iterable[Decision] = (),
) -> tuple[Suggestion, ...]:
    """Every suggestion that has not been answered on the same evidence, the most urgent first."""
    found = [
        *_from_alerts(grounds, plan, labels),
        *_below_guessing(grounds, plan, labels),
        *_moving_on(grounds, plan, labels),
        *_directions(grounds, plan),
    ]
    known = {decision.suggestion for decision in answered}
    seen: set[tuple[PlanChange, ...]] = set()
    kept = []
    for each in found:
        if each.id in known or (each.changes and each.changes in seen):
            continue
        seen.add(each.changes)
        kept.append(each)
    return tuple(kept)


def _from_alerts(
    grounds: SuggestingGrounds, plan: Plan, labels: Mapping[str, str]
) -> list[Suggestion]:
    found = []
    for alert in grounds.alerts:
        label = labels.get(alert.subject, alert.subject)
        match alert.kind:
            case AlertKind.BELOW_CHANCE:
                says, changes = _all_help_first(alert.subject, label, plan)
            case AlertKind.TIRED | AlertKind.DECLINE:
                if alert.kind is AlertKind.TIRED and alert.count < TIRED_SESSIONS:
                    continue
                minutes = _shorter(grounds.dose_weeks, plan)
                changes = (
                    [PlanChange(part=Part.MINUTES, value=minutes)]
                    if minutes < plan.dose.minutes_per_session
                    else []
                )
                says = f"Make sessions shorter: {minutes} minutes."
            case AlertKind.ADHERENCE:
                changes = _fewer_sessions(grounds.dose_weeks, plan)
                if not changes:
                    continue
                says = f"Ask for fewer sessions: {changes[0].value} in a week."
            case AlertKind.PLACE:
                if plan.sitting.layout is not Layout.SIDE_BY_SIDE:
                    continue
                changes = [PlanChange(part=Part.LAYOUT, value=Layout.STACKED.value)]
                says = "Put the options one below the other."
            case kind if kind in _LOOK:
                changes = []
                says = _LOOK[kind].format(about=f' in "{label}"' if label else "")
            case _:
                continue
        found.append(
            _suggestion(
                alert.kind.name,
                alert.subject,
                says=says,
                rule=alert.rule,
                evidence=alert.evidence,
                changes=changes,
            )
        )
    return found


def _shorter(weeks: Sequence[DoseWeek], plan: Plan) -> int:
    """A step less than the plan asks for, or what sessions came to lately where that is less."""
    done = [week for week in weeks if week.sessions][-1:]
    reached = [week.minutes / week.sessions for week in done]
    wanted = min([plan.dose.minutes_per_session - STEP_MINUTES, *reached])
    return max(LEAST_MINUTES, int(wanted // STEP_MINUTES) * STEP_MINUTES)


def _all_help_first(name: str, label: str, plan: Plan) -> tuple[str, list[PlanChange]]:
    changes = [
        PlanChange(part=Part.CUES, block=number, value=CueDirection.MOST_TO_LEAST.value)
        for number, block in enumerate(plan.blocks, 1)
        if name in block.names and block.cues is not CueDirection.MOST_TO_LEAST
    ]
    if changes:
        return f'Begin "{label}" with all the help, and take it away step by step.', changes
    return f'Look at "{label}": it is answered the wrong way round.', []


def _below_guessing(
    grounds: SuggestingGrounds, plan: Plan, labels: Mapping[str, str]
) -> list[Suggestion]:
    """Session by session, which may be luck in a week with many names and so raises no flag."""
    flagged = {each.subject for each in grounds.alerts if each.kind is AlertKind.BELOW_CHANCE}
    found = []
    for each in grounds.progress:
        if each.advice is Advice.BELOW_CHANCE and each.name not in flagged:
            says, changes = _all_help_first(each.name, labels.get(each.name, each.name), plan)
            found.append(
                _suggestion(
                    AlertKind.BELOW_CHANCE.name,
                    each.name,
                    says=says,
                    rule=f"below guessing in {plan.progression.below_sessions} sessions running",
                    evidence=each.evidence,
                    changes=changes,
                )
            )
    return found


def _fewer_sessions(weeks: Sequence[DoseWeek], plan: Plan) -> list[PlanChange]:
    """One more than what was done lately, where that is fewer than what is asked for."""
    newest = weeks[-plan.flags.adherence_weeks :]
    if not newest:
        return []
    wanted = ceil(sum(week.sessions for week in newest) / len(newest)) + 1
    if wanted >= plan.dose.sessions_per_week:
        return []
    return [PlanChange(part=Part.SESSIONS, value=wanted)]


def _moving_on(
    grounds: SuggestingGrounds, plan: Plan, labels: Mapping[str, str]
) -> list[Suggestion]:
    asks = plan.progression
    rules = {
        Advice.READY: (
            f"at least {asks.sure_percent} of 100 likely that {asks.right_percent} of 100 or more "
            f"are right alone by now, in {asks.least_sessions} sessions or more, above guessing, "
            f"mean help at most {asks.most_help:g}"
        ),
        Advice.CEILING: f"{asks.ceiling_percent} of 100 right in {asks.ceiling_probes} checks",
    }
    turned = _turned_round(grounds)
    found = []
    kept = [
        each
        for each in grounds.progress
        if each.advice in rules and each.kind in turned and each.name not in turned[each.kind]
    ]
    if kept:
        names = [labels.get(each.name, each.name) for each in kept]
        below = [labels.get(name, name) for kind in turned for name in turned[kind]]
        found.append(
            _suggestion(
                "KEEP",
                ",".join(each.name for each in kept),
                says=f"Keep for now what is known: {_quoted(names)}.",
                rule="what is right may be right by the order of words alone, while other "
                "sentences are below guessing",
                evidence=f"Below guessing: {_quoted(below)}.",
                changes=[],
            )
        )
    for each in grounds.progress:
        if each in kept:
            continue
        blocks = [
            (number, block)
            for number, block in enumerate(plan.blocks, 1)
            # Where names open one after the other the block moves on by itself.
            if block.kind is each.kind
            and each.name in block.names
            and block.order is Order.TOGETHER
        ]
        if each.advice not in rules or not blocks:
            continue
        harder = grounds.harder.get((each.kind, each.name))
        changes = []
        for number, block in blocks:
            if harder is not None:
                changes.append(PlanChange(part=Part.NAME_ON, block=number, value=harder))
            if harder is not None or len(block.names) > 1:
                changes.append(PlanChange(part=Part.NAME_OFF, block=number, value=each.name))
        label = labels.get(each.name, each.name)
        if harder is not None:
            says = f'Move on from "{label}" to "{labels.get(harder, harder)}".'
        elif changes:
            says = f'Take "{label}" out: it is known.'
        else:
            says = f'Choose what comes after "{label}": it is known.'
        found.append(
            _suggestion(
                each.advice.name,
                f"{each.kind.value}:{each.name}",
                says=says,
                rule=rules[each.advice],
                evidence=each.evidence,
                changes=changes,
            )
        )
    return found


def _turned_round(grounds: SuggestingGrounds) -> dict[Kind, list[str]]:
    """Kinds of exercise of sentences with the names in it that are below guessing."""
    flagged = {each.subject for each in grounds.alerts if each.kind is AlertKind.BELOW_CHANCE}
    found: dict[Kind, list[str]] = {}
    for each in grounds.progress:
        if each.kind in BY_ORDER and (each.advice is Advice.BELOW_CHANCE or each.name in flagged):
            found.setdefault(each.kind, []).append(each.name)
    return found


def _quoted(names: Iterable[str]) -> str:
    return "; ".join(f'"{name}"' for name in names)


def _directions(grounds: SuggestingGrounds, plan: Plan) -> list[Suggestion]:
    ways = {
        CueDirection.LEAST_TO_MOST: "with no help, and give it step by step",
        CueDirection.MOST_TO_LEAST: "with all the help, and take it away step by step",
    }
    return [
        _suggestion(
            "DIRECTION",
            f"{each.block}",
            says=f"Begin block {each.block} {ways[each.direction]}.",
            rule=f"right alone {plan.cues.suggest_percent} of 100 or more: begin with no help",
            evidence=f"Right alone {each.right} of the newest {each.of} without help.",
            changes=[PlanChange(part=Part.CUES, block=each.block, value=each.direction.value)],
        )
        for each in grounds.directions
    ]


def _suggestion(
    about: str,
    subject: str,
    *,
    says: str,
    rule: str,
    evidence: str,
    changes: Sequence[PlanChange],
) -> Suggestion:
    mark = sha256("\n".join((about, subject, rule, evidence)).encode()).hexdigest()[:8]
    name = ":".join(filter(None, (about.lower().replace("_", "-"), subject, mark)))
    return Suggestion(
        id=name,
        says=says,
        rule=rule[:1].upper() + rule[1:] + ".",
        evidence=evidence,
        changes=tuple(changes),
    )
