"""Eight hours of practice in one program, sped up: what it holds stays flat."""

from __future__ import annotations

import gc
import os
import sys
from itertools import count
from pathlib import Path

import pytest

from drills.core.kinds import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import latest_trials
from drills.ledger import disk, open_ledger
from drills.practice.home import Home
from drills.practice.steps import Ask, Finish, Rest
from tests.edges import HandClock, QuietVoice

HOURS = 8
SECONDS_A_TRIAL = 12
PLAN = Plan(
    name="Soak",
    version=1,
    locale="en-US",
    blocks=(
        BlockPlan(kind=Kind.MATCH, names=("active", "full-passive"), trials=30),
        BlockPlan(kind=Kind.CLOZE, names=("C3",), trials=30),
        BlockPlan(kind=Kind.GESTURE, names=("wave", "brush-teeth"), trials=60),
    ),
)
MOST_GROWTH_MB = 6


def memory_mb() -> float:
    gc.collect()
    pages = int(Path("/proc/self/statm").read_text().split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 2**20


@pytest.mark.skipif(sys.platform != "linux", reason="reads /proc")
def test_memory_and_open_files_are_flat_over_eight_hours(
    tmp_path: Path, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(disk, "sync_file", lambda file: None)
    clock, seeds = HandClock(), count(1)
    home = Home(
        plan=PLAN,
        material=lambda: material,
        records=open_ledger(tmp_path / "practice", elsewhere=()),
        clock=clock,
        voice=QuietVoice(),
        guide=tuple,
        program="0",
        new_seed=lambda: next(seeds),
    )
    end = clock.at.timestamp() + HOURS * 3600
    memory: list[float] = []
    files: list[int] = []
    trials = 0
    while clock.at.timestamp() < end:
        home.today()
        session = home.start(resume=False)
        session.check_in(tiredness=1, pain=False, new_signs=False)
        while not isinstance(session.step, Finish):
            step = session.step
            if isinstance(step, Rest):
                session.rested(tiredness=1, helped=False)
            elif isinstance(step, Ask):
                clock.wait(SECONDS_A_TRIAL)
                trials += 1
                if step.item.kind is Kind.GESTURE:
                    session.score(trials % 4)
                else:
                    answer = step.item.answer or 0
                    if trials % 3 == 0 and not session.choose(1 - answer).over:
                        clock.wait(SECONDS_A_TRIAL)
                    cued = isinstance(session.step, Ask) and session.step.cue is not None
                    if cued or trials % 3:
                        session.choose(answer)
                session.advance()
        session.finish(tiredness=2, helped=False)
        home.standings()
        home.digest(home.day(), home.day())
        memory.append(memory_mb())
        files.append(len(os.listdir("/proc/self/fd")))  # noqa: PTH208
    kept = latest_trials(home.records.entries())
    home.close()
    hours = (clock.at - kept[0].started_at).total_seconds() / 3600
    # The first hours fill what is kept of the newest sessions.
    early, late = memory[len(memory) // 2], memory[-1]
    print(
        f"\n{hours:.1f} hours, {len(memory)} sessions, {trials} trials: memory {memory[0]:.1f} MB"
        f" after the first session, {early:.1f} MB half way, {late:.1f} MB at the end;"
        f" open files {min(files)} to {max(files)}"
    )
    assert hours >= HOURS - 0.5
    assert len(kept) == trials
    assert max(files) == min(files)
    assert late - early < MOST_GROWTH_MB
