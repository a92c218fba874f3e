"""Eight hours of practice in one program, sped up: memory and open files stay flat.

Run it: python -m pytest tests/bench/bench_ledger_soak.py -s
"""

from __future__ import annotations

from pathlib import Path

from drills.core.material import Material
from tests.whole.records_soak import soak

HOURS = 8
MOST_GROWTH_MB = 0.5


def test_eight_hours(tmp_path: Path, material: Material) -> None:
    soaked = soak(tmp_path / "practice", material, hours=HOURS)
    print(f"\n{soaked}")
    memory = soaked.memory_mb
    assert soaked.kept == soaked.trials
    assert max(soaked.files) == min(soaked.files)
    assert memory[-1] - memory[len(memory) // 2] < MOST_GROWTH_MB
