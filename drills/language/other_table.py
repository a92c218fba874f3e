"""The constructions that say anything else than an act of one on another.

Ranks, and which are canonical: common practice, no source.
"""

from __future__ import annotations

from drills.core.meanings import (
    Activity,
    Comparison,
    Kin,
    Order,
    Place,
    State,
    Transfer,
)
from drills.language.construction import (
    Construction,
    unless_number_shows,
    unless_person,
)
from drills.language.kin_phrases import of_kinship, possessive_kinship
from drills.language.orders import (
    after_in_order,
    after_reversed,
    before_in_order,
    before_reversed,
)
from drills.language.places import locative
from drills.language.states import agreement, comparative, number
from drills.language.transfers import dative

OTHER_TABLE = (
    Construction(
        name="number",
        label="One or two: only the endings tell",
        example="The sailors are waving.",
        meaning_type=Activity,
        canonical=True,
        rank=3,
        order=number,
        refuses=unless_number_shows,
        reversible=False,
    ),
    Construction(
        name="agreement",
        label="Number: is or are, was or were, has or have",
        example="Two sailors are wet.",
        meaning_type=State,
        canonical=True,
        rank=3,
        order=agreement,
        reversible=False,
    ),
    Construction(
        name="locative",
        label="Place: where one thing is to another",
        example="The cup is behind the bell.",
        meaning_type=Place,
        canonical=True,
        rank=4,
        order=locative,
        where=False,
    ),
    Construction(
        name="dative",
        label="Giving: who gives, what, and to whom",
        example="The sailor showed the nurse to the judge.",
        meaning_type=Transfer,
        canonical=True,
        rank=6,
        order=dative,
    ),
    Construction(
        name="comparative",
        label="More or less: taller, shorter, bigger",
        example="The nurse is taller than the judge.",
        meaning_type=Comparison,
        canonical=True,
        rank=6,
        order=comparative,
        where=False,
    ),
    Construction(
        name="before-in-order",
        label="Before, told in the order of events",
        example="The sailor waved before he sat.",
        meaning_type=Order,
        canonical=True,
        rank=6,
        order=before_in_order,
        refuses=unless_person,
    ),
    Construction(
        name="after-in-order",
        label="After, told in the order of events",
        example="After the sailor waved, he sat.",
        meaning_type=Order,
        canonical=True,
        rank=6,
        order=after_in_order,
        refuses=unless_person,
    ),
    Construction(
        name="possessive-kinship",
        label="Relatives: the aunt's brother",
        example="My aunt's brother is in the garden.",
        meaning_type=Kin,
        canonical=False,
        rank=8,
        order=possessive_kinship,
    ),
    Construction(
        name="of-kinship",
        label="Relatives: the brother of the aunt",
        example="The brother of my aunt is in the garden.",
        meaning_type=Kin,
        canonical=False,
        rank=8,
        order=of_kinship,
    ),
    Construction(
        name="before-reversed",
        label="Before, told against the order of events",
        example="Before the sailor sat, he waved.",
        meaning_type=Order,
        canonical=False,
        rank=8,
        order=before_reversed,
        refuses=unless_person,
    ),
    Construction(
        name="after-reversed",
        label="After, told against the order of events",
        example="The sailor sat after he waved.",
        meaning_type=Order,
        canonical=False,
        rank=8,
        order=after_reversed,
        refuses=unless_person,
    ),
)
