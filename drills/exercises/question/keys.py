"""The answer to each form of question, worked out anew from what is told and what is asked."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from drills.core.items import Item
from drills.core.meanings import Act, Comparison, Described, Kin, Order, State
from drills.core.question_words import GRID, NO, YES
from drills.core.words import Lexicon
from drills.language import (
    EASY,
    HARD,
    answer_name,
    answer_owner,
    answer_relation,
    answer_sex,
    ask_doer,
    ask_done_to,
    ask_first,
    ask_last,
    ask_less,
    ask_more,
    ask_owner,
    ask_relation,
    ask_sex_of_this,
    ask_what_happened,
    ask_whether,
    realise,
    state_fact,
)

NEITHER = "neither"


def _act(item: Item) -> Act | None:
    told = item.meaning.act if isinstance(item.meaning, Described) else item.meaning
    return told if isinstance(told, Act) else None


def _who(item: Item, lexicon: Lexicon) -> str | None:
    act = _act(item)
    if act is None:
        return None
    nouns = lexicon.nouns
    if item.prompt == ask_doer(act, lexicon).text:
        return answer_name(nouns[act.doer])
    if item.prompt == ask_done_to(act, lexicon).text:
        return answer_name(nouns[act.done_to])
    words = item.prompt.rstrip("?").split()
    third = [noun for noun in nouns.values() if noun.singular in words]
    is_third = third and not {act.doer, act.done_to} & {noun.key for noun in third}
    return NEITHER if is_third else None


def _what(item: Item, lexicon: Lexicon) -> str | None:
    act = _act(item)
    if act is None or item.prompt != ask_what_happened(act, lexicon).text:
        return None
    return realise(act, "active", lexicon).text


def _whether(item: Item, lexicon: Lexicon) -> str | None:
    act = _act(item)
    if act is None:
        return None
    if item.prompt == ask_whether(act, act, lexicon).text:
        return YES
    others = (act.reversed(), *(replace(act, verb=verb) for verb in lexicon.verbs))
    asked = any(item.prompt == ask_whether(other, act, lexicon).text for other in others)
    return NO if asked else None


def _relative(item: Item, lexicon: Lexicon) -> str | None:
    told = item.meaning
    if isinstance(told, State):
        is_asked = item.sentence == ask_owner(told, lexicon).text
        return answer_owner(lexicon.nouns[told.subject]) if is_asked else None
    if not isinstance(told, Kin):
        return None
    if item.prompt == ask_sex_of_this(told, lexicon).text:
        return answer_sex(told)
    asks = [ask_relation(told, lexicon, of=of).text for of in (False, True)]
    return answer_relation(told, lexicon) if item.prompt in asks else None


def _when(item: Item, lexicon: Lexicon) -> str | None:
    order = item.meaning
    if not isinstance(order, Order):
        return None
    doer = lexicon.nouns[order.doer].singular
    for ask, verb in ((ask_first, order.earlier), (ask_last, order.later)):
        if item.prompt == ask(order, lexicon).text:
            return f"The {doer} {lexicon.alone[verb].past}."
    return None


def _more(item: Item, lexicon: Lexicon) -> str | None:
    comparison = item.meaning
    if not isinstance(comparison, Comparison):
        return None
    for ask, noun in ((ask_more, comparison.more), (ask_less, comparison.less)):
        if item.prompt == ask(comparison, lexicon).text:
            return answer_name(lexicon.nouns[noun])
    return None


def _truth(item: Item, lexicon: Lexicon) -> str | None:
    for fact in lexicon.facts.known:
        back = replace(fact, doer=fact.done_to, done_to=fact.doer)
        for stated, key in ((fact, YES), (back, NO)):
            if item.words == (stated.doer, stated.verb, stated.done_to):
                said = item.construction in (*EASY, *HARD) and (
                    item.sentence == state_fact(stated, item.construction, lexicon).text
                )
                return key if said else None
    return None


KEYS: Mapping[str, Callable[[Item, Lexicon], str | None]] = MappingProxyType(
    {
        "who-did-what": _who,
        "what-happened": _what,
        "yes-no": _whether,
        "kin": _relative,
        "before-after": _when,
        "comparison": _more,
        GRID: _truth,
    }
)
"""Form -> the text of the right answer; None where the question does not ask of what is told."""
