from __future__ import annotations

import shutil
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture(scope="session")
def content() -> Path:
    """The content that the program ships."""
    return ROOT / "content"


@pytest.fixture
def copied(content: Path, tmp_path: Path) -> Path:
    """A copy of the content that a test may spoil."""
    return Path(shutil.copytree(content, tmp_path / "content"))
