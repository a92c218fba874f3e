from __future__ import annotations

import subprocess
import sys

import pytest

from drills.core.kinds import Side
from drills.core.meanings import Act, Relation, Scene
from drills.core.meanings import Place as Whereabouts
from drills.pictures import Encoding, draw

PUSH = Act(verb="push", doer="nurse", done_to="farmer")


@pytest.mark.parametrize("encoding", list(Encoding))
@pytest.mark.parametrize(("columns", "lines"), [(38, 20), (38, 9), (24, 7), (58, 17)])
def test_a_picture_fills_the_cells_it_is_given(columns, lines, encoding):
    place = Whereabouts(relation=Relation.BEHIND, thing="cup", landmark="hat")
    scenes = (Scene(meaning=PUSH), Scene(meaning=PUSH.reversed()), Scene(meaning=place))
    made = draw(scenes, columns=columns, lines=lines, encoding=encoding)
    assert [(cells.columns, cells.lines) for cells in made] == [(columns, lines)] * 3
    assert len(set(made)) == 3


def test_the_same_scene_gives_the_same_cells():
    scenes = (Scene(meaning=PUSH, side=Side.RIGHT),)
    assert draw(scenes, columns=38, lines=9) == draw(scenes, columns=38, lines=9)


def test_what_cannot_be_drawn_is_refused():
    act = Act(verb="teach", doer="nurse", done_to="farmer")
    with pytest.raises(ValueError, match="no act to draw"):
        draw((Scene(meaning=act),), columns=38, lines=9)


def test_importing_the_room_loads_neither_numpy_nor_pillow():
    program = "import sys, drills.pictures; print({'numpy', 'PIL'} & set(sys.modules))"
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "set()"
