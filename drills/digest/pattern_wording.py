"""The words of how answers were given and of raters' agreement, for text and page."""

from __future__ import annotations

from drills.digest.figure_wording import missing, points_span, two
from drills.digest.patterns import Patterns, Places
from drills.digest.raters import Agreement
from drills.digest.wording import number, share
from drills.measures.agreement import kappa_band
from drills.measures.comparing import Difference
from drills.measures.missing import Missing
from drills.measures.perseveration import BACK

TITLE = "Within sessions, sides and repeats"
PLACES = ("first", "second", "third", "fourth")
FOOT = "Right alone, in practice. After each difference its 95% interval, in points."


def rows(patterns: Patterns) -> list[tuple[str, str]]:
    """(what, how it was), each with its n."""
    return [
        ("Start and end of blocks", decline(patterns)),
        *((f"Places, {each.options} options", places(each)) for each in patterns.places),
        ("Side of the doer", sides(patterns)),
        ("Earlier answers again", repeats(patterns)),
        ("Earlier gestures again", old_acts(patterns)),
    ]


def decline(patterns: Patterns) -> str:
    """`first thirds 20/30 (67%), last thirds 15/30 (50%): -17 points (-39 to 8)`."""
    found = patterns.decline
    if isinstance(found, Missing):
        return f"not told: {missing(found)}"
    ratio = found.latency_ratio
    time = (
        f"time to answer not told: {missing(ratio)}"
        if isinstance(ratio, Missing)
        else f"answers took {two(ratio)} times as long"
    )
    # From first to last, so that worse is below 0 as everywhere else.
    moved = points_span(-found.drop, -found.interval.high, -found.interval.low)
    return f"first thirds {share(found.first)}, last thirds {share(found.last)}: {moved}; {time}"


def places(of: Places) -> str:
    """`first 12 of 40, second 28 of 40: second preferred`."""
    bias = of.bias
    if isinstance(bias, Missing):
        return f"not told: {missing(bias)}"
    chosen = ", ".join(f"{name} {count}" for name, count in zip(PLACES, bias.chosen, strict=False))
    liked = of.preferred
    told = "none preferred" if liked is None else f"{PLACES[liked]} preferred, beyond chance"
    return f"chosen {chosen} of {bias.of}: {told}"


def sides(patterns: Patterns) -> str:
    """`left 10/20 (50%), right 15/20 (75%): -25 points (-49 to 5); left out: 0/20, 1/20`."""
    found = patterns.sides
    left_out = (
        f"no answer: left {share(found.omitted_left)}, right {share(found.omitted_right)}"
        if found.omitted_left.right or found.omitted_right.right
        else "none left without an answer"
    )
    accuracy = found.accuracy
    if isinstance(accuracy, Missing):
        return f"not told: {missing(accuracy)}"
    return (
        f"left {share(accuracy.one)}, right {share(accuracy.other)}: {difference(accuracy)}; "
        f"{left_out}"
    )


def difference(of: Difference) -> str:
    return points_span(of.points, of.interval.low, of.interval.high)


def repeats(patterns: Patterns) -> str:
    """`6/20 (30%) of wrong words were one of the last 3 answers; by chance 2.1: more than that`."""
    found = patterns.perseveration
    if isinstance(found, Missing):
        return f"not told: {missing(found)}"
    beyond = "more than chance" if patterns.repeats else "no more than chance"
    by_chance = number(found.expected * found.share.of)
    return (
        f"{share(found.share)} of wrong words were one of the last {BACK} answers; by chance "
        f"{by_chance} would be: {beyond}"
    )


def old_acts(patterns: Patterns) -> str:
    found = patterns.old_acts
    return f"{share(found)} of gestures not right" if found.of else "no gesture was not right"


def agreement(of: Agreement) -> list[str]:
    """Sentences on scores and ticks, each with its n."""
    scores = of.scores
    told = [f"Caregiver and therapist scored the same {share(scores.exact)} tries"]
    if scores.lenience is not None:
        by = abs(scores.lenience)
        who = "caregiver" if scores.lenience > 0 else "therapist"
        told[0] += f"; the {who} scored {two(by)} higher on average" if by >= 0.005 else ""
    kappas = (("linear", scores.linear), ("quadratic", scores.quadratic), ("plain", scores.kappa))
    if isinstance(scores.linear, Missing):
        told.append(f"Kappa not told: {missing(scores.linear)}")
    else:
        each = [f"{name} {two(value)}" for name, value in kappas if not isinstance(value, Missing)]
        told.append(f"Kappa {', '.join(each)} (linear: {kappa_band(scores.linear)})")
    if of.ticks:
        ticks = ", ".join(f"{each.tick} {each.exact.right}/{each.exact.of}" for each in of.ticks)
        told.append(f"Ticks on which both agree: {ticks}")
    if of.without_first:
        told.append(f"{of.without_first} second scores have no first one")
    return [f"{each}." for each in told]
