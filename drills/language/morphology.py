"""Fourth step: each word takes its form.

Open words have every form written in the lexicon, so that no rule can spell one wrong; only the
paradigms of the small verbs and of the pronouns are here.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

from drills.core.meanings import Tense
from drills.core.words import KinTerm, Lexicon, Noun, Part, Sex, Verb
from drills.language.abstract import Form, Number, Word

_NUMERALS = {"1": "one", "2": "two", "3": "three"}

# "See" is said of "I" alone, which takes the form of many; the others of third persons.
_SMALL_VERBS = {
    ("be", Tense.PRESENT, Number.SINGULAR): "is",
    ("be", Tense.PRESENT, Number.PLURAL): "are",
    ("be", Tense.PAST, Number.SINGULAR): "was",
    ("be", Tense.PAST, Number.PLURAL): "were",
    ("have", Tense.PRESENT, Number.SINGULAR): "has",
    ("have", Tense.PRESENT, Number.PLURAL): "have",
    ("have", Tense.PAST, Number.SINGULAR): "had",
    ("have", Tense.PAST, Number.PLURAL): "had",
    ("do", Tense.PRESENT, Number.SINGULAR): "does",
    ("do", Tense.PRESENT, Number.PLURAL): "do",
    ("do", Tense.PAST, Number.SINGULAR): "did",
    ("do", Tense.PAST, Number.PLURAL): "did",
}
_FRAME_VERBS = {
    ("say", Tense.PRESENT, Number.SINGULAR): "says",
    ("say", Tense.PAST, Number.SINGULAR): "said",
    ("see", Tense.PRESENT, Number.PLURAL): "see",
    ("happen", Tense.PAST, Number.SINGULAR): "happened",
}
_SMALL_ING = {"be": "being", "have": "having"}
_FRAME_ING = {"happen": "happening"}

_PRONOUNS = {
    (Form.SUBJECT, Sex.FEMALE): "she",
    (Form.SUBJECT, Sex.MALE): "he",
    (Form.SUBJECT, None): "it",
    (Form.OBJECT, Sex.FEMALE): "her",
    (Form.OBJECT, Sex.MALE): "him",
    (Form.OBJECT, None): "it",
    (Form.REFLEXIVE, Sex.FEMALE): "herself",
    (Form.REFLEXIVE, Sex.MALE): "himself",
    (Form.REFLEXIVE, None): "itself",
}


def inflect(word: Word, lexicon: Lexicon) -> str:
    """The form of an agreed word, in small letters."""
    form = _FORMS.get(word.part)
    return word.lemma if form is None else form(word, lexicon)


def _named(key: str, lexicon: Lexicon) -> Noun | KinTerm:
    return lexicon.nouns[key] if key in lexicon.nouns else lexicon.kin[key]


def _noun(word: Word, lexicon: Lexicon) -> str:
    # What stands in facts alone is told of one.
    known = lexicon.facts.nouns.get(word.lemma)
    if known is not None and word.lemma not in lexicon.kin:
        return known.singular
    noun = _named(word.lemma, lexicon)
    if word.form is Form.POSSESSIVE:
        return f"{noun.singular}'s"
    return noun.plural if word.number is Number.PLURAL else noun.singular


def _verb(word: Word, lexicon: Lexicon) -> str:
    verb = _known_verb(word.lemma, lexicon)
    if verb is None:
        return _frame_verb(word)
    if word.form is Form.PAST_PARTICIPLE:
        return verb.past_participle
    if word.form is Form.ING:
        return verb.ing
    if word.form is Form.BASE:
        return verb.base
    if word.tense is Tense.PAST:
        return verb.past
    return verb.base if word.number is Number.PLURAL else verb.third_person


def _known_verb(key: str, lexicon: Lexicon) -> Verb | None:
    for verbs in (lexicon.verbs, lexicon.alone, lexicon.transfers, lexicon.facts.verbs):
        if key in verbs:
            return verbs[key]
    return None


def _frame_verb(word: Word) -> str:
    if word.form is Form.ING:
        return _FRAME_ING[word.lemma]
    if word.tense is None or word.number is None:
        raise ValueError(f"{word.lemma!r} needs a tense and a subject")
    return _FRAME_VERBS[word.lemma, word.tense, word.number]


def _small_verb(word: Word, _lexicon: Lexicon) -> str:
    if word.form is Form.ING:
        return _SMALL_ING[word.lemma]
    if word.form is Form.BASE:
        return word.lemma
    if word.tense is None or word.number is None:
        raise ValueError(f"{word.lemma!r} needs a tense and a subject")
    return _SMALL_VERBS[word.lemma, word.tense, word.number]


def _adjective(word: Word, lexicon: Lexicon) -> str:
    adjective = lexicon.adjectives[word.lemma]
    return adjective.comparative if word.form is Form.COMPARATIVE else adjective.base


def _numeral(word: Word, _lexicon: Lexicon) -> str:
    return _NUMERALS[word.lemma]


def _pronoun(word: Word, lexicon: Lexicon) -> str:
    if word.form is None:
        return word.lemma
    return _PRONOUNS[word.form, _named(word.lemma, lexicon).sex]


def _adverbial(word: Word, lexicon: Lexicon) -> str:
    return lexicon.adjuncts[word.lemma].text


_FORMS: Mapping[Part, Callable[[Word, Lexicon], str]] = {
    Part.NOUN: _noun,
    Part.VERB: _verb,
    Part.AUXILIARY: _small_verb,
    Part.ADJECTIVE: _adjective,
    Part.NUMERAL: _numeral,
    Part.PRONOUN: _pronoun,
    Part.ADVERBIAL: _adverbial,
}
