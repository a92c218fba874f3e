"""Suggestions and decisions in the text form of the digest."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import groupby

from drills.digest.folding import fold
from drills.digest.plain import inert
from drills.digest.suggestion_wording import FOOT, NONE, decision, suggestion_rows
from drills.digest.values import Digest


def suggestions(digest: Digest) -> Iterator[str]:
    """Numbered as `drills plan answer` takes them; the rule once for those that share it."""
    if not digest.suggestions:
        yield from fold(NONE)
    flagged = {inert(alert.evidence) for alert in digest.alerts}
    for rule, rows in groupby(suggestion_rows(digest.suggestions), key=lambda row: row.rule):
        alike = list(rows)
        for row in alike:
            # A flag has said it already, with its rule.
            evidence = "" if row.evidence in flagged else f" {row.evidence}"
            change = f" Change: {row.change}." if row.change else ""
            yield from fold(f"{row.number}. {row.says}{evidence}{change}")
        if any(row.evidence not in flagged for row in alike):
            yield from fold(f"Rule: {rule}", indent=4)
    if digest.suggestions:
        yield from fold(FOOT)
    if digest.decisions:
        yield "  Decided in these days:"
        for each in digest.decisions:
            yield from fold(decision(each))
