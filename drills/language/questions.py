"""Questions about a meaning, and the names that answer them."""

from __future__ import annotations

from drills.core.meanings import Act, Comparison, Meaning, Order, Place, State, Tense, Transfer
from drills.core.words import Lexicon, Noun, Part, Sentence, Sort
from drills.language.abstract import (
    Form,
    Number,
    Phrase,
    Word,
    definite,
    finite,
    finite_small,
    infinite,
    participle,
    pronoun,
    small,
)
from drills.language.plain import restate
from drills.language.predicates import inverted
from drills.language.roles import Role, check_roles
from drills.language.steps import finish
from drills.language.unsaid import someone


def ask_doer(act: Act, lexicon: Lexicon) -> Sentence:
    """ "Who pulled?", "Who covered someone?" """
    return _question(
        act,
        (
            pronoun("who", Role.ASKED),
            finite(act.verb, act.tense, Role.ASKED),
            *someone(act, lexicon),
        ),
        lexicon,
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


def ask_about(meaning: Act | Transfer | Place, role: Role, lexicon: Lexicon) -> Sentence:
    """The question that turns the mind to one part, as a cue.

    "Who was pushing?", "Who was giving it?", "Who was being pushed?", "Where is the cup?". The act
    is asked about as under way, as a picture shows it.
    Raises: ValueError for a role that is not asked about.
    """
    asked = pronoun("who", Role.ASKED)
    if isinstance(meaning, Act | Transfer) and role is Role.DOER:
        words: Phrase = (
            asked,
            finite_small("be", meaning.tense, Role.ASKED),
            infinite(meaning.verb, Form.ING),
            *someone(meaning, lexicon),
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


def ask_whether(asked: Act, told: Act, lexicon: Lexicon) -> Sentence:
    """ "Did the nurse pull the baker?", of what was told; `holds` is the answer.

    The plain words are those of what was told.
    """
    check_roles(asked, lexicon)
    first, rest = inverted(asked.verb, asked.tense, asked.aspect, Role.DOER)
    words = (
        first,
        *definite(asked.doer, Role.DOER),
        *rest,
        *definite(asked.done_to, Role.DONE_TO),
    )
    return _question(told, words, lexicon)


def holds(asked: Act, told: Act) -> bool:
    """Whether what is asked is what was told, wherever and whenever it was."""
    return asked.drawn == told.drawn


def ask_what_happened(act: Act, lexicon: Lexicon) -> Sentence:
    """ "What happened to the baker?"; the plain words answer it."""
    what = pronoun("what", Role.ASKED)
    to = (small("to", Part.PREPOSITION), *definite(act.done_to, Role.DONE_TO))
    if act.tense is Tense.PAST:
        return _question(act, (what, finite("happen", act.tense, Role.ASKED), *to), lexicon)
    be = finite_small("be", act.tense, Role.ASKED)
    return _question(act, (what, be, infinite("happen", Form.ING), *to), lexicon)


def ask_owner(state: State, lexicon: Lexicon) -> Sentence:
    """ "Whose hat is it?", of someone who has it."""
    thing = Word(
        lemma=state.complement, part=Part.NOUN, number=Number.SINGULAR, role=Role.COMPLEMENT
    )
    words = (
        small("whose", Part.DETERMINER),
        thing,
        finite_small("be", state.tense, Role.COMPLEMENT),
        pronoun("it", Role.IT),
    )
    return _question(state, words, lexicon)


def answer_owner(noun: Noun) -> str:
    """ "the boy's": how an answer names who has it."""
    return f"the {noun.singular}'s"


def ask_first(order: Order, lexicon: Lexicon) -> Sentence:
    """ "What did the sailor do first?" """
    return _what_did(order, "first", lexicon)


def ask_last(order: Order, lexicon: Lexicon) -> Sentence:
    """ "What did the sailor do last?" """
    return _what_did(order, "last", lexicon)


def ask_more(comparison: Comparison, lexicon: Lexicon) -> Sentence:
    """ "Who is taller?"; of things, "Which is taller?" """
    more = Word(lemma=comparison.quality, part=Part.ADJECTIVE, form=Form.COMPARATIVE)
    return _who_is(comparison, (more,), lexicon)


def ask_less(comparison: Comparison, lexicon: Lexicon) -> Sentence:
    """ "Who is shorter?" of a taller one; "Who is less happy?" where there is no opposite."""
    opposite = lexicon.adjectives[comparison.quality].opposite
    if opposite is None:
        less: Phrase = (small("less", Part.DETERMINER), small(comparison.quality, Part.ADJECTIVE))
    else:
        less = (Word(lemma=opposite, part=Part.ADJECTIVE, form=Form.COMPARATIVE),)
    return _who_is(comparison, less, lexicon)


def _who_is(comparison: Comparison, what: Phrase, lexicon: Lexicon) -> Sentence:
    thing = lexicon.nouns[comparison.more].sort is Sort.THING
    asked = pronoun("which" if thing else "who", Role.ASKED)
    be = finite_small("be", comparison.tense, Role.ASKED)
    return _question(comparison, (asked, be, *what), lexicon)


def _what_did(order: Order, which_one: str, lexicon: Lexicon) -> Sentence:
    words = (
        pronoun("what", Role.ASKED),
        finite_small("do", order.tense, Role.DOER),
        *definite(order.doer, Role.DOER),
        Word(lemma="do", part=Part.AUXILIARY, form=Form.BASE),
        small(which_one, Part.DETERMINER),
    )
    return _question(order, words, lexicon)


def _question(meaning: Meaning, words: Phrase, lexicon: Lexicon) -> Sentence:
    check_roles(meaning, lexicon)
    return Sentence(tokens=finish((words,), lexicon), plain=restate(meaning, lexicon), end="?")
