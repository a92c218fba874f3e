"""Checks by phase, from records to the digest, against published examples and libraries."""

from __future__ import annotations

import csv
import json
from datetime import date, timedelta
from io import StringIO

import pytest
from scipy.stats import binomtest, kendalltau, theilslopes

from drills.core.items import ItemSet
from drills.digest import Digest, render
from drills.digest.outcomes import Effect, OutcomeLine, Phase, effect, phase_of
from drills.measures.missing import Lack, Missing
from drills.measures.pairs import GainOverControl, PairedGain
from drills.measures.phases import TauUForm
from tests.digest.invented import FIRST
from tests.digest.over_time import PROBED, made


def outcome(of: Digest, item_set: ItemSet = ItemSet.PROBE) -> OutcomeLine:
    assert of.checks is not None
    (line,) = [each for each in of.checks.outcomes.lines if each.item_set is item_set]
    return line


def in_practice(of: Digest) -> Effect:
    return outcome(of).effects[0]


def flat(of: Digest, form: str = "text") -> str:
    return " ".join(render(of, form).replace("\xa0", " ").split())


def test_the_nap_of_the_published_example_comes_out_of_records() -> None:
    # Parker and Vannest 2009, Behavior Therapy 40:357: 110 pairs, 104 above, 4 ties, NAP .9636.
    digest = made([4, 3, 4, 3, 4, 7, 5, 2, 3, 2], [5, 9, 7, 9, 7, 5, 9, 11, 11, 10, 9])
    found = in_practice(digest)
    assert (found.phase, found.baseline, found.points) == (Phase.PRACTICE, 10, 11)
    assert not isinstance(found.nap, Missing)
    assert found.nap.value == pytest.approx(0.9636, abs=5e-5)
    assert found.tau == pytest.approx(2 * found.nap.value - 1)
    # The clinical brief's own working of the same data: 1.0182, past 1 in the published form.
    assert not isinstance(found.tau_u, Missing)
    assert found.tau_u.value == pytest.approx(1.0182, abs=5e-5)
    assert found.tau_u.form is TauUForm.PUBLISHED
    assert "practice, 11 checks against 10: gain +" in flat(digest)
    assert "(last 3), NAP 0.96, Tau 0.93, Tau-U 1.02, d " in flat(digest)
    told = json.loads(render(digest, "json"))["checks"]["outcomes"]["lines"][0]["effects"][0]
    assert told["nap"]["value"] == found.nap.value
    (row,) = [
        row
        for row in csv.DictReader(StringIO(render(digest, "csv")))
        if row["row"] == "outcome of a phase"
    ]
    assert row["nap"] == "0.9636"
    assert row["phase"] == "practice"


def test_tau_and_tau_u_of_the_published_example_come_out_of_records() -> None:
    # Parker, Vannest and Davis 2011, Behavior Modification 35:303: Tau .80, Tau-U .55.
    found = in_practice(made([3, 3, 4, 5], [4, 5, 6, 7, 7]))
    assert found.tau == pytest.approx(0.80)
    assert not isinstance(found.tau_u, Missing)
    assert found.tau_u.value == pytest.approx(0.55)


def test_the_gain_in_standard_deviations_is_of_the_newest_three_and_has_no_label() -> None:
    # The clinical brief's own example: baseline 2, 4, 3, after 9, 10, 9: 6.3333.
    digest = made([2, 4, 3], [5, 6, 9, 10, 9])
    found = in_practice(digest)
    assert (found.points, found.after) == (5, 3)
    assert not isinstance(found.standardised, Missing)
    assert found.standardised.value == pytest.approx(6.3333, abs=5e-5)
    assert found.gain == pytest.approx((28 / 3 - 3) / 20)
    text = flat(digest)
    assert "d 6.33" in text
    for label in ("small", "medium", "large"):
        assert f"d 6.33 ({label}" not in text


def test_a_baseline_without_spread_has_a_gain_and_nap_and_says_why_there_is_no_d() -> None:
    digest = made([3, 3, 3], [5, 6, 7])
    found = in_practice(digest)
    assert found.standardised == Missing(lack=Lack.SPREAD)
    assert not isinstance(found.nap, Missing)
    assert "no d: every value is the same" in flat(digest)


