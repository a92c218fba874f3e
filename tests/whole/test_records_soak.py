"""Hours of practice, sped up; more of them, and on the screens, in tests/bench."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest
from scipy import stats

from drills.core.material import Material
from drills.ledger import disk
from tests.whole.records_soak import WARMING_SESSIONS, slope, soak

pytestmark = pytest.mark.skipif(sys.platform != "linux", reason="reads /proc")


def test_memory_and_open_files_are_flat(
    tmp_path: Path, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(disk, "sync_file", lambda file: None)
    soaked = soak(tmp_path / "practice", material, hours=6, sessions_a_day=1)
    assert soaked.hours[-1] >= 6
    assert soaked.kept == soaked.trials
    assert max(soaked.files) == min(soaked.files)
    # History is full: what was 0.25 MB a session before is nothing to speak of from here on.
    assert soaked.memory_mb[-1] - soaked.memory_mb[WARMING_SESSIONS] < 0.6


def test_the_slope_is_that_of_a_statistics_library() -> None:
    hours, memory = [0.5 * n for n in range(30)], [50 + 0.1 * n + (n * 7 % 5) for n in range(30)]
    ours, theirs = slope(hours, memory), stats.linregress(hours, memory)
    assert ours.an_hour == pytest.approx(theirs.slope)
    # Ours takes a rounded t, on the wide side.
    exact = theirs.stderr * stats.t.ppf(0.975, len(hours) - 2)
    assert exact <= ours.half < 1.1 * exact
