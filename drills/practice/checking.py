"""The checks of one practice folder: what is due, and how one is begun or gone on with."""

from __future__ import annotations

from datetime import date
from functools import cached_property
from typing import TYPE_CHECKING

from drills.practice.chains import Chain, last_chain, of_practice
from drills.practice.probed import minutes_of, whole_check
from drills.schedule.checks import CheckList, DueCheck, Phase, check_days, list_for, next_check

if TYPE_CHECKING:
    from drills.digest.checks import Checked
    from drills.practice.home import Home
    from drills.practice.past import Past
    from drills.practice.session import Session


class Checking:
    """Reads the records when it is first asked, once.

    past: what `Home.past` gave already; None to read it.
    """

    def __init__(self, home: Home, past: Past | None = None) -> None:
        self._home = home
        self._read = past

    @cached_property
    def _past(self) -> Past:
        return self._read or self._home.past()

    @cached_property
    def done(self) -> tuple[date, ...]:
        """The days of the checks so far."""
        plan = self._home.plan
        return check_days(
            self._past.checks,
            plan.probes,
            whole=whole_check(plan),
            day_turns_at_hour=plan.sitting.day_turns_at_hour,
        )

    @property
    def checked(self) -> Checked:
        """All that checks have come to, for the digest."""
        from drills.digest.checks import Checked  # noqa: PLC0415 - the first screen needs none

        due = self.due
        return Checked(
            trials=self._past.checks, days=self.done, next_day=None if due is None else due.day
        )

    @cached_property
    def due(self) -> DueCheck | None:
        """What is due next, today or later."""
        home = self._home
        return next_check(
            self.done,
            home.plan.probes,
            last_practice=self._past.last_practice,
            today=home.day(),
        )

    def minutes_today(self) -> int | None:
        """About how long the check takes that is due or begun today; None for none."""
        home = self._home
        begun = self._begun()
        if begun is not None:
            return minutes_of(home.plan, _list_of(begun))
        due = self.due
        if due is None or due.day > home.day() or self._is_done_today():
            return None
        return minutes_of(home.plan, due.list)

    def start(self, *, chosen: CheckList | None = None) -> Session:
        """Go on with the check begun today, or begin one.

        chosen: a list to begin anew; None for the one whose turn it is.
        Raises: BadInput when the plan has nothing to check.
        """
        from drills.practice.checks import check_blocks, plan_of_check  # noqa: PLC0415 - slow
        from drills.practice.session import Session  # noqa: PLC0415

        home = self._home
        chain = self._begun() if chosen is None else None
        if chain is not None:
            wanted = _list_of(chain)
        else:
            due = self.due
            wanted = chosen or (
                due.list
                if due is not None
                else list_for(Phase.BASELINE, len(self.done), home.plan.probes)
            )
        blocks = check_blocks(home.plan, home.material, wanted)
        return Session(
            opened=home.opening(
                home.clock.now(),
                seed=home.plan.probes.seed,
                chain=chain,
                minutes=minutes_of(home.plan, wanted),
                check=str(wanted),
            ),
            blocks=blocks,
            plan=plan_of_check(home.plan, blocks),
            records=home.records,
            clock=home.clock,
            done=frozenset() if chain is None else chain.given,
            words_per_minute=home.words_per_minute,
        )

    def _begun(self) -> Chain | None:
        """The check of today that can go on."""
        home = self._home
        entries = of_practice(home.entries_of(home.day(), home.day()), checks=True)
        chain = last_chain(entries)
        if chain is None or chain.is_over or not home.is_as_opened(chain):
            return None
        return chain

    def _is_done_today(self) -> bool:
        return self._home.day() in self.done


def _list_of(chain: Chain) -> CheckList:
    return CheckList.parse(chain.first.check or "A")
