"""Language: a meaning becomes a sentence by steps; nothing fills in a finished string.

Roles (roles.py) -> order (one module a family: voices, clefts, relatives, wonderings, reports,
transfers, orders, places, states, kin_phrases; questions and kin_questions for what is asked of a
told meaning) -> agreement -> inflection (morphology.py) -> spelling. act_table and other_table list
the constructions; statements.py says facts of the world; kinship.py answers chains of relatives;
padding.py brings sentences to one length; pool.py holds all that can be said, dealing.py deals it
in even shares. told.py says clauses of small words (clauses, verb_groups, small_words, times), each
word in its slot, for sentences with a gap.
May import core only; pure: no disk, clock or chance of its own.   tests/language.
"""

from drills.language.construction import Construction
from drills.language.constructions import CONSTRUCTIONS, realise
from drills.language.dealing import count_with_adjuncts, deal, exchanged
from drills.language.kin_questions import (
    answer_relation,
    answer_sex,
    ask_relation,
    ask_same,
    ask_sex,
    ask_sex_of_this,
)
from drills.language.padding import adjunct_choices, lengths, padded, placed
from drills.language.plain import restate, restated
from drills.language.plausibility import as_drawn, plausibility
from drills.language.pool import meanings_of
from drills.language.questions import (
    answer_name,
    answer_owner,
    ask_about,
    ask_doer,
    ask_done_to,
    ask_first,
    ask_last,
    ask_less,
    ask_more,
    ask_owner,
    ask_what_happened,
    ask_whether,
    holds,
)
from drills.language.roles import Role
from drills.language.statements import EASY, HARD, restate_fact, state_fact
from drills.language.unsaid import tell_doer

__all__ = [
    "CONSTRUCTIONS",
    "EASY",
    "HARD",
    "Construction",
    "Role",
    "adjunct_choices",
    "answer_name",
    "answer_owner",
    "answer_relation",
    "answer_sex",
    "as_drawn",
    "ask_about",
    "ask_doer",
    "ask_done_to",
    "ask_first",
    "ask_last",
    "ask_less",
    "ask_more",
    "ask_owner",
    "ask_relation",
    "ask_same",
    "ask_sex",
    "ask_sex_of_this",
    "ask_what_happened",
    "ask_whether",
    "count_with_adjuncts",
    "deal",
    "exchanged",
    "holds",
    "lengths",
    "meanings_of",
    "padded",
    "placed",
    "plausibility",
    "realise",
    "restate",
    "restate_fact",
    "restated",
    "state_fact",
    "tell_doer",
]
