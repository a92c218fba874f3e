"""Eight hours of practice in one program, sped up: memory and open files stay flat.

Run it: python -m pytest tests/bench/bench_ledger_soak.py -s
It takes about a quarter of an hour.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from drills.core.material import Material
from tests.whole.records_soak import WARMING_SESSIONS, soak, soak_on_screens

HOURS = 8
# A leak of one trial's bytes would be 0.3 MB an hour.
MOST_MB_AN_HOUR = 0.15
# Entries of a thousand trials, read whole.
MOST_MB_OF_HALF_A_DAY = 6
# The caches of pictures fill in the first half.
MOST_MB_OF_SECOND_HALF = 5


@pytest.mark.timeout(1200)
def test_eight_hours_a_session_a_day(tmp_path: Path, material: Material) -> None:
    soaked = soak(tmp_path / "practice", material, hours=2 * HOURS, sessions_a_day=1)
    found = soaked.slope(after=WARMING_SESSIONS)
    print(f"\na session a day: {soaked}\nonce history is full, resident memory: {found}")
    assert soaked.kept == soaked.trials
    assert max(soaked.files) == min(soaked.files)
    assert soaked.hours[-1] - soaked.hours[WARMING_SESSIONS] >= HOURS
    assert found.an_hour + found.half < MOST_MB_AN_HOUR


@pytest.mark.timeout(1200)
def test_eight_hours_in_one_day(tmp_path: Path, material: Material) -> None:
    soaked = soak(tmp_path / "practice", material, hours=HOURS, sessions_a_day=100)
    growth = soaked.memory_mb[-1] - soaked.memory_mb[len(soaked.memory_mb) // 2]
    print(
        f"\nall in one day, and the whole day is looked at: {soaked};"
        f" {growth:+.1f} MB in the second half"
    )
    assert soaked.kept == soaked.trials
    assert max(soaked.files) == min(soaked.files)
    assert growth < MOST_MB_OF_HALF_A_DAY


@pytest.mark.timeout(3600)
def test_eight_hours_on_the_screens(tmp_path: Path) -> None:
    soaked = soak_on_screens(tmp_path / "practice", hours=HOURS)
    half = len(soaked.hours) // 2
    print(f"\non its screens: {soaked}\nof the second half: {soaked.slope(after=half)}")
    print("MB after each session:", " ".join(f"{each:.1f}" for each in soaked.memory_mb))
    assert soaked.kept == soaked.trials
    assert max(soaked.files) == min(soaked.files)
    assert soaked.memory_mb[-1] - soaked.memory_mb[half] < MOST_MB_OF_SECOND_HALF
