"""Hours of practice in one program, sped up, and what it holds meanwhile."""

from __future__ import annotations

import gc
import os
import tracemalloc
from dataclasses import dataclass
from itertools import count
from pathlib import Path

from drills.core.kinds import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan
from drills.core.records import latest_trials
from drills.ledger import open_ledger
from drills.practice.home import Home
from drills.practice.steps import Ask, Finish, Rest
from tests.edges import HandClock, QuietVoice

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


@dataclass(frozen=True, slots=True, kw_only=True)
class Soaked:
    """After each session.   memory_mb: of Python's own objects.   files: open ones."""

    hours: float
    trials: int
    kept: int
    memory_mb: list[float]
    files: list[int]

    def __str__(self) -> str:
        memory = self.memory_mb
        return (
            f"{self.hours:.1f} hours, {len(memory)} sessions, {self.trials} trials: memory"
            f" {memory[0]:.2f} MB after the first session, {memory[len(memory) // 2]:.2f} MB half"
            f" way, {memory[-1]:.2f} MB at the end; open files {min(self.files)} to"
            f" {max(self.files)}"
        )


def soak(place: Path, material: Material, *, hours: float) -> Soaked:
    """Practise in `place`, session after session, looking at all that the screens look at."""
    clock, seeds = HandClock(), count(1)
    home = Home(
        plan=PLAN,
        material=lambda: material,
        records=open_ledger(place, elsewhere=()),
        clock=clock,
        voice=QuietVoice(),
        guide=tuple,
        program="0",
        new_seed=lambda: next(seeds),
    )
    end = clock.at.timestamp() + hours * 3600
    memory: list[float] = []
    files: list[int] = []
    trials = 0
    tracemalloc.start()
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
        gc.collect()
        memory.append(tracemalloc.get_traced_memory()[0] / 2**20)
        files.append(len(os.listdir("/proc/self/fd")))  # noqa: PTH208
    tracemalloc.stop()
    kept = latest_trials(home.records.entries())
    home.close()
    return Soaked(
        hours=(clock.at - kept[0].started_at).total_seconds() / 3600,
        trials=trials,
        kept=len(kept),
        memory_mb=memory,
        files=files,
    )
