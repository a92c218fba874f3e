"""Third step: a finite verb takes the number of its own subject, wherever that stands."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from drills.language.abstract import Form, Number, Phrase, Word
from drills.language.roles import Role


def agree(phrases: tuple[Phrase, ...]) -> tuple[Phrase, ...]:
    """The same phrases, each finite verb with its subject's number.

    Raises: ValueError when a verb's subject is not in the sentence.
    """
    numbers = {
        word.role: word.number
        for phrase in phrases
        for word in phrase
        if word.role is not None and word.number is not None
    }
    return tuple(tuple(_agreed(word, numbers) for word in phrase) for phrase in phrases)


def _agreed(word: Word, numbers: dict[Role, Number]) -> Word:
    if word.form is not Form.FINITE:
        return word
    if word.subject not in numbers:
        raise ValueError(f"{word.lemma!r} has no subject to agree with")
    return _of_number(word, numbers[word.subject])


# The same few verbs agree in sentence after sentence.
@cache
def _of_number(word: Word, number: Number) -> Word:
    return replace(word, number=number)
