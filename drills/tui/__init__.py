"""Screens. The only room that knows Textual: one `.py` and one `.tcss` a screen, widgets beside.

May import practice and whatever practice may; never catalogue, ledger or speech, whose work it is
handed in a `Home`. Decides nothing about marking. Importing this room loads Textual, so wiring
imports it late. Tested in tests/tui.
"""

from drills.tui.app import PracticeApp
from drills.tui.running import run

__all__ = ["PracticeApp", "run"]
