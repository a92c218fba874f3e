"""Whether a name is ready to be moved on from, or should be handed back to the therapist.

It suggests and changes nothing. Every number is a setting of the plan (`[progression]`).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from drills.core.kinds import ItemSet, Kind
from drills.core.plans import ProgressionSettings
from drills.core.progress import Advice, Progress
from drills.core.records import Trial
from drills.measures import accuracy, chance, cues, trend
from drills.measures.missing import Missing
from drills.schedule.level import chance_at_least

LOOK_BACK = 20
"""What lies more sessions back tells nothing of how likely a level is now."""

Session = tuple[Trial, ...]
"""The trials of one name in one session, in the order given."""


def progress_of(
    names: Iterable[tuple[Kind, str]], trials: Iterable[Trial], settings: ProgressionSettings
) -> tuple[Progress, ...]:
    """What is advised on each of `names`, in their order.

    trials: of any names, oldest first; a trial without a first response counts nowhere.
    """
    treated: dict[tuple[Kind, str], dict[str, list[Trial]]] = {}
    probed: dict[tuple[Kind, str], dict[str, list[Trial]]] = {}
    for trial in trials:
        asked = trial.asked
        if not trial.counts or asked.item_set not in (ItemSet.TREATED, ItemSet.PROBE):
            continue
        into = treated if asked.item_set is ItemSet.TREATED else probed
        of_name = into.setdefault((asked.kind, asked.target.name), {})
        of_name.setdefault(trial.session, []).append(trial)
    return tuple(
        _progress(
            kind, name, _sessions(treated, (kind, name)), _sessions(probed, (kind, name)), settings
        )
        for kind, name in dict.fromkeys(names)
    )


def opened(
    names: Sequence[str], progress: Mapping[str, Progress], practised: Iterable[str]
) -> tuple[str, ...]:
    """The names that are open when one opens after the other, in their order.

    The first is open, and each next once the one before is ready; what was practised stays open.
    """
    before = set(practised)
    last = max((place for place, name in enumerate(names) if name in before), default=0)
    while last + 1 < len(names) and names[last] in progress and progress[names[last]].is_ready:
        last += 1
    return tuple(names[: last + 1])


def _sessions(
    found: Mapping[tuple[Kind, str], Mapping[str, list[Trial]]], key: tuple[Kind, str]
) -> tuple[Session, ...]:
    return tuple(tuple(of_session) for of_session in found.get(key, {}).values())


def _progress(
    kind: Kind,
    name: str,
    sessions: Sequence[Session],
    probes: Sequence[Session],
    settings: ProgressionSettings,
) -> Progress:
    advice, evidence = (
        _at_ceiling(probes, settings)
        or _ready(sessions, settings)
        or _below_chance(sessions, settings)
        or _no_rise(sessions, settings)
        or _still(sessions, settings)
    )
    return Progress(kind=kind, name=name, advice=advice, evidence=evidence)


Found = tuple[Advice, str]


def _recent(sessions: Sequence[Session], settings: ProgressionSettings) -> tuple[Session, ...]:
    """The newest sessions that together hold enough of both; none where there is too little."""
    for count in range(settings.least_sessions, len(sessions) + 1):
        newest = sessions[-count:]
        if len(_alone(_all(newest))) >= settings.least_trials:
            return tuple(newest)
    return ()


def _ready(sessions: Sequence[Session], settings: ProgressionSettings) -> Found | None:
    recent = _recent(sessions, settings)
    if not recent:
        return None
    trials = _all(recent)
    share = accuracy.count(trials).unaided
    help_used = cues.summarise(trials).mean_level or 0.0
    if (
        help_used > settings.most_help
        or chance.upper_tail(share.right, _guesses(trials)) >= settings.guess_percent / 100
    ):
        return None
    sure = _sure(sessions, settings)
    if 100 * sure < settings.sure_percent:
        return None
    return Advice.READY, (
        f"Right alone {share.right} of {share.of} in the last {len(recent)} sessions, above "
        f"guessing, mean help {help_used:.1f}; all sessions and their rise make it "
        f"{100 * sure:.0f} of 100 likely to be {settings.right_percent} of 100 or more by now."
    )


def _sure(sessions: Sequence[Session], settings: ProgressionSettings) -> float:
    """How likely the share right alone that is asked for is reached by now."""
    newest = sessions[-LOOK_BACK:]
    counts = [accuracy.count(each).unaided for each in newest]
    guesses = _guesses(_all(newest))
    return chance_at_least(
        settings.right_percent / 100,
        tuple((one.right, one.of) for one in counts if one.of),
        guess=sum(guesses) / max(1, len(guesses)),
    )


def _at_ceiling(probes: Sequence[Session], settings: ProgressionSettings) -> Found | None:
    newest = probes[-settings.ceiling_probes :]
    shares = [accuracy.count(probe).unaided for probe in newest]
    if len(newest) < settings.ceiling_probes or not all(
        share.of >= settings.fewest_in_a_check
        and 100 * share.right >= settings.ceiling_percent * share.of
        for share in shares
    ):
        return None
    told = ", ".join(f"{share.right} of {share.of}" for share in shares)
    return Advice.CEILING, f"Right alone in the last {len(newest)} checks: {told}."


def _below_chance(sessions: Sequence[Session], settings: ProgressionSettings) -> Found | None:
    newest = sessions[-settings.below_sessions :]
    if len(newest) < settings.below_sessions:
        return None
    each_below = all(
        accuracy.count(session).unaided.right < sum(_guesses(session)) for session in newest
    )
    trials = _all(newest)
    share, guesses = accuracy.count(trials).unaided, _guesses(trials)
    if not each_below or chance.lower_tail(share.right, guesses) >= settings.guess_percent / 100:
        return None
    return Advice.BELOW_CHANCE, (
        f"Right alone {share.right} of {share.of} in the last {len(newest)} sessions, each below "
        f"guessing, which would give {sum(guesses):.0f}."
    )


def _no_rise(sessions: Sequence[Session], settings: ProgressionSettings) -> Found | None:
    newest = sessions[-settings.flat_sessions :]
    if len(newest) < settings.flat_sessions:
        return None
    shares = [accuracy.count(session).unaided for session in newest]
    if not all(share.of for share in shares):
        return None
    scores = [share.right / share.of for share in shares]
    rise = trend.trend(range(len(scores)), scores, fewest=settings.flat_sessions)
    total = sum(share.right for share in shares), sum(share.of for share in shares)
    if isinstance(rise, Missing) or 100 * total[0] >= settings.right_percent * total[1]:
        return None
    if not isinstance(rise.tau, Missing) and rise.tau > 0:
        return None
    return Advice.NO_RISE, (
        f"Right alone {total[0]} of {total[1]} in the last {len(newest)} sessions, and no rise "
        f"from the first of them to the last."
    )


def _still(sessions: Sequence[Session], settings: ProgressionSettings) -> Found:
    recent = _recent(sessions, settings)
    if not recent:
        trials = len(_alone(_all(sessions)))
        return Advice.TOO_FEW, (
            f"{trials} trials in {len(sessions)} sessions; {settings.least_trials} in "
            f"{settings.least_sessions} are needed."
        )
    given = _all(recent)
    share = accuracy.count(given).unaided
    help_used = cues.summarise(given).mean_level or 0.0
    sure = 100 * _sure(sessions, settings)
    told = (
        f"Right alone {share.right} of {share.of} in the last {len(recent)} sessions; "
        f"{settings.right_percent} of 100 are asked for"
    )
    if sure < settings.sure_percent:
        told += f", and it is {sure:.0f} of 100 likely, not {settings.sure_percent}"
    if help_used > settings.most_help:
        told += f", with mean help {help_used:.1f}, not {settings.most_help:.1f}"
    return Advice.GO_ON, told + "."


def _all(sessions: Sequence[Session]) -> tuple[Trial, ...]:
    return tuple(trial for session in sessions for trial in session)


def _alone(trials: Iterable[Trial]) -> tuple[Trial, ...]:
    return tuple(trial for trial in trials if trial.could_be_alone)


def _guesses(trials: Iterable[Trial]) -> list[float]:
    """Chance of a right guess in each that did not begin with help; a gesture cannot be guessed."""
    return [
        0.0 if trial.asked.kind is Kind.GESTURE else 1 / max(1, trial.asked.effective_k)
        for trial in _alone(trials)
    ]
