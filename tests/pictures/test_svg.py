"""SVG, read back by an XML parser."""

from dataclasses import replace
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from drills.core.meanings import Act, Comparison, Meaning, Order, Report, Scene
from drills.pictures import drawing
from drills.pictures.shapes import Drawing, Ellipse, Frame, Mark, Polygon, Stroke
from drills.pictures.svg import write

NAMES = "{http://www.w3.org/2000/svg}"
DRAWING = Drawing(
    shapes=(
        Ellipse(centre=(1, 2), radii=(3, 4), fill=(255, 0, 16), outline=(0, 0, 0), angle=30),
        Polygon(points=((0, 0), (5.5, 0), (5, 5)), fill=(1, 2, 3)),
        Stroke(points=((0, 0), (4, 4)), width=2, fill=(9, 9, 9), outline=(0, 0, 0)),
        Mark(at=(2, 2), fill=(0, 0, 0)),
    ),
    frame=Frame(left=-10, top=-20, width=40, height=30),
)


def read(text: str) -> ElementTree.Element:
    return ElementTree.fromstring(text)  # noqa: S314 - our own output, not someone's file


def test_the_document_holds_every_shape_in_painted_order() -> None:
    names = [child.tag.removeprefix(NAMES) for child in read(write(DRAWING))]
    painted = ["rect", "rect", "ellipse", "polygon", "polyline", "polyline", "circle"]
    assert names == painted


def test_shapes_keep_their_places_and_colours() -> None:
    root = read(write(DRAWING))
    ellipse, polygon = root.find(f"{NAMES}ellipse"), root.find(f"{NAMES}polygon")
    assert ellipse is not None
    assert polygon is not None
    assert root.get("viewBox") == "-10 -20 40 30"
    assert (ellipse.get("rx"), ellipse.get("fill")) == ("3", "#ff0010")
    assert ellipse.get("transform") == "rotate(30 1 2)"
    assert polygon.get("points") == "0,0 5.5,0 5,5"


def test_the_earth_fills_the_frame_below_the_ground() -> None:
    drawing = replace(DRAWING, ground=3.0)
    earth = read(write(drawing)).findall(f"{NAMES}rect")[1]
    assert (earth.get("y"), earth.get("height"), earth.get("fill")) == ("3", "7", "#8bac62")


@given(st.text(st.characters(min_codepoint=32, exclude_categories=["Cs", "Cn", "Cc"])))
def test_any_title_comes_back_whole(title: str) -> None:
    found = read(write(DRAWING, title=title)).find(f"{NAMES}title")
    assert (found.text if found is not None else "") == title


def test_a_title_cannot_add_markup() -> None:
    root = read(write(DRAWING, title="</title><script>x</script>&amp;"))
    assert root.find(f".//{NAMES}script") is None


@pytest.mark.parametrize(
    "meaning",
    [
        Act(verb="shelter", doer="king", done_to="nurse"),
        Order(doer="nurse", earlier="read", later="sleep"),
        Report(speaker="man", act=Act(verb="comb", doer="woman", done_to="man")),
        Comparison(quality="tall", more="judge", less="bride"),
    ],
)
def test_a_scene_becomes_a_document_with_its_own_frame(meaning: Meaning) -> None:
    made = drawing(Scene(meaning=meaning), columns=38, lines=20)
    root = read(write(made, title="who does what"))
    left, top, width, height = map(float, (root.get("viewBox") or "").split())
    frame = made.frame
    assert (left, top) == pytest.approx((frame.left, frame.top), rel=1e-4)
    assert (width, height) == pytest.approx((frame.width, frame.height), rel=1e-4)
    assert len(root) > len(made.shapes)
