"""What tests of several rooms share: the real content, and a day that passes by hand."""

from __future__ import annotations

from pathlib import Path

import pytest

from drills.catalogue import load
from drills.core.material import Material

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="session")
def material() -> Material:
    return load(ROOT / "content", locale="en-US")
