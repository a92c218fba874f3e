"""The screens behind the first one, loaded when the first of them is opened.

They bring the drawing, the exercises and the digest with them; the first screen must come soon
and needs none of it.
"""

from drills.digest import render
from drills.tui.screens.card import CardScreen
from drills.tui.screens.guide import GuideScreen
from drills.tui.screens.people import PeopleScreen
from drills.tui.screens.sitting import SittingScreen
from drills.tui.screens.therapist import ASKED, IS_THERAPIST, room_screen
from drills.tui.screens.trouble import made_or_told
from drills.tui.screens.week import WeekScreen

__all__ = [
    "ASKED",
    "IS_THERAPIST",
    "CardScreen",
    "GuideScreen",
    "PeopleScreen",
    "SittingScreen",
    "WeekScreen",
    "made_or_told",
    "render",
    "room_screen",
]
