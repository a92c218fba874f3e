"""Exercises: from targets and words to items with one right answer, foils and cues.

One file a kind (match, act_out, cloze, question, gesture), listed in blocks.py; the rules that every item
must hold are rules.py, the even dealing is balance.py and casting.py. May import core, language,
pictures and gestures; chance is an argument.   tests/exercises.
"""

from drills.exercises.blocks import (
    EXERCISES,
    KINDS,
    check_block,
    make_items,
    names_of,
    targets_of,
)

__all__ = ["EXERCISES", "KINDS", "check_block", "make_items", "names_of", "targets_of"]
