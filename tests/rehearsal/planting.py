"""Weeks of simulated patients into which one trouble is planted, and weeks without any."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from copy import copy
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime, timedelta
from random import Random
from unittest.mock import patch

from drills.core.gestures import Tick
from drills.core.items import Item, ItemSet, Kind
from drills.core.kinds import Side
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan, ProbeSettings
from drills.core.profiles import Profile
from drills.core.therapist import SecondScore
from drills.digest import Digest
from drills.digest.flag_values import AlertKind
from drills.exercises.reserve import Exemplar, is_reserved
from drills.rehearsal import MemoryRecords, MemoryTherapistLog, Rehearsal
from drills.rehearsal.patient import Patient
from tests.edges import QuietVoice

FIRST = date(2026, 1, 5)
WEEK = timedelta(days=7)
QUIET_WEEKS = 6
PLAN = Plan(
    name="Planted",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive", "object-cleft"), trials=12),
        BlockPlan(kind=Kind.QUESTION, names=("yes-no:full-passive",), trials=8),
        BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=8),
        BlockPlan(kind=Kind.QUESTION, names=("who-did-what",), trials=6, options=3),
        BlockPlan(kind=Kind.GESTURE, names=("wave", "stop", "come-here"), trials=6),
    ),
    probes=ProbeSettings(on=True, treated=("full-passive",), related=("object-question-which",)),
)
NAMES = ("active", "subject-cleft", "full-passive", "object-cleft", "C3", "gesture")
MORE_NAMES = ("object-question-which",)


@dataclass(frozen=True, slots=True, kw_only=True)
class Trouble:
    """What is planted, and the flags of which one has to be raised.

    change: the profile of the week.   weeks: as long as it lasts, the last one is looked at.
    strength: in words.   is_weak: so that a week may be too short to tell it from luck.
    """

    name: str
    strength: str
    kinds: frozenset[AlertKind]
    change: Callable[[Profile, Random], Profile]
    weeks: int = 1
    is_weak: bool = False


def _knows(profile: Profile, share: float, *names: str) -> Profile:
    return replace(profile, knows={**profile.knows, **dict.fromkeys(names, share)})


def _changed(**what: object) -> Callable[[Profile, Random], Profile]:
    return lambda profile, _: replace(profile, **what)  # type: ignore[arg-type]


def _trouble(
    name: str,
    strength: str,
    kinds: AlertKind | tuple[AlertKind, ...],
    change: Callable[[Profile, Random], Profile],
    weeks: int = 1,
    *,
    is_weak: bool = False,
) -> Trouble:
    every = kinds if isinstance(kinds, tuple) else (kinds,)
    return Trouble(
        name=name,
        strength=strength,
        kinds=frozenset(every),
        change=change,
        weeks=weeks,
        is_weak=is_weak,
    )


_LOOKS = (AlertKind.SIDE, AlertKind.PLACE)
TROUBLES = (
    _trouble(
        "first noun",
        "passives and clefts understood in 5 of 100, else first noun in 90 of 100",
        AlertKind.BELOW_CHANCE,
        lambda profile, _: replace(
            _knows(profile, 0.05, "full-passive", "object-cleft"), first_noun=0.9
        ),
    ),
    _trouble(
        "sudden drop",
        "7 of 10 of what was understood are lost",
        AlertKind.SUDDEN_DROP,
        _changed(drop=0.7),
    ),
    _trouble(
        "sudden drop, half",
        "half of what was understood is lost; weak",
        AlertKind.SUDDEN_DROP,
        _changed(drop=0.5),
        is_weak=True,
    ),
    _trouble("no practice", "no session", AlertKind.NO_PRACTICE, _changed(missed=1.0)),
    _trouble("pain", "told in 8 sessions of 10", AlertKind.PAIN, _changed(pain=0.8)),
    _trouble("new signs", "told in 8 sessions of 10", AlertKind.NEW_SIGNS, _changed(new_signs=0.8)),
    _trouble(
        "tiredness told",
        "rises by 0 to 2 points a block",
        (AlertKind.TIRED, AlertKind.DECLINE),
        _changed(tiring=1.0),
    ),
    _trouble(
        "fading",
        "3 of 10 lost with each point of tiredness, which rises by 0 to 2 a block",
        (AlertKind.TIRED, AlertKind.DECLINE),
        _changed(tiring=1.0, fading=0.3),
    ),
    _trouble(
        "wearing off",
        "2 of 10 lost with each trial until the next rest, nobody says anything; weak",
        AlertKind.DECLINE,
        _changed(wearing=0.2),
        is_weak=True,
    ),
    _trouble(
        "left unseen",
        "options on the left unseen in half of the trials",
        _LOOKS,
        _changed(neglected=Side.LEFT, neglect=0.5),
    ),
    _trouble(
        "right unseen",
        "options on the right unseen in half of the trials",
        _LOOKS,
        _changed(neglected=Side.RIGHT, neglect=0.5),
    ),
    _trouble(
        "liking for yes",
        "of 100 questions 30 understood, of the others 95 answered yes",
        AlertKind.YES,
        lambda profile, _: replace(_knows(profile, 0.3, "full-passive"), yes_bias=0.9),
    ),
    _trouble(
        "liking for a place",
        "first or second option in 4 trials of 10, whatever is asked",
        AlertKind.PLACE,
        lambda profile, rng: replace(profile, place=rng.choice((1, 2)), place_liking=0.4),
    ),
    _trouble(
        "perseveration",
        "an old answer in 6 of 10 trials that offer one, an old act in 6 of 10 gestures",
        AlertKind.PERSEVERATION,
        _changed(perseveration=0.6),
    ),
    _trouble(
        "help does not fade",
        "15 of 100 understood alone, a third of the rest with each step of help, four weeks",
        AlertKind.CUES,
        lambda profile, _: replace(
            _knows(profile, 0.15, *NAMES), cue_help=0.35, first_noun=0.0, yes_bias=0.0
        ),
        4,
    ),
    _trouble(
        "ceiling",
        "99 of 100 understood, two weeks",
        AlertKind.CEILING,
        lambda profile, _: replace(_knows(profile, 0.99, *NAMES, *MORE_NAMES), words=1.0),
        2,
    ),
    _trouble(
        "no rise",
        "every name stays at 40 of 100 understood, six weeks, about 27 sessions",
        AlertKind.NO_RISE,
        lambda profile, _: _knows(profile, 0.4, *NAMES),
        6,
    ),
    _trouble(
        "missed days",
        "9 of 10 sessions missed, two weeks",
        AlertKind.ADHERENCE,
        _changed(missed=0.9),
        2,
    ),
    _trouble("clock", "set back in 8 of 10 sessions", AlertKind.CLOCK, _changed(clock_back=0.8)),
    _trouble(
        "lenient scores",
        "8 of 10 gestures that are not the best are scored one more",
        AlertKind.UNTRUSTED,
        _changed(lenience=0.8),
    ),
)


def quiet_profile(number: int, week: int) -> Profile:
    """Patient `number` in week `week`, from 0: nothing is the matter, and it goes up.

    A name is known well and stays so, or is learned and rises week by week.
    """
    rng = Random(f"quiet {number}")
    knows: dict[str, float] = {}
    for name in (*NAMES, *MORE_NAMES):
        start, gain = rng.uniform(0.2, 0.4), rng.uniform(0.1, 0.18)
        knows[name] = min(0.9, start + gain * week)
    for name in ("active", "gesture", "C3"):
        if rng.random() < 0.5:
            knows[name] = rng.uniform(0.75, 0.9)
    for name in ("full-passive", *MORE_NAMES):
        # What is checked stays clear of the ceiling, which begins at 80 understood of 100.
        knows[name] = rng.uniform(0.05, 0.12) + rng.uniform(0.08, 0.1) * week
    return Profile(
        name=f"quiet-{number}",
        label="made for a count",
        knows=knows,
        words=rng.uniform(0.97, 1.0),
        first_noun=rng.uniform(0.0, 0.3),
        learning=0.0,
        cue_help=rng.uniform(0.3, 0.6),
        # Who begins is there for all of the first week, in which gestures are scored twice.
        missed=rng.uniform(0.0, 0.15) if week else 0.0,
        tiring=rng.uniform(0.0, 0.1),
        latency_ms=rng.randint(1500, 8000),
    )


class _Seen(Patient):
    """Keeps what each gesture deserved; tries that were scored alone."""

    deserved: list[int]

    def perform(self, item: Item, *, cue_level: int) -> tuple[int, tuple[Tick, ...]]:
        score, ticks = super().perform(item, cue_level=cue_level)
        self.deserved.append(score)
        return score, ticks


class Course:
    """The weeks of one simulated patient, one after the other."""

    def __init__(self, number: int, material: Material) -> None:
        self.number = number
        self._material = material
        self._is_reserved = _kept(lambda exemplar: is_reserved(exemplar, material.lexicon))
        self._records = _Records()
        self._second: list[SecondScore] = []
        self.weeks = 0

    def branched(self) -> Course:
        """The same up to here, to go on in another way."""
        other = copy(self)
        other._records = self._records.branched()
        other._second = list(self._second)
        return other

    def week(self, profile: Profile, *, scored_twice: bool = False) -> Digest:
        """One week more, and its digest.   scored_twice: the therapist scores gestures too."""
        deserved: list[int] = []

        class Seen(_Seen):
            pass

        Seen.deserved = deserved
        log = MemoryTherapistLog()
        for each in self._second:
            log.append(each)
        first = FIRST + self.weeks * WEEK
        # Nobody sees these pictures, and to draw them takes most of the time; what is kept for
        # checks is the same each time, and to find it out takes a quarter of the rest.
        with (
            patch("drills.exercises.reserve.is_reserved", self._is_reserved),
            patch("drills.rehearsal.weeks.Patient", Seen),
            patch("drills.exercises.showing._shares", lambda _, foils, __: (1.0,) * len(foils)),
        ):
            home = Rehearsal(
                plan=PLAN,
                material=self._material,
                records=self._records,
                voice=QuietVoice(),
                guide=(),
                program="0",
                profile=profile,
                first=first,
                seed=1000 * self.number + self.weeks,
                therapist_log=log,
            ).run(1)
            if scored_twice:
                self._score_twice(first, deserved, log)
            self.weeks += 1
            return home.digest(first, first + WEEK - timedelta(days=1))

    def _score_twice(self, first: date, deserved: list[int], log: MemoryTherapistLog) -> None:
        since = datetime(first.year, first.month, first.day, tzinfo=UTC)
        scores = iter(deserved)
        for trial in self._records.history(since=since):
            if trial.asked.kind is Kind.GESTURE and trial.asked.item_set is ItemSet.TREATED:
                own = [next(scores) for _ in trial.attempts]
                if own:
                    score = SecondScore(
                        at=trial.at,
                        by="therapist",
                        session=trial.session,
                        trial=trial.trial,
                        score=own[0],
                    )
                    self._second.append(score)
                    log.append(score)


def _kept(holds: Callable[[Exemplar], bool]) -> Callable[[Exemplar, object], bool]:
    known: dict[Exemplar, bool] = {}

    def looked_up(exemplar: Exemplar, _: object) -> bool:
        if exemplar not in known:
            known[exemplar] = holds(exemplar)
        return known[exemplar]

    return looked_up


class _Records(MemoryRecords):
    def branched(self) -> _Records:
        other = _Records()
        other._sessions = {name: list(entries) for name, entries in self._sessions.items()}
        other._opened_at = dict(self._opened_at)
        return other


def kinds_of(digest: Digest) -> frozenset[AlertKind]:
    return frozenset(alert.kind for alert in digest.alerts)


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """One patient.   quiet: the flags of each quiet week.   found: trouble -> those of its week."""

    quiet: tuple[frozenset[AlertKind], ...]
    planted: Mapping[str, frozenset[AlertKind]]


def watch(
    number: int,
    material: Material,
    *,
    troubles: tuple[Trouble, ...] = TROUBLES,
    quiet_weeks: int = QUIET_WEEKS,
) -> Seen:
    """Quiet weeks, then each trouble after the same weeks."""
    course = Course(number, material)
    quiet = []
    before = {}
    for week in range(quiet_weeks):
        before[week] = course.branched()
        digest = course.week(quiet_profile(number, week), scored_twice=week == 0)
        quiet.append(kinds_of(digest))
    planted = {}
    for trouble in troubles:
        # Long ones begin earlier, so that all end in the same week.
        branch = before[quiet_weeks - trouble.weeks].branched()
        is_scored = trouble.kinds == {AlertKind.UNTRUSTED}
        if is_scored:
            branch = before[0].branched()
        rng = Random(f"{number} {trouble.name}")
        for week in range(branch.weeks, branch.weeks + trouble.weeks):
            profile = trouble.change(quiet_profile(number, week), rng)
            digest = branch.week(profile, scored_twice=is_scored)
        planted[trouble.name] = kinds_of(digest)
    return Seen(quiet=tuple(quiet), planted=planted)
