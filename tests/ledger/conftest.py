"""One invented session, and a folder to keep it in."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from drills.core.records import Entry
from drills.ledger import disk
from tests.ledger.made import made_session


@pytest.fixture(scope="session")
def session() -> Callable[..., list[Entry]]:
    return made_session


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "practice"


@pytest.fixture
def unsynced(monkeypatch: pytest.MonkeyPatch) -> None:
    """Leaves flushing to the system: for tests that open thousands of folders."""
    monkeypatch.setattr(disk, "sync_file", lambda file: None)
    monkeypatch.setattr(disk, "sync_folder", lambda folder: None)
