"""Frames: the kinds of sentences that hold a gap, and what decides which word is right there.

Each frame deals a meaning for a right word, and says from the meaning alone what the gap demands;
the traits of a word, written apart from the rules that make sentences, say whether it fits. One
file a family, listed in table.py.   tests/exercises.
"""
