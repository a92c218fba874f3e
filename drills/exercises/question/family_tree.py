"""A family tree of one chain of relatives, in letters: roles only, no names.

Each generation has its line, the older above. A way up or down is a corner, a way to a brother, a
sister, a husband or a wife a line; a question mark stands behind the one who is meant.

    +- father -- sister ?
    me
"""

from __future__ import annotations

from drills.language.kinship import Step, Terms, steps_of

ME = "me"
MOST_LINES = 6
MOST_COLUMNS = 40

_LINK = " \N{BOX DRAWINGS LIGHT HORIZONTAL}\N{BOX DRAWINGS LIGHT HORIZONTAL} "
_UP = "\N{BOX DRAWINGS LIGHT DOWN AND RIGHT}\N{BOX DRAWINGS LIGHT HORIZONTAL} "
_DOWN = "\N{BOX DRAWINGS LIGHT UP AND RIGHT}\N{BOX DRAWINGS LIGHT HORIZONTAL} "
_ASKED = " ?"
_RISES = {Step.PARENT: 1, Step.SIBLING: 0, Step.CHILD: -1, Step.SPOUSE: 0}


def family_tree(terms: Terms) -> tuple[str, ...]:
    """The lines of the tree, the oldest generation first.

    terms: the nearest to the one who speaks first, each told by one word however far it is.
    """
    rows: dict[int, str] = {0: ME}
    level, start = 0, 0
    for number, term in enumerate(terms):
        word = term + (_ASKED if number == len(terms) - 1 else "")
        rise = sum(_RISES[step] for step in steps_of(term))
        if rise == 0:
            start = len(rows[level]) + len(_LINK)
            rows[level] += _LINK + word
            continue
        # Two generations at once are one corner: lines count what is told, not years.
        level += 1 if rise > 0 else -1
        row = rows.get(level, "")
        corner = max(start, len(row) + 2 if row else 0)
        link = _UP if rise > 0 else _DOWN
        rows[level] = row.ljust(corner) + link + word
        start = corner + len(link)
    return tuple(rows[each] for each in sorted(rows, reverse=True))
