"""Schedule: when a target is due again, and what today's session holds.

Holds spacing (days), horizon (how far back matters), sitting (which targets, how many) and
sequence (in which order). May import core and measures. Pure: today and chance are arguments.
Tested by tests/schedule.
"""

from drills.schedule.horizon import days_that_decide
from drills.schedule.sitting import BlockDeal, deal, fit
from drills.schedule.spacing import standing, standings

__all__ = ["BlockDeal", "days_that_decide", "deal", "fit", "standing", "standings"]
