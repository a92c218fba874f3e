"""One trial on screen: keys, help, time, pictures, voice."""

from __future__ import annotations

import asyncio
from dataclasses import replace

import pytest

from drills.core.cells import Cells
from drills.core.items import CueKind, Kind
from drills.core.material import Material
from drills.core.meanings import Scene
from drills.core.plans import CueDirection, CueSettings, Layout, Plan, ShowText, SittingSettings
from drills.core.records import latest_trials
from drills.core.utterances import Utterance
from drills.tui.app import VOICE_SECONDS
from drills.tui.gallery import pictures
from drills.tui.letters import lettered
from drills.tui.screens.asking import AskScreen
from drills.tui.screens.trial import TrialScreen, scenes_of
from drills.tui.widgets.options import OptionBox
from drills.tui.widgets.picture import Picture
from tests.edges import QuietVoice
from tests.tui.player import CHECK_IN, Player, plan_of, playing

PICTURES = plan_of(Kind.MATCH, "full-passive", trials=3)
FOUR = plan_of(Kind.MATCH, "full-passive", options=4)
WORDS = plan_of(Kind.CLOZE, "C3")


def asking(player: Player) -> AskScreen:
    assert isinstance(player.app.screen, AskScreen)
    return player.app.screen


async def test_a_second_press_too_soon_is_no_answer(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        await player.answer(right=False)
        await player.until_text("Not this one.")
        for key in ("1", "2"):
            await player.press(key, seconds=0.15)
        await player.settle()
        (trial,) = latest_trials(player.entries)
        assert len(trial.attempts) == 1


async def test_a_key_held_down_answers_once(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        wrong = str(2 - (player.ask.item.answer or 0))
        await player.press(wrong)
        await player.press(wrong, seconds=0.5)
        for _ in range(30):
            await player.press(wrong, seconds=0.033)
        await player.settle()
        (trial,) = latest_trials(player.entries)
        assert len(trial.attempts) == 1


async def test_an_option_taken_away_is_blank_and_cannot_be_chosen(material: Material) -> None:
    async with playing(material, plan=FOUR) as player:
        await player.begin()
        while not player.ask.removed:
            await player.press("h")
        (gone,) = player.ask.removed
        box = list(player.app.screen.query(OptionBox))[gone]
        assert not box.visible
        await player.press(str(gone + 1))
        await player.settle()
        assert latest_trials(player.entries) == ()
        assert not asking(player).is_over


async def test_help_to_the_end_leaves_only_the_answer(material: Material) -> None:
    async with playing(material, plan=FOUR) as player:
        await player.begin()
        for _ in player.ask.item.cues:
            await player.press("h")
        answer = player.ask.item.answer
        assert answer is not None
        await player.until_text(f"Now press {answer + 1}.")
        shown = [box.visible for box in player.app.screen.query(OptionBox)]
        assert shown == [index == answer for index in range(4)]
        await player.press(str(answer + 1))
        await player.until_text("This is the one.")
        (trial,) = latest_trials(player.entries)
        assert not trial.aided_right


async def test_the_right_option_is_marked_by_a_frame_and_a_word(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        assert "This one" not in player.text
        await player.answer(right=True)
        answer = player.ask.item.answer
        await player.until_text(f"━ {(answer or 0) + 1}  This one ━")


async def test_going_on_waits_for_the_gap_and_a_space_before_it_is_remembered(
    material: Material,
) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        first = player.app.screen
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        await player.press("space")
        await player.until_text("Next one soon.")
        assert "go on" not in player.text
        assert player.app.screen is first
        player.clock.wait(3.5)
        await player.until(lambda: player.app.screen is not first, "the next trial")


async def test_a_pause_in_the_gap_stays_until_it_is_ended(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        first = player.app.screen
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        await player.press("space", "p")
        await player.until_text("Pause.")
        player.clock.wait(10)
        await player.settle()
        await asyncio.sleep(0.3)  # several ticks of the gap's timer
        assert "Pause." in player.text
        await player.press("1")
        await player.until(lambda: first not in player.app.screen_stack, "the next trial")
        await player.until_asked()
        assert player.ask.number == 2


async def test_a_key_pressed_before_the_pictures_are_there_is_no_answer(
    material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    drawn = asyncio.Event()

    async def paint(_: TrialScreen) -> None:
        await drawn.wait()

    monkeypatch.setattr(TrialScreen, "paint", paint)
    async with playing(material, plan=PICTURES) as player:
        await player.press("1")
        await player.answer_cards(*CHECK_IN)
        await player.until_screen("TrialScreen")
        await player.press("1", "2", "h", "s", "space")
        await player.settle()
        assert latest_trials(player.entries) == ()
        assert player.ask.cue is None
        assert "hear again" not in player.text
        drawn.set()
        await player.until_asked()
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].replays == 0


@pytest.mark.parametrize("over", ["p", "g", "e", "window"])
async def test_a_wait_that_something_came_over_is_not_measured(
    over: str, material: Material
) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        trial = player.app.screen
        if over == "window":
            await player.pilot.resize_terminal(60, 20)
            await player.until_screen("CoverScreen")
            await player.pilot.resize_terminal(80, 24)
        else:
            await player.press(over)
            await player.until(lambda: player.app.screen is not trial, "the page")
            await player.press("escape")
        await player.until(lambda: player.app.screen is trial, "the trial")
        await player.settle()
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        await player.go_on()
        await player.until_asked()
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        first, second = latest_trials(player.entries)
        assert first.attempts[0].latency_ms is None
        assert second.attempts[0].latency_ms is not None


async def test_leaving_one_out_does_not_spoil_the_wait_of_the_next(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        await player.press("p")
        await player.until_text("Leave this one out")
        await player.press("4")
        await player.until(lambda: len(latest_trials(player.entries)) == 1, "the skip")
        await player.until_asked()
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        assert latest_trials(player.entries)[1].attempts[0].latency_ms is not None


@pytest.mark.parametrize("where", ["trial", "card"])
async def test_every_rest_of_a_pause_ends_after_the_plans_seconds(
    where: str, material: Material
) -> None:
    plan = replace(PICTURES, sitting=SittingSettings(rest_seconds=1))
    async with playing(material, plan=plan) as player:
        if where == "trial":
            await player.begin()
        else:
            await player.press("1")
            await player.until_screen("CardScreen")
        await player.press("p")
        await player.until_text("Stop for today")
        await player.press("2")
        await player.until_text("Take your time.")
        await player.until_text("The rest is over.")


async def test_a_voice_that_is_starting_is_handed_the_first_cards_and_the_prompt(
    material: Material,
) -> None:
    voice = QuietVoice("starting")
    async with playing(material, plan=PICTURES, voice=voice) as player:
        await player.press("1")
        await player.until(
            lambda: voice.said != [] and voice.said[0].startswith("About "), "a card"
        )
        await player.answer_cards(*CHECK_IN)
        await player.until_asked()
        await player.until(lambda: voice.said[-1:] == [player.ask.item.spoken.text], "the prompt")


async def test_digits_after_the_end_of_a_trial_do_nothing(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        await player.answer(right=True)
        await player.press("1", "2", "h")
        await player.settle()
        (trial,) = latest_trials(player.entries)
        assert len(trial.attempts) == 1


async def test_leaving_one_out_is_a_skip_and_goes_on(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        first = player.app.screen
        await player.press("escape")
        await player.until_text("Leave this one out")
        await player.press("4")
        await player.until(
            lambda: isinstance(player.app.screen, AskScreen) and player.app.screen is not first,
            "the next trial",
        )
        (trial,) = latest_trials(player.entries)
        assert trial.skipped
        assert trial.attempts == ()


async def test_a_pause_and_a_rest_come_back_to_the_same_trial(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        await player.press("h")
        before = player.ask
        await player.press("p")
        await player.until_text("Rest")
        await player.press("2")
        await player.until_text("Take your time.")
        await player.press("1")
        await player.until_asked()
        assert player.ask == before
        await player.until_text("Listen again.")


async def test_a_window_made_small_and_large_again_loses_nothing(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        trial, ask = player.app.screen, player.ask
        await player.press("h")
        await player.pilot.resize_terminal(70, 20)
        await player.until_screen("CoverScreen")
        await player.until_text("Now it is 70 x 20.")
        await player.press("1")
        await player.pilot.resize_terminal(100, 30)
        await player.until(lambda: player.app.screen is trial, "the trial")
        assert player.ask.item == ask.item
        await player.until_text("Listen again.")
        assert latest_trials(player.entries) == ()
        await player.until(
            lambda: all(
                len(picture.still) == picture.size.height for picture in trial.query(Picture)
            ),
            "pictures of the new size",
        )


async def test_pictures_are_drawn_for_the_room_there_is(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        await player.until(lambda: not any(p.is_blank for p in player.app.screen.query(Picture)))
        for picture in player.app.screen.query(Picture):
            assert picture.size.width == 38
            assert picture.size.height >= 15
            assert {strip.cell_length for strip in picture.still} == {38}


async def test_the_mouse_chooses_as_well(material: Material) -> None:
    async with playing(material, plan=WORDS) as player:
        await player.begin()
        player.clock.wait(1)
        box = list(player.app.screen.query(OptionBox))[player.ask.item.answer or 0]
        await player.pilot.click(box)
        await player.until_text("Yes.")


async def test_the_bottom_line_can_be_clicked(material: Material) -> None:
    async with playing(material, plan=WORDS) as player:
        await player.begin()
        player.clock.wait(1)
        line = player.lines[23]
        await player.pilot.click(offset=(line.index("help"), 23))
        await player.until(lambda: player.ask.cue is not None, "help")


@pytest.mark.parametrize("text", ShowText)
async def test_the_plan_may_leave_the_sentence_to_the_ear_until_help_shows_it(
    text: ShowText, material: Material
) -> None:
    plan = replace(PICTURES, blocks=(replace(PICTURES.blocks[0], text=text),))
    async with playing(material, plan=plan, voice=QuietVoice("ready")) as player:
        await player.begin()
        sentence = player.ask.item.sentence
        await player.until_text("Which picture fits?")
        await player.settle()
        assert (sentence in player.text) is (text is ShowText.SHOWN)
        while player.ask.cue is None or player.ask.cue.kind is not CueKind.TEXT:
            await player.press("h")
        await player.until_text(sentence)


async def test_what_nobody_can_hear_is_shown_and_the_helper_told(material: Material) -> None:
    plan = replace(PICTURES, blocks=(replace(PICTURES.blocks[0], text=ShowText.AFTER_CUE),))
    async with playing(material, plan=plan, voice=QuietVoice("off")) as player:
        await player.begin()
        await player.until_text("Helper: no voice is heard")
        assert player.ask.item.sentence in player.text


async def test_a_voice_that_fails_within_a_trial_brings_the_words(material: Material) -> None:
    voice = QuietVoice("ready")
    plan = replace(PICTURES, blocks=(replace(PICTURES.blocks[0], text=ShowText.AFTER_CUE),))
    async with playing(material, plan=plan, voice=voice) as player:
        await player.begin()
        assert player.ask.item.sentence not in player.text
        voice.state = "no sound card was found"
        await player.until_text(player.ask.item.sentence)
        await player.until_text("Helper: no voice is heard")


@pytest.mark.parametrize(
    ("layout", "options", "size", "grid"),
    [
        (Layout.SIDE_BY_SIDE, 2, (80, 24), (2, 1)),
        (Layout.SIDE_BY_SIDE, 4, (80, 24), (2, 2)),
        (Layout.LEFT, 2, (80, 24), (2, 1)),
        (Layout.LEFT, 4, (80, 24), (2, 2)),
        (Layout.STACKED, 2, (80, 24), (1, 2)),
        # Four would be too low to be read one under the other.
        (Layout.STACKED, 4, (80, 24), (2, 2)),
        (Layout.STACKED, 4, (120, 50), (1, 4)),
    ],
)
async def test_pictures_stand_where_the_plan_puts_them_and_stay_large_enough(
    layout: Layout,
    options: int,
    size: tuple[int, int],
    grid: tuple[int, int],
    material: Material,
) -> None:
    plan = replace(
        plan_of(Kind.MATCH, "full-passive", options=options), sitting=SittingSettings(layout=layout)
    )
    async with playing(material, plan=plan, size=size) as player:
        await player.begin()
        places = [box.region for box in player.app.screen.query(OptionBox)]
        assert (len({place.x for place in places}), len({place.y for place in places})) == grid
        pictures = list(player.app.screen.query(Picture))
        assert not any(picture.is_blank for picture in pictures)
        assert min(picture.size.height for picture in pictures) >= 7
        assert min(picture.size.width for picture in pictures) >= 24
        if layout is Layout.LEFT:
            assert max(place.right for place in places) <= size[0] * 2 // 3


async def test_a_stack_becomes_a_grid_when_the_window_gets_too_low(material: Material) -> None:
    plan = replace(FOUR, sitting=SittingSettings(layout=Layout.STACKED))
    async with playing(material, plan=plan, size=(120, 50)) as player:
        await player.begin()
        await player.pilot.resize_terminal(80, 24)
        boxes = player.app.screen.query(OptionBox)
        await player.until(lambda: len({box.region.x for box in boxes}) == 2, "two columns")


async def test_stacked_sentence_and_messages_stand_beside_the_pictures(material: Material) -> None:
    plan = replace(PICTURES, sitting=SittingSettings(layout=Layout.STACKED))
    async with playing(material, plan=plan) as player:
        await player.begin()
        await player.press("h")
        await player.until_text("Listen again.")
        await player.answer(right=True)
        await player.until_text("Space: go on.")


@pytest.mark.parametrize("kind_and_name", [("match", "active"), ("cloze", "C3"), ("question", "")])
async def test_after_the_answer_the_sentence_is_said_plainly_once_more(
    kind_and_name: tuple[str, str], material: Material
) -> None:
    kind, name = Kind(kind_and_name[0]), kind_and_name[1] or "who-did-what"
    voice = QuietVoice("ready")
    async with playing(material, plan=plan_of(kind, name), voice=voice) as player:
        await player.begin()
        item = player.ask.item
        await player.answer(right=True)
        await player.until_text("go on")
        assert voice.said[-1] == f"Yes. {item.restated.text}"
        assert item.restated.text in " ".join(player.text.split())


class NotingVoice(QuietVoice):
    """A voice that keeps what it was asked to make ready."""

    def __init__(self) -> None:
        super().__init__("ready")
        self.ready: list[str] = []

    def prepare(self, utterance: Utterance, *, words_per_minute: int, pause_ms: int) -> None:
        self.ready.append(utterance.text)


@pytest.mark.parametrize("pattern", ["r", "w", "www"])
async def test_sound_and_pictures_of_the_next_trial_are_ready_before_the_feedback_ends(
    pattern: str, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Also when the answers change what comes next: after three errors, help from the start."""
    drawn: dict[tuple[Scene, ...], set[str]] = {}

    def noting(scenes: tuple[Scene, ...], **how: object) -> tuple[Cells, ...]:
        drawn.setdefault(scenes, set()).add(str(how))
        return pictures(scenes, **how)  # type: ignore[arg-type]

    monkeypatch.setattr("drills.tui.screens.trial.pictures", noting)
    voice = NotingVoice()
    plan = plan_of(Kind.MATCH, "active", "full-passive", trials=5)
    async with playing(material, plan=plan, voice=voice) as player:
        await player.begin()
        for letter in pattern:
            screen = player.app.screen
            await player.answer(right=letter == "r")
            if letter == "w":
                await player.answer(right=True)
            await player.until_text("go on")
            upcoming = player.session.upcoming
            assert upcoming is not None
            scenes = scenes_of(upcoming.item)
            # The feedback still stands, and no key has been pressed.
            await player.until(lambda: scenes in drawn, "the next pictures")  # noqa: B023
            assert player.app.screen is screen
            wanted = {upcoming.item.spoken.text}
            if upcoming.cue is not None:
                assert upcoming.cue.spoken is not None
                wanted.add(upcoming.cue.spoken.text)
            await player.until(lambda: wanted <= set(voice.ready), "the next sound")  # noqa: B023
            assert player.app.screen is screen
            await player.go_on()
            await player.until_asked()
            assert player.ask.item == upcoming.item
            # Drawn once, at the size at which they are shown.
            assert len(drawn[scenes]) == 1


async def test_what_a_rule_changes_is_told_to_the_helper(material: Material) -> None:
    plan = plan_of(Kind.MATCH, "full-passive", trials=6)
    async with playing(material, plan=plan) as player:
        await player.begin()
        for _ in range(3):
            await player.answer(right=False)
            await player.answer(right=True)
            await player.until_text("Space: go on.")
            told = "Helper: 3 in a row were not right. Full help for the next 2." in player.text
            await player.go_on()
            await player.until_asked()
        assert told
        await player.until_text("Helper: 3 in a row were not right. Full help for the next 2.")
        await player.until_text(f"Now press {(player.ask.item.answer or 0) + 1}.")
        assert not [line for line in player.lines if len(line) > 80]


async def test_help_is_offered_after_the_wait_and_counts_as_none(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        player.clock.wait(9)
        await asyncio.sleep(0.15)  # several ticks of the screen's timer
        assert "Take your time." not in player.text
        player.clock.wait(2)
        await player.until_text("Take your time.")
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        (trial,) = latest_trials(player.entries)
        assert trial.unaided_right


async def test_help_comes_by_itself_where_the_plan_says_so_but_never_the_answer(
    material: Material,
) -> None:
    plan = replace(PICTURES, cues=CueSettings(wait_seconds=10, wait_gives_help=True))
    async with playing(material, plan=plan) as player:
        await player.begin()
        player.clock.wait(11)
        await player.until_text("Listen again.")
        for _ in range(12):
            player.clock.wait(11)
            await asyncio.sleep(0.12)
        assert player.ask.cue is not None
        assert player.ask.cue.kind is not CueKind.ANSWER
        assert player.ask.cue.level == player.ask.item.cues[-2].level


async def test_no_help_is_offered_where_the_plan_switches_the_wait_off(material: Material) -> None:
    plan = replace(PICTURES, cues=CueSettings(wait_seconds=0))
    async with playing(material, plan=plan) as player:
        await player.begin()
        player.clock.wait(1000)
        await asyncio.sleep(0.15)
        assert "Take your time." not in player.text


async def test_a_block_from_most_to_least_begins_with_the_answer_shown(material: Material) -> None:
    block = replace(PICTURES.blocks[0], cues=CueDirection.MOST_TO_LEAST)
    voice = QuietVoice("ready")
    async with playing(material, plan=replace(PICTURES, blocks=(block,)), voice=voice) as player:
        await player.begin()
        answer = (player.ask.item.answer or 0) + 1
        await player.until_text(f"Now press {answer}.")
        await player.until(
            lambda: f"Now press {answer}." in voice.said[-1], "the help to be said as well"
        )
        await player.press(str(answer))
        await player.until_text("This is the one.")
        (trial,) = latest_trials(player.entries)
        assert not trial.aided_right


class SlowVoice(QuietVoice):
    """A voice that speaks until the test says that it has ended."""

    def __init__(self) -> None:
        super().__init__("ready")
        self.speaking = False
        self.slowly: list[bool] = []

    def say(self, *args: object, words_per_minute: int, **kwargs: object) -> None:  # type: ignore[override]
        super().say(*args, words_per_minute=words_per_minute, **kwargs)  # type: ignore[arg-type]
        self.slowly.append(words_per_minute < 120)
        self.speaking = True

    def is_speaking(self) -> bool:
        return self.speaking

    def stop(self) -> None:
        self.speaking = False


async def spoken_trial(player: Player, voice: SlowVoice) -> None:
    await player.begin()
    await player.until(lambda: voice.said[-1:] == [player.ask.item.spoken.text], "the prompt")


async def test_the_wait_for_an_answer_is_counted_from_the_end_of_the_voice(
    material: Material,
) -> None:
    voice = SlowVoice()
    async with playing(material, plan=PICTURES, voice=voice) as player:
        await spoken_trial(player, voice)
        player.clock.wait(6)
        voice.speaking = False
        await player.pilot.pause(4 * VOICE_SECONDS)
        player.clock.wait(1)
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].latency_ms == 2000


async def test_an_answer_before_the_voice_has_ended_has_no_measured_wait(
    material: Material,
) -> None:
    voice = SlowVoice()
    async with playing(material, plan=PICTURES, voice=voice) as player:
        await spoken_trial(player, voice)
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].latency_ms is None


@pytest.mark.parametrize("moves", [True, False])
async def test_the_shown_answer_can_be_watched_as_it_happens(
    material: Material, moves: bool
) -> None:
    sitting = replace(PICTURES.sitting, animation=moves)
    async with playing(material, plan=replace(PICTURES, sitting=sitting)) as player:
        await player.begin()
        for _ in player.ask.item.cues:
            await player.press("h")
        answer = player.ask.item.answer or 0
        shown = list(player.app.screen.query(Picture))
        if moves:
            await player.until(lambda: shown[answer].is_moving, "the picture to move")
        await player.settle()
        assert [picture.is_moving for picture in shown] == [
            moves and index == answer for index in range(len(shown))
        ]


async def test_help_is_said_after_the_verdict_and_slowly_where_it_says_so(
    material: Material,
) -> None:
    voice = SlowVoice()
    async with playing(material, plan=PICTURES, voice=voice) as player:
        await spoken_trial(player, voice)
        await player.press("h")
        await player.answer(right=False)
        assert voice.said[-1] == "Not this one. Look again."
        voice.speaking = False
        await player.until(lambda: voice.said[-1] != "Not this one. Look again.", "the help")
        assert voice.said[-1] == player.ask.item.spoken.text
        assert voice.slowly[-1]


async def test_hearing_again_is_on_record(material: Material) -> None:
    async with playing(material, plan=PICTURES) as player:
        await player.begin()
        await player.press("space", "space")
        await player.answer(right=True)
        await player.until_text("Space: go on.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].replays == 2


async def test_all_that_is_said_in_a_trial_is_also_shown(material: Material) -> None:
    voice = QuietVoice("ready")
    async with playing(material, plan=WORDS, voice=voice) as player:
        await player.begin()
        await player.until(lambda: voice.said[-1:] == [player.ask.item.spoken.text], "the prompt")
        shown = player.text
        for _ in player.ask.item.cues:
            await player.press("h")
            await player.settle()
            shown += player.text
        await player.answer(right=True)
        await player.settle()
        shown += player.text
        words = {word.strip(".,?:").lower() for word in shown.replace("\n", " ").split()}
        start = voice.said.index(player.ask.item.spoken.text)
        said = {word.strip(".,?:").lower() for text in voice.said[start:] for word in text.split()}
        assert said - words == set()


@pytest.mark.parametrize("large", [False, True])
async def test_the_whole_task_fits_the_smallest_window(large: bool, material: Material) -> None:
    plan: Plan = replace(FOUR, sitting=SittingSettings(large_letters=large))
    async with playing(material, plan=plan) as player:
        await player.begin()
        for wanted in (player.ask.item.sentence, "hear again", "stroke signs", "guide"):
            await player.until_text(wanted)


async def test_large_letters_show_words_large_and_plain(material: Material) -> None:
    plan = replace(WORDS, sitting=SittingSettings(large_letters=True))
    async with playing(material, plan=plan) as player:
        await player.begin()
        word = next(o.text for o in player.ask.item.options if o.text and len(o.text) <= 5)
        first_line = lettered(word)[0].strip()
        await player.until_text(first_line)
        await player.until_text(f"  {word} ─")


async def test_words_too_long_for_large_letters_stay_plain(material: Material) -> None:
    plan = replace(
        plan_of(Kind.QUESTION, "who-did-what"), sitting=SittingSettings(large_letters=True)
    )
    async with playing(material, plan=plan) as player:
        await player.begin()
        for option in player.ask.item.options:
            await player.until_text(str(option.text))


@pytest.mark.parametrize("colour", [True, False])
async def test_a_plan_without_colour_is_grey(colour: bool, material: Material) -> None:
    plan = replace(PICTURES, sitting=SittingSettings(colour=colour))
    async with playing(material, plan=plan) as player:
        await player.begin()
        await player.until(lambda: not any(p.is_blank for p in player.app.screen.query(Picture)))
        await player.settle()
        assert any(len(set(shown)) > 1 for shown in player.colours) is colour
