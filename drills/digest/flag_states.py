"""Flags on how things stand: sessions done, help, progress, scores, records."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from drills.core.flag_settings import FlagSettings
from drills.core.kinds import ItemSet, Kind
from drills.core.plans import Plan
from drills.core.progress import Advice, Progress
from drills.core.records import Trial
from drills.digest.flag_grounds import Key, Named, is_alone, name_of, share_of
from drills.digest.flag_values import Alert, AlertKind
from drills.digest.raters import Agreement
from drills.digest.spans import CueWeeks, DoseWeek
from drills.digest.values import Quality
from drills.measures.intervals import newcombe_difference
from drills.measures.missing import Missing

# So sure that the rise is smaller than one that matters; one-sided.
SURE = 0.8


def adherence_flags(
    weeks: Sequence[DoseWeek], settings: FlagSettings, *, begun: date | None, until: date
) -> list[Alert]:
    """Too few sessions in each of the newest weeks, from the first practice on."""
    asked = [
        week
        for week in weeks
        if begun is not None
        and begun <= week.first
        and week.last <= until
        and week.sessions_planned > 0
    ]
    newest = asked[-settings.adherence_weeks :]
    if len(newest) < settings.adherence_weeks or not all(
        100 * week.sessions < settings.adherence_percent * week.sessions_planned for week in newest
    ):
        return []
    told = ", ".join(f"{week.sessions} of {week.sessions_planned:.0f}" for week in newest)
    return [
        Alert(
            kind=AlertKind.ADHERENCE,
            days=(newest[0].first, newest[-1].last),
            count=len(newest),
            rule=(
                f"fewer than {settings.adherence_percent} of 100 sessions asked for in each of "
                f"{settings.adherence_weeks} weeks running"
            ),
            evidence=f"Sessions a week: {told}.",
        )
    ]


def cue_flags(names: Iterable[CueWeeks], settings: FlagSettings) -> list[Alert]:
    """Names that needed as much help in the last of the weeks as in the first."""
    found = []
    for name in names:
        newest = [week.use for week in name.weeks[-settings.cue_weeks :]]
        levels = [use.mean_level for use in newest if use.of >= settings.fewest_compared]
        means = [level for level in levels if level is not None]
        if (
            len(means) < settings.cue_weeks
            or min(means) <= settings.cue_help
            or means[-1] < means[0]
        ):
            continue
        told = ", ".join(f"{mean:.1f}" for mean in means)
        found.append(
            Alert(
                kind=AlertKind.CUES,
                count=len(means),
                subject=name.name,
                label=name.label,
                rule=(
                    f"mean help above {settings.cue_help:g} in each of {settings.cue_weeks} weeks "
                    "running, and the last not below the first"
                ),
                evidence=f"Mean level of help by week: {told}.",
            )
        )
    return found


def progress_flags(
    progress: Iterable[Progress], trials: Sequence[Trial], plan: Plan, labels: Named
) -> list[Alert]:
    """Names at the ceiling, below guessing session by session, or without a rise.

    trials: of practice, oldest first, as far back as they are known.
    """
    asks, found = plan.progression, []
    rules = {
        Advice.CEILING: (
            AlertKind.CEILING,
            f"{asks.ceiling_percent} of 100 right in {asks.ceiling_probes} checks running",
        ),
        Advice.BELOW_CHANCE: (
            AlertKind.BELOW_CHANCE,
            f"below guessing in {asks.below_sessions} sessions running",
        ),
        Advice.NO_RISE: (
            AlertKind.NO_RISE,
            f"no rise in {asks.flat_sessions} sessions running, and one of "
            f"{plan.flags.flat_points} points of 100 from their first half to the last ruled out",
        ),
    }
    for each in progress:
        if each.advice not in rules:
            continue
        if each.advice is Advice.NO_RISE and not _is_flat((each.kind, each.name), trials, plan):
            continue
        kind, rule = rules[each.advice]
        found.append(
            Alert(
                kind=kind,
                count=1,
                subject=each.name,
                label=labels.get(each.name, each.name),
                rule=rule,
                evidence=each.evidence,
            )
        )
    return found


def _is_flat(name: Key, trials: Sequence[Trial], plan: Plan) -> bool:
    """No rise to speak of; so few trials that there may be one are no ground for a flag."""
    sessions: dict[str, list[Trial]] = {}
    for trial in reversed(trials):
        if name_of(trial) == name and trial.asked.item_set is ItemSet.TREATED and is_alone(trial):
            if trial.session not in sessions and len(sessions) == plan.progression.flat_sessions:
                break
            sessions.setdefault(trial.session, []).append(trial)
    ordered = list(reversed(sessions.values()))
    half = len(ordered) // 2
    before, after = (
        share_of([trial for session in of for trial in session])
        for of in (ordered[:half], ordered[half:])
    )
    if min(before.of, after.of) < plan.flags.fewest_compared:
        return False
    rise = newcombe_difference(
        after.right, after.of, before.right, before.of, confidence=2 * SURE - 1
    )
    return 100 * rise.high <= plan.flags.flat_points


def score_flags(agreement: Agreement | None, trials: Iterable[Trial], plan: Plan) -> list[Alert]:
    """The caregiver's scores of gestures, until they agree with the therapist's.

    trials: of the range; where no gesture was scored there is nothing to trust.
    """
    planned = any(block.kind is Kind.GESTURE for block in plan.blocks)
    if not planned or all(trial.asked.kind is not Kind.GESTURE for trial in trials):
        return []
    asks = plan.flags
    pairs = 0 if agreement is None else agreement.pairs
    rule = (
        f"{asks.double_scores} gestures scored twice, with weighted kappa {asks.kappa:g} or "
        f"{asks.exact_percent} of 100 the same, before scores at home are trusted"
    )
    evidence = f"Scored twice: {pairs}."
    if agreement is not None and pairs >= asks.double_scores:
        exact, kappa = agreement.scores.exact, agreement.scores.linear
        is_close = not isinstance(kappa, Missing) and kappa >= asks.kappa
        if is_close or 100 * exact.right >= asks.exact_percent * exact.of:
            return []
        told = "none" if isinstance(kappa, Missing) else f"{kappa:.2f}"
        evidence = f"The same score in {exact.right} of {exact.of}, weighted kappa {told}."
    return [Alert(kind=AlertKind.UNTRUSTED, count=pairs, rule=rule, evidence=evidence)]


def record_flags(quality: Quality) -> list[Alert]:
    """The clock, and what the records themselves tell."""
    found = []
    if quality.clock_back:
        found.append(
            Alert(
                kind=AlertKind.CLOCK,
                count=quality.clock_back,
                rule="an entry is older than the one written before it",
                evidence=f"Sessions in which the clock went back: {quality.clock_back}.",
            )
        )
    if quality.notices:
        found.append(
            Alert(
                kind=AlertKind.DATA,
                count=len(quality.notices),
                rule="the records tell of damage, of the clock, or that they cannot be written",
                evidence=" ".join(quality.notices),
            )
        )
    return found
