"""Questions about relatives, each with the answer that the family model gives."""

from __future__ import annotations

from drills.core.meanings import Kin
from drills.core.words import Lexicon, Part, Sentence, Sex
from drills.language.abstract import (
    Number,
    Phrase,
    Word,
    finite_small,
    indefinite,
    pronoun,
    small,
)
from drills.language.kin_phrases import by_ending, by_of
from drills.language.kinship import Terms, has_one_name, sex_of
from drills.language.plain import restate
from drills.language.roles import Role, check_roles
from drills.language.steps import finish

# The nouns that answer by sex; both stand in the lexicon.
_BY_SEX = {Sex.FEMALE: "woman", Sex.MALE: "man"}


def ask_sex(kin: Kin, lexicon: Lexicon, *, of: bool = False) -> Sentence:
    """ "Is my aunt's brother a woman or a man?"

    of: say "the brother of my aunt", which turns the nouns round.
    """
    woman, man = (indefinite(_BY_SEX[sex], Role.COMPLEMENT) for sex in (Sex.FEMALE, Sex.MALE))
    return _is_it(kin, lexicon, (*woman, small("or", Part.CONJUNCTION), *man), of=of)


def ask_sex_of_this(kin: Kin, lexicon: Lexicon) -> Sentence:
    """ "Is this a woman or a man?", of someone who was just told of."""
    woman, man = (indefinite(_BY_SEX[sex], Role.COMPLEMENT) for sex in (Sex.FEMALE, Sex.MALE))
    this = (finite_small("be", kin.tense, Role.IT), pronoun("this", Role.IT))
    return _question(kin, (*this, *woman, small("or", Part.CONJUNCTION), *man), lexicon)


def answer_sex(kin: Kin) -> str:
    """ "a woman" or "a man"."""
    return f"a {_BY_SEX[sex_of(kin.terms)]}"


def ask_relation(kin: Kin, lexicon: Lexicon, *, of: bool = False) -> Sentence:
    """ "Who is my father's sister?" """
    words = (
        pronoun("who", Role.ASKED),
        finite_small("be", kin.tense, Role.RELATIVE),
        *_named(kin.terms, of=of),
    )
    return _question(kin, words, lexicon)


def answer_relation(kin: Kin, lexicon: Lexicon) -> str:
    """ "my aunt".   Raises: ValueError where no one word always holds."""
    name = has_one_name(kin.terms)
    if name is None or name not in lexicon.kin:
        raise ValueError(f"no one word always holds of {kin.terms}")
    return f"my {lexicon.kin[name].singular}"


def ask_same(kin: Kin, other: Terms, lexicon: Lexicon, *, of: bool = False) -> Sentence:
    """ "Is my sister's mother my mother?"; `kinship.sameness` has the answer."""
    return _is_it(kin, lexicon, _with_no_role(_named(other, of=False)), of=of)


def _is_it(kin: Kin, lexicon: Lexicon, what: Phrase, *, of: bool) -> Sentence:
    be = finite_small("be", kin.tense, Role.RELATIVE)
    return _question(kin, (be, *_named(kin.terms, of=of), *what), lexicon)


def _named(terms: Terms, *, of: bool) -> Phrase:
    return by_of(terms) if of else by_ending(terms)


def _with_no_role(phrase: Phrase) -> Phrase:
    """The verb agrees with the first one named, not with these."""
    return tuple(
        Word(lemma=word.lemma, part=word.part, number=Number.SINGULAR, form=word.form)
        if word.part is Part.NOUN
        else word
        for word in phrase
    )


def _question(kin: Kin, words: Phrase, lexicon: Lexicon) -> Sentence:
    check_roles(kin, lexicon)
    return Sentence(tokens=finish((words,), lexicon), plain=restate(kin, lexicon), end="?")
