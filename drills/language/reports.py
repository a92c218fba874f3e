"""Order of a report, where a pronoun points back to one of two: "him" or "himself"."""

from __future__ import annotations

from drills.core.meanings import Report
from drills.language.abstract import Form, Phrase, definite, finite, standing_for
from drills.language.predicates import predicate, where_and_when
from drills.language.roles import Role


def pronoun_reference(meaning: Report) -> tuple[Phrase, ...]:
    """ "The baker says / the sailor taps him"; "himself" is the sailor, "him" the baker."""
    act = meaning.act
    form = Form.REFLEXIVE if meaning.is_reflexive else Form.OBJECT
    return (
        (
            *definite(meaning.speaker, Role.TELLER),
            finite("say", act.tense, Role.TELLER),
        ),
        (
            *definite(act.doer, Role.DOER),
            *predicate(act.verb, act.tense, act.aspect, Role.DOER),
            standing_for(act.done_to, form, Role.DONE_TO),
        ),
        *where_and_when(act),
    )
