"""Measures: numbers about practice, one family a module.

Holds accuracy, agreement of raters, chance, comparing of two shares, cues, decline within sessions,
detection (true from false), dose, errors, intervals, latency, pairs (the same items twice),
perseveration, phases (baseline against treatment), retention, several tests at once, sides, strata
(two shares, name by name) and trend; `missing` says why a number is not given. May import core and
the standard library's arithmetic; no clock, disk or chance. Every number says how many trials it
rests on. Tested by tests/measures, against published tables and independent statistics libraries.
"""
