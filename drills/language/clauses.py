"""A clause becomes words in their order: whose, which and how many; the verb; what goes with it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from drills.core.clauses import Clause, Determined, Missing, Party, Rank, Relative, Tie
from drills.core.words import Lexicon, Part, Token
from drills.language.abstract import Form, Number, Word
from drills.language.morphology import inflect
from drills.language.small_words import (
    Case,
    demonstrative,
    possessive_alone,
    pronoun_of,
    superlative,
    thing_word,
)
from drills.language.times import FIRST_WORDS, TIMES_OVER, shown
from drills.language.verb_groups import Verbal, verb_group

_NUMERALS = ("", "one", "two", "three")


class Slot(StrEnum):
    """The place of a word in its sentence, by which it can be left out."""

    SUBJECT = "subject"
    SUBJECT_DETERMINER = "subject determiner"
    SUBJECT_NOUN = "subject noun"
    SUBJECT_OWNER = "subject owner"
    OBJECT = "object"
    OBJECT_DETERMINER = "object determiner"
    OBJECT_NOUN = "object noun"
    OBJECT_OWNER = "object owner"
    AUXILIARY = "auxiliary"
    INNER_AUXILIARY = "inner auxiliary"
    VERB = "verb"
    NEGATION = "negation"
    PARTICLE = "particle"
    PLACE = "place"
    PREPOSITION = "preposition"
    COMPARED = "compared"
    RATE = "rate"
    PAIR = "pair"
    PAIR_OPENER = "pair opener"
    LINK = "link"
    RELATIVE = "relative"
    WH = "wh"


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    token: Token
    slot: Slot | None = None


def word(text: str, part: Part, slot: Slot | None = None, *, starts: bool = False) -> Piece:
    return Piece(token=Token(text=text, part=part, starts_phrase=starts), slot=slot)


def clause_pieces(clause: Clause, lexicon: Lexicon, *, bare: bool = False) -> list[Piece]:
    """bare: without what stands before the verb."""
    subject = clause.subject
    if subject is None:
        raise ValueError("the clause has no subject")
    pieces: list[Piece] = []
    if not bare:
        if clause.when:
            pieces += [word(each, Part.ADVERBIAL) for each in FIRST_WORDS[clause.when].split()]
        if clause.only:
            pieces.append(word("only", Part.ADVERBIAL))
        if clause.either:
            pieces.append(word("either", Part.CONJUNCTION))
        pieces += party_pieces(subject, Case.SUBJECT, lexicon)
    return [*pieces, *_predicate(clause, subject, lexicon)]


def _predicate(clause: Clause, subject: Party, lexicon: Lexicon) -> list[Piece]:
    agreeing = clause.object if subject.thing is not None and clause.object else subject
    pieces = [
        word(each.text, each.part, slot, starts=index == 0 and not subject.is_pronoun)
        for index, (each, slot) in enumerate(_slotted(clause, agreeing, lexicon))
    ]
    if clause.particle:
        pieces.append(word(clause.particle, Part.PREPOSITION, Slot.PARTICLE))
    if clause.place:
        there = word(clause.place, Part.ADVERBIAL, Slot.PLACE)
        mark = "," if clause.far_away else ""
        pieces.append(replace(there, token=replace(there.token, mark=mark)))
    if clause.state:
        pieces += _state(clause, lexicon)
    if clause.object is not None:
        pieces += party_pieces(clause.object, Case.OBJECT, lexicon)
    for tie in clause.ties:
        pieces += tie_pieces(tie, lexicon)
    if clause.rather_than is not None:
        pieces += _rather_than(clause.rather_than, lexicon)
    if clause.rate:
        pieces += [
            word(TIMES_OVER[clause.times - 1], Part.ADVERBIAL),
            word("a", Part.DETERMINER, Slot.RATE),
            word(clause.rate, Part.NOUN),
        ]
    if clause.far_away:
        pieces += [word("far", Part.ADVERBIAL), word("away", Part.ADVERBIAL)]
    return pieces


def _rather_than(other: Party, lexicon: Lexicon) -> list[Piece]:
    """ "here, not that one" """
    near = other.determined is Determined.FAR
    place = Token(text="here" if near else "there", part=Part.ADVERBIAL, mark=",")
    one = [word("one", Part.PRONOUN)] if other.count == 1 else []
    left = [Piece(token=piece.token) for piece in party_pieces(other, Case.OBJECT, lexicon)]
    return [Piece(token=place), word("not", Part.NEGATION), *left, *one]


def _slotted(clause: Clause, subject: Party, lexicon: Lexicon) -> list[tuple[Verbal, Slot | None]]:
    slotted: list[tuple[Verbal, Slot | None]] = []
    for index, each in enumerate(verb_group(clause, subject, lexicon)):
        if each.part is Part.NEGATION:
            slot = Slot.NEGATION
        elif each.part is Part.VERB:
            slot = Slot.VERB
        else:
            slot = Slot.AUXILIARY if index == 0 else Slot.INNER_AUXILIARY
        slotted.append((each, slot))
    return slotted


def _state(clause: Clause, lexicon: Lexicon) -> list[Piece]:
    adjective = lexicon.adjectives[clause.state]
    if clause.than is None:
        return [word(adjective.base, Part.ADJECTIVE)]
    other = party_pieces(clause.than, Case.SUBJECT, lexicon)
    if clause.equal:
        first = [word("as", Part.ADVERBIAL), word(adjective.base, Part.ADJECTIVE)]
        return [*first, word("as", Part.CONJUNCTION, Slot.COMPARED, starts=True), *other]
    if not adjective.comparative:
        raise ValueError(f"{adjective.key!r} has no form for more of it")
    first = [word(adjective.comparative, Part.ADJECTIVE)]
    return [*first, word("than", Part.CONJUNCTION, Slot.COMPARED, starts=True), *other]


def party_pieces(party: Party, case: Case, lexicon: Lexicon) -> list[Piece]:
    """One party, with the second one that is joined to it."""
    is_subject = case is Case.SUBJECT
    paired = party.also is not None and is_subject
    opener = _OPENERS[party.pair].split() if paired else []
    own = [word(each, Part.CONJUNCTION, Slot.PAIR_OPENER) for each in opener]
    pieces = [*own, *_one_party(party, case, lexicon, is_subject=is_subject)]
    if party.also is not None:
        pieces += [
            word(party.pair, Part.CONJUNCTION, Slot.PAIR),
            *([word("also", Part.ADVERBIAL)] if party.pair == "but" else []),
            *_one_party(party.also, case, lexicon, is_subject=is_subject),
        ]
    if party.relative is not None:
        pieces += _relative(party.relative, party, lexicon)
    return pieces


_OPENERS = {"and": "both", "or": "either", "but": "not only"}


def _stand_in(party: Party, case: Case, lexicon: Lexicon) -> str:
    """The one word that stands for the party; empty where a noun phrase does."""
    if party.thing is not None:
        return thing_word(party.thing)
    if not party.noun and party.owner is not None:
        return possessive_alone(party.owner, lexicon)
    if party.is_pronoun:
        return pronoun_of(party, Case.REFLEXIVE if party.is_reflexive else case, lexicon)
    return ""


def _one_party(party: Party, case: Case, lexicon: Lexicon, *, is_subject: bool) -> list[Piece]:
    if text := _stand_in(party, case, lexicon):
        return [word(text, Part.PRONOUN, Slot.SUBJECT if is_subject else Slot.OBJECT)]
    if party.relative is not None and not party.noun:
        return []
    pieces = _determiner(party, lexicon, is_subject=is_subject)
    if not party.noun and party.rank is None:
        return pieces
    if party.rank is Rank.SAME:
        pieces.append(word("same", Part.ADJECTIVE))
    if party.quality:
        adjective = lexicon.adjectives[party.quality]
        most = party.rank is Rank.MOST
        text = superlative(adjective.comparative) if most else adjective.base
        pieces.append(word(text, Part.ADJECTIVE))
    if not party.noun:
        return [*pieces, word("of", Part.PREPOSITION), word("all", Part.PRONOUN)]
    number = Number.PLURAL if party.count > 1 else Number.SINGULAR
    noun = inflect(Word(lemma=party.noun, part=Part.NOUN, number=number), lexicon)
    return [
        *pieces,
        word(noun, Part.NOUN, Slot.SUBJECT_NOUN if is_subject else Slot.OBJECT_NOUN),
    ]


def _determiner(party: Party, lexicon: Lexicon, *, is_subject: bool) -> list[Piece]:
    slot = Slot.SUBJECT_DETERMINER if is_subject else Slot.OBJECT_DETERMINER
    owner = party.owner
    if owner is not None and owner.is_pronoun:
        text = pronoun_of(owner, Case.POSSESSIVE, lexicon)
        own = [word("own", Part.ADJECTIVE)] if party.own else []
        return [word(text, Part.DETERMINER, slot), *own]
    if owner is not None:
        marked = inflect(Word(lemma=owner.noun, part=Part.NOUN, form=Form.POSSESSIVE), lexicon)
        named = _determiner(owner, lexicon, is_subject=is_subject)
        plain = [Piece(token=piece.token) for piece in named]
        return [
            *plain,
            word(marked, Part.NOUN, Slot.SUBJECT_OWNER if is_subject else Slot.OBJECT_OWNER),
        ]
    match party.determined:
        case Determined.BARE:
            return []
        case Determined.NEAR | Determined.FAR:
            part = Part.DETERMINER if party.noun else Part.PRONOUN
            return [word(demonstrative(party), part, slot)]
        case Determined.COUNTED:
            return [word(_NUMERALS[party.count], Part.NUMERAL)]
        case _:
            first = word(party.determined.value, Part.DETERMINER, slot)
            # "All boats" is said of boats in general, "all the boats" of those that are there.
            is_all = party.determined is Determined.ALL
            return [first, word("the", Part.DETERMINER)] if is_all else [first]


def tie_pieces(tie: Tie, lexicon: Lexicon) -> list[Piece]:
    first = word(tie.word, Part.PREPOSITION, Slot.PREPOSITION, starts=True)
    if tie.party is not None:
        return [first, *party_pieces(tie.party, Case.OBJECT, lexicon)]
    return [first, *(word(each, Part.ADVERBIAL) for each in shown(tie.time).split())]


def _relative(relative: Relative, of: Party, lexicon: Lexicon) -> list[Piece]:
    clause = relative.clause
    first = word(relative.word, Part.RELATIVE, Slot.RELATIVE, starts=True)
    if relative.missing is Missing.SUBJECT:
        rest = _predicate(clause, of, lexicon)
    else:
        rest = clause_pieces(clause, lexicon)
    # What is inside is told and never asked.
    return [first, *(Piece(token=piece.token) for piece in rest)]
