"""Names that load late."""

from __future__ import annotations

import pytest

from drills.core.late import late


def test_a_name_is_found_in_its_module() -> None:
    assert late("json", {"JSONDecoder": "decoder"})("JSONDecoder").__module__ == "json.decoder"


def test_an_unknown_name_is_no_attribute() -> None:
    with pytest.raises(AttributeError, match="nothing"):
        late("json", {})("nothing")


def test_a_name_that_its_module_would_hide_is_refused() -> None:
    with pytest.raises(ValueError, match="decoder"):
        late("json", {"decoder": "decoder"})
