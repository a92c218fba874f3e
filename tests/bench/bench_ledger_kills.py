"""kill -9 at 300 moments of real sessions, in folders that go on from kill to kill.

Run it: python -m pytest tests/bench/bench_ledger_kills.py -s
It takes about half an hour. DRILLS_KILLS sets another number, DRILLS_SEED other moments.
"""

from __future__ import annotations

import os
import sys
from itertools import count
from pathlib import Path
from statistics import median

import pytest

from drills.ledger import verify
from tests.whole.player import installed, put_plan_in_force
from tests.whole.records_kills import Killed, Lost, play_until_killed

KILLS = int(os.environ.get("DRILLS_KILLS", "300"))
SEED = int(os.environ.get("DRILLS_SEED", "0"))
STARTS_A_FOLDER = 10


@pytest.mark.timeout(3600)
def test_kills_at_moments_of_chance(tmp_path: Path) -> None:
    killed: list[Killed] = []
    ended: list[Killed] = []
    folders: list[Path] = []
    for number in count():
        if number % STARTS_A_FOLDER == 0:
            folders.append(tmp_path / f"practice-{number}")
            put_plan_in_force(folders[-1], installed())
        done = play_until_killed(installed(), folders[-1], seed=SEED * 10_000 + number)
        (ended if done.finished else killed).append(done)
        if number % 25 == 24:
            print(f"{number + 1} starts, {len(killed)} kills", flush=True)
        if len(killed) == KILLS:
            break
    starts = [*killed, *ended]
    moments = sorted(each.seconds for each in killed)
    print(
        f"\n{len(killed)} kills, {moments[0]:.2f} to {moments[-1]:.2f} s after the first screen,"
        f" half of them within {median(moments):.2f} s; {len(ended)} more starts were played to"
        f" the end of their session first.\n"
        f"{sum(each.told for each in starts)} answers had feedback on a whole frame, of"
        f" {sum(each.frames for each in starts):,} read; {sum(each.kept for each in starts)} are"
        f" kept; lost: 0 (the first would have stopped this run); in"
        f" {sum(each.kept > each.told for each in killed)} starts the last answer was kept before"
        f" its feedback came; {sum(each.torn for each in killed)} files had a torn end;"
        f" {len(starts)} of {len(starts)} starts worked, in {len(folders)} folders"
    )
    for folder in folders:
        assert all("cut off" in str(problem) for problem in verify(folder))


# A program that shows its feedback half a second before it keeps the answer.
LATE = """
import sys, threading
from drills.ledger import disk
write_all = disk.write_all
def later(file, data):
    if b'"entry":"trial"' in data:
        threading.Timer(0.5, write_all, (file, data)).start()
    else:
        write_all(file, data)
disk.write_all = later
from drills.__main__ import main
sys.exit(main())
"""


def test_a_program_that_keeps_answers_too_late_is_caught(tmp_path: Path) -> None:
    folder = tmp_path / "practice"
    put_plan_in_force(folder, installed())
    program = [sys.executable, "-c", LATE]
    for kills in range(1, 21):
        try:
            play_until_killed(program, folder, seed=kills)
        except Lost:
            print(f"\na program that keeps answers half a second late is caught by kill {kills}")
            return
    raise AssertionError("answers that were kept too late went unseen")
