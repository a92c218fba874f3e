"""Probes: items with no help, never practised, by which the outcome is judged.

matching.py chooses a small set like a large one; choosing.py applies it to the exemplars of a
construction that are kept for probes (exercises/reserve.py); lists.py makes the items and their
three orders; sets.py matches the sets of all constructions together, to stand in a plan; rules.py
judges that nothing is both practised and probed.   tests/exercises.
"""

from drills.exercises.probes.choosing import BALANCED, asked_in, differences, exemplars_of
from drills.exercises.probes.lists import ORDERS, ProbeItems, ordered, probe_items
from drills.exercises.probes.rules import broken_law, shared

__all__ = [
    "BALANCED",
    "ORDERS",
    "ProbeItems",
    "asked_in",
    "broken_law",
    "differences",
    "exemplars_of",
    "ordered",
    "probe_items",
    "shared",
]
