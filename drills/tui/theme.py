"""Our own colours: calm, dark, and far enough apart for tired eyes.

Every colour of text on `GROUND` or `CARD` has a contrast of at least 7:1 (WCAG 2.2, 1.4.6); the
tests compute it.
"""

from __future__ import annotations

from textual.theme import Theme

GROUND = "#12161c"
CARD = "#1c222b"
INK = "#f4f1e8"
QUIET = "#b9c2cc"
MARKED = "#ffdf87"
TROUBLE = "#ffc4a8"
LINE = "#6f7b88"

CALM = Theme(
    name="calm",
    primary=MARKED,
    foreground=INK,
    background=GROUND,
    surface=GROUND,
    panel=CARD,
    boost=GROUND,
    warning=TROUBLE,
    error=TROUBLE,
    success=MARKED,
    accent=MARKED,
    dark=True,
    text_alpha=1.0,
    variables={
        "ground": GROUND,
        "card": CARD,
        "ink": INK,
        "quiet": QUIET,
        "marked": MARKED,
        "trouble": TROUBLE,
        "line": LINE,
        "scrollbar": LINE,
        "scrollbar-background": CARD,
    },
)
