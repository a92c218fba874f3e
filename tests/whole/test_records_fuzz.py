"""Changed files of every sort; twenty thousand of them in tests/bench/bench_ledger_fuzz.py."""

from __future__ import annotations

from pathlib import Path

import pytest

from drills.core.material import Material
from tests.whole.records_fuzz import Fuzz

TRIED = {
    "plan_file": 150,
    "content_file": 25,
    "record_bytes": 200,
    "record_values": 300,
    "digest_input": 40,
}


@pytest.mark.parametrize("kind", TRIED)
def test_a_changed_file_gives_a_clear_error_or_none(
    tmp_path: Path, material: Material, kind: str
) -> None:
    fuzz = Fuzz(tmp_path, material)
    for seed in range(TRIED[kind]):
        fuzz.run(kind, seed=seed)
    assert fuzz.outcome.bad == []
    assert fuzz.outcome.tried[kind] == TRIED[kind]
