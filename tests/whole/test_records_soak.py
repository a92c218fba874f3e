"""An hour of practice, sped up; eight of them in tests/bench/bench_ledger_soak.py."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from drills.core.material import Material
from drills.ledger import disk
from tests.whole.records_soak import soak


@pytest.mark.skipif(sys.platform != "linux", reason="reads /proc")
def test_memory_and_open_files_are_flat(
    tmp_path: Path, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(disk, "sync_file", lambda file: None)
    soaked = soak(tmp_path / "practice", material, hours=1)
    assert soaked.hours >= 0.8
    assert soaked.kept == soaked.trials
    assert max(soaked.files) == min(soaked.files)
    # What is kept of the newest sessions fills up, and then no more.
    assert soaked.memory_mb[-1] - soaked.memory_mb[0] < 3
