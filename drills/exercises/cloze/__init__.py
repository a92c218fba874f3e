"""Cloze: a sentence with one small word or ending missing; exactly one of those offered is right.

making.py makes the items, help.py their cues; coverage.py counts which words of spoken English can
be asked for, blind.py lists items without their key. The sentences are frames/, the rules rules.py.
tests/exercises.
"""

from drills.exercises.cloze.making import CLOZE

__all__ = ["CLOZE"]
