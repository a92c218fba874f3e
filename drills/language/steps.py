"""The steps after the order is chosen, in their one sequence."""

from __future__ import annotations

from drills.core.words import Lexicon, Token
from drills.language.abstract import Phrase
from drills.language.concord import agree
from drills.language.morphology import inflect
from drills.language.spelling import spell


def finish(phrases: tuple[Phrase, ...], lexicon: Lexicon) -> tuple[Token, ...]:
    """Ordered phrases as printed tokens: agreement, inflection, spelling."""
    tokens = [
        Token(
            text=inflect(word, lexicon),
            part=word.part,
            starts_phrase=number > 0 and index == 0,
        )
        for number, phrase in enumerate(agree(phrases))
        for index, word in enumerate(phrase)
    ]
    return spell(tokens)
