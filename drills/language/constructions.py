"""Every construction by name, and the walk from meaning to sentence."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from drills.core.meanings import Meaning
from drills.core.words import Lexicon, Sentence
from drills.language.act_table import ACT_TABLE
from drills.language.construction import Construction
from drills.language.other_table import OTHER_TABLE
from drills.language.plain import restate
from drills.language.roles import check_roles
from drills.language.steps import finish

CONSTRUCTIONS: Mapping[str, Construction] = MappingProxyType(
    {each.name: each for each in (*ACT_TABLE, *OTHER_TABLE)}
)


def realise(meaning: Meaning, construction: str, lexicon: Lexicon) -> Sentence:
    """The sentence of `meaning` in `construction`.

    Raises: ValueError for an unknown construction, one that cannot say this meaning, or a
    meaning with a word that the lexicon lacks.
    """
    chosen = CONSTRUCTIONS.get(construction)
    if chosen is None:
        raise ValueError(f"there is no construction {construction!r}")
    if not isinstance(meaning, chosen.meaning_type):
        raise ValueError(f"{construction!r} cannot say a meaning of {type(meaning).__name__}")
    check_roles(meaning, lexicon)
    if why := chosen.refuses(meaning, lexicon):
        raise ValueError(f"{construction!r} cannot say this: {why}")
    return Sentence(
        tokens=finish(chosen.order(meaning), lexicon),
        plain=restate(meaning, lexicon),
        end=chosen.end,
    )
