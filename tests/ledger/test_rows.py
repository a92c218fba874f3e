from __future__ import annotations

from dataclasses import fields
from datetime import datetime, timedelta, timezone

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from drills.core.kinds import Foil, Target
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
from drills.ledger.lines import line_of, read_lines
from drills.ledger.rows import entry_of, row_of

OFFSETS = st.integers(-1439, 1439).map(lambda minutes: timezone(timedelta(minutes=minutes)))
MOMENTS = st.datetimes(
    min_value=datetime(1970, 1, 1),  # noqa: DTZ001 - hypothesis adds the zone
    max_value=datetime(9000, 12, 31),  # noqa: DTZ001
    timezones=OFFSETS,
)
JSON_VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers()
    | st.text()
    | st.floats(allow_nan=False).filter(lambda number: abs(number) != float("inf")),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(), inner, max_size=3),
    max_leaves=5,
)
TEXTS = st.text(st.characters(exclude_categories=["Cs"]))
COUNTS = st.integers(0, 2**40)
st.register_type_strategy(datetime, MOMENTS)
st.register_type_strategy(str, TEXTS)
st.register_type_strategy(int, COUNTS)


def whole(cls: type, **given: st.SearchStrategy) -> st.SearchStrategy:
    """Values of `cls` with every field drawn, those with a default too."""
    return st.builds(cls, **{field.name: ... for field in fields(cls)} | given)


@st.composite
def options(draw: st.DrawFn) -> dict:
    shown = draw(st.dictionaries(st.text(), JSON_VALUES, max_size=3))
    return shown | {"foil": draw(st.none() | st.sampled_from(Foil).map(str))}


@st.composite
def trials(draw: st.DrawFn) -> Trial:
    shown = draw(st.lists(options(), max_size=4).map(tuple))
    choices = st.none() | st.integers(0, len(shown) - 1) if shown else st.none()
    asked = whole(
        *(Asked,),
        target=whole(Target),
        options=st.just(shown),
        answer=choices,
        effective_k=st.integers(1, 4),
    )
    attempt = whole(Attempt, choice=choices, score=st.none() | st.integers(0, 3))
    return draw(whole(Trial, asked=asked, attempts=st.lists(attempt, max_size=4).map(tuple)))


ENTRIES = (
    whole(SessionOpened, seed=st.integers(-(2**40), 2**40))
    | whole(Observation, tiredness=st.none() | st.integers(1, 5))
    | trials()
    | whole(SessionClosed)
)


@given(entry=ENTRIES)
@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_every_entry_survives_the_way_to_a_line_and_back(entry: Entry) -> None:
    ((_, row),) = read_lines(line_of(row_of(entry), 1)).rows
    back = entry_of(row)
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
