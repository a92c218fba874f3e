"""A practice folder through clocks that jump, seasons, journeys and odd days of the calendar."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime, timedelta, timezone
from itertools import count
from pathlib import Path
from typing import TypeVar
from zoneinfo import ZoneInfo

import pytest

from drills.core.kinds import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import SessionOpened, Trial, latest_trials
from drills.digest import range_of_week
from drills.ledger import open_ledger, verify
from drills.practice.home import Home
from drills.practice.steps import Ask, Rest
from tests.edges import HandClock, QuietVoice

PLAN = Plan(
    name="Short",
    version=1,
    locale="en-US",
    blocks=(BlockPlan(kind=Kind.MATCH, names=("active",), trials=4),),
)
NEW_YORK, TOKYO, HONOLULU = map(ZoneInfo, ("America/New_York", "Asia/Tokyo", "Pacific/Honolulu"))


Seen = TypeVar("Seen")


class ZoneClock(HandClock):
    """A wall clock in a zone: passes in real time, shows local time with its offset."""

    def now(self) -> datetime:
        # As the system's clock gives it: a fixed offset, not a zone.
        offset = self.at.utcoffset()
        assert offset is not None
        return self.at.astimezone(UTC).astimezone(timezone(offset))

    def wait(self, seconds: float) -> None:
        zone = self.at.tzinfo
        self.at = (self.at.astimezone(UTC) + timedelta(seconds=seconds)).astimezone(zone)


class Household:
    """One practice folder, opened and closed as often as the program is started."""

    def __init__(self, folder: Path, material: Material) -> None:
        self.folder = folder
        self.clock = ZoneClock(datetime(2026, 11, 25, 10, tzinfo=NEW_YORK))
        self._material = material
        self._seeds = count(1)
        self.notices: list[str] = []

    def start(self) -> Home:
        return Home(
            plan=PLAN,
            material=lambda: self._material,
            records=open_ledger(self.folder, elsewhere=()),
            clock=self.clock,
            voice=QuietVoice(),
            guide=tuple,
            program="0",
            new_seed=lambda: next(self._seeds),
        )

    def practise(self, *, trials: int = 4, resume: bool = False) -> int:
        """One sitting; how many trials were given."""
        home = self.start()
        session = home.start(resume=resume)
        session.check_in(tiredness=1, pain=False, new_signs=False)
        given = 0
        while given < trials and isinstance(session.step, Ask | Rest):
            step = session.step
            if isinstance(step, Rest):
                session.rested(tiredness=1, helped=False)
                continue
            self.clock.wait(5)
            session.choose(step.item.answer or 0)
            session.advance()
            assert session.trouble is None
            given += 1
        if trials >= 4:
            session.finish(tiredness=1, helped=False)
        self.notices += home.records.notices
        home.close()
        return given

    def look(self, see: Callable[[Home], Seen]) -> Seen:
        home = self.start()
        seen = see(home)
        home.close()
        return seen

    def trials(self) -> tuple[Trial, ...]:
        return self.look(lambda home: latest_trials(home.records.entries()))


@pytest.fixture
def house(tmp_path: Path, material: Material) -> Iterator[Household]:
    house = Household(tmp_path / "practice", material)
    yield house
    # Whatever the clock did, all of it is whole, and no id was given twice.
    assert verify(house.folder) == ()
    trials = house.trials()
    assert len({trial.trial for trial in trials}) == len(trials)


@pytest.mark.parametrize(
    "back", [timedelta(hours=1), timedelta(days=1), timedelta(days=365)], ids=str
)
def test_a_clock_set_back_between_sessions_loses_nothing_and_is_told(
    house: Household, back: timedelta
) -> None:
    assert house.practise() == 4
    house.clock.at -= back
    assert house.practise() == 4
    assert len(house.trials()) == 8
    assert any(notice.startswith("The clock went back") for notice in house.notices)
    # Practice goes on from here, and what lies ahead counts as today's.
    dues = house.look(lambda home: home.standings())
    assert all(due.last is None or due.last <= house.clock.at.date() for due in dues)
    assert house.look(lambda home: home.today()).sessions_done >= 1
    # The clock is put right again.
    house.clock.at += back + timedelta(days=1)
    assert house.practise() == 4
    assert len(house.trials()) == 12


@pytest.mark.parametrize(
    "back", [timedelta(hours=1), timedelta(days=1), timedelta(days=365)], ids=str
)
def test_a_clock_set_back_within_a_session_loses_nothing_and_is_told(
    house: Household, back: timedelta
) -> None:
    home = house.start()
    session = home.start(resume=False)
    session.check_in(tiredness=1, pain=False, new_signs=False)
    for _ in range(4):
        step = session.step
        assert isinstance(step, Ask)
        house.clock.wait(5)
        session.choose(step.item.answer or 0)
        if step.number == 2:
            house.clock.at -= back
        session.advance()
    session.finish(tiredness=1, helped=False)
    assert any(notice.startswith("The clock went back") for notice in home.records.notices)
    home.close()
    assert [trial.trial[-3:] for trial in house.trials()] == ["000", "001", "002", "003"]
    day = house.look(lambda home: home.day(home.records.entries()[0].at))
    digest = house.look(lambda home: home.digest(day, day))
    assert len(digest.answers) == 4
    assert digest.quality.clock_back == 1


def test_the_hour_that_comes_twice_keeps_its_sessions_in_order(house: Household) -> None:
    # Daylight saving ended on 2026-11-01 at 02:00 in New York.   Source: the tz database.
    house.clock.at = datetime(2026, 11, 1, 1, 30, tzinfo=NEW_YORK)
    assert house.practise() == 4
    house.clock.wait(3600)
    local = house.clock.now()
    assert (local.hour, local.utcoffset()) == (1, timedelta(hours=-5))
    assert house.practise() == 4
    assert not house.notices
    first, second = [
        entry
        for entry in house.look(lambda home: home.records.entries())
        if isinstance(entry, SessionOpened)
    ]
    assert first.at < second.at
    assert house.look(lambda home: home.today()).sessions_done == 2


@pytest.mark.parametrize("day", [date(2026, 3, 8), date(2026, 11, 1)], ids=str)
def test_a_session_across_a_change_of_the_clocks_goes_on(house: Household, day: date) -> None:
    house.clock.at = datetime(day.year, day.month, day.day, 1, 59, 50, tzinfo=NEW_YORK)
    assert house.practise(trials=3) == 3
    assert house.clock.now().utcoffset() != house.trials()[0].started_at.utcoffset()
    assert house.practise(resume=True) == 1
    assert not house.notices
    minutes = house.look(lambda home: home.digest(home.day(), home.day())).dose.minutes
    assert minutes == pytest.approx(20 / 60, abs=0.2)


def test_a_journey_round_the_world_keeps_each_session_on_its_local_day(house: Household) -> None:
    legs = [
        (datetime(2026, 11, 25, 10, tzinfo=NEW_YORK), date(2026, 11, 25)),
        (datetime(2026, 11, 26, 23, tzinfo=TOKYO), date(2026, 11, 26)),
        # Back over the date line: later on earth, an earlier day on the wall.
        (datetime(2026, 11, 26, 10, tzinfo=HONOLULU), date(2026, 11, 26)),
        (datetime(2026, 11, 28, 3, 59, tzinfo=TOKYO), date(2026, 11, 27)),
        (datetime(2026, 11, 28, 4, 1, tzinfo=TOKYO), date(2026, 11, 28)),
    ]
    for at, _ in legs:
        house.clock.at = at
        assert house.practise() == 4
    assert not house.notices
    for day in {day for _, day in legs}:
        digest = house.look(lambda home, day=day: home.digest(day, day))
        assert len(digest.answers) == 4 * sum(each == day for _, each in legs)
    whole = house.look(lambda home: home.digest(date(2026, 11, 25), date(2026, 11, 28)))
    assert len(whole.answers) == 20


def test_the_29th_of_february_is_a_day_like_any_other(house: Household) -> None:
    for day in (28, 29):
        house.clock.at = datetime(2028, 2, day, 10, tzinfo=NEW_YORK)
        assert house.practise() == 4
    house.clock.at = datetime(2028, 3, 1, 10, tzinfo=NEW_YORK)
    assert house.practise() == 4
    assert not house.notices
    names = sorted(path.name[:10] for path in (house.folder / "records").glob("*.jsonl"))
    assert names == ["2028-02-28", "2028-02-29", "2028-03-01"]
    leap = date(2028, 2, 29)
    assert len(house.look(lambda home: home.digest(leap, leap)).answers) == 4
    assert all(
        due.last in (leap, date(2028, 2, 28), date(2028, 3, 1), None)
        for due in house.look(lambda home: home.standings())
    )


def test_week_53_holds_the_days_of_two_years(house: Household) -> None:
    # ISO 8601: a year whose first day is a Thursday has 53 weeks; 2026-01-01 was one.
    assert date(2026, 1, 1).isoweekday() == 4
    first, last = range_of_week("2026-W53")
    assert (first, last) == (date(2026, 12, 28), date(2027, 1, 3))
    for at in (datetime(2026, 12, 27, 10), datetime(2026, 12, 31, 23, 59, 50)):  # noqa: DTZ001
        house.clock.at = at.replace(tzinfo=NEW_YORK)
        assert house.practise() == 4
    for at in (datetime(2027, 1, 3, 10), datetime(2027, 1, 4, 10)):  # noqa: DTZ001
        house.clock.at = at.replace(tzinfo=NEW_YORK)
        assert house.practise() == 4
    digest = house.look(lambda home: home.digest(first, last))
    assert len(digest.answers) == 8
    assert {answer.day for answer in digest.answers} == {date(2026, 12, 31), date(2027, 1, 3)}
