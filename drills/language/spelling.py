"""Last step: a or an, and the capital."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from drills.core.words import Part, Token

# Sound decides, not the letter. The heads below cover the common words whose first letter
# misleads; the tests hold the rule against a pronouncing dictionary.
_VOWEL_LETTERS = "aeiou"
_SILENT_H = ("heir", "honest", "honor", "honour", "hour")
_SAID_WITH_Y_OR_W = tuple(
    ["eu", "ewe", "once", "one", "ubi", "uga", "ukr", "unani", "uni", "ura", "uri", "uro", "uru"]
    + ["usa", "use", "usi", "usu", "uta", "ute", "uti", "uto"]
)
# "unimportant", "uninvited", "unidentified": the head is un-.
_VOWEL_AFTER_ALL = ("unid", "unim", "unin")


def indefinite_article(following: str) -> str:
    """ "a" or "an", by the sound of the word that follows."""
    word = following.lower()
    if word.startswith(_SILENT_H):
        return "an"
    if word[0] not in _VOWEL_LETTERS:
        return "a"
    if word.startswith(_SAID_WITH_Y_OR_W) and not word.startswith(_VOWEL_AFTER_ALL):
        return "a"
    return "an"


def spell(tokens: Sequence[Token]) -> tuple[Token, ...]:
    """The tokens as printed."""
    spelled = list(tokens)
    for index, token in enumerate(spelled[:-1]):
        if token.part is Part.DETERMINER and token.text == "a":
            article = indefinite_article(spelled[index + 1].text)
            spelled[index] = replace(token, text=article)
    first = spelled[0]
    spelled[0] = replace(first, text=first.text[0].upper() + first.text[1:])
    return tuple(spelled)
