"""Whether what fixes a gap's word is really on the screen, one check a sort of anchor."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType

from drills.core.clauses import Told
from drills.core.items import Item
from drills.core.material import Material
from drills.core.meanings import State
from drills.exercises.frames.bound import head_of
from drills.exercises.frames.dealing import shows_number
from drills.exercises.frames.frame import Anchor, Dealt, Demand, context_of
from drills.exercises.gaps import GAP, frame_of
from drills.language.times import FUTURE_TIMES, NOW, PAST_TIMES, shown

_NUMERALS = ("one", "two", "three")
_PLACE_WORDS = ("with me", "far away")
_NOT_THE_OTHERS = ("here, not", "there, not")
_SURE_TIMES = (*PAST_TIMES.values(), *FUTURE_TIMES.values(), NOW["right-now"])
"""Times of one tense: "now" and "every day" are said of the past as well."""


def anchor_stands(demand: Demand, item: Item, material: Material) -> bool:
    """Whether the item shows what the demand rests on."""
    words = item.sentence.rstrip(".?").split()
    return _CHECKS[demand.anchor](item, material, words)


def _picture(item: Item, material: Material, _words: list[str]) -> bool:
    if item.picture is None or item.picture.meaning != item.meaning:
        return False
    frame = frame_of(item, material)
    return item.told is None or frame.picture_of(item.told) == item.meaning


def _numeral(item: Item, material: Material, words: list[str]) -> bool:
    if isinstance(item.meaning, State) and item.told is None:
        noun = material.lexicon.nouns[item.meaning.subject]
        return words[0].lower() in _NUMERALS and shows_number(noun)
    return any(word.lower() in _NUMERALS for word in words)


def _noun_form(item: Item, material: Material, words: list[str]) -> bool:
    named = item.told.clause.object if item.told is not None else None
    if named is None or not _word_after(item, material, words):
        return False
    noun = material.cloze_words.lexicon.nouns[named.noun]
    after = [word.rstrip(",") for word in words[words.index(GAP) + 1 :] if word != "the"]
    return shows_number(noun) and after[0] in (noun.singular, noun.plural)


def _time_word(item: Item, _material: Material, _words: list[str]) -> bool:
    return any(item.sentence.lower().startswith(f"{text} ") for text in _SURE_TIMES)


def _time_noun(item: Item, _material: Material, _words: list[str]) -> bool:
    time = _told(item).clause.ties[-1].time
    return bool(time) and f"{GAP} {shown(time)}" in item.sentence


def _word_order(_item: Item, _material: Material, words: list[str]) -> bool:
    return len(words) > 3 and GAP in words


def _word_before(_item: Item, _material: Material, words: list[str]) -> bool:
    return GAP in words and words.index(GAP) > 0


def _word_after(_item: Item, _material: Material, words: list[str]) -> bool:
    return GAP in words and words.index(GAP) < len(words) - 1


def _context(item: Item, material: Material, _words: list[str]) -> bool:
    wanted = context_of(Dealt(told=item.told), material.cloze_words.lexicon)
    said = item.spoken.phrases[1:]
    return bool(item.context) and item.context == wanted.text and said == wanted.said


def _pair_word(_item: Item, _material: Material, words: list[str]) -> bool:
    before = words[: words.index(GAP)] if GAP in words else []
    return words[0] in ("Both", "Either") or "only" in before


def _own(_item: Item, _material: Material, words: list[str]) -> bool:
    return GAP in words and words[words.index(GAP) + 1 :][:1] == ["own"]


def _place_word(item: Item, _material: Material, _words: list[str]) -> bool:
    """ "Those shoes here with me" can be said, so what is not meant is named too, or where I am."""
    if not _told(item).clause.place:
        return any(text in item.sentence for text in _NOT_THE_OTHERS)
    return bool(item.context) and any(text in item.sentence for text in _PLACE_WORDS)


def _head(item: Item, material: Material, words: list[str]) -> bool:
    head = head_of(_told(item))
    lexicon = material.cloze_words.lexicon
    if head in lexicon.adjectives:
        return lexicon.adjectives[head].base in words
    for verbs in (lexicon.verbs, lexicon.alone, lexicon.transfers):
        if head in verbs:
            return verbs[head].third_person in words
    return False


def _told(item: Item) -> Told:
    return Dealt(told=item.told).words


_CHECKS: Mapping[Anchor, Callable[[Item, Material, list[str]], bool]] = MappingProxyType(
    {
        Anchor.PICTURE: _picture,
        Anchor.NUMERAL: _numeral,
        Anchor.NOUN_FORM: _noun_form,
        Anchor.TIME_WORD: _time_word,
        Anchor.TIME_NOUN: _time_noun,
        Anchor.WORD_ORDER: _word_order,
        Anchor.WORD_BEFORE: _word_before,
        Anchor.WORD_AFTER: _word_after,
        Anchor.CONTEXT: _context,
        Anchor.PAIR_WORD: _pair_word,
        Anchor.OWN: _own,
        Anchor.PLACE_WORD: _place_word,
        Anchor.HEAD: _head,
    }
)
