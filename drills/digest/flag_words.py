"""Flags in plain words."""

from __future__ import annotations

from types import MappingProxyType

from drills.digest.flag_values import Alert, AlertKind
from drills.digest.plain import days, inert, span

NOTED = MappingProxyType(
    {
        AlertKind.NEW_SIGNS: "New signs that may be a stroke were noted",
        AlertKind.UNWELL: "A session ended because of feeling unwell",
        AlertKind.PAIN: "Pain was noted",
        AlertKind.HINDERED: "Pain, weakness or reach hindered a gesture",
        AlertKind.TIRED: "Tiredness rose a lot, or ended a session",
        AlertKind.HELPED: "Somebody helped with answers",
    }
)
FOUND = MappingProxyType(
    {
        AlertKind.SUDDEN_DROP: "Sudden drop",
        AlertKind.ADHERENCE: "Fewer than the sessions asked for",
        AlertKind.DECLINE: "Worse towards the end of sessions",
        AlertKind.BELOW_CHANCE: "Below guessing",
        AlertKind.SIDE: "One side of the picture",
        AlertKind.PLACE: "Answers go by the place of the option",
        AlertKind.YES: "Answers go by yes or no",
        AlertKind.PERSEVERATION: "Earlier answers come again",
        AlertKind.CUES: "Help does not fade",
        AlertKind.NO_RISE: "No rise",
        AlertKind.CEILING: "Known",
        AlertKind.UNTRUSTED: "Scores of gestures at home are not yet to be trusted",
        AlertKind.CLOCK: "The clock of the computer went back",
        AlertKind.DATA: "The records tell of trouble",
    }
)


def alert(of: Alert) -> str:
    """What was noted and when; else what it is about and the numbers."""
    if of.kind is AlertKind.NO_PRACTICE:
        return f"No practice for {of.count} days: {span(of.days[0], of.days[-1])}."
    if of.kind in NOTED:
        times = "" if of.count == 1 else f", {of.count} times"
        return f"{NOTED[of.kind]}: {days(of.days)}{times}."
    about = f", {inert(of.label)}" if of.label else ""
    return f"{FOUND[of.kind]}{about}. {inert(of.evidence)}"


def rule(of: Alert) -> str:
    """Which rule fired; empty where what was noted says it already."""
    return "" if of.kind in NOTED or not of.rule else f"Rule: {inert(of.rule)}."
