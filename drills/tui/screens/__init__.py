"""One question or one page a screen; each returns its answer and decides nothing else.

A screen is `name.py` with `name.tcss`, and every rule of the sheet starts with the screen's class.
Tested in tests/tui, the sheets in tests/tui/test_sheets.py.
"""
