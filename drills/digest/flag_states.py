"""Flags on how things stand: sessions done, help, progress, scores, records."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from itertools import chain

from drills.core.flag_settings import FlagSettings
from drills.core.kinds import ItemSet, Kind
from drills.core.plans import Plan
from drills.core.progress import Advice, Progress
from drills.core.records import Trial
from drills.digest.flag_grounds import Named, is_alone, strata_of, told
from drills.digest.flag_values import Alert, AlertKind
from drills.digest.raters import Agreement
from drills.digest.spans import CueWeeks, DoseWeek
from drills.digest.values import Quality
from drills.measures.cues import CueUse
from drills.measures.intervals import newcombe_difference
from drills.measures.missing import Missing
from drills.measures.pairs import mcnemar
from drills.measures.strata import compare

# So sure that the rise is smaller than one that matters; one-sided.
SURE = 0.8
# A chance below this, that one rater scores higher so much oftener, is no accident.
ONE_SIDED = 0.05


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
    weekly = ", ".join(f"{week.sessions} of {week.sessions_planned:.0f}" for week in newest)
    return [
        Alert(
            kind=AlertKind.ADHERENCE,
            days=(newest[0].first, newest[-1].last),
            count=len(newest),
            rule=(
                f"fewer than {settings.adherence_percent} of 100 sessions asked for in each of "
                f"{settings.adherence_weeks} weeks running"
            ),
            evidence=f"Sessions a week: {weekly}.",
        )
    ]


def cue_flags(names: Sequence[CueWeeks], settings: FlagSettings) -> list[Alert]:
    """Help that is needed as much in the last of the weeks as in the first.

    Of all names together; of one alone where it is much help, in many trials.
    """
    together = [
        _mean_of([name.weeks[place].use for name in names])
        for place in range(max((len(name.weeks) for name in names), default=0))
    ]
    ways = [("", "", together, settings.cue_help, settings.cue_fall, settings.fewest_compared)]
    ways += [
        (
            *(name.name, name.label, [_mean_of([week.use]) for week in name.weeks]),
            *(2 * settings.cue_help, 0.0, 3 * settings.fewest_compared),
        )
        for name in names
    ]
    return [
        Alert(
            kind=AlertKind.CUES,
            count=settings.cue_weeks,
            subject=subject,
            label=label,
            rule=(
                f"mean help above {least:g} in each of {settings.cue_weeks} weeks running, and "
                f"the last {f'less than {fall:g}' if fall else 'not'} below the first"
            ),
            evidence="Mean level of help by week: "
            + ", ".join(f"{mean:.1f}" for _, mean in weeks[-settings.cue_weeks :])
            + ".",
        )
        for subject, label, weeks, least, fall, fewest in ways
        if _does_not_fade(weeks[-settings.cue_weeks :], settings.cue_weeks, least, fall, fewest)
    ]


Help = tuple[int, float]
"""Trials that could have had help, and the mean level of it."""


def _mean_of(uses: Sequence[CueUse]) -> Help:
    of = sum(use.of for use in uses)
    return of, sum(use.of * (use.mean_level or 0.0) for use in uses) / of if of else 0.0


def _does_not_fade(
    weeks: Sequence[Help], asked: int, least: float, fall: float, fewest: int
) -> bool:
    return (
        len(weeks) == asked
        and all(of >= fewest and mean > least for of, mean in weeks)
        and (weeks[-1][1] > weeks[0][1] - fall if fall else weeks[-1][1] >= weeks[0][1])
    )


def ceiling_flags(progress: Iterable[Progress], plan: Plan, labels: Named) -> list[Alert]:
    """Names at the ceiling."""
    asks = plan.progression
    return [
        Alert(
            kind=AlertKind.CEILING,
            count=asks.ceiling_probes,
            subject=each.name,
            label=labels.get(each.name, each.name),
            rule=f"{asks.ceiling_percent} of 100 right in {asks.ceiling_probes} checks running",
            evidence=each.evidence,
        )
        for each in progress
        if each.advice is Advice.CEILING
    ]


def flat_flags(
    progress: Iterable[Progress], trials: Sequence[Trial], plan: Plan, labels: Named
) -> list[Alert]:
    """No rise over all names that have one to come, compared name by name.

    One name in a few sessions cannot tell no rise from a slow one; `progress` has that.
    trials: of practice, oldest first, as far back as they are known.
    """
    newest: dict[str, list[Trial]] = {}
    for trial in reversed(trials):
        if trial.asked.item_set is not ItemSet.TREATED or not is_alone(trial):
            continue
        if trial.session not in newest and len(newest) == plan.flags.fewest_flat_sessions:
            break
        newest.setdefault(trial.session, []).append(trial)
    if len(newest) < plan.flags.fewest_flat_sessions:
        return []
    sessions = list(reversed(newest.values()))
    half = len(sessions) // 2
    strata = strata_of(chain.from_iterable(sessions[half:]), chain.from_iterable(sessions[:half]))
    found = compare(
        each
        for each in strata.values()
        if 100 * (each.one.right + each.other.right)
        < plan.progression.right_percent * (each.one.of + each.other.of)
    )
    if found is None or min(found.one.of, found.other.of) < plan.flags.fewest_compared:
        return []
    width = newcombe_difference(
        *(found.one.right, found.one.of, found.other.right, found.other.of),
        confidence=2 * SURE - 1,
    )
    # Newcombe's width about the difference within names: names may be given unequally often.
    plain = found.one.right / found.one.of - found.other.right / found.other.of
    if 100 * (found.points + width.high - plain) > plan.flags.flat_points:
        return []
    falls = found.points + width.high - plain < 0
    flat = [labels.get(each.name, each.name) for each in progress if each.advice is Advice.NO_RISE]
    return [
        Alert(
            kind=AlertKind.NO_RISE,
            count=len(sessions),
            rule=(
                f"in {len(sessions)} sessions a rise of {plan.flags.flat_points} points of 100 "
                f"from the first half to the last is ruled out, {round(100 * SURE)} of 100 sure"
            ),
            evidence=(
                ("It falls. " if falls else "")
                + f"{told(found.one).capitalize()} in the last half, {told(found.other)} before."
                + (f" Nor does any of these rise by itself: {'; '.join(flat)}." if flat else "")
            ),
        )
    ]


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
        f"{asks.exact_percent} of 100 the same, and neither scoring surely higher, before scores "
        "at home are trusted"
    )
    evidence = f"Scored twice: {pairs}."
    if agreement is not None and pairs >= asks.double_scores:
        exact, kappa = agreement.scores.exact, agreement.scores.linear
        is_close = not isinstance(kappa, Missing) and kappa >= asks.kappa
        agrees = is_close or 100 * exact.right >= asks.exact_percent * exact.of
        # Where nearly all scores are best, agreement is high also with one who is always lenient.
        if agrees and mcnemar(agreement.higher, agreement.lower) >= ONE_SIDED:
            return []
        close = "none" if isinstance(kappa, Missing) else f"{kappa:.2f}"
        evidence = (
            f"The same score in {exact.right} of {exact.of}, weighted kappa {close}; the "
            f"caregiver's is higher in {agreement.higher}, lower in {agreement.lower}."
        )
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
