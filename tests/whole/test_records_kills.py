"""kill -9 at moments of chance; three hundred of them in tests/bench/bench_ledger_kills.py."""

from __future__ import annotations

from pathlib import Path

from drills.ledger import verify
from tests.whole.player import installed, put_plan_in_force
from tests.whole.records_kills import play_until_killed

KILLS = 5


def test_no_kill_loses_an_answer_that_had_feedback_and_the_next_start_works(
    tmp_path: Path,
) -> None:
    folder = tmp_path / "practice"
    put_plan_in_force(folder, installed())
    killed = [play_until_killed(installed(), folder, seed=seed) for seed in range(KILLS)]
    assert sum(each.seen for each in killed) > 3
    assert all("cut off" in str(problem) for problem in verify(folder))
