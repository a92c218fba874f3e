"""Ledger: records on disk, and the practice folder they live in.

Holds: the append-only storage behind TinyDB, one file a session, and the plan in force. May touch
the disk; never the clock, the screen or what a record means. May import core, tinydb, filelock.
Tested by tests/ledger.
"""

from drills.ledger.folder import plan_path, prepare, put_plan_in_force
from drills.ledger.records import Ledger, open_ledger
from drills.ledger.upkeep import export, verify

__all__ = [
    "Ledger",
    "export",
    "open_ledger",
    "plan_path",
    "prepare",
    "put_plan_in_force",
    "verify",
]
