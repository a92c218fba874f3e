"""Fourth step: each word takes its form.

Open words have every form written in the lexicon, so that no rule can spell one wrong; only the
paradigms of the small verbs are here.
"""

from __future__ import annotations

from drills.core.meanings import Tense
from drills.core.words import Lexicon, Part, Verb
from drills.language.abstract import Form, Number, Word

_NUMERALS = {"1": "one", "2": "two", "3": "three"}

# Third person only: no sentence here has a first or second person.
_SMALL_VERBS = {
    ("be", Tense.PRESENT, Number.SINGULAR): "is",
    ("be", Tense.PRESENT, Number.PLURAL): "are",
    ("be", Tense.PAST, Number.SINGULAR): "was",
    ("be", Tense.PAST, Number.PLURAL): "were",
    ("have", Tense.PRESENT, Number.SINGULAR): "has",
    ("have", Tense.PRESENT, Number.PLURAL): "have",
    ("have", Tense.PAST, Number.SINGULAR): "had",
    ("have", Tense.PAST, Number.PLURAL): "had",
}
_SMALL_ING = {"be": "being", "have": "having"}


def inflect(word: Word, lexicon: Lexicon) -> str:
    """The form of an agreed word, in small letters."""
    match word.part:
        case Part.NOUN:
            noun = lexicon.nouns[word.lemma]
            return noun.plural if word.number is Number.PLURAL else noun.singular
        case Part.VERB:
            return _verb(lexicon.verbs[word.lemma], word)
        case Part.AUXILIARY:
            return _small_verb(word)
        case Part.ADJECTIVE:
            return lexicon.adjectives[word.lemma].base
        case Part.NUMERAL:
            return _NUMERALS[word.lemma]
        case _:
            return word.lemma


def _verb(verb: Verb, word: Word) -> str:
    if word.form is Form.PAST_PARTICIPLE:
        return verb.past_participle
    if word.form is Form.ING:
        return verb.ing
    if word.tense is Tense.PAST:
        return verb.past
    return verb.base if word.number is Number.PLURAL else verb.third_person


def _small_verb(word: Word) -> str:
    if word.form is Form.ING:
        return _SMALL_ING[word.lemma]
    if word.tense is None or word.number is None:
        raise ValueError(f"{word.lemma!r} needs a tense and a subject")
    return _SMALL_VERBS[word.lemma, word.tense, word.number]
