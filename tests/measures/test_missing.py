"""A number that is not given says why."""

from __future__ import annotations

import pytest

from drills.measures.missing import NO_SPREAD, Lack, Missing, too_few


@pytest.mark.parametrize(
    ("missing", "text"),
    [
        (Missing(lack=Lack.BASELINE, have=2, need=3), "2 baseline points, 3 are needed"),
        (Missing(lack=Lack.PAIRS, have=0, need=20), "0 pairs of scores, 20 are needed"),
        (NO_SPREAD, "every value is the same"),
    ],
)
def test_what_is_lacking_can_be_read(missing: Missing, text: str):
    assert str(missing) == text


def test_enough_is_not_too_few():
    assert too_few(Lack.TRIALS, 5, 5) is None
    assert too_few(Lack.TRIALS, 4, 5) == Missing(lack=Lack.TRIALS, have=4, need=5)
