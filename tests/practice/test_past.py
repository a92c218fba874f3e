"""A checkpoint and what came after it tell the same as all trials read and folded again."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path
from random import Random

import pytest

from drills.core.items import ItemSet, Kind, Target
from drills.core.material import Material
from drills.core.plans import BlockPlan, CueSettings, Plan, SpacingPolicy, SpacingSettings
from drills.core.records import Entry, Trial
from drills.ledger import disk, open_ledger, rebuild
from drills.ledger.checkpoint import FEWEST_TO_COVER
from drills.ledger.summaries import Summaries
from drills.practice.home import Home
from drills.practice.past import Late, Past
from tests.edges import HandClock, QuietVoice
from tests.ledger.made import START, keep, made_session, session_files

PLAN = Plan(
    name="Years",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active",), trials=6),
        BlockPlan(kind=Kind.GESTURE, names=("wave",), trials=2),
    ),
)
FITTED = replace(PLAN, spacing=SpacingSettings(policy=SpacingPolicy.FITTED, fitted_least_recalls=5))
TARGETS = [
    *(Target(kind=Kind.MATCH, name="active", group=group) for group in ("push", "pull", "hit")),
    Target(kind=Kind.GESTURE, name="wave"),
]
SESSIONS = 50


@pytest.fixture
def unsynced(monkeypatch: pytest.MonkeyPatch) -> None:
    """Leaves flushing to the system: every test keeps many sessions."""
    monkeypatch.setattr(disk, "sync_file", lambda file: None)
    monkeypatch.setattr(disk, "sync_folder", lambda folder: None)


def varied(entries: list[Entry], rng: Random) -> list[Entry]:
    """The session with other targets and answers; every tenth trial is of a check."""
    last: dict[str, Trial] = {}
    for place, entry in enumerate(entries):
        if not isinstance(entry, Trial):
            continue
        before = last.get(entry.trial)
        target = before.asked.target if before else rng.choice(TARGETS)
        item_set = ItemSet.PROBE if rng.random() < 0.1 else ItemSet.TREATED
        first = replace(
            entry.attempts[0],
            right=rng.random() < 0.8,
            cue_level=rng.choice([0, 0, 0, 1]),
        )
        last[entry.trial] = changed = replace(
            entry,
            asked=replace(entry.asked, target=target, kind=target.kind, item_set=item_set)
            if before is None
            else before.asked,
            attempts=(before.attempts[0] if before else first, *entry.attempts[1:]),
        )
        entries[place] = changed
    return entries


def session(number: int, *, at: datetime | None = None) -> list[Entry]:
    rng = Random(number)
    start = at or START - timedelta(days=3 * (SESSIONS - number))
    return varied(made_session(f"s{number}", start=start, trials=6), rng)


@pytest.fixture(scope="module")
def template(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("template") / "practice"
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(disk, "sync_file", lambda file: None)
        for number in range(SESSIONS):
            keep(folder, session(number))
    return folder


@pytest.fixture
def years(tmp_path: Path, template: Path, unsynced: None) -> Path:
    return shutil.copytree(template, tmp_path / "practice")


def home_in(folder: Path, material: Material, plan: Plan = PLAN, *, at: datetime = START) -> Home:
    return Home(
        plan=plan,
        material=lambda: material,
        records=open_ledger(folder, elsewhere=()),
        clock=HandClock(at),
        voice=QuietVoice(),
        guide=tuple,
        program="0",
        new_seed=lambda: 1,
    )


def told(past: Past) -> object:
    """All that anybody asks of what was folded."""
    return (
        past.standings(TARGETS),
        *(past.days, past.last_practice, past.checks),
        *(dict(past.levels), dict(past.counted), dict(past.alone)),
    )


def whole(home: Home) -> Past:
    """What all trials come to, each read and folded again."""
    past = Past(home.plan, program="0", today=home.day())
    past.take(home.history())
    return past


def looked_at(
    folder: Path, material: Material, plan: Plan = PLAN, *, at: datetime = START
) -> object:
    """What a program that starts anew is told, held against the whole fold."""
    home = home_in(folder, material, plan, at=at)
    found = told(home.past())
    assert found == told(whole(home))
    home.close()
    return found


def months_read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Filled with the months whose trials are read."""
    read: list[str] = []
    with_trials = Summaries.with_trials

    def noted(self: Summaries, month: str, wanted: object) -> object:
        read.append(month)
        return with_trials(self, month, wanted)  # type: ignore[arg-type]

    monkeypatch.setattr(Summaries, "with_trials", noted)
    return read


def checkpoint(folder: Path) -> Path:
    return folder / "summaries" / "checkpoint"


@pytest.mark.parametrize("plan", [PLAN, FITTED], ids=["ladder", "fitted"])
def test_a_checkpoint_and_the_rest_are_the_whole(
    years: Path, material: Material, monkeypatch: pytest.MonkeyPatch, plan: Plan
) -> None:
    first = looked_at(years, material, plan)
    assert checkpoint(years).is_file()
    read = months_read(monkeypatch)
    home = home_in(years, material, plan)
    assert told(home.past()) == first
    home.close()
    # The sessions of the last week alone.
    assert set(read) == {"2026-11"}


