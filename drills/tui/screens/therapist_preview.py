"""Items as a block of the plan would give them."""

from __future__ import annotations

from random import Random

from drills.core.items import Item, Kind
from drills.core.plans import BlockPlan, Plan
from drills.digest.wording import FOILS
from drills.exercises import make_items, targets_of
from drills.tui.room import Room
from drills.tui.screens.room import Hints
from drills.tui.screens.shown import Shown, ShownScreen
from drills.tui.widgets.key_bar import Hint

MOST_ITEMS = 12
MOST_PICTURES = 4
_OTHERS = Hint(key="o", shown="O", label="others")


class TherapistPreviewScreen(ShownScreen):
    """The same seed shows the same items; O goes on to the next seed."""

    def __init__(self, room: Room, plan: Plan, block: BlockPlan) -> None:
        """Raises: BadInput for a block that names what there is not."""
        super().__init__(room)
        self._plan = plan
        self._block = block
        self._seed = 1
        self._items = self._made()

    def _made(self) -> tuple[Item, ...]:
        material = self.room.home.material.without_kin(self._plan.without_kin)
        rng = Random(self._seed)
        targets = targets_of(self._block, material)
        asked = rng.sample(targets, min(MOST_ITEMS, len(targets)))
        return make_items(asked, options=self._block.options, material=material, rng=rng)

    @property
    def count(self) -> int:
        return len(self._items)

    def hints(self) -> Hints:
        return (*super().hints(), _OTHERS)

    def pressed(self, key: str) -> None:
        if key == "o":
            self._seed += 1
            self._items, self._at = self._made(), 0
            self.show()
        else:
            super().pressed(key)

    def shown(self, at: int) -> Shown:
        item = self._items[at]
        scenes = [option.scene for option in item.options]
        known = [scene for scene in scenes if scene is not None]
        if known and len(known) == len(scenes):
            places = range(min(MOST_PICTURES, len(known)))
            return Shown(
                title=self._title(at),
                asked=_asked(item),
                told=_help(item),
                captions=tuple(_captioned(item, place) for place in places),
                scenes=tuple(known[place] for place in places),
                right=item.answer,
            )
        words = self.without_pictures(at)
        if item.picture is None:
            return words
        return Shown(
            title=words.title,
            asked=words.asked,
            told=words.told,
            options=words.options,
            captions=("shown beside it",),
            scenes=(item.picture,),
        )

    def without_pictures(self, at: int) -> Shown:
        item = self._items[at]
        return Shown(
            title=self._title(at),
            asked=_asked(item),
            told=_help(item),
            options=tuple(_captioned(item, place) for place in range(len(item.options))),
        )

    def _title(self, at: int) -> str:
        item = self._items[at]
        label = self.room.home.labels.get(item.target.name, item.target.name)
        group = f", {item.target.group}" if item.target.group else ""
        return f"Item {at + 1} of {self.count}, as it could be asked. {label}{group}"


def _asked(item: Item) -> tuple[str, ...]:
    context = (item.context,) if item.context else ()
    asks = (item.prompt,) if item.kind in (Kind.QUESTION, Kind.GESTURE) else ()
    return (*context, item.sentence, *asks)


def _help(item: Item) -> tuple[str, ...]:
    steps = ", ".join(f"{cue.level} {cue.kind.value}" for cue in item.cues)
    return (f"Help: {steps}.",) if steps else ()


def _captioned(item: Item, place: int) -> str:
    option = item.options[place]
    words = () if option.text is None else (option.text,)
    judged = "right" if option.foil is None else FOILS[option.foil].lower()
    return f"{place + 1}  {', '.join((*words, judged))}"


def preview(room: Room, plan: Plan, block: BlockPlan) -> TherapistPreviewScreen:
    """Raises: BadInput, in plain sentences, for a block of which nothing can be made."""
    return TherapistPreviewScreen(room, plan, block)
