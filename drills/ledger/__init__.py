"""Ledger: records on disk, and the practice folder they live in.

Holds: the append-only storage behind TinyDB, one file a session, their summaries and backups, and
the plan in force. May touch the disk; never the clock, the screen or what a record means. May
import core, tinydb, filelock. Tested by tests/ledger.
"""

from typing import TYPE_CHECKING

from drills.core.late import late
from drills.ledger.folder import plan_path, plan_versions, prepare, put_plan_in_force
from drills.ledger.records import Ledger, open_ledger

if TYPE_CHECKING:
    from drills.ledger.backup import back_up, restore
    from drills.ledger.tables import export, export_csv
    from drills.ledger.therapist import TherapistFiles
    from drills.ledger.upkeep import rebuild, set_aside_in, verify

__all__ = [
    "Ledger",
    "TherapistFiles",
    "back_up",
    "export",
    "export_csv",
    "open_ledger",
    "plan_path",
    "plan_versions",
    "prepare",
    "put_plan_in_force",
    "rebuild",
    "restore",
    "set_aside_in",
    "verify",
]

# Only commands need these, and the first screen must come soon.
__getattr__ = late(
    __name__,
    {
        "TherapistFiles": "therapist",
        "back_up": "backup",
        "export": "tables",
        "export_csv": "tables",
        "rebuild": "upkeep",
        "restore": "backup",
        "set_aside_in": "upkeep",
        "verify": "upkeep",
    },
)
