"""A sentence acted out: what is chosen is what is seen, and it is kept before it is seen."""

from __future__ import annotations

from dataclasses import replace
from itertools import permutations

import pytest
from textual import events

from drills.core.cells import Encoding
from drills.core.items import CueKind, Kind
from drills.core.material import Material
from drills.core.plans import CueDirection, Layout, Plan, ShowText, SittingSettings
from drills.core.records import latest_trials
from drills.exercises.events import figures_of, option_of, places_of
from drills.pictures import draw, frames
from drills.rehearsal import MemoryRecords
from drills.tui.screens.act_out import ROUND_SECONDS, SHOWN, ActOutScreen
from drills.tui.widgets.figures import FigureBox
from drills.tui.widgets.picture import Picture, strips_of
from drills.tui.widgets.stage import Stage
from tests.edges import FullDisk, QuietVoice
from tests.tui.player import CHECK_IN, Player, plan_of, playing

PASSIVES = plan_of(Kind.ACT_OUT, "full-passive", trials=2)
FOUR = plan_of(Kind.ACT_OUT, "full-passive", trials=2, options=4)
THREE = plan_of(Kind.ACT_OUT, "active", trials=1, options=3)


def right(player: Player) -> tuple[int, int]:
    """Places of the right doer and done-to."""
    item = player.ask.item
    assert item.answer is not None
    return places_of(item, item.answer)


def keys(places: tuple[int, ...]) -> list[str]:
    return [str(place + 1) for place in places]


def screen(player: Player) -> ActOutScreen:
    assert isinstance(player.app.screen, ActOutScreen)
    return player.app.screen


def event_picture(player: Player) -> Picture:
    return screen(player).query_one("Stage > Container > Picture", Picture)


def caption(player: Player) -> str:
    return " ".join(player.app.screen.query_one("Stage > .-caption").lines)  # type: ignore[attr-defined]


async def build(player: Player, doer: int, other: int) -> None:
    await player.press(*keys((doer, other)))
    await player.until_text(SHOWN)


async def watch(player: Player) -> None:
    """Until it is said whether it fits."""
    await player.until(lambda: SHOWN not in player.text, "the verdict")


def shown_frames(player: Player, option: int) -> list[object]:
    """The frames of an option as the drawing room makes them for this window."""
    scene = player.ask.item.options[option].scene
    assert scene is not None
    ground = screen(player).query_one(Stage).ground
    made = frames(scene, columns=ground.width, lines=ground.height, encoding=Encoding.BLOCKS)
    return [strips_of(cells) for cells in made]


