"""What no picture can show, and why; the exercises leave it out."""

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
    State,
    Transfer,
    Undergone,
)
from drills.pictures.activities import ACTIVITIES, ANIMAL_ACTIVITIES
from drills.pictures.acts import ACTS
from drills.pictures.animal_acts import ANIMAL_ACTS, ANIMAL_CHAINS
from drills.pictures.cast import PEOPLE
from drills.pictures.chains import CHAINS
from drills.pictures.herd import ANIMALS
from drills.pictures.objects import THINGS, UPRIGHT
from drills.pictures.places import why_not as why_not_place
from drills.pictures.reflexive_acts import REFLEXIVE_ACTS
from drills.pictures.states import SEEN_ON_ANIMALS, SINGLED_OUT, STATES
from drills.pictures.trios import TRANSFERS

COMPARED = ("tall", "short", "big", "small")
MOST = 3
NOT_HANDED = frozenset(
    {
        "blanket", "bread", "brush", "coat", "glove", "hat", "key", "kite", "lamp", "pillow",
        "plate", "shoe", "spoon",
    }
)  # fmt: skip
"""Things that are not made out in a hand in nine rows: a glove was taken for a camera, a cake."""

SMALL_UNREADABLE: Mapping[str, str] = MappingProxyType(
    {
        "tap": "in nine rows the finger, the hand and the back run into one; readers saw a tug",
    }
)
"""Acts that are drawn but not made out in small pictures, and why; three or four are small."""

FEW_LINES = 12
"""Rows below which a picture is small."""


def why_not(meaning: Meaning, *, lines: int | None = None) -> str | None:
    """Why no picture can show `meaning`, or None when one can.

    lines: rows of the picture, of which some can be drawn and not made out; any when None.
    """
    reason: str | None = _REASONS[type(meaning)](meaning)
    if reason or lines is None:
        return reason
    return _why_not_in(meaning, lines)


def _why_not_in(meaning: Meaning, lines: int) -> str | None:
    """Why `meaning`, which can be drawn, is not made out in so many rows."""
    act = meaning.act if isinstance(meaning, Described | Report) else meaning
    if lines >= FEW_LINES or (isinstance(act, Act) and act.negated):
        return None
    return SMALL_UNREADABLE.get(act.verb) if isinstance(act, Act | Chain) else None


def _figure(key: str) -> str | None:
    return None if key in PEOPLE or key in ANIMALS else f"there is no figure of {key}"


def _pair(one: str, other: str) -> str | None:
    missing = _figure(one) or _figure(other)
    if missing:
        return missing
    if one == other:
        return f"two of {one} cannot be told apart"
    if (one in PEOPLE) != (other in PEOPLE):
        return "a person and an animal are drawn in no act together"
    if one in PEOPLE and PEOPLE[one].child != PEOPLE[other].child:
        return "a child and a grown-up are drawn in no act together"
    return None


def _act(act: Act) -> str | None:
    if act.negated:
        alike = act.doer == act.done_to
        return (
            _figure(act.doer)
            or _figure(act.done_to)
            or (f"two of {act.doer} cannot be told apart" if alike else None)
        )
    wrong = _pair(act.doer, act.done_to)
    if wrong:
        return wrong
    known = ACTS if act.doer in PEOPLE else ANIMAL_ACTS
    return None if act.verb in known else f"there is no drawing of {act.verb} by {act.doer}"


def _activities(meaning: Activity) -> str | None:
    return _activity(meaning.verb, meaning.doer) or _count(meaning.count)


def _activity(verb: str, doer: str) -> str | None:
    missing = _figure(doer)
    known = ACTIVITIES if doer in PEOPLE else ANIMAL_ACTIVITIES
    if missing or verb in known:
        return missing
    return f"there is no drawing of {verb} by {doer}"


def _count(count: int) -> str | None:
    return None if 1 <= count <= MOST else f"{count} figures are too many or too few to draw"


