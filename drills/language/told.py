"""What is told becomes a sentence whose every word knows its slot, so that one can be left out."""

from __future__ import annotations

from dataclasses import dataclass, replace

from drills.core.clauses import Clause, Party, Told, Wanted
from drills.core.utterances import Utterance
from drills.core.words import Lexicon, Part, Sentence, Sort, Token, phrases_of
from drills.language.clauses import Piece, Slot, clause_pieces, party_pieces, tie_pieces, word
from drills.language.small_words import Case
from drills.language.spelling import spell
from drills.language.times import abbreviated, shown
from drills.language.verb_groups import first_auxiliary


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A sentence, and the slot of each of its tokens."""

    sentence: Sentence
    slots: tuple[Slot | None, ...]

    def find(self, *slots: Slot) -> int:
        """The first token of the first of `slots` that the sentence has.   Raises: ValueError."""
        for slot in slots:
            if slot in self.slots:
                return self.slots.index(slot)
        raise ValueError(f"{self.sentence.text!r} has no {' or '.join(slots)}")


def lay(told: Told, lexicon: Lexicon) -> Laid:
    """The sentence, or the question, of what is told."""
    if told.wanted is not None:
        return _laid(_question(told, told.wanted, lexicon), "?")
    pieces = clause_pieces(told.clause, lexicon)
    if told.second is not None:
        only = [word("only", Part.ADVERBIAL, starts=True)] if told.second.only else []
        pieces += [
            *only,
            word(told.link, Part.CONJUNCTION, Slot.LINK, starts=not only),
            *clause_pieces(replace(told.second, only=False), lexicon),
        ]
    return _laid(pieces, ".")


def said_before(told: Told, lexicon: Lexicon) -> tuple[Sentence, ...]:
    """The sentences that come first."""
    return tuple(_laid(clause_pieces(each, lexicon), ".").sentence for each in told.before)


def answer_to(told: Told, lexicon: Lexicon) -> Sentence | None:
    """What answers the question: "The cup.", "In the box.", "Because it is dirty."."""
    clause = told.clause
    match told.wanted:
        case Wanted.SUBJECT | Wanted.WHICH if clause.subject is not None:
            pieces = party_pieces(clause.subject, Case.SUBJECT, lexicon)
        case Wanted.OBJECT if clause.object is not None:
            pieces = party_pieces(clause.object, Case.OBJECT, lexicon)
        case Wanted.PLACE | Wanted.TIME:
            pieces = tie_pieces(clause.ties[-1], lexicon)
        case Wanted.REASON if told.second is not None:
            pieces = [
                word("because", Part.CONJUNCTION),
                *clause_pieces(told.second, lexicon),
            ]
        case _:
            return None
    return _laid(pieces, ".").sentence


def calendar_lines(told: Told, lexicon: Lexicon) -> tuple[str, ...]:
    """ "Mon 2: walk"."""
    return tuple(
        f"{abbreviated(day.weekday)} {day.date}: {lexicon.alone[day.verb].base}"
        for day in told.calendar
    )


def calendar_said(told: Told, lexicon: Lexicon) -> tuple[str, ...]:
    """ "Monday: walk."."""
    return tuple(f"{shown(day.weekday)}: {lexicon.alone[day.verb].base}." for day in told.calendar)


def wh_word(told: Told, lexicon: Lexicon) -> str:
    """The word that asks for the part that is wanted."""
    match told.wanted:
        case Wanted.PLACE:
            return "where"
        case Wanted.TIME:
            return "when"
        case Wanted.REASON:
            return "why"
        case Wanted.WHICH:
            return "which"
        case Wanted.SUBJECT:
            return _who_or_what(told.clause.subject, lexicon)
        case Wanted.OBJECT:
            return _who_or_what(told.clause.object, lexicon)
        case _:
            raise ValueError("nothing is asked for")


def _who_or_what(party: Party | None, lexicon: Lexicon) -> str:
    if party is None:
        raise ValueError("what is asked for is not there")
    return "what" if lexicon.nouns[party.noun].sort is Sort.THING else "who"


def _question(told: Told, wanted: Wanted, lexicon: Lexicon) -> list[Piece]:
    clause, asks = told.clause, wh_word(told, lexicon)
    first = word(asks, Part.PRONOUN, Slot.WH)
    if wanted is Wanted.WHICH and clause.subject is not None:
        # The quality is what is asked for, so the question does not name it.
        plain = replace(clause.subject, quality="")
        noun = party_pieces(plain, Case.SUBJECT, lexicon)[1:]
        return [first, *noun, *clause_pieces(replace(clause, subject=plain), lexicon, bare=True)]
    if wanted is Wanted.SUBJECT:
        return [first, *clause_pieces(clause, lexicon, bare=True)]
    asked = _without(clause, wanted)
    auxiliary, rest = first_auxiliary(asked)
    subject = party_pieces(_subject(asked), Case.SUBJECT, lexicon)
    others = clause_pieces(rest, lexicon, bare=True)
    verb = clause_pieces(auxiliary, lexicon, bare=True)[:1]
    return [first, *verb, *subject, *others[1:]]


def _without(clause: Clause, wanted: Wanted) -> Clause:
    match wanted:
        case Wanted.OBJECT:
            return replace(clause, object=None)
        case Wanted.PLACE | Wanted.TIME:
            return replace(clause, ties=clause.ties[:-1])
        case _:
            return clause


def _subject(clause: Clause) -> Party:
    if clause.subject is None:
        raise ValueError("the clause has no subject")
    return clause.subject


def _laid(pieces: list[Piece], end: str) -> Laid:
    tokens = spell([piece.token for piece in pieces])
    return Laid(
        sentence=Sentence(tokens=tokens, plain=_text(tokens, end), end=end),
        slots=tuple(piece.slot for piece in pieces),
    )


def _text(tokens: tuple[Token, ...], end: str) -> str:
    return Utterance(phrases=phrases_of(tokens, end)).text
