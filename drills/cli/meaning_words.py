"""A meaning to the plain words that `drills picture` takes."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from drills.core.meanings import (
    Act,
    Activity,
    Asked,
    Chain,
    Comparison,
    Described,
    Kin,
    Link,
    Meaning,
    Order,
    Place,
    Report,
    Role,
    State,
    Transfer,
    Undergone,
)


def words_of(meaning: Meaning) -> str:
    """The words of `meaning` as `drills picture` takes them: no tense, where or when."""
    return _WRITERS[type(meaning)](meaning)


def _act_words(act: Act) -> str:
    return f"{act.doer} {'not ' if act.negated else ''}{act.verb} {act.done_to}"


def _asked_words(asked: Asked) -> str:
    if asked.asked is Role.DOER:
        return f"who {asked.verb} {asked.known}"
    return f"{asked.known} {asked.verb} whom"


def _state_words(state: State) -> str:
    link = {Link.BE: ("is", "are"), Link.HAVE: ("has", "have")}[state.link][state.count > 1]
    return f"{_counted(state.count, state.subject)} {link} {state.complement}"


def _counted(count: int, noun: str) -> str:
    return noun if count == 1 else f"{count} {noun}"


def _described_words(meaning: Described) -> str:
    act, how = meaning.act, "" if meaning.state is None else f" is {meaning.state}"
    if meaning.who is Role.DOER:
        return f"{act.doer} who {act.verb} {act.done_to}{how}"
    return f"{act.done_to} whom {act.doer} {act.verb}{how}"


def _report_words(meaning: Report) -> str:
    act = meaning.act
    who = {meaning.speaker: "him", act.doer: "himself"}.get(act.done_to, act.done_to)
    no = "not " if act.negated else ""
    return f"{meaning.speaker} say {act.doer} {no}{act.verb} {who}"


_WRITERS: Mapping[type, Callable[[Any], str]] = MappingProxyType(
    {
        Act: _act_words,
        Undergone: lambda it: f"someone {it.verb} {it.done_to}",
        Asked: _asked_words,
        Activity: lambda it: f"{_counted(it.count, it.doer)} {it.verb}",
        Place: lambda it: f"{it.thing} {it.relation} {it.landmark}",
        State: _state_words,
        Described: _described_words,
        Report: _report_words,
        Transfer: lambda it: f"{it.doer} {it.verb} {it.given} to {it.receiver}",
        Order: lambda it: f"{it.doer} {it.earlier} before {it.later}",
        Comparison: lambda it: f"{it.more} more {it.quality} than {it.less}",
        Chain: lambda it: f"{it.outer} {it.verb} {it.middle} {it.verb} {it.outer}",
        Kin: lambda it: " of ".join(it.terms[::-1]),
    }
)
