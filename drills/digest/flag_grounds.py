"""What tests of flags go by: which trials, compared how, and how a flag is worded."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from datetime import date
from typing import TypeGuard

from drills.core.flag_settings import FlagSettings
from drills.core.kinds import Kind
from drills.core.records import Trial
from drills.digest.flag_values import Alert, AlertKind
from drills.measures.accuracy import Share
from drills.measures.strata import Comparison, Stratum

Named = Mapping[str, str]
Key = tuple[Kind, str]


def is_alone(trial: Trial) -> bool:
    """Judged, and the first response came before any help."""
    return trial.counts and trial.first is not None and trial.first.cue_level == 0


def strata_of(
    one: Iterable[Trial],
    other: Iterable[Trial],
    holds: Callable[[Trial], bool] = lambda trial: trial.unaided_right,
) -> dict[Key, Stratum]:
    """How often `holds` on each side, by name."""
    counts: dict[Key, list[int]] = {}
    for place_of, trials in enumerate((one, other)):
        for trial in trials:
            own = counts.setdefault(name_of(trial), [0, 0, 0, 0])
            own[2 * place_of] += holds(trial)
            own[2 * place_of + 1] += 1
    return {
        key: Stratum(one=Share(right=a, of=b), other=Share(right=c, of=d))
        for key, (a, b, c, d) in counts.items()
    }


def is_enough(of: Stratum, settings: FlagSettings) -> bool:
    return min(of.one.of, of.other.of) >= settings.fewest_compared


def is_wide(found: Comparison | None, settings: FlagSettings) -> bool:
    return (
        found is not None
        and min(found.one.of, found.other.of) >= settings.fewest_compared
        and abs(found.points) >= settings.least_points / 100
    )


def stands_out(
    found: Comparison | None, settings: FlagSettings, level: float, *, looks: int = 1
) -> TypeGuard[Comparison]:
    """Wide enough to matter, and too unlikely for chance.   looks: tests that share the level."""
    return found is not None and is_wide(found, settings) and found.either * looks <= level


def name_of(trial: Trial) -> Key:
    return trial.asked.kind, trial.asked.target.name


def share_of(trials: Sequence[Trial]) -> Share:
    return Share(right=sum(trial.unaided_right for trial in trials), of=len(trials))


def told(share: Share, says: str = "right alone") -> str:
    return f"{says} {share.right} of {share.of}"


def flag(
    kind: AlertKind,
    count: int,
    *,
    rule: str,
    evidence: str,
    settings: FlagSettings,
    subject: str = "",
    labels: Named | None = None,
    days: tuple[date, ...] = (),
) -> Alert:
    return Alert(
        kind=kind,
        days=days,
        count=count,
        subject=subject,
        label=(labels or {}).get(subject, subject),
        rule=(
            f"{rule}, beyond what chance does in {settings.quiet_percent:g} of 100 weeks "
            "over all such rules"
        ),
        evidence=evidence[:1].upper() + evidence[1:],
    )
