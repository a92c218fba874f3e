"""kill -9 at 300 moments of real sessions, in folders that go on from kill to kill.

Run it: python -m pytest tests/bench/bench_ledger_kills.py -s
It takes about half an hour. DRILLS_KILLS sets another number, DRILLS_SEED other moments.
"""

from __future__ import annotations

import os
from pathlib import Path

from drills.ledger import verify
from tests.whole.player import installed, put_plan_in_force
from tests.whole.records_kills import play_until_killed

KILLS = int(os.environ.get("DRILLS_KILLS", "300"))
SEED = int(os.environ.get("DRILLS_SEED", "0"))
KILLS_A_FOLDER = 10


def test_kills_at_moments_of_chance(tmp_path: Path) -> None:
    killed, folders = [], []
    for number in range(KILLS):
        if number % KILLS_A_FOLDER == 0:
            folders.append(tmp_path / f"practice-{number}")
            put_plan_in_force(folders[-1], installed())
        killed.append(play_until_killed(installed(), folders[-1], seed=SEED * 10_000 + number))
        if len(killed) % 50 == 0:
            print(f"{len(killed)} starts, {sum(each.seen for each in killed)} trials", flush=True)
    kills = [each for each in killed if not each.finished]
    print(
        f"\n{len(kills)} kills, {len(killed) - len(kills)} sessions that ended before theirs;"
        f" {sum(each.seen for each in killed)} trials had feedback on the screen,"
        f" {sum(each.kept for each in killed)} are kept, none is lost;"
        f" {sum(each.torn for each in killed)} files had a torn end; every next start worked"
    )
    for folder in folders:
        assert all("cut off" in str(problem) for problem in verify(folder))
