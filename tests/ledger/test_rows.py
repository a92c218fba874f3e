from __future__ import annotations

import json
from dataclasses import fields
from datetime import datetime, timedelta, timezone

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drills.core.items import Target
from drills.core.records import (
    Asked,
    Attempt,
    CloseReason,
    Entry,
    Observation,
    SessionClosed,
    SessionOpened,
    Trial,
)
from drills.ledger.lines import canonical
from drills.ledger.rows import entry_of, row_of

OFFSETS = st.integers(-1439, 1439).map(lambda minutes: timezone(timedelta(minutes=minutes)))
MOMENTS = st.datetimes(timezones=OFFSETS)
JSON_VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.text()
    | st.floats(allow_nan=False).filter(lambda number: abs(number) != float("inf")),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=5,
)
st.register_type_strategy(datetime, MOMENTS)


def whole(cls: type, **given: st.SearchStrategy) -> st.SearchStrategy:
    """Values of `cls` with every field drawn, those with a default too."""
    return st.builds(cls, **{field.name: ... for field in fields(cls)} | given)


OPTIONS = st.lists(st.dictionaries(st.text(), JSON_VALUES, max_size=3), max_size=4).map(tuple)
ASKED = whole(Asked, target=whole(Target), options=OPTIONS)
ENTRIES = (
    whole(SessionOpened)
    | whole(Observation)
    | whole(Trial, asked=ASKED, attempts=st.lists(whole(Attempt), max_size=4).map(tuple))
    | whole(SessionClosed)
)


@given(entry=ENTRIES)
@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_every_entry_survives_the_way_to_a_line_and_back(entry: Entry) -> None:
    back = entry_of(json.loads(canonical(row_of(entry))))
    assert back == entry
    assert back.at.utcoffset() == entry.at.utcoffset()


def test_a_time_without_an_offset_is_refused() -> None:
    naive = datetime(2026, 11, 25, 8, 0)  # noqa: DTZ001
    with pytest.raises(ValueError, match="offset"):
        row_of(SessionClosed(session="s", at=naive, reason=CloseReason.FINISHED))


@pytest.mark.parametrize("row", [{}, {"entry": "opened"}, {"entry": "x", "session": "s"}])
def test_a_row_that_is_no_entry_is_refused(row: dict[str, str]) -> None:
    with pytest.raises((ValueError, KeyError, TypeError)):
        entry_of({"at": "2026-11-25T08:00:00+00:00", **row})
