"""Oracles: worked out with scipy; the random checks hold McNemar's test against statsmodels."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import chi2
from statsmodels.stats.contingency_tables import mcnemar as statsmodels_mcnemar

from drills.measures.accuracy import Share
from drills.measures.missing import Lack, Missing
from drills.measures.pairs import (
    PairedGain,
    answers_by_item,
    gain_over_control,
    mcnemar,
    mcnemar_z,
    paired_gain,
)
from tests.measures.draws import draws
from tests.measures.made import asked, trial

answers = st.dictionaries(st.sampled_from("abcdefghijklmnop"), st.booleans())


def test_eight_gained_against_one_lost():
    assert mcnemar(8, 1) == pytest.approx(0.0391, abs=5e-5)


def test_the_approval_table():
    # Agresti, Categorical Data Analysis: approval of a prime minister, 150 against 86 (from
    # memory); the figures were worked out anew with scipy.
    z = mcnemar_z(150, 86)
    assert z == pytest.approx(4.166, abs=5e-4)
    assert isinstance(z, float)
    assert z * z == pytest.approx(17.356, abs=5e-4)
    assert mcnemar(150, 86) == pytest.approx(3.716e-5, rel=5e-4)


def test_a_thousand_tables_agree_with_statsmodels():
    for source in draws():
        gained, lost = source.randint(0, 60), source.randint(0, 60)
        table = [[7, lost], [gained, 3]]
        assert mcnemar(gained, lost) == pytest.approx(
            statsmodels_mcnemar(table, exact=True).pvalue, abs=1e-12
        )
        if gained + lost:
            large = statsmodels_mcnemar(table, exact=False, correction=False)
            z = mcnemar_z(gained, lost)
            assert isinstance(z, float)
            assert z * z == pytest.approx(large.statistic)
            assert chi2.sf(z * z, 1) == pytest.approx(large.pvalue)


def test_where_nothing_changed_there_is_nothing_to_see():
    assert mcnemar(0, 0) == 1
    assert mcnemar_z(0, 0) == Missing(lack=Lack.TRIALS, have=0, need=1)
    with pytest.raises(ValueError, match="-1 gained and 2 lost cannot be"):
        mcnemar(-1, 2)


def test_only_items_asked_both_times_count():
    before = {"a": False, "b": False, "c": True, "d": True, "e": False, "x": True}
    after = {"a": True, "b": True, "c": True, "d": False, "e": True, "y": False}
    found = paired_gain(before, after)
    assert isinstance(found, PairedGain)
    assert (found.before, found.after) == (Share(right=2, of=5), Share(right=4, of=5))
    assert (found.gained, found.lost, found.points) == (3, 1, pytest.approx(0.4))
    assert found.p == mcnemar(3, 1)


def test_fewer_than_five_items_asked_twice_have_no_gain():
    few = paired_gain({"a": True, "b": False}, {"a": True, "c": False})
    assert few == Missing(lack=Lack.ITEMS, have=1, need=5)
    assert paired_gain({}, {}, fewest=0) == Missing(lack=Lack.ITEMS, have=0, need=1)


def test_the_first_answer_to_an_item_is_the_one_that_counts():
    one, other = asked(), asked(sentence="The baker is pushed.")
    trials = [
        trial(of=one, skipped=True),
        trial("wrong", "right", of=one),
        trial("right", of=one),
        trial("right", of=other),
    ]
    assert answers_by_item(trials) == {one.item_id: False, other.item_id: True}
    assert answers_by_item(trials, key=lambda each: each.asked.sentence) == {
        "The nurse was pushed by the baker.": False,
        "The baker is pushed.": True,
    }


def test_what_treated_items_gained_beyond_the_others():
    before = dict.fromkeys("abcdefgh", False)
    treated = paired_gain(before, {item: item < "g" for item in before})
    control = paired_gain(before, {item: item < "b" for item in before})
    assert isinstance(treated, PairedGain)
    assert isinstance(control, PairedGain)
    found = gain_over_control(treated, control)
    assert not isinstance(found, Missing)
    assert found.points == pytest.approx(6 / 8 - 1 / 8)
    assert (found.treated.p, found.control.p) == (mcnemar(6, 0), mcnemar(1, 0))
    few = paired_gain({}, {})
    assert gain_over_control(few, control) == gain_over_control(treated, few) == few


@given(st.integers(0, 200), st.integers(0, 200))
def test_gains_and_losses_weigh_alike(gained: int, lost: int):
    assert 0 < mcnemar(gained, lost) <= 1
    assert mcnemar(gained, lost) == pytest.approx(mcnemar(lost, gained))


@given(answers, answers)
def test_a_gain_turns_its_sign_when_time_runs_back(before, after):
    there, back = paired_gain(before, after, fewest=1), paired_gain(after, before, fewest=1)
    if isinstance(there, Missing) or isinstance(back, Missing):
        assert there == back
        return
    assert -1 <= there.points <= 1
    assert there.points == -back.points
    assert there.after.right - there.before.right == there.gained - there.lost