@pytest.mark.parametrize("plan", [PLAN, FITTED], ids=["ladder", "fitted"])
def test_a_checkpoint_moves_on_as_sessions_come(
    years: Path, material: Material, plan: Plan
) -> None:
    made = set()
    for number in range(30):
        at = START + timedelta(days=2 * number)
        keep(years, session(SESSIONS + number, at=at))
        looked_at(years, material, plan, at=at + timedelta(hours=1))
        made.add(checkpoint(years).read_bytes())
    # One for every so many sessions, not one a start.
    assert 2 <= len(made) <= 1 + 30 // FEWEST_TO_COVER + 1


def lost(folder: Path) -> None:
    checkpoint(folder).unlink()


def damaged(folder: Path) -> None:
    data = bytearray(checkpoint(folder).read_bytes())
    data[len(data) // 2] ^= 1
    checkpoint(folder).write_bytes(data)


def cut_off(folder: Path) -> None:
    checkpoint(folder).write_bytes(checkpoint(folder).read_bytes()[:-200])


def empty(folder: Path) -> None:
    checkpoint(folder).write_bytes(b"")


def a_folder(folder: Path) -> None:
    lost(folder)
    checkpoint(folder).mkdir()


def a_session_gone(folder: Path) -> None:
    session_files(folder)[10].unlink()


def a_session_more(folder: Path) -> None:
    keep(folder, session(900, at=START - timedelta(days=100, hours=3)))


def a_session_cut(folder: Path) -> None:
    file = session_files(folder)[10]
    file.write_bytes(b"".join(file.read_bytes().splitlines(keepends=True)[:-3]))


def a_session_damaged(folder: Path) -> None:
    file = session_files(folder)[10]
    data = file.read_bytes()
    file.write_bytes(data[:600] + b"#" + data[601:] + b"torn")


def a_session_of_nothing(folder: Path) -> None:
    session_files(folder)[10].write_bytes(b"nothing at all\n")


def summaries_gone(folder: Path) -> None:
    for month in (folder / "summaries").glob("*.jsonl"):
        month.unlink()


def all_made_again(folder: Path) -> None:
    rebuild(folder)
    assert not checkpoint(folder).exists()


@pytest.mark.parametrize(
    "happens",
    [
        *(lost, damaged, cut_off, empty, a_folder),
        *(a_session_gone, a_session_more, a_session_cut, a_session_damaged, a_session_of_nothing),
        *(summaries_gone, all_made_again),
    ],
)
def test_what_is_lost_or_changed_costs_time_alone(
    years: Path, material: Material, happens: Callable[[Path], None]
) -> None:
    looked_at(years, material)
    happens(years)
    found = looked_at(years, material)
    assert looked_at(years, material) == found


def test_a_cut_session_is_told_at_every_start(years: Path, material: Material) -> None:
    looked_at(years, material)
    a_session_cut(years)
    for _ in range(3):
        home = home_in(years, material)
        home.past()
        assert any("cut off" in notice for notice in home.records.notices)
        home.close()


@pytest.mark.parametrize(
    "changed",
    [
        replace(PLAN, spacing=SpacingSettings(ladder_days=(1, 3, 9))),
        replace(PLAN, spacing=SpacingSettings(steps_back=1, run_two_options=2)),
        replace(PLAN, cues=CueSettings(drop_after=1)),
        FITTED,
    ],
    ids=["ladder", "steps", "cues", "fitted"],
)
def test_other_settings_fold_again(years: Path, material: Material, changed: Plan) -> None:
    before = looked_at(years, material)
    assert looked_at(years, material, changed) != before
    assert looked_at(years, material) == before


def test_a_clock_gone_back_and_put_right(years: Path, material: Material) -> None:
    now = looked_at(years, material)
    looked_at(years, material, at=START - timedelta(days=60))
    looked_at(years, material, at=START - timedelta(days=900))
    assert looked_at(years, material) == now
    keep(years, session(901, at=START + timedelta(days=4000)))
    for later in range(3):
        looked_at(years, material, at=START + timedelta(days=later))


def test_a_year_later_the_oldest_are_left_out_alike(years: Path, material: Material) -> None:
    for days in (0, 400, 1960, 2400, 5000):
        looked_at(years, material, at=START + timedelta(days=days))


def test_a_second_program_reads_the_checkpoint_and_leaves_it(
    years: Path, material: Material
) -> None:
    first = home_in(years, material)
    first.past()
    kept = checkpoint(years).read_bytes()
    second = home_in(years, material, FITTED)
    assert second.records.reason
    assert told(second.past()) == told(whole(second))
    assert checkpoint(years).read_bytes() == kept
    second.close()
    first.close()


def test_a_session_gone_on_with_is_dealt_without_itself(years: Path, material: Material) -> None:
    looked_at(years, material)
    keep(years, session(902, at=START - timedelta(hours=1)))
    home = home_in(years, material)
    without = home.past(without=frozenset({"s902"}))
    expected = Past(home.plan, program="0", today=home.day())
    expected.take([trial for trial in home.history() if trial.session != "s902"])
    assert told(without) == told(expected)
    assert told(without) != told(home.past())
    home.close()


def test_late_trials_are_read_once_and_only_when_asked_for() -> None:
    trials = [entry for entry in session(1) if isinstance(entry, Trial)]
    reads: list[int] = []

    def read() -> list[Trial]:
        reads.append(1)
        return trials

    late = Late(read)
    assert reads == []
    assert (len(late), list(late), late[0], late[1:]) == (
        *(len(trials), trials),
        *(trials[0], trials[1:]),
    )
    assert reads == [1]
