"""Questions about a meaning, and the names that answer them."""

from __future__ import annotations

from drills.core.meanings import Act, Meaning, Place
from drills.core.words import Lexicon, Noun, Part, Sentence
from drills.language.abstract import (
    Form,
    Phrase,
    Word,
    definite,
    finite,
    finite_small,
    participle,
    pronoun,
    small,
)
from drills.language.constructions import realise
from drills.language.roles import Role
from drills.language.steps import finish


def ask_doer(act: Act, lexicon: Lexicon) -> Sentence:
    """ "Who pulled?" """
    return _question(
        act, (pronoun("who", Role.ASKED), finite(act.verb, act.tense, Role.ASKED)), lexicon
    )


def ask_done_to(act: Act, lexicon: Lexicon) -> Sentence:
    """ "Who was pulled?" """
    return _question(
        act,
        (
            pronoun("who", Role.ASKED),
            finite_small("be", act.tense, Role.ASKED),
            participle(act.verb),
        ),
        lexicon,
    )


def ask_about(meaning: Act | Place, role: Role, lexicon: Lexicon) -> Sentence:
    """The question that turns the mind to one part, as a cue.

    "Who was pushing?", "Who was being pushed?", "Where is the cup?". The act is asked about as
    under way, as a picture shows it.   Raises: ValueError for a role that is not asked about.
    """
    asked = pronoun("who", Role.ASKED)
    if isinstance(meaning, Act) and role is Role.DOER:
        words: Phrase = (
            asked,
            finite_small("be", meaning.tense, Role.ASKED),
            Word(lemma=meaning.verb, part=Part.VERB, form=Form.ING),
        )
    elif isinstance(meaning, Act) and role is Role.DONE_TO:
        words = (
            asked,
            finite_small("be", meaning.tense, Role.ASKED),
            Word(lemma="be", part=Part.AUXILIARY, form=Form.ING),
            participle(meaning.verb),
        )
    elif isinstance(meaning, Place) and role is Role.THING:
        words = (
            small("where", Part.PRONOUN),
            finite_small("be", meaning.tense, Role.THING),
            *definite(meaning.thing, Role.THING),
        )
    else:
        raise ValueError(f"no question asks about the {role.value} of {type(meaning).__name__}")
    return _question(meaning, words, lexicon)


def answer_name(noun: Noun) -> str:
    """ "the nurse": how an answer names someone."""
    return f"the {noun.singular}"


_PLAIN_NAMES: dict[type[Meaning], str] = {Act: "active", Place: "locative"}


def _question(meaning: Act | Place, words: Phrase, lexicon: Lexicon) -> Sentence:
    plain = realise(meaning, _PLAIN_NAMES[type(meaning)], lexicon).plain
    return Sentence(tokens=finish((words,), lexicon), plain=plain, end="?")
