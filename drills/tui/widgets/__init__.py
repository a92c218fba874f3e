"""Parts of screens: they show what they are given and post what was done to them.

A widget's few rules are its `DEFAULT_CSS`. Strings from content are never read as markup.
Tested in tests/tui.
"""
