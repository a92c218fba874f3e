"""Whether the 95 % intervals of the digest hold the truth of five hundred simulated patients.

python -m pytest tests/bench/bench_recovery.py -s

Each patient has a truth of its own, drawn at random, practises for two weeks and is checked through
the real program. The truth is worked out from the patient, for the very items that were given, and
not by the measures. `expected` is how often the interval would hold it if these trials had been
fixed before: a score interval swings about 95 % with its n and p (Brown, Cai and DasGupta 2001,
Statistical Science 16:101; they recommend it for small n), and holds more where the items of a name
differ in how hard they are.
"""

from __future__ import annotations

import time

import pytest
from scipy.stats import binomtest

from drills.core.material import Material
from tests.rehearsal.recovery import Held, counted, held, random_profile, rehearse, told

PATIENTS = 500
LOW, HIGH = 0.93, 0.97


@pytest.mark.timeout(3000)
@pytest.mark.parametrize("learning", [False, True])
def test_the_intervals_of_five_hundred_patients_cover_their_truth(
    material: Material, *, learning: bool
) -> None:
    """All of them together in 93 to 97 %; no measure surely outside."""
    started = time.perf_counter()
    every: list[Held] = []
    for number in range(PATIENTS):
        profile = random_profile(number, learning=learning)
        every += held(*rehearse(profile, material, seed=number))
    taken = time.perf_counter() - started
    what = "who learn" if learning else "who stay as they are"
    print(f"\n{PATIENTS} patients {what}, {taken:.0f} s\n{told(every)}")
    covered = sum(each.is_covered for each in every) / len(every)
    assert LOW <= covered <= HIGH
    for measure, (right, of) in counted(every).items():
        sure = binomtest(right, of).proportion_ci()
        assert sure.high >= LOW, measure
        assert sure.low <= HIGH, measure
