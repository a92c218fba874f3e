"""Last step: a or an, and the capital."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from drills.core.words import Part, Token

# Sound decides, not the letter. These heads cover the common words whose first letter misleads;
# the tests hold the rule against a pronouncing dictionary.
_VOWEL_LETTERS = "aeiou"
_SILENT_H = re.compile(r"heir|honest|honou?r|hour")
# As in "European", "union" (but not "unimportant"), "user", "Utah", "one".
_SAID_WITH_Y_OR_W = re.compile(
    r"eu|ewe|u(?:bi|ga|kr|nani|ni(?![dmn])|r[aiou]|s[aeiu]|t[aeio])|one|once"
)


def indefinite_article(following: str) -> str:
    """ "a" or "an", by the sound of the word that follows."""
    word = following.lower()
    if word[0] in _VOWEL_LETTERS:
        return "a" if _SAID_WITH_Y_OR_W.match(word) else "an"
    return "an" if _SILENT_H.match(word) else "a"


def spell(tokens: Sequence[Token]) -> tuple[Token, ...]:
    """The tokens as printed."""
    spelled = list(tokens)
    for index, token in enumerate(spelled[:-1]):
        if token.part is Part.DETERMINER and token.text == "a":
            article = indefinite_article(spelled[index + 1].text)
            spelled[index] = replace(token, text=article)
    spelled[0] = _capital(spelled[0])
    return tuple(spelled)


@cache
def _capital(first: Token) -> Token:
    return replace(first, text=first.text[0].upper() + first.text[1:])
