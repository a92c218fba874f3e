"""A drawing as an SVG document, for print."""

from __future__ import annotations

from xml.sax.saxutils import escape

from drills.pictures.shapes import Colour, Drawing, Ellipse, Mark, Point, Polygon, Stroke

_EDGE_SHARE = 1 / 250
_MARK_SHARE = 1 / 120


def write(drawing: Drawing, *, title: str = "") -> str:
    """Write the drawing as one SVG document.   title: what a screen reader says for it."""
    frame = drawing.frame
    edge = frame.width * _EDGE_SHARE
    parts = [
        '<svg xmlns="http://www.w3.org/2000/svg" role="img" viewBox="'
        f'{frame.left:g} {frame.top:g} {frame.width:g} {frame.height:g}">'
    ]
    if title:
        parts.append(f"<title>{escape(title)}</title>")
    bottom = frame.top + frame.height
    parts.append(_box(frame.left, frame.top, frame.width, frame.height, drawing.sky))
    if drawing.ground is not None and drawing.ground < bottom:
        top = max(drawing.ground, frame.top)
        parts.append(_box(frame.left, top, frame.width, bottom - top, drawing.earth))
    for shape in drawing.shapes:
        if isinstance(shape, Ellipse):
            parts.append(_ellipse(shape, edge))
        elif isinstance(shape, Polygon):
            parts.append(_polygon(shape, edge))
        elif isinstance(shape, Stroke):
            parts.extend(_stroke(shape, edge))
        elif isinstance(shape, Mark):
            x, y = shape.at
            radius = frame.width * _MARK_SHARE
            parts.append(f'<circle cx="{x:g}" cy="{y:g}" r="{radius:g}" {_fill(shape.fill)}/>')
    parts.append("</svg>\n")
    return "\n".join(parts)


def _box(left: float, top: float, width: float, height: float, fill: Colour) -> str:
    return f'<rect x="{left:g}" y="{top:g}" width="{width:g}" height="{height:g}" {_fill(fill)}/>'


def _ellipse(shape: Ellipse, edge: float) -> str:
    (x, y), (across, down) = shape.centre, shape.radii
    turn = f' transform="rotate({shape.angle:g} {x:g} {y:g})"' if shape.angle else ""
    return (
        f'<ellipse cx="{x:g}" cy="{y:g}" rx="{across:g}" ry="{down:g}"'
        f" {_fill(shape.fill)}{_line(shape.outline, edge)}{turn}/>"
    )


def _polygon(shape: Polygon, edge: float) -> str:
    return (
        f'<polygon points="{_points(shape.points)}"'
        f" {_fill(shape.fill)}{_line(shape.outline, edge)}/>"
    )


def _stroke(shape: Stroke, edge: float) -> list[str]:
    widths = [(shape.width, shape.fill)]
    if shape.outline is not None:
        widths.insert(0, (shape.width + 2 * edge, shape.outline))
    return [
        f'<polyline points="{_points(shape.points)}" fill="none" stroke="{_hex(colour)}"'
        f' stroke-width="{width:g}" stroke-linecap="round" stroke-linejoin="round"/>'
        for width, colour in widths
    ]


def _points(points: tuple[Point, ...]) -> str:
    return " ".join(f"{x:g},{y:g}" for x, y in points)


def _fill(colour: Colour) -> str:
    return f'fill="{_hex(colour)}"'


def _line(colour: Colour | None, edge: float) -> str:
    if colour is None:
        return ""
    # Half of the line lies under the fill, so that it looks as wide as the raster's.
    return f' stroke="{_hex(colour)}" stroke-width="{2 * edge:g}" paint-order="stroke"'


def _hex(colour: Colour) -> str:
    return "#{:02x}{:02x}{:02x}".format(*colour)
