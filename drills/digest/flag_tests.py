"""Flags that go by chance: what a week without any trouble would seldom show.

All tests of a digest together may flag `quiet_percent` of such weeks. Each family of tests has its
parts of that, which add up (Bonferroni's inequality); among the names of a family `several` keeps
to it. Every test is exact. A first response after help is left out everywhere: it says nothing of
what is known alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date, timedelta
from statistics import median

from drills.core.flag_settings import FlagSettings
from drills.core.kinds import Foil, ItemSet, Kind
from drills.core.records import Trial, practice_day
from drills.digest.flag_grounds import (
    Key,
    Named,
    flag,
    is_alone,
    is_enough,
    is_wide,
    name_of,
    share_of,
    strata_of,
    told,
)
from drills.digest.flag_habits import place, repeats, side, yes
from drills.digest.flag_values import Alert, AlertKind
from drills.measures import chance, decline, errors, several
from drills.measures.strata import compare

# What is most urgent has most, and what is looked at several ways needs it.
PARTS = {
    AlertKind.SUDDEN_DROP: 2.0,
    AlertKind.BELOW_CHANCE: 3.0,
    AlertKind.DECLINE: 0.5,
    AlertKind.SIDE: 0.5,
    AlertKind.PLACE: 1.0,
    AlertKind.YES: 3.0,
    AlertKind.PERSEVERATION: 2.0,
}
# The newest of the range, held against the level of before apart from the whole range.
NEWEST_DAYS = 2


def tested_flags(
    sittings: Sequence[Sequence[Trial]],
    history: Iterable[Trial],
    labels: Named,
    settings: FlagSettings,
    *,
    first: date,
    turns_at_hour: int,
) -> tuple[Alert, ...]:
    """Everything in the practice of the range that is too unlikely to be mere chance.

    sittings: the trials of each, as last written.   history: of the `drop_weeks` before the range
    at least; what came from `first` on, or longer ago, is left out.
    """
    if not settings.quiet_percent:
        return ()
    level = {
        kind: settings.quiet_percent / 100 * parts / sum(PARTS.values())
        for kind, parts in PARTS.items()
    }
    trials = [trial for sitting in sittings for trial in sitting if is_alone(trial)]
    since = first - timedelta(weeks=settings.drop_weeks)
    earlier = [
        trial
        for trial in history
        if since <= practice_day(trial.started_at, turns_at_hour=turns_at_hour) < first
        and trial.asked.item_set is ItemSet.TREATED
        and is_alone(trial)
    ]
    found = (
        sudden_drop(
            *(trials, earlier, labels, settings, level[AlertKind.SUDDEN_DROP]),
            turns_at_hour=turns_at_hour,
        ),
        *below_chance(trials, earlier, labels, settings, level[AlertKind.BELOW_CHANCE]),
        within_sessions(sittings, settings, level[AlertKind.DECLINE]),
        side(sittings, settings, level[AlertKind.SIDE]),
        place(trials, settings, level[AlertKind.PLACE]),
        yes(trials, settings, level[AlertKind.YES]),
        *repeats(sittings, settings, level[AlertKind.PERSEVERATION]),
    )
    return tuple(each for each in found if each is not None)


def sudden_drop(
    trials: Sequence[Trial],
    earlier: Sequence[Trial],
    labels: Named,
    settings: FlagSettings,
    level: float,
    *,
    turns_at_hour: int,
) -> Alert | None:
    """Fewer right than in the weeks before, name by name.

    Held against the mean of all those weeks and not against the best, so that a level that was
    luck and comes back to itself is no drop. Looked at four ways: the whole range and its newest
    days, all names together and the worst of them.
    """

    def day_of(trial: Trial) -> date:
        return practice_day(trial.started_at, turns_at_hour=turns_at_hour)

    newest = sorted({day_of(trial) for trial in trials})[-NEWEST_DAYS:]
    looks = [list(trials), [trial for trial in trials if day_of(trial) in newest]]
    for now in looks:
        strata = strata_of(now, earlier)
        names = [key for key, each in strata.items() if is_enough(each, settings)]
        whole = compare(strata.values())
        by_name = [each for key in names if (each := compare([strata[key]])) is not None]
        worst = several.standing_out([each.lower for each in by_name], level / 4)
        ways = [("", whole)] if whole is not None and whole.lower <= level / 4 else []
        for name, found in [*ways, *((names[number][1], by_name[number]) for number in worst)]:
            if found.points < 0 and is_wide(found, settings):
                return flag(
                    AlertKind.SUDDEN_DROP,
                    found.one.of,
                    rule=(
                        f"right alone at least {settings.least_points} points below the "
                        f"{settings.drop_weeks} weeks before, name by name"
                    ),
                    evidence=f"{told(found.one)} now, {told(found.other)} before.",
                    subject=name,
                    labels=labels,
                    settings=settings,
                    days=tuple(newest) if now is looks[1] else (),
                )
    return None


def below_chance(
    trials: Sequence[Trial],
    earlier: Sequence[Trial],
    labels: Named,
    settings: FlagSettings,
    level: float,
) -> list[Alert]:
    """Fewer right than guessing gives, of each name, in the range or with the weeks before.

    The weeks before add to what a few trials a week cannot show; a name of which the range itself
    has as many right as guessing gives is left out. Each name is so looked at two ways.
    """
    now, before = _guessable(trials), _guessable(earlier)
    tested = {
        key: (own, before.get(key, []))
        for key, own in now.items()
        if len(own) >= settings.fewest_compared and share_of(own).right < _guessed(own)
    }
    tails = [min(1.0, 2 * min(_tail(own), _tail([*own, *older]))) for own, older in tested.values()]
    found = []
    # All names with enough trials share the level, those not below guessing too.
    others = sum(len(own) >= settings.fewest_compared for own in now.values()) - len(tested)
    for number in several.standing_out([*tails, *[1.0] * others], level):
        (_, name), (own, older) = list(tested.items())[number]
        share = share_of(own)
        turned = errors.by_foil(own)[Foil.REVERSAL]
        earlier_told = f"; in the weeks before {told(share_of(older))}" if older else ""
        found.append(
            flag(
                AlertKind.BELOW_CHANCE,
                share.of,
                rule="right alone fewer times than guessing gives, in these days or with the "
                "weeks before",
                evidence=(
                    f"{told(share)}, guessing gives {_guessed(own):.0f}; who did it was turned "
                    f"round in {turned} of {share.of - share.right} errors{earlier_told}."
                ),
                subject=name,
                labels=labels,
                settings=settings,
            )
        )
    return found


def _guessable(trials: Iterable[Trial]) -> dict[Key, list[Trial]]:
    by_name: dict[Key, list[Trial]] = {}
    for trial in trials:
        if trial.asked.kind is not Kind.GESTURE and trial.asked.effective_k > 1:
            by_name.setdefault(name_of(trial), []).append(trial)
    return by_name


def _tail(trials: Sequence[Trial]) -> float:
    """How likely a guesser has so few right or fewer."""
    guesses = [1 / trial.asked.effective_k for trial in trials]
    return chance.lower_tail(share_of(trials).right, guesses)


def _guessed(trials: Iterable[Trial]) -> float:
    """How many a guesser has right, on average."""
    return sum(1 / trial.asked.effective_k for trial in trials)


def within_sessions(
    sittings: Sequence[Sequence[Trial]], settings: FlagSettings, level: float
) -> Alert | None:
    """The last third of each kind against the first, name by name; or much slower in it."""
    first: list[Trial] = []
    last: list[Trial] = []
    for sitting in sittings:
        for kind in Kind:
            own = [trial for trial in sitting if trial.asked.kind is kind and is_alone(trial)]
            third = len(own) // 3
            first += own[:third]
            last += own[len(own) - third :]
    found = compare(strata_of(last, first).values())
    fell = (
        is_wide(found, settings) and found is not None and found.points < 0 and found.lower <= level
    )
    slow = _slower(first, last, settings)
    if not fell and not slow:
        return None
    said = "" if found is None else f"{told(found.one)} last, {told(found.other)} first. "
    return flag(
        AlertKind.DECLINE,
        len(first) + len(last),
        rule=(
            f"in the last third of sessions at least {settings.least_points} points fewer right "
            f"than in the first, or {settings.times_slower:g} times slower"
        ),
        evidence=(said + slow).strip(),
        settings=settings,
    )


def _slower(first: Sequence[Trial], last: Sequence[Trial], settings: FlagSettings) -> str:
    """A sentence where the median wait of right answers has grown enough, else empty."""
    waits = [
        [answer.latency_ms for answer in decline.answers_of(of) if answer.latency_ms is not None]
        for of in (first, last)
    ]
    if min(map(len, waits)) < settings.fewest_compared:
        return ""
    times = median(waits[1]) / median(waits[0])
    return (
        f"Right answers took {times:.1f} times as long." if times >= settings.times_slower else ""
    )
