"""A or an, held against the CMU Pronouncing Dictionary as bundled with pocketsphinx."""

from __future__ import annotations

from collections import defaultdict
from pathlib import Path

import pocketsphinx
import pytest
import wordfreq

from drills.core.words import Lexicon, Part, Token
from drills.language.spelling import indefinite_article, spell

# In its phone set a vowel begins with a vowel letter and a consonant does not.
_VOWEL_LETTERS = "AEIOU"


@pytest.fixture(scope="module")
def articles() -> dict[str, set[str]]:
    """Word -> the articles that its pronunciations in the dictionary ask for."""
    path = Path(pocketsphinx.get_model_path()) / "en-us" / "cmudict-en-us.dict"
    found: dict[str, set[str]] = defaultdict(set)
    for line in path.read_text(encoding="utf-8").splitlines():
        word, first, *_ = line.split()
        found[word.partition("(")[0]].add("an" if first[0] in _VOWEL_LETTERS else "a")
    return found


def test_every_noun_of_the_lexicon_takes_the_article_of_its_sound(
    lexicon: Lexicon, articles: dict[str, set[str]]
) -> None:
    for noun in (*lexicon.nouns.values(), *lexicon.kin.values()):
        assert {indefinite_article(noun.singular)} == articles[noun.singular], noun.key


def test_every_adjective_takes_the_article_of_its_sound(
    lexicon: Lexicon, articles: dict[str, set[str]]
) -> None:
    for adjective in lexicon.adjectives.values():
        assert {indefinite_article(adjective.base)} == articles[adjective.base]


def test_common_words_take_the_article_of_their_sound(articles: dict[str, set[str]]) -> None:
    common = [
        word
        for word in wordfreq.top_n_list("en", 20_000)
        # Words of three letters and less hold most of the initials, which are said letter by
        # letter, and names are no nouns that are counted.
        if len(word) > 3 and word.isascii() and word.isalpha() and word in articles
    ]
    wrong = [word for word in common if indefinite_article(word) not in articles[word]]
    assert len(common) > 15_000
    # What is left: names and initials of four letters, and "herbs", where accents differ.
    assert len(wrong) / len(common) < 0.001, wrong


@pytest.mark.parametrize(
    ("word", "article"),
    [
        ("hour", "an"),
        ("honest", "an"),
        ("heir", "an"),
        ("uniform", "a"),
        ("union", "a"),
        ("university", "a"),
        ("European", "a"),
        ("one", "a"),
        ("umbrella", "an"),
        ("uncle", "an"),
        ("unimportant", "an"),
        ("uninvited", "an"),
        ("hat", "a"),
        ("apple", "an"),
        ("year", "a"),
    ],
)
def test_the_sound_decides_and_not_the_letter(
    word: str, article: str, articles: dict[str, set[str]]
) -> None:
    assert indefinite_article(word) == article
    assert article in articles[word.lower()]


def test_an_article_looks_at_the_word_that_follows() -> None:
    tokens = spell(
        [
            Token(text="a", part=Part.DETERMINER),
            Token(text="honest", part=Part.ADJECTIVE),
            Token(text="judge", part=Part.NOUN),
        ]
    )
    assert [token.text for token in tokens] == ["An", "honest", "judge"]


def test_an_article_at_the_end_of_a_sentence_changes_too() -> None:
    tokens = spell(
        [
            Token(text="has", part=Part.AUXILIARY),
            Token(text="a", part=Part.DETERMINER),
            Token(text="apple", part=Part.NOUN),
        ]
    )
    assert [token.text for token in tokens] == ["Has", "an", "apple"]


def test_the_definite_article_never_changes() -> None:
    tokens = spell([Token(text="the", part=Part.DETERMINER), Token(text="hour", part=Part.NOUN)])
    assert [token.text for token in tokens] == ["The", "hour"]
