"""Exercises: from targets and words to items with one right answer, foils and cues.

One file or package a kind (match, act_out, cloze, question, gesture), listed in blocks.py; the
sentences with a gap are frames/, the rules of cloze rules.py, those of all kinds choices.py, the
even dealing is balance.py and casting.py. May import core, language, pictures and gestures;
chance is an argument.   tests/exercises.
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
