"""Language: a meaning becomes a sentence by steps; nothing fills in a finished string.

Roles (roles.py) -> order (one module a family: voices, clefts, places, states, questions) ->
agreement -> inflection (morphology.py) -> spelling. constructions.py lists what can be asked for.
May import core only; pure: no disk, clock or chance.   tests/language.
"""

from drills.language.construction import Construction
from drills.language.constructions import CONSTRUCTIONS, realise
from drills.language.questions import answer_name, ask_about, ask_doer, ask_done_to
from drills.language.roles import Role

__all__ = [
    "CONSTRUCTIONS",
    "Construction",
    "Role",
    "answer_name",
    "ask_about",
    "ask_doer",
    "ask_done_to",
    "realise",
]