@pytest.mark.parametrize("is_right", [True, False])
async def test_what_was_chosen_is_what_happens(is_right: bool, material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        item, cast = player.ask.item, right(player)
        doer, other = cast if is_right else cast[::-1]
        option = option_of(item, doer, other)
        await build(player, doer, other)
        await player.until_text(item.options[option].text or "")
        await player.until(lambda: event_picture(player).is_moving, "the event")
        wanted = shown_frames(player, option)
        assert len(wanted) > 1
        assert event_picture(player).still in wanted
        back = shown_frames(player, option_of(item, other, doer))
        assert event_picture(player).still not in back
        await watch(player)
        await player.until_text("Yes." if is_right else "Not this one. Look again.")
        assert event_picture(player).still in wanted


@pytest.mark.parametrize("options", [3, 4])
async def test_every_event_can_be_built_and_is_kept_as_built(
    options: int, material: Material
) -> None:
    plan = plan_of(Kind.ACT_OUT, "active", options=options)
    for wanted in (0, 1, options, options * (options - 1) - 1):
        async with playing(material, plan=plan) as player:
            await player.begin()
            item = player.ask.item
            doer, other = list(permutations(range(options), 2))[wanted]
            await build(player, doer, other)
            (trial,) = latest_trials(player.entries)
            assert trial.attempts[0].choice == wanted
            assert trial.attempts[0].right == (wanted == item.answer)
            text = trial.asked.options[wanted]["text"]
            await player.until(lambda: caption(player) == text, text)  # noqa: B023


class Witness(MemoryRecords):
    """Records that note what stood on the screen when a trial was written."""

    def __init__(self) -> None:
        super().__init__()
        self.player: Player | None = None
        self.seen: list[str] = []

    def append(self, entry: object) -> None:
        super().append(entry)  # type: ignore[arg-type]
        if self.player is not None and self.player.screen == "ActOutScreen":
            self.seen.append(self.player.text)


async def test_the_answer_is_kept_before_anything_of_it_is_shown(material: Material) -> None:
    records = Witness()
    async with playing(material, plan=PASSIVES, records=records) as player:
        records.player = player
        await player.begin()
        item = player.ask.item
        await build(player, *right(player)[::-1])
        assert len(records.seen) == 1
        words = [option.text for option in item.options]
        assert not any(text and text in records.seen[0] for text in words)
        assert SHOWN not in records.seen[0]


async def test_the_doer_stands_in_place_at_once_and_leaves_the_frame(material: Material) -> None:
    async with playing(material, plan=FOUR) as player:
        await player.begin()
        await player.until_text("Who does it?")
        doer, _ = right(player)
        boxes = list(player.app.screen.query(FigureBox))
        await player.until(lambda: not any(box.picture.is_blank for box in boxes))  # type: ignore[union-attr]
        await player.press(str(doer + 1))
        await player.until_text("Who is it done to?")
        assert latest_trials(player.entries) == ()
        place = player.app.screen.query_one("_Place.-taken Picture", Picture)
        await player.until(lambda: not place.is_blank, "the doer in place")
        assert [box.picture.is_blank for box in boxes] == [  # type: ignore[union-attr]
            index == doer for index in range(4)
        ]
        name = material.lexicon.nouns[figures_of(player.ask.item)[doer]].singular
        assert player.text.count(f" {name} ") >= 2


@pytest.mark.parametrize("how", ["escape", "the same number", "a click"])
async def test_the_first_choice_can_be_taken_back(how: str, material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        doer, other = right(player)
        await player.press(str(other + 1))
        await player.until_text("Esc undo")
        if how == "a click":
            player.clock.wait(1)
            await player.pilot.click("_Place.-taken")
        else:
            await player.press("escape" if how == "escape" else str(other + 1))
        await player.until_text("Who does it?")
        assert player.screen == "ActOutScreen"
        assert "undo" not in player.text
        await build(player, doer, other)
        await player.until_text("Yes.")
        (trial,) = latest_trials(player.entries)
        assert [attempt.right for attempt in trial.attempts] == [True]


async def test_escape_with_nothing_to_take_back_is_a_pause(material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        await player.press("1", "escape", "escape")
        await player.until_text("Leave this one out")


@pytest.mark.parametrize("second", ["1", "2"])
async def test_a_double_press_is_no_answer(second: str, material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        await player.press("1")
        await player.press(second, seconds=0.2)
        await player.settle()
        assert latest_trials(player.entries) == ()
        await player.until_text("Who is it done to?")


async def test_a_key_held_down_counts_once(material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        for seconds in (1.0, 0.5, *(0.033 for _ in range(20))):
            await player.press("1", seconds=seconds)
        await player.settle()
        assert latest_trials(player.entries) == ()
        await player.until_text("Who is it done to?")


async def test_numbers_do_nothing_while_the_event_is_watched(material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        await build(player, *right(player)[::-1])
        await player.press("1", "2", "h")
        await player.settle()
        (trial,) = latest_trials(player.entries)
        assert len(trial.attempts) == 1


async def test_an_event_is_watched_for_a_round_unless_space_is_pressed(
    material: Material,
) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        await build(player, *right(player)[::-1])
        await player.pilot.pause(ROUND_SECONDS / 4)
        assert SHOWN in player.text
        assert "Space go on" in player.text
        await player.press("space")
        await player.until_text("Not this one.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].replays == 0


async def test_after_a_wrong_event_the_next_one_is_built_from_the_start(
    material: Material,
) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        doer, other = right(player)
        await build(player, other, doer)
        await watch(player)
        await player.until_text("Who does it?")
        await player.press(str(doer + 1))
        await player.until_text("Who is it done to?")
        await player.press(str(other + 1))
        await player.until_text(SHOWN)
        await watch(player)
        await player.until_text("Yes. That was with help.")
        (trial,) = latest_trials(player.entries)
        assert [(each.right, each.cue_level) for each in trial.attempts] == [(False, 0), (True, 1)]
        await player.go_on()
        await player.until_asked()
        assert player.ask.number == 2


async def test_the_sentence_is_said_once_more_after_what_was_shown(material: Material) -> None:
    voice = QuietVoice("ready")
    async with playing(material, plan=PASSIVES, voice=voice) as player:
        await player.begin()
        item = player.ask.item
        await player.until(lambda: voice.said[-1:] == [item.spoken.text], "the prompt")
        doer, other = right(player)
        for cast in ((other, doer), (doer, other)):
            voice.said.clear()
            await build(player, *cast)
            await watch(player)
            await player.settle()
            shown = item.options[option_of(item, *cast)].text
            told = " ".join(voice.said)
            assert told.index(f"{SHOWN} {shown}") < told.rindex(item.sentence)
            verdict = "Yes." if cast == (doer, other) else "Not this one."
            assert told.index(f"{SHOWN} {shown}") < told.index(verdict) < told.rindex(item.sentence)


async def test_all_that_is_said_is_also_shown(material: Material) -> None:
    voice = QuietVoice("ready")
    async with playing(material, plan=FOUR, voice=voice) as player:
        await player.begin()
        await player.until(lambda: voice.said[-1:] == [player.ask.item.spoken.text], "the prompt")
        start, shown = len(voice.said) - 1, player.text
        for _ in player.ask.item.cues:
            await player.press("h")
            await player.settle()
            shown += player.text
        await player.press(str(right(player)[1] + 1))
        await player.until_text(SHOWN)
        shown += player.text
        await watch(player)
        await player.settle()
        shown += player.text
        words = {word.strip(".,?:").lower() for word in shown.replace("\n", " ").split()}
        said = {word.strip(".,?:").lower() for text in voice.said[start:] for word in text.split()}
        assert said - words == set()


async def test_hearing_again_says_the_question_of_the_moment(material: Material) -> None:
    voice = QuietVoice("ready")
    async with playing(material, plan=PASSIVES, voice=voice) as player:
        await player.begin()
        sentence = player.ask.item.sentence
        await player.press("space")
        await player.until(lambda: voice.said[-1] == f"{sentence} Who does it?", "the first")
        await player.press("1", "space")
        await player.until(lambda: voice.said[-1] == f"{sentence} Who is it done to?", "the second")
        await player.press("2")
        await player.until_text(SHOWN)
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].replays == 2


# Help


async def test_help_takes_a_figure_away_names_the_doer_and_shows_the_event(
    material: Material,
) -> None:
    async with playing(material, plan=THREE) as player:
        await player.begin()
        item, (doer, other) = player.ask.item, right(player)
        (beside,) = {0, 1, 2} - {doer, other}
        boxes = list(player.app.screen.query(FigureBox))
        for cue in item.cues:
            await player.press("h")
            await player.until(lambda: player.ask.cue == cue, cue.text)  # noqa: B023
            await player.until_text(cue.text.split("\n")[0])
            gone = [box.has_class("-gone") for box in boxes]
            assert gone == [cue.level >= 5 and index == beside for index in range(3)]
            if cue.level >= 5:
                await player.press(str(beside + 1))
                await player.settle()
                assert latest_trials(player.entries) == ()
            if cue.kind is CueKind.NAME_DOER:
                await player.until_text("Who is it done to?")
        option = item.answer or 0
        await player.until(lambda: caption(player) == item.options[option].text, "the event")
        wanted = shown_frames(player, option)
        await player.until(lambda: event_picture(player).still in wanted, "its picture")
        await player.press(str(doer + 1))
        await player.settle()
        assert latest_trials(player.entries) == ()
        await player.press(str(other + 1))
        await player.until_text(SHOWN)
        await watch(player)
        await player.until_text("This is the one.")
        (trial,) = latest_trials(player.entries)
        assert trial.attempts[0].cue_level == item.top_level
        assert not trial.aided_right


async def test_a_doer_who_was_named_can_be_taken_back(material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        doer, other = right(player)
        while player.ask.cue is None or player.ask.cue.kind is not CueKind.NAME_DOER:
            await player.press("h")
            await player.settle()
        await player.until_text("Who is it done to?")
        await player.press("escape")
        await player.until_text("Who does it?")
        await build(player, other, doer)
        (trial,) = latest_trials(player.entries)
        assert not trial.attempts[0].right


async def test_most_to_least_begins_with_the_event_shown(material: Material) -> None:
    block = replace(PASSIVES.blocks[0], cues=CueDirection.MOST_TO_LEAST)
    async with playing(material, plan=replace(PASSIVES, blocks=(block,))) as player:
        await player.begin()
        item = player.ask.item
        assert player.ask.cue == item.cues[-1]
        await player.until(lambda: caption(player) == item.options[item.answer or 0].text, "it")
        await player.until_text("Now press ")
        await player.press(str(right(player)[1] + 1))
        await player.until_text("This is the one.")


# Interruptions


@pytest.mark.parametrize("over", ["p", "escape", "g", "e", "window"])
async def test_what_comes_over_the_event_loses_nothing(over: str, material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        trial = player.app.screen
        doer, other = right(player)
        await build(player, other, doer)
        if over == "window":
            await player.pilot.resize_terminal(60, 20)
            await player.until_screen("CoverScreen")
            await player.pilot.resize_terminal(80, 24)
        else:
            await player.press(over)
            await player.until(lambda: player.app.screen is not trial, "the page")
            await player.press("escape")
        await player.until(lambda: player.app.screen is trial, "the trial")
        await player.until_text("Not this one.")
        assert len(latest_trials(player.entries)[0].attempts) == 1
        await build(player, doer, other)
        await player.until_text("Yes.")


async def test_a_pause_over_a_right_event_does_not_offer_to_leave_it_out(
    material: Material,
) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        await build(player, *right(player))
        await player.press("p")
        await player.until_text("Stop for today")
        assert "Leave this one out" not in player.text
        await player.press("1")
        await player.until_text("Yes.")
        await player.go_on()
        await player.until_asked()


@pytest.mark.parametrize("size", [(80, 24), (100, 30), (120, 40), (200, 60)])
async def test_a_window_of_another_size_keeps_what_is_built(
    size: tuple[int, int], material: Material
) -> None:
    async with playing(material, plan=FOUR) as player:
        await player.begin()
        doer, other = right(player)
        await player.press(str(doer + 1))
        await player.until_text("Who is it done to?")
        await player.pilot.resize_terminal(*size)
        place = player.app.screen.query_one("_Place.-taken Picture", Picture)
        await player.until(
            lambda: len(place.still) == place.size.height > 0, "the doer in the new size"
        )
        await player.press(str(other + 1))
        await player.until_text(SHOWN)
        picture = event_picture(player)
        await player.until(
            lambda: len(picture.still) == picture.size.height > 0, "the event in the new size"
        )
        await player.until_text("Yes.")


async def test_quitting_in_the_middle_and_coming_back_asks_the_same(material: Material) -> None:
    records = MemoryRecords()
    async with playing(material, plan=PASSIVES, records=records) as player:
        await player.begin()
        item = player.ask.item
        await player.press("1")
        await player.until_text("Who is it done to?")
        await player.press("p", "3")
        await player.until_text("We stop here today.")
    assert latest_trials(records.entries()) == ()
    async with playing(material, plan=PASSIVES, records=records) as player:
        await player.until_screen("HomeScreen")
        await player.press("1")
        await player.answer_cards(*CHECK_IN)
        await player.until_asked()
        assert player.ask.item.id == item.id
        await player.until_text("Who does it?")


async def test_a_full_disk_is_told_and_the_answer_held(material: Material) -> None:
    records = FullDisk()
    async with playing(material, plan=PASSIVES, records=records) as player:
        await player.begin()
        records.is_full = True
        await build(player, *right(player))
        await player.until_text("Yes.")
        await player.until_text("The disk is full.")
        assert len(records.held) == 1


# What the plan says


async def test_without_movement_the_event_is_a_still_picture(material: Material) -> None:
    plan = replace(PASSIVES, sitting=SittingSettings(animation=False))
    async with playing(material, plan=plan) as player:
        await player.begin()
        item, cast = player.ask.item, right(player)[::-1]
        await build(player, *cast)
        picture = event_picture(player)
        await player.until(lambda: not picture.is_blank, "the event")
        assert not picture.is_moving
        scene = item.options[option_of(item, *cast)].scene
        assert scene is not None
        ground = screen(player).query_one(Stage).ground
        made = frames(scene, columns=ground.width, lines=ground.height)
        assert picture.still == strips_of(made[0])
        assert draw([scene], columns=ground.width, lines=ground.height)
        await watch(player)


@pytest.mark.parametrize("layout", [Layout.LEFT, Layout.STACKED])
@pytest.mark.parametrize("options", [2, 4])
async def test_for_eyes_that_miss_the_right_all_stays_in_the_left_two_thirds(
    layout: Layout, options: int, material: Material
) -> None:
    plan = plan_of(Kind.ACT_OUT, "full-passive", options=options)
    async with playing(
        material, plan=replace(plan, sitting=SittingSettings(layout=layout))
    ) as player:
        await player.begin()
        doer, other = right(player)
        task = [*player.app.screen.query(FigureBox), player.app.screen.query_one(Stage)]
        assert max(widget.region.right for widget in task) <= 54
        names = [material.lexicon.nouns[key].singular for key in figures_of(player.ask.item)]
        for name in names:
            await player.until_text(f" {name} ")
        await build(player, doer, other)
        await player.until(lambda: not event_picture(player).is_blank, "the event")
        assert event_picture(player).region.right <= 54
        await player.until_text("Yes.")


async def test_the_sentence_may_be_left_to_the_ear_and_shows_once_it_is_over(
    material: Material,
) -> None:
    block = replace(PASSIVES.blocks[0], text=ShowText.AFTER_CUE)
    plan: Plan = replace(PASSIVES, blocks=(block,))
    async with playing(material, plan=plan, voice=QuietVoice("ready")) as player:
        await player.begin()
        sentence = player.ask.item.sentence
        await player.settle()
        assert sentence not in player.text
        await build(player, *right(player))
        assert sentence not in player.text
        await player.until_text("Yes.")
        await player.until_text(sentence)


@pytest.mark.parametrize("size", [(80, 24), (120, 40)])
@pytest.mark.parametrize("name", ["object-relative-centre", "dative"])
async def test_the_whole_task_fits(size: tuple[int, int], name: str, material: Material) -> None:
    plan = plan_of(Kind.ACT_OUT, name, trials=3, options=4)
    async with playing(material, plan=plan, size=size) as player:
        await player.begin()
        item = player.ask.item
        for text in ("Who does it?", "hear again", "stroke signs", "guide", *item.sentence.split()):
            await player.until_text(text)
        for number, key in enumerate(figures_of(item), start=1):
            await player.until_text(f" {number} ")
            await player.until_text(f" {material.lexicon.nouns[key].singular} ")
        await build(player, *right(player)[::-1])
        await watch(player)
        shown = item.options[option_of(item, *right(player)[::-1])].text or ""
        await player.until(lambda: caption(player) == f"{shown} Who does it?", shown)
        for word in (*shown.split(), "Who does it?"):
            await player.until_text(word)


async def test_the_mouse_builds_as_well(material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        boxes = list(player.app.screen.query(FigureBox))
        for place in right(player):
            player.clock.wait(1)
            await player.pilot.click(boxes[place])
        await player.until_text("Yes.")


async def test_two_presses_at_once_choose_once(material: Material) -> None:
    async with playing(material, plan=PASSIVES) as player:
        await player.begin()
        player.clock.wait(1)
        for key in ("1", "2"):
            player.app.screen.post_message(events.Key(key, key))
        await player.settle()
        assert latest_trials(player.entries) == ()
