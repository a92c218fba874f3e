from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue import load_lexicon
from drills.core.words import Lexicon

CONTENT = Path(__file__).parents[2] / "content"


@pytest.fixture(scope="session", params=["en-US", "en-GB"])
def lexicon(request: pytest.FixtureRequest) -> Lexicon:
    return load_lexicon(CONTENT, locale=request.param)


@pytest.fixture(scope="session")
def american() -> Lexicon:
    """One locale, for what is long to try and the same in both."""
    return load_lexicon(CONTENT, locale="en-US")
