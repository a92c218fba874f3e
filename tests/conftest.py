"""What tests of several rooms share: the real content, and a day that passes by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import settings

from drills.catalogue import load
from drills.core.material import Material

ROOT = Path(__file__).parent.parent

# How fast a thing is, benchmarks measure as ratios; no example fails for a busy machine.
settings.register_profile("untimed", deadline=None)
settings.load_profile("untimed")


@pytest.fixture(scope="session")
def material() -> Material:
    return load(ROOT / "content", locale="en-US")
