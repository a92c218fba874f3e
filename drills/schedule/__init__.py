"""Schedule: when a target is due again, what today's session holds, when to move on.

Holds spacing (days), horizon (how far back matters), sitting (which targets, how many), sequence
(in which order) and checks (when one is due). May import core and measures. Pure: today and chance
are arguments. Tested by tests/schedule.
"""

from typing import TYPE_CHECKING

from drills.core.late import late

if TYPE_CHECKING:
    from drills.schedule.horizon import days_that_decide, history_begins
    from drills.schedule.sitting import BlockDeal, deal, fit
    from drills.schedule.spacing import standing, standings

__all__ = [
    "BlockDeal",
    "days_that_decide",
    "deal",
    "fit",
    "history_begins",
    "standing",
    "standings",
]

# The first screen asks only whether a check is due, and must come soon.
__getattr__ = late(
    __name__,
    {
        "BlockDeal": "sitting",
        "days_that_decide": "horizon",
        "deal": "sitting",
        "fit": "sitting",
        "history_begins": "horizon",
        "standing": "spacing",
        "standings": "spacing",
    },
)
