"""Counts by hand: the definition has no published worked example. Random checks of the expected
share and its p against numpy and scipy.
"""

from __future__ import annotations

from random import Random

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import poisson_binom

from drills.core.gestures import Tick
from drills.measures.accuracy import Share
from drills.measures.missing import Lack, Missing
from drills.measures.perseveration import (
    Perseveration,
    Response,
    old_acts,
    perseveration,
    responses_of,
)
from tests.measures.draws import draws
from tests.measures.made import WAVE, asked, trial

WORDS = ("is", "are", "was", "were")


def response(chosen: str, wanted: str) -> Response:
    return Response(
        chosen=chosen, right=chosen == wanted, wrong=tuple(w for w in WORDS if w != wanted)
    )


sessions = st.lists(
    st.lists(
        st.builds(response, st.sampled_from(WORDS), st.sampled_from(WORDS)),
        max_size=15,
    ),
    max_size=4,
)


def test_errors_that_repeat_one_of_the_last_three_responses():
    found = perseveration(
        [
            [
                response("is", "is"),
                response("is", "are"),  # repeats
                response("was", "are"),  # new
                response("were", "were"),
                response("are", "are"),
                response("is", "were"),  # four back: not counted
                response("were", "was"),  # repeats
            ]
        ],
        fewest=4,
    )
    assert isinstance(found, Perseveration)
    assert found.share == Share(right=2, of=4)
    # Taken: is 3, are 1, was 1, were 2. What was recent at each error, of the wrong ones on offer:
    # is of {is, was, were}; is of the same; {was, were, are} bar were of {is, are, was}; and
    # {were, are, is} of {is, are, were}.
    assert found.expected == pytest.approx((3 / 6 + 3 / 6 + 2 / 5 + 6 / 6) / 4)
    assert found.p == pytest.approx(poisson_binom.sf(1, [3 / 6, 3 / 6, 2 / 5, 1]))


def test_a_new_session_has_nothing_to_repeat():
    one = [response("is", "is")]
    other = [response("is", "are")]
    found = perseveration([one, other], fewest=1)
    assert isinstance(found, Perseveration)
    assert (found.share, found.expected, found.p) == (Share(right=0, of=1), 0, 1)


def test_a_word_that_is_always_taken_is_a_liking_and_no_more_repeats_than_expected():
    found = perseveration([[response("is", wanted) for wanted in ("are", "was", "were") * 5]])
    assert isinstance(found, Perseveration)
    assert found.share == Share(right=14, of=15)
    assert found.expected == pytest.approx(14 / 15)
    assert found.p == pytest.approx(1)


def test_too_few_errors_say_nothing():
    assert perseveration([]) == Missing(lack=Lack.ERRORS, have=0, need=5)
    four = [response("is", "are")] * 4 + [response("was", "was")] * 9
    assert perseveration([four]) == Missing(lack=Lack.ERRORS, have=4, need=5)
    with pytest.raises(ValueError, match="'on' was not among the wrong options"):
        Response(chosen="on", right=False, wrong=("is",))


def test_the_words_of_a_trial_and_no_pictures():
    of = asked(options=4)
    (found,) = responses_of([trial(2, of=of), trial(skipped=True), trial(3, target=WAVE)])
    assert (found.chosen, found.right) == ("wrong verb", False)
    assert found.wrong == ("wrong reversal", "wrong verb", "wrong noun")


def test_old_acts_are_a_share_of_the_gestures_that_were_not_right():
    found = old_acts(
        [
            trial(3, target=WAVE),
            trial(0, target=WAVE, ticks=(Tick.OLD_ACT, Tick.GRIP)),
            trial(1, 3, target=WAVE, ticks=(Tick.GRIP,)),
            trial(1, target=WAVE),
            trial(0, target=WAVE, ticks=(Tick.BODY, Tick.OLD_ACT)),
            trial("wrong"),
        ]
    )
    assert found == Share(right=1, of=3)
    assert old_acts([]) == Share(right=0, of=0)


def test_a_thousand_sessions_agree_with_scipy():
    for source in draws():
        said = [
            response(source.choice(WORDS), source.choice(WORDS))
            for _ in range(source.randint(10, 60))
        ]
        found = perseveration([said], fewest=1)
        if isinstance(found, Missing):
            continue
        wrong = [place for place, one in enumerate(said) if not one.right]
        recent = [{one.chosen for one in said[max(0, place - 3) : place]} for place in wrong]
        taken = {word: sum(one.chosen == word for one in said) for word in WORDS}
        chances = [
            np.average(
                [option in before for option in said[place].wrong],
                weights=[taken[option] for option in said[place].wrong],
            )
            for place, before in zip(wrong, recent, strict=True)
        ]
        repeats = sum(
            said[place].chosen in before for place, before in zip(wrong, recent, strict=True)
        )
        assert found.share == Share(right=repeats, of=len(wrong))
        assert found.expected == pytest.approx(np.mean(chances))
        assert found.p == pytest.approx(
            poisson_binom.sf(repeats - 1, np.clip(chances, 0, 1)), abs=1e-9
        )


def test_who_takes_the_options_evenly_seldom_looks_perseverating():
    source = Random(7)
    found = [
        perseveration([[response(source.choice(WORDS), source.choice(WORDS)) for _ in range(60)]])
        for _ in range(400)
    ]
    low = sum(isinstance(one, Perseveration) and one.p <= 0.05 for one in found)
    # An exact test of counts errs on the side of saying nothing.
    assert low / len(found) <= 0.05


def test_who_says_the_last_word_again_is_found():
    source, found = Random(7), 0
    for _ in range(100):
        said: list[Response] = []
        for _ in range(60):
            wanted = source.choice(WORDS)
            chosen = source.choice(WORDS)
            if said and source.random() < 0.5:
                chosen = said[-1].chosen
            said.append(response(chosen, wanted))
        one = perseveration([said])
        found += isinstance(one, Perseveration) and one.p <= 0.05
    assert found >= 50


@given(sessions)
def test_shares_stay_within_their_bounds(made: list[list[Response]]):
    found = perseveration(made, fewest=1)
    errors = sum(not one.right for said in made for one in said)
    if isinstance(found, Missing):
        assert errors == 0
        return
    assert found.share.of == errors
    assert 0 <= found.share.right <= errors
    assert 0 <= found.expected <= 1
    assert 0 <= found.p <= 1
