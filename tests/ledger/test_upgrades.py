from __future__ import annotations

import pytest

from drills.core.problems import BadInput
from drills.core.records import RECORD_FORMAT
from drills.ledger.upgrades import STEPS, steps_from


def test_every_older_format_has_a_step() -> None:
    assert set(STEPS) == set(range(1, RECORD_FORMAT))
    assert steps_from(RECORD_FORMAT, where="file") == ()


def test_steps_run_in_order_from_the_format_of_the_file() -> None:
    chain = {version: lambda row, version=version: {**row, version: True} for version in (1, 2, 3)}
    row: dict[object, object] = {}
    for step in steps_from(2, where="file", steps=chain, now=4):
        row = step(row)
    assert list(row) == [2, 3]


@pytest.mark.parametrize(
    ("written_as", "said"), [(2, "newer program"), (0, "none such"), ("1", "none such")]
)
def test_a_format_that_is_not_known_is_refused(written_as: object, said: str) -> None:
    with pytest.raises(BadInput, match=said) as raised:
        steps_from(written_as, where="that file", now=1)
    assert raised.value.problems[0].where == "that file"
