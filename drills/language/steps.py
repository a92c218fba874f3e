"""The steps after the order is chosen, in their one sequence."""

from __future__ import annotations

from functools import cache

from drills.core.words import Lexicon, Part, Token
from drills.language.abstract import Phrase
from drills.language.concord import agree
from drills.language.morphology import inflect
from drills.language.spelling import spell

# What the small words of adjuncts are; any other word of one carries content.
_SMALL_WORDS = {
    **dict.fromkeys(("in", "on", "at", "near"), Part.PREPOSITION),
    **dict.fromkeys(("the", "this", "last"), Part.DETERMINER),
}


def finish(phrases: tuple[Phrase, ...], lexicon: Lexicon) -> tuple[Token, ...]:
    """Ordered phrases as printed tokens: agreement, inflection, spelling."""
    tokens: list[Token] = []
    for phrase in agree(phrases):
        starts = bool(tokens)
        for word in phrase:
            text = inflect(word, lexicon)
            if word.part is Part.ADVERBIAL:
                tokens += _adjunct(text, starts, word.mark)
            else:
                tokens.append(_token(text, word.part, starts, word.mark))
            starts = False
    return spell(tokens)


# A sentence is made of few words; each is made once.
@cache
def _token(text: str, part: Part, starts: bool, mark: str) -> Token:
    return Token(text=text, part=part, starts_phrase=starts, mark=mark)


@cache
def _adjunct(text: str, starts: bool, mark: str) -> tuple[Token, ...]:
    """Its words one by one, so that the small ones among them can be told."""
    words = text.split()
    last = len(words) - 1
    return tuple(
        _token(
            word,
            _SMALL_WORDS.get(word, Part.ADVERBIAL),
            starts and index == 0,
            mark if index == last else "",
        )
        for index, word in enumerate(words)
    )
