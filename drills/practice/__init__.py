"""Practice. One session running: deal, ask, cue, mark, record, rest, stop.

May import core, exercises, schedule, digest and measures. Its clock, voice and records are handed
in as the protocols of `core.ports`; it knows no screen and no disk. Tested in tests/practice.
"""
