"""Measures: numbers about practice, one family a module.

Holds accuracy, chance, cues, dose, errors, intervals and latency. May import core and the standard
library's arithmetic; no clock, disk or chance. Every number says how many trials it rests on.
Tested by tests/measures, against published tables and independent statistics libraries.
"""

from drills.measures import accuracy, chance, cues, dose, errors, intervals, latency

__all__ = ["accuracy", "chance", "cues", "dose", "errors", "intervals", "latency"]
