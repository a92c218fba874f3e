"""What practice so far comes to, from years of trials that need not be read each time."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from functools import cached_property
from typing import TYPE_CHECKING, overload

from drills.core.folds import PutBy
from drills.core.kinds import ItemSet, Kind, Target
from drills.core.plans import Plan
from drills.core.records import Trial
from drills.practice.cueing import HelpKey, HelpLevel, help_key
from drills.schedule.rungs import Rungs

if TYPE_CHECKING:
    from drills.core.due import Due


class Past:
    """A `core.folds.Fold` of every trial, practice and checks.

    program: its version, since another one may fold by other rules.   today: the practice day.
    levels: with how much help the next trial of a name begins.
    counted: how many trials of a name count.   checks: all trials of checks.
    """

    def __init__(self, plan: Plan, *, program: str, today: date) -> None:
        self._plan = plan
        self._program = program
        self.today = today
        self._rungs = self._no_rungs()
        self._days: set[int] = set()
        self._last_given = 0
        self.levels: dict[HelpKey, HelpLevel] = {}
        self.counted: Counter[HelpKey] = Counter()
        self.checks: list[Trial] = []

    @property
    def name(self) -> str:
        plan = self._plan
        turns = plan.sitting.day_turns_at_hour
        return f"{self._program}; a day turns at {turns}; {plan.spacing}; {plan.cues}"

    @property
    def days(self) -> tuple[date, ...]:
        """The days of practice on which anything was answered, rising."""
        return tuple(map(date.fromordinal, sorted(self._days)))

    @property
    def last_practice(self) -> date | None:
        """The newest day on which anything was given in practice, answered or not."""
        return date.fromordinal(self._last_given) if self._last_given else None

    @property
    def alone(self) -> Mapping[Target, bool]:
        """Whether the newest first response to each target was right without help."""
        return {
            Target(kind=kind, name=name, group=group): climb.run > 0
            for (kind, name, group), climb in self._rungs.climbs.items()
        }

    def standings(self, targets: Iterable[Target]) -> tuple[Due, ...]:
        """Where each target stands today, in the order of `targets`."""
        # The first screen folds too, and asks only for checks.
        from drills.schedule.spacing import standings_of  # noqa: PLC0415

        return standings_of(self._rungs, targets, settings=self._plan.spacing, today=self.today)

    def take(self, trials: Sequence[Trial]) -> None:
        self._rungs.take(trials)
        turns_at_hour = self._plan.sitting.day_turns_at_hour
        turn = timedelta(hours=turns_at_hour)
        cues, levels, unknown = self._plan.cues, self.levels, HelpLevel()
        for trial in trials:
            asked = trial.asked
            if asked.item_set is not ItemSet.TREATED:
                self.checks.append(trial)
                continue
            at = trial.started_at
            day = at.toordinal() if at.hour >= turns_at_hour else (at - turn).toordinal()
            if day > self._last_given:  # noqa: PLR1730 - a call for each of years of trials
                self._last_given = day
            if trial.attempts:
                self._days.add(day)
            key = help_key(asked.target)
            levels[key] = levels.get(key, unknown).after(trial, cues)
            if trial.counts:
                self.counted[key] += 1

    def put_by(self) -> PutBy | None:
        rungs = self._rungs.put_by()
        if rungs is None:
            return None
        return PutBy(
            values={
                "rungs": rungs,
                "levels": [
                    [kind.value, name, level.level, level.right_running, level.wrong_running]
                    for (kind, name), level in self.levels.items()
                ],
                "counted": [[kind.value, name, of] for (kind, name), of in self.counted.items()],
                "days": sorted(self._days),
                "last_given": self._last_given,
            },
            trials=self.checks,
        )

    def go_on_from(self, kept: PutBy) -> None:
        rungs = self._no_rungs()
        rungs.go_on_from(kept.values["rungs"])
        levels = {
            (Kind(kind), name): HelpLevel(level=level, right_running=right, wrong_running=wrong)
            for kind, name, level, right, wrong in kept.values["levels"]
        }
        counted = Counter({(Kind(kind), name): of for kind, name, of in kept.values["counted"]})
        days, last_given = set(kept.values["days"]), int(kept.values["last_given"])
        self._rungs, self.levels, self._days, self._last_given = rungs, levels, days, last_given
        self.counted, self.checks = counted, list(kept.trials)

    def _no_rungs(self) -> Rungs:
        turns = self._plan.sitting.day_turns_at_hour
        return Rungs(self._plan.spacing, day_turns_at_hour=turns, today=self.today)


class Late(Sequence[Trial]):
    """Trials that are read when anything of them is first asked for: most often nothing is."""

    def __init__(self, read: Callable[[], Sequence[Trial]]) -> None:
        self._read = read

    @cached_property
    def _trials(self) -> Sequence[Trial]:
        return self._read()

    def __len__(self) -> int:
        return len(self._trials)

    def __iter__(self) -> Iterator[Trial]:
        return iter(self._trials)

    @overload
    def __getitem__(self, at: int) -> Trial: ...

    @overload
    def __getitem__(self, at: slice) -> Sequence[Trial]: ...

    def __getitem__(self, at: int | slice) -> Trial | Sequence[Trial]:
        return self._trials[at]