@pytest.mark.parametrize("count", [1, 2])
def test_a_short_baseline_is_told_in_words_and_gives_no_effect_size(count: int) -> None:
    digest = made([2, 4][:count], [5, 6, 7])
    found = in_practice(digest)
    for value in (found.nap, found.tau, found.tau_u, found.standardised):
        assert value == Missing(lack=Lack.BASELINE, have=count, need=3)
    there = "there is 1" if count == 1 else "there are 2"
    assert f"3 baseline points are needed; {there}" in flat(digest)
    told = json.loads(render(digest, "json"))["checks"]["outcomes"]["lines"][0]["effects"][0]
    assert told["nap"]["missing"] == f"3 baseline points are needed; {there}"


def test_phases_have_their_days_and_maintenance_its_own_effect() -> None:
    digest = made([2, 4, 3], [5, 7, 8, 11], [12, 11, 10])
    assert digest.checks is not None
    spans = digest.checks.outcomes.phases
    practice_began = FIRST - timedelta(weeks=3)
    assert [(each.phase, each.first, each.checks) for each in spans] == [
        (Phase.BASELINE, practice_began - timedelta(days=3), 3),
        (Phase.PRACTICE, practice_began, 4),
        (Phase.MAINTENANCE, FIRST + timedelta(days=1), 3),
    ]
    assert spans[0].last == practice_began - timedelta(days=1)
    assert spans[1].last == FIRST
    after = outcome(digest).effects[1]
    assert (after.phase, after.points, after.after) == (Phase.MAINTENANCE, 3, 3)
    assert after.gain == pytest.approx((11 - 3) / 20)
    phases = [point.phase for point in digest.checks.lines[0].points]
    assert phases == [Phase.BASELINE] * 3 + [Phase.PRACTICE] * 4 + [Phase.MAINTENANCE] * 3


def test_a_pause_after_which_practice_goes_on_is_no_maintenance() -> None:
    days = [date(2026, 10, 1), date(2026, 10, 2), date(2026, 11, 2)]
    settings = PROBED.probes
    assert phase_of(date(2026, 10, 1), days, settings) is Phase.BASELINE
    assert phase_of(date(2026, 10, 20), days, settings) is Phase.PRACTICE
    assert phase_of(date(2026, 11, 8), days, settings) is Phase.PRACTICE
    assert phase_of(date(2026, 11, 9), days, settings) is Phase.MAINTENANCE


def test_the_same_items_first_and_last_by_the_exact_test_of_the_changed() -> None:
    # Items are right from the first on: 3 right, then 11, so 8 gained and none lost.
    digest = made([3, 2, 4], [5, 7, 11], control=9)
    line = outcome(digest)
    assert isinstance(line.same_items, PairedGain)
    assert (line.same_items.gained, line.same_items.lost) == (8, 0)
    # scipy's exact binomial is McNemar's exact test of the pairs that changed.
    assert line.same_items.p == pytest.approx(binomtest(8, 8).pvalue)
    assert isinstance(line.over_control, GainOverControl)
    assert line.over_control.points == pytest.approx(8 / 20)
    assert "8 gained, 0 lost; +40 points beyond unrelated sentences" in flat(digest)
    assert outcome(digest, ItemSet.CONTROL).over_control is None


def test_no_p_reaches_text_or_page() -> None:
    digest = made([3, 2, 4], [5, 7, 11], control=9)
    for form in ("text", "html"):
        assert "p =" not in flat(digest, form)
        assert "0.0078" not in flat(digest, form)


def test_no_check_after_practice_says_so() -> None:
    assert "not checked after practice yet" in flat(made([3, 2, 4], []))


def test_an_effect_without_points_is_missing_and_not_nothing() -> None:
    found = effect(Phase.PRACTICE, [0.1, 0.2, 0.15], [])
    assert found.gain == Missing(lack=Lack.POINTS, have=0, need=1)
    assert found.nap == Missing(lack=Lack.POINTS, have=0, need=3)


def test_trends_over_sessions_agree_with_scipy() -> None:
    digest = made([2, 3, 4], [5, 5, 6, 6, 7, 7, 8, 8])
    (line,) = digest.trends
    scores = [min(6, number) / 6 for number in range(8)]
    assert (line.sessions, line.trials) == (8, 48)
    assert not isinstance(line.trend, Missing)
    assert line.trend.tau == pytest.approx(kendalltau(range(8), scores).statistic)
    assert line.trend.slope == pytest.approx(theilslopes(scores, range(8)).slope)
