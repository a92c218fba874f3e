"""Hours of practice in one program, sped up, and what it holds meanwhile.

Two ways: practice and records driven through the calls that the screens make, by a clock moved by
hand; and the whole program on its screens, in a pseudo-terminal.
"""

from __future__ import annotations

import gc
import os
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import timedelta
from itertools import count
from math import sqrt
from pathlib import Path
from statistics import linear_regression, mean

from drills.core.kinds import Kind
from drills.core.material import Material
from drills.core.plans import BlockPlan, Plan, SpacingSettings
from drills.core.records import latest_trials
from drills.ledger import open_ledger
from drills.practice.home import Home
from drills.practice.session import Session
from drills.practice.steps import Ask, Finish, Rest
from drills.schedule import days_that_decide
from tests.edges import MORNING, HandClock, QuietVoice
from tests.whole.player import installed, run
from tests.whole.records_kills import FrameTerminal, Seen, Watched

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
    # As far as this looks back, history grows; what comes after shows whether anything else does.
    spacing=SpacingSettings(ladder_days=(1,)),
)
# After so many days history is as long as it gets; some more for caches to fill.
WARMING_SESSIONS = days_that_decide(PLAN.spacing) + 4
PLAN_ON_SCREENS = """
format = 1
name = "Soak"
version = 1
locale = "en-US"
therapist = ""
note = ""

[sitting]
response_gap_seconds = 0
second_press_ms = 20
animation = false

[session_rules]
fall_points = 0
slower_times = 0
perseverations_to_change = 0

[[block]]
kind = "match"
names = ["active", "full-passive", "locative"]
trials = 30
options = 2

[[block]]
kind = "cloze"
names = ["C3", "C4"]
trials = 60
options = 2
"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """Growth an hour of practice, least squares, with its 95 % interval.

    The samples are no independent draws, so the interval is narrower than it should be.
    """

    an_hour: float
    half: float

    def __str__(self) -> str:
        return f"{self.an_hour:+.3f} MB an hour (95 % interval {self.half:.3f} either way)"


def slope(hours: Sequence[float], memory_mb: Sequence[float]) -> Slope:
    """Source of the standard error: any text on simple linear regression."""
    line = linear_regression(hours, memory_mb)
    left = [mb - line.slope * at - line.intercept for at, mb in zip(hours, memory_mb, strict=True)]
    spread = sum((at - mean(hours)) ** 2 for at in hours)
    error = sqrt(sum(each**2 for each in left) / (len(left) - 2) / spread)
    # Student's t for 97.5 %: 2.36 at 7 degrees of freedom, 2.23 at 10, by the usual table.
    return Slope(an_hour=line.slope, half=(2.36 if len(left) < 12 else 2.23) * error)


@dataclass(slots=True, kw_only=True)
class Soaked:
    """After each session.   memory_mb: resident.   objects: that the collector knows of."""

    hours: list[float] = field(default_factory=list)
    memory_mb: list[float] = field(default_factory=list)
    files: list[int] = field(default_factory=list)
    objects: list[int] = field(default_factory=list)
    trials: int = 0
    kept: int = 0

    def sample(self, hours: float, process: str = "self") -> None:
        self.hours.append(hours)
        self.memory_mb.append(resident_mb(process))
        self.files.append(len(os.listdir(f"/proc/{process}/fd")))  # noqa: PTH208

    def slope(self, *, after: int) -> Slope:
        """Of resident memory, without the first `after` sessions."""
        return slope(self.hours[after:], self.memory_mb[after:])

    def __str__(self) -> str:
        memory = self.memory_mb
        return (
            f"{self.hours[-1]:.1f} hours, {len(memory)} sessions, {self.trials} trials: resident"
            f" memory {memory[0]:.1f} MB after the first session,"
            f" {memory[len(memory) // 2]:.1f} MB half way, {memory[-1]:.1f} MB at the end;"
            f" open files {min(self.files)} to {max(self.files)}"
        )


def resident_mb(process: str) -> float:
    pages = int(Path(f"/proc/{process}/statm").read_text(encoding="ascii").split()[1])
    return pages * os.sysconf("SC_PAGE_SIZE") / 2**20


def soak(place: Path, material: Material, *, hours: float, sessions_a_day: int) -> Soaked:
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
    soaked, practised = Soaked(), 0.0
    for number in count():
        if practised >= hours:
            break
        if sessions_a_day == 1:
            clock.at = MORNING + timedelta(days=number)
        home.today()
        session = home.start(resume=False)
        before = clock.at
        soaked.trials += _sit(session, clock)
        practised += (clock.at - before).total_seconds() / 3600
        home.standings()
        home.digest(home.day(), home.day())
        del session
        gc.collect()
        soaked.sample(practised)
        soaked.objects.append(len(gc.get_objects()))
    soaked.kept = len(latest_trials(home.records.entries()))
    home.close()
    return soaked


def _sit(session: Session, clock: HandClock) -> int:
    """One sitting, a third of its choices wrong first; how many trials it had."""
    session.check_in(tiredness=1, pain=False, new_signs=False)
    trials = 0
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
    return trials


def soak_on_screens(folder: Path, *, hours: float) -> Soaked:
    """Play session after session in one program, until that many trials are done."""
    plan = folder.with_suffix(".toml")
    plan.write_text(PLAN_ON_SCREENS, encoding="utf-8")
    run(installed(), "plan", "use", str(plan), "--folder", str(folder))
    soaked, seen = Soaked(), Seen()
    with FrameTerminal([*installed(), "--folder", str(folder)], seen.look) as terminal:
        player = Watched(terminal, seen, seed=1)
        while not soaked.hours or soaked.hours[-1] < hours:
            # Places in the session come again.
            seen.told.clear()
            player.begin()
            terminal.wait_for("Glasses on?")
            player.play()
            player.finish()
            terminal.settle(quiet=0.5)
            soaked.trials = len(player.given)
            soaked.sample(soaked.trials * SECONDS_A_TRIAL / 3600, str(terminal.pid))
            terminal.raw.clear()
        terminal.press("4")
        assert terminal.end() == 0
    ledger = open_ledger(folder, elsewhere=())
    soaked.kept = len(latest_trials(ledger.entries()))
    ledger.close()
    return soaked
