"""Saying one thing after another."""

from __future__ import annotations

from drills.core.plans import SpeechSettings
from drills.core.utterances import Utterance
from drills.tui.speaker import Line, Speaker
from tests.edges import QuietVoice


class Talking(QuietVoice):
    def __init__(self, state: str = "ready") -> None:
        super().__init__(state)
        self.speaking = False

    def say(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        super().say(utterance, words_per_minute=words_per_minute, pause_ms=pause_ms)
        self.speaking = True

    def is_speaking(self) -> bool:
        return self.speaking

    def stop(self) -> None:
        self.speaking = False


def line(text: str) -> Line:
    return Line(utterance=Utterance(phrases=(text,)))


def test_the_second_line_waits_for_the_first() -> None:
    voice, ended = Talking(), []
    speaker = Speaker(voice, SpeechSettings())
    speaker.say((line("one"), line("two")), then=lambda: ended.append(True))
    speaker.tick()
    assert voice.said == ["one"]
    voice.speaking = False
    speaker.tick()
    assert voice.said == ["one", "two"]
    assert not ended
    voice.speaking = False
    speaker.tick()
    speaker.tick()
    assert ended == [True]


def test_what_was_stopped_is_not_followed_up() -> None:
    voice, ended = Talking(), []
    speaker = Speaker(voice, SpeechSettings())
    speaker.say((line("one"), line("two")), then=lambda: ended.append(True))
    speaker.stop()
    speaker.tick()
    assert voice.said == ["one"]
    assert not ended
    assert not voice.speaking


def test_a_voice_that_is_starting_is_handed_what_is_to_be_said() -> None:
    voice, ended = Talking("starting"), []
    speaker = Speaker(voice, SpeechSettings())
    speaker.say((line("one"),), then=lambda: ended.append(True))
    speaker.tick()
    assert voice.said == ["one"]
    assert not ended


def test_without_a_voice_what_follows_comes_at_once() -> None:
    for voice, settings in (
        (Talking("off"), SpeechSettings()),
        (Talking(), SpeechSettings(read_aloud=False)),
    ):
        ended: list[bool] = []
        Speaker(voice, settings).say((line("one"),), then=lambda: ended.append(True))  # noqa: B023
        assert ended == [True]
        assert voice.said == []
