"""What all charts of the page share: size, greys, and a drawing made fit to stand in HTML.

matplotlib is slow to load, so that this module is loaded for the page alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date
from io import StringIO
from typing import Any
from xml.etree import ElementTree

import matplotlib as mpl
from markupsafe import Markup
from matplotlib.axes import Axes
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure

from drills.digest.plain import day, inert

BLACK, DARK, MIDDLE, LIGHT = "#000000", "#444444", "#767676", "#bbbbbb"
TEXT_PT, SMALL_PT = 7.2, 6.8
_MM_PER_INCH = 25.4

# Words come out as text in the page's own font, and are never read as formulas.
_STYLE: Any = {
    "svg.fonttype": "none",
    "svg.hashsalt": "digest page",
    "text.parse_math": False,
    "font.size": TEXT_PT,
    "axes.linewidth": 0.6,
    "axes.edgecolor": BLACK,
    "axes.labelsize": SMALL_PT,
    "axes.spines.top": False,
    "axes.spines.right": False,
    "xtick.labelsize": SMALL_PT,
    "ytick.labelsize": SMALL_PT,
    "xtick.major.size": 2.0,
    "ytick.major.size": 2.0,
    "xtick.major.width": 0.6,
    "ytick.major.width": 0.6,
    "xtick.major.pad": 2.0,
    "ytick.major.pad": 2.0,
    "lines.linewidth": 1.0,
    "lines.markersize": 3.6,
    "hatch.linewidth": 0.5,
}


@contextmanager
def canvas(*, width_mm: float, height_mm: float) -> Iterator[tuple[Figure, Axes]]:
    """An empty chart to draw into, the same whatever settings the machine has."""
    with mpl.rc_context():
        mpl.rcdefaults()
        mpl.rcParams.update(_STYLE)
        figure = Figure(
            figsize=(width_mm / _MM_PER_INCH, height_mm / _MM_PER_INCH), layout="constrained"
        )
        figure.get_layout_engine().set(w_pad=0.01, h_pad=0.01)  # type: ignore[union-attr, call-arg]
        FigureCanvasSVG(figure)
        yield figure, figure.add_subplot()


def day_label(on: date) -> str:
    """`9 Nov`: there is no room for the day of the week."""
    return day(on).split(" ", 1)[1]


def percent_axis(axes: Axes) -> None:
    """Shares from 0 to 1, read as percent, with room for a mark at either end."""
    axes.set_ylim(-0.06, 1.06)
    axes.set_yticks([0, 0.5, 1], ["0%", "50%", "100%"])
    axes.spines["left"].set_bounds(0, 1)


def guessing_line(axes: Axes, chance: float) -> None:
    axes.axhline(chance, color=BLACK, linewidth=0.7, dashes=(2, 2), clip_on=False, zorder=1)


def svg(figure: Figure, told: str) -> Markup:
    """The drawing as an element for HTML, without ids, references or styles of its own.

    told: what a reader gets who does not see it.
    """
    written = StringIO()
    figure.savefig(written, format="svg", metadata={"Date": None}, transparent=True)
    # What is parsed was written on the line above.
    root = _plain(ElementTree.fromstring(written.getvalue()))  # noqa: S314
    width, height = (f"{float(part):g}" for part in root.attrib["viewBox"].split()[2:])
    root.attrib = {
        "class": "chart",
        "role": "img",
        "aria-label": inert(told),
        "viewBox": f"0 0 {width} {height}",
        "width": f"{width}pt",
        "height": f"{height}pt",
        "stroke-linejoin": "round",
    }
    return Markup(ElementTree.tostring(root, encoding="unicode"))  # noqa: S704 - built as elements


_LEFT_OUT = {"metadata", "defs", "style"}
_LONG_NUMBER = re.compile(r"-?\d+\.\d{3,}")


def _plain(root: ElementTree.Element) -> ElementTree.Element:
    """Elements of the drawing alone: what is defined once and used often stands in each place."""
    defined = {
        path.attrib["id"]: path
        for path in root.iter()
        if _name(path) == "path" and "id" in path.attrib
    }
    return _copied(root, defined)


def _copied(
    element: ElementTree.Element, defined: dict[str, ElementTree.Element]
) -> ElementTree.Element:
    name = _name(element)
    attributes = {key.rsplit("}", 1)[-1]: value for key, value in element.attrib.items()}
    if name == "use":
        mark = defined[attributes.pop("href").removeprefix("#")]
        name, place = "path", f"translate({attributes.pop('x', 0)} {attributes.pop('y', 0)})"
        style = f"{mark.attrib.get('style', '')}; {attributes.get('style', '')}"
        attributes = {"d": mark.attrib["d"], "transform": place, "style": style}
    attributes = {
        key: _short(value)
        for key, value in attributes.items()
        if key not in ("id", "clip-path", "version")
    }
    if name == "text":
        # The page's font stands in for the one that the drawing was measured with.
        attributes["style"] = _without_family(attributes.get("style", ""))
    found = ElementTree.Element(name, attributes)
    found.text, found.tail = (None if name == "g" else element.text), None
    found.extend(_copied(child, defined) for child in element if _name(child) not in _LEFT_OUT)
    return found


def _name(element: ElementTree.Element) -> str:
    return element.tag.rsplit("}", 1)[-1]


def _short(value: str) -> str:
    value = _LONG_NUMBER.sub(lambda found: f"{float(found[0]):.2f}", value)
    return " ".join(value.split())


def _without_family(style: str) -> str:
    """`font: 7px 'A', sans-serif; text-anchor: middle` -> size and anchor."""
    size = re.search(r"(\d+(?:\.\d+)?)px", style)
    anchor = re.search(r"text-anchor: \w+", style)
    kept = [f"font-size: {size[1]}px"] if size else []
    return "; ".join([*kept, *([anchor[0]] if anchor else [])])
