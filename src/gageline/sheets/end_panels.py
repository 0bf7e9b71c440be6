"""End views with their gages and rows, and the cross section with its sizes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from gageline.part import Assembly, End, Fitting, bounds, extent_y, extent_z
from gageline.sheets.dimensions import chain, linear, running
from gageline.sheets.labels import Reading, Side
from gageline.sheets.lining import Lining, plain_scale
from gageline.sheets.notation import Scribe
from gageline.sheets.panels import Panel, panel
from gageline.sheets.scales import Scale
from gageline.sheets.scene import Anchor, Item, Level, Line, Polygon, Text
from gageline.sheets.sight import end_of, look
from gageline.sheets.slabs import section_shape, slabs_of_fitting, slabs_of_main
from gageline.sheets.style import FINE, Hatch, Role, Weight
from gageline.steel import Plate, Profile
from gageline.units import Length, System

__all__ = ["end_panel", "section_panel", "titled"]

_SECTION = 36.0
_WIDE = 400.0
_ROOM = 24.0


def end_panel(
    assembly: Assembly, end: End, scribe: Scribe, choice: Sequence[Scale], tallest: float
) -> Panel | None:
    """The view of an end that has fittings: gages across, rows down from the top, out-to-out.

    Args:
        assembly: the piece.
        end: which end.
        scribe: writes in the units of the job.
        choice: scales from the largest down.
        tallest: height of the steel on paper, mm.

    Returns:
        The panel; None for an end without fittings.
    """
    fittings = [fitting for fitting in assembly.fittings if fitting.end is end]
    if not fittings:
        return None
    view = end_of(end)
    slabs = [slab for fitting in fittings for slab in slabs_of_fitting(fitting, 0)]
    picture = look([*slabs_of_main(assembly, 0, end), *slabs], view)
    scale = _scale(choice, picture.bounds[3] - picture.bounds[1], tallest)
    lining = Lining(picture, plain_scale(picture.bounds[0], picture.bounds[2], 0.0, scale.paper))
    items = lining.items()
    items += _gages(lining, scribe)
    items += _rows(lining, assembly, scribe)
    items += _out_to_out(lining, fittings, scribe, view.u[1])
    return titled(items, f"{end.capitalize()} end", f"seen from outside, {scale.name}")


def _scale(choice: Sequence[Scale], height: float, tallest: float) -> Scale:
    fitting = (scale for scale in choice if height * scale.paper <= tallest)
    return next(fitting, choice[-1])


def titled(items: Sequence[Item], name: str, more: str) -> Panel:
    """A panel with its name and a word about it under the drawing."""
    box = panel(items).box
    middle = (box.left + box.right) / 2
    head = Text(middle, box.bottom + 2.0, name, FINE, Weight.BOLD, Anchor.CENTRE, Level.TOP)
    tail = Text(middle, box.bottom + 5.6, more, FINE, anchor=Anchor.CENTRE, level=Level.TOP)
    return panel([*items, head, tail], name)


def _gages(lining: Lining, scribe: Scribe) -> list[Item]:
    """The distances between the lines of holes that are seen round, over the view."""
    lines = sorted({round(s.bore.at[0], 4) for s in lining.picture.bores if not s.hidden})
    if len(lines) < 2:
        return []
    texts = [scribe.tell(Length.from_inches(b - a)) for a, b in pairwise(lines)]
    points = [lining.x(u) for u in lines]
    return list(chain(points, texts, Side.ABOVE, 0.0, (-_WIDE, _WIDE), size=FINE).items)


def _rows(lining: Lining, assembly: Assembly, scribe: Scribe) -> Iterator[Item]:
    """The rows of holes seen round, down from the top of the steel, at the right of the view."""
    top = extent_y(assembly.main.stock)[1]
    rows: dict[float, float] = {}
    for sighted in lining.picture.bores:
        if not sighted.hidden:
            u, v = sighted.bore.at
            rows[round(v, 4)] = max(u, rows.get(round(v, 4), u))
    if not rows:
        return
    readings = []
    for v in rows:
        down = top - Length.from_inches(v)
        up = " up" if down.ticks < 0 else ""
        readings.append(Reading(lining.y(v), scribe.tell(abs(down)) + up))
    base = lining.ends[1]
    limits = (-_ROOM, lining.height + _ROOM)
    yield from running(readings, Side.RIGHT, base, limits, size=FINE, datum=lining.y(top.inches)).items
    for v, u in rows.items():
        yield Line(*lining.at(u, v), base, lining.y(v), Role.DIMENSION)


def _out_to_out(lining: Lining, fittings: Sequence[Fitting], scribe: Scribe, sign: int) -> Sequence[Item]:
    """The width over the fittings of the end, under the view."""
    spans = [bounds(fitting)[2] for fitting in fittings]
    low, high = min(span[0] for span in spans), max(span[1] for span in spans)
    ends = sorted(lining.x(sign * z.inches) for z in (low, high))
    text = scribe.tell(high - low)
    return linear(ends[0], ends[1], text, Side.BELOW, lining.height, (-_WIDE, _WIDE), size=FINE).items


def section_panel(assembly: Assembly, scribe: Scribe, choice: Sequence[Scale]) -> Panel | None:
    """The cross section seen from the left end, hatched, with its sizes; None for a plate."""
    stock = assembly.main.stock
    if isinstance(stock, Plate):
        return None
    shape = section_shape(stock)
    low_y, low_z, high_y, high_z = shape.bounds
    chosen = _scale(choice, high_y - low_y, _SECTION)
    scale = chosen.paper

    def ring(points: Sequence[tuple[float, ...]]) -> tuple[tuple[float, float], ...]:
        return tuple(((z - low_z) * scale, (high_y - y) * scale) for y, z in points[:-1])

    outline = ring(list(shape.exterior.coords))
    holes = tuple(ring(list(inner.coords)) for inner in shape.interiors)
    items: list[Item] = [Polygon(outline, Role.OUTLINE, hatch=Hatch(spacing=1.0), openings=holes)]
    width, height = (high_z - low_z) * scale, (high_y - low_y) * scale
    bottom, top = extent_y(stock)
    far, near = extent_z(stock)
    metric = scribe.system is System.MM
    say = scribe.fine if metric else scribe.tell
    web, flange = (stock.tw, stock.tf) if metric else (stock.tw_det or stock.tw, stock.tf_det or stock.tf)
    items += linear(0, width, say(near - far), Side.BELOW, height, (-_WIDE, _WIDE), size=FINE).items
    items += linear(0, height, say(top - bottom), Side.LEFT, 0, (-_WIDE, _WIDE), size=FINE).items
    match stock.profile:
        case Profile.BOX | Profile.TUBE:
            sizes = f"wall {say(stock.t_nominal or stock.tw)}"
        case Profile.ANGLE:
            sizes = f"legs {say(web)} thick"
        case _:
            sizes = f"web {say(web)}, flange {say(flange)}"
    return titled(items, f"Section {stock.designation}", f"{sizes}, {chosen.name}")
