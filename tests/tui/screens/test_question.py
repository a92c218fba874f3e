"""Questions on screen: the longest of each form stands whole in the smallest window."""

from __future__ import annotations

import pytest

from drills.core.items import CueKind, Item, Kind
from drills.core.material import Material
from drills.exercises.question.offering import FORMS
from drills.tui.widgets.picture import Picture
from tests.exercises.test_question import questions
from tests.tui.player import Player, plan_of, playing

FORMS_AND_LEVELS = (
    *(form for form in FORMS if form != "kin"),
    *(f"kin:K{level}" for level in range(1, 7)),
)


def longest(material: Material, name: str, options: int) -> Item:
    """Of some hundred, the item whose lines take most room."""
    items = [
        item
        for seed in range(3)
        for item in questions(material, name, count=40, options=options, seed=seed)
    ]

    def room(item: Item) -> tuple[int, int]:
        texts = [option.text or "" for option in item.options]
        trees = [cue.text.count("\n") for cue in item.cues if cue.kind is CueKind.TREE]
        lines = (len(item.sentence) > 40) + max(trees, default=0)
        return lines, max(map(len, (item.sentence, item.prompt, *texts)))

    return max(items, key=room)


def squeezed(text: str) -> str:
    """Without frames and line ends, so that what is broken between words is one again."""
    return " ".join("".join(c if c not in "│╭╮╰╯─━┃┏┓┗┛" else " " for c in text).split())


def stands_whole(player: Player, item: Item) -> None:
    shown = squeezed(player.text)
    for words in (item.sentence, item.prompt, *(option.text or "" for option in item.options)):
        assert words in shown, (words, player.text)


@pytest.mark.parametrize("name", FORMS_AND_LEVELS)
@pytest.mark.parametrize("options", [2, 4])
async def test_the_longest_of_each_form_stands_whole_in_the_smallest_window(
    name: str, options: int, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    item = longest(material, name, options)
    monkeypatch.setattr("drills.practice.dealing.make_items", lambda *_, **__: (item,))
    async with playing(material, plan=plan_of(Kind.QUESTION, name, options=options)) as player:
        await player.begin()
        await player.until_text(item.options[-1].text or "")
        stands_whole(player, item)
        pictures = [each for each in player.app.screen.query(Picture) if each.size.area]
        assert bool(pictures) == (item.picture is not None)
        assert all(not picture.is_blank for picture in pictures)
        assert all(picture.size.width >= 30 for picture in pictures)


@pytest.mark.parametrize(("name", "options"), [("kin:K6", 2), ("kin:K4", 2), ("kin:K4", 4)])
async def test_the_family_tree_stands_with_the_question_in_its_own_lines(
    name: str, options: int, material: Material, monkeypatch: pytest.MonkeyPatch
) -> None:
    item = longest(material, name, options)
    monkeypatch.setattr("drills.practice.dealing.make_items", lambda *_, **__: (item,))
    async with playing(material, plan=plan_of(Kind.QUESTION, name, options=options)) as player:
        await player.begin()
        tree = next(cue for cue in item.cues if cue.kind is CueKind.TREE)
        while player.ask.cue is None or player.ask.cue.kind is not CueKind.TREE:
            await player.press("h")
        assert tree.spoken is not None
        await player.until(lambda: tree.spoken.text in squeezed(player.text), "the help")
        for line in tree.text.split("\n"):
            assert any(shown.strip() == line.strip() for shown in player.lines), player.text
        shown = squeezed(player.text)
        assert item.sentence in shown
        assert item.prompt in shown
        for index, option in enumerate(item.options):
            assert index in player.ask.removed or (option.text or "") in shown, player.text
