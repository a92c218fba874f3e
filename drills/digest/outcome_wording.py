"""The words of outcomes by phase, the same in text and on the page."""

from __future__ import annotations

from drills.digest.figure_wording import missing, signed_points, two
from drills.digest.outcomes import Effect, OutcomeLine, Outcomes, Phase
from drills.digest.plain import day, kept, span
from drills.measures.accuracy import Share
from drills.measures.missing import Missing

EFFECTS = (
    "Gain: mean of the newest checks less that of the baseline. NAP: 0.5 no effect, 1 all later "
    "checks above all before. Tau-U: Tau less the rise of the baseline, over the pairs between "
    "phases. d: in standard deviations of the baseline; no benchmark is known for these tasks."
)


def phases(of: Outcomes) -> str:
    """`Baseline Fri 9 to Sun 11 Oct (3 checks), practice Mon 12 Oct to ...`."""
    told = [
        f"{each.phase.value} {kept(span(each.first, each.last))} "
        f"{kept(f'({_checks(each.checks)})')}"
        for each in of.phases
    ]
    joined = ", ".join(told)
    return f"{joined[:1].upper()}{joined[1:]}."


def _checks(count: int) -> str:
    return "1 check" if count == 1 else f"{count} checks"


def effect(of: Effect) -> str:
    """`practice, 5 checks against 3: gain +10 points (last 3), NAP 0.87, Tau 0.73, ...`."""
    head = f"{of.phase.value}, {_checks(of.points)} against {of.baseline}"
    if not of.points:
        return f"{of.phase.value}: no check yet"
    return f"{head}: {', '.join(_sizes(of))}"


def _sizes(of: Effect) -> list[str]:
    if isinstance(of.gain, Missing):
        return [f"not told: {missing(of.gain)}"]
    newest = "" if of.phase is Phase.MAINTENANCE else kept(f" (last {of.after})")
    told = [kept(f"gain {signed_points(of.gain)}") + newest]
    if isinstance(of.nap, Missing):
        return [*told, f"no more: {missing(of.nap)}"]
    told.append(kept(f"NAP {two(of.nap.value)}"))
    if not isinstance(of.tau, Missing):
        told.append(kept(f"Tau {two(of.tau)}"))
    if not isinstance(of.tau_u, Missing):
        told.append(kept(f"Tau-U {two(of.tau_u.value)}"))
    if isinstance(of.standardised, Missing):
        told.append(f"no d: {missing(of.standardised)}")
    else:
        told.append(kept(f"d {two(of.standardised.value)}"))
    return told


def _of(share: Share) -> str:
    return f"{share.right}/{share.of}"


def same_items(line: OutcomeLine) -> str:
    """`same items on Fri 9 Oct 3/20, newest 9/20: 7 gained, 1 lost`."""
    same = line.same_items
    if isinstance(same, Missing) or line.first_whole is None or line.last_whole is None:
        return "same items before and after: not checked after practice yet"
    told = (
        f"same items {kept(day(line.first_whole))} {_of(same.before)}, by "
        f"{kept(day(line.last_whole))} {_of(same.after)}: {same.gained} gained, {same.lost} lost"
    )
    if line.over_control is None or isinstance(line.over_control, Missing):
        return told
    return f"{told}; {signed_points(line.over_control.points)} beyond unrelated sentences"
