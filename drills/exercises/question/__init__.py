"""Question: hear or read a sentence, answer what is asked of it.

One form a module (who did what, what happened, yes or no, relatives, owners, before and after, more
and less, the grid of words and grammar), listed in offering.py; making.py builds their items,
ladder.py their help; rules.py holds what each item and batch must keep, keys.py works out each
answer anew.
"""

from drills.exercises.question.offering import QUESTION

__all__ = ["QUESTION"]
