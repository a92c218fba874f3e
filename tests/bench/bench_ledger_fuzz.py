"""20,000 changed files: plans, content, records, whole practice folders.

Run it: python -m pytest tests/bench/bench_ledger_fuzz.py -s
"""

from __future__ import annotations

import resource
import time
from pathlib import Path

import pytest

from drills.core.material import Material
from tests.whole.records_fuzz import Fuzz

TRIED = {
    "plan_file": 6000,
    "content_file": 1000,
    "record_bytes": 5000,
    "record_values": 6500,
    "digest_input": 1500,
}
# Beyond what the program holds before the first changed file.
MOST_MEMORY_MB = 150


@pytest.mark.timeout(3600)
def test_changed_files(tmp_path: Path, material: Material) -> None:
    fuzz = Fuzz(tmp_path, material)
    for kind in TRIED:
        fuzz.run(kind, seed=-1)
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    began = time.perf_counter()
    for kind, times in TRIED.items():
        for seed in range(times):
            fuzz.run(kind, seed=seed)
    more = (resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before) / 1024
    outcome = fuzz.outcome
    print(
        f"\n{sum(TRIED.values()):,} changed files in {time.perf_counter() - began:.0f} s: "
        + ", ".join(f"{kind} {outcome.refused[kind]} of {TRIED[kind]} refused" for kind in TRIED)
        + f"; the slowest took {outcome.slowest * 1000:.0f} ms; {more:.0f} MB more memory;"
        f" {len(outcome.bad)} ended in anything but a clear error"
    )
    for line in outcome.bad[:40]:
        print(line)
    assert outcome.bad == []
    assert more < MOST_MEMORY_MB
