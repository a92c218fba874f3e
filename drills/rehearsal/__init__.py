"""Rehearsal. Simulated patients that practise through the real session code.

May import practice and core; touches neither disk nor screen nor the real clock: its records are
handed in, or kept in memory. Tested in tests/rehearsal.
"""

from drills.rehearsal.memory import MemoryRecords, MemoryTherapistLog
from drills.rehearsal.weeks import Rehearsal

__all__ = ["MemoryRecords", "MemoryTherapistLog", "Rehearsal"]
