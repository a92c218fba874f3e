"""Facts of the world in the lexicon files: their own nouns, and what makes a fact usable."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from drills.catalogue.fields import Fields
from drills.catalogue.word_fields import BANDS, HIGHEST_ZIPF, one_word
from drills.core.facts import Fact, FactNoun
from drills.core.words import Noun, Sort


def fact_noun(fields: Fields) -> FactNoun:
    return FactNoun(
        key=fields.text("key"),
        singular=one_word(fields, "singular"),
        sort=fields.choice("sort", Sort),
        band=fields.one_of("band", BANDS),
        zipf=fields.number("zipf", 0.0, HIGHEST_ZIPF),
        zipf_source=fields.text("zipf_source"),
    )


def fact(fields: Fields) -> Fact:
    return Fact(
        doer=fields.text("doer"),
        verb=fields.text("verb"),
        done_to=fields.text("done_to"),
        source=fields.text("source"),
    )


def check_facts(found: Sequence[tuple[Fields, Fact]], nouns: Mapping[str, Noun | FactNoun]) -> None:
    """Note each fact whose words tell by themselves who does it, or that is there both ways.

    Every word of the facts must be known.
    """
    told = {(each.doer, each.verb, each.done_to): fields for fields, each in found}
    for fields, each in found:
        doer, done_to = nouns[each.doer], nouns[each.done_to]
        if doer.sort is not done_to.sort:
            message = f"`{doer.key}` is a {doer.sort} and `{done_to.key}` a {done_to.sort}."
            fields.note(message, "Pair two of one sort.", key="done_to")
        if doer.sort.value not in nouns:
            fields.note(f"There is no noun `{doer.sort}`.", "Add it as a fact_noun.", key="doer")
        if doer.band != done_to.band:
            message = f"`{doer.key}` is {doer.band} and `{done_to.key}` {done_to.band}."
            fields.note(message, "Pair two of one band.", key="done_to")
        if told[each.doer, each.verb, each.done_to] is not fields:
            fields.note("This fact is here twice.", "Remove one.", key="doer")
        if (each.done_to, each.verb, each.doer) in told:
            mend = "Only one of them can be true: remove the other."
            fields.note("This fact is here the other way round as well.", mend, key="doer")