def _state(meaning: State) -> str | None:
    subject, complement = meaning.subject, meaning.complement
    wrong = _figure(subject) or _count(meaning.count)
    if wrong:
        return wrong
    if meaning.link is Link.HAVE:
        return "an animal holds nothing" if subject in ANIMALS else _held(complement)
    seen = STATES if subject in PEOPLE else SEEN_ON_ANIMALS
    return None if complement in seen else f"{complement} is not seen on {subject}"


def _handed(thing: str) -> str | None:
    if thing in NOT_HANDED:
        return f"{thing} is too small or too odd in a hand to be made out"
    return _held(thing)


def _held(thing: str) -> str | None:
    if thing not in THINGS:
        return f"there is no drawing of {thing}"
    return f"{thing} is too large to be held" if UPRIGHT[thing]().bulk > 2 else None


def _described(meaning: Described) -> str | None:
    if meaning.act.negated:
        return "with no act nobody is singled out by it"
    seen = SINGLED_OUT if meaning.subject in PEOPLE else SEEN_ON_ANIMALS
    if meaning.state is not None and meaning.state not in seen:
        return f"{meaning.state} is not seen on {meaning.subject}"
    return _act(meaning.act)


def _report(meaning: Report) -> str | None:
    if meaning.speaker not in PEOPLE:
        return f"{meaning.speaker} does not speak"
    if not meaning.is_reflexive:
        return _act(meaning.act)
    if meaning.act.doer not in PEOPLE:
        return f"{meaning.act.doer} is drawn in no act alone"
    if meaning.act.negated or meaning.act.verb not in REFLEXIVE_ACTS:
        return f"nobody is drawn to {meaning.act.verb} himself or herself"
    return None


def _transfer(meaning: Transfer) -> str | None:
    if meaning.verb not in TRANSFERS:
        return f"there is no drawing of {meaning.verb}"
    wrong = _pair(meaning.doer, meaning.receiver)
    if wrong or meaning.doer not in PEOPLE:
        return wrong or "an animal gives nothing"
    given = meaning.given
    if given not in PEOPLE and given not in ANIMALS:
        return _handed(given)
    if given in (meaning.doer, meaning.receiver):
        return "nobody is given by or to oneself"
    if given in PEOPLE and meaning.verb == "give":
        return "nobody is given away"
    return _pair(meaning.doer, given) if given in PEOPLE else None


def _order(meaning: Order) -> str | None:
    if meaning.earlier == meaning.later:
        return "the same act twice has no order"
    return _activity(meaning.earlier, meaning.doer) or _activity(meaning.later, meaning.doer)


def _comparison(meaning: Comparison) -> str | None:
    one, other = meaning.more, meaning.less
    if meaning.quality not in COMPARED:
        return f"more and less {meaning.quality} cannot be seen"
    if one in THINGS and other in THINGS and one != other:
        if meaning.quality in ("tall", "short"):
            return "a thing is drawn big or small, not tall or short"
        return None
    if _pair(one, other):
        return _pair(one, other)
    if one in ANIMALS and meaning.quality in ("tall", "short"):
        return "an animal is drawn big or small, not tall or short"
    return None


def _chain(meaning: Chain) -> str | None:
    wrong = _pair(meaning.outer, meaning.middle)
    known = CHAINS if meaning.outer in PEOPLE else ANIMAL_CHAINS
    if wrong or meaning.verb in known:
        return wrong
    return f"{meaning.verb} is not drawn from one to the next and on"


_REASONS: Mapping[type, Callable[[Any], str | None]] = MappingProxyType(
    {
        Act: _act,
        Undergone: lambda _: "an act with no doer is drawn through one of its acts (by)",
        Asked: lambda _: "a question is drawn through one of its answers (answered)",
        Activity: _activities,
        Place: why_not_place,
        State: _state,
        Described: _described,
        Report: _report,
        Transfer: _transfer,
        Order: _order,
        Comparison: _comparison,
        Chain: _chain,
        Kin: lambda _: "kinship cannot be seen",
    }
)
