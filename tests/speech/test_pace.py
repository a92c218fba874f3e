from __future__ import annotations

from drills.speech.pace import pace_for


def test_a_pace_within_the_plan_is_one_the_voice_can_be_set_to() -> None:
    for words_per_minute in range(90, 161):
        pace = pace_for(words_per_minute)
        assert 80 <= pace.rate <= 200
        assert 0 <= pace.word_gap <= 10


def test_faster_is_never_set_slower() -> None:
    paces = [pace_for(words_per_minute) for words_per_minute in range(60, 240)]
    below = [pace for pace in paces if pace.word_gap]
    above = paces[len(below) :]
    assert all(pace.word_gap == 0 for pace in above)
    assert [pace.word_gap for pace in below] == sorted(
        (pace.word_gap for pace in below), reverse=True
    )
    assert [pace.rate for pace in above] == sorted(pace.rate for pace in above)
