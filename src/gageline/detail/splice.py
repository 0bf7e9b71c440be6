"""Columns in more than one shaft: where they are spliced and with what plates."""

from __future__ import annotations

from fractions import Fraction

from gageline.detail.carrier import Carrier
from gageline.detail.line import Line
from gageline.detail.points import field_points
from gageline.detail.reason import Reason
from gageline.detail.shop import Shop
from gageline.job import HoleMaker, HoleSize, grade_of, plate_stock
from gageline.part import BoltSet, Face, Fitting, FittingKind, HoleGroup, Join, Part, Placement
from gageline.steel import bolt
from gageline.units import ZERO, Length, round_down, round_up

__all__ = ["splice_plates"]

_ROWS = 2
_OSHA = (
    "common practice, no source; 29 CFR 1926.756(d): a splice resists 300 lb at 18 in from the column's "
    "face in each direction"
)


def splice_plates(line: Line, lower: Carrier, upper: Carrier, shop: Shop) -> None:
    """Plates on both flanges, bolted to the lower shaft in the shop, to the upper one at the site.

    Args:
        line: the column.
        lower: its shaft under the splice.
        upper: the one on top of it, of the same section.
        shop: the practice.
    """
    stock, practice = line.stock, shop.practice
    thick = shop.pick(0.5, 12) if stock.tf < shop.pick(0.75, 20) else shop.pick(0.75, 20)
    gage = stock.gage or round_down(stock.bf / 2, shop.pick(0.25, 5))
    width = min(
        round_down(stock.bf, shop.pick(0.5, 10)),
        round_up(gage + practice.end_distance * 2, shop.pick(0.5, 10)),
    )
    edge, pitch = practice.end_distance, practice.pitch
    half = edge + pitch * (_ROWS - 1) + edge + edge * Fraction(1, 2)
    maker = HoleMaker.of(HoleSize.model_construct(), practice)
    for face in (Face.TOP, Face.BOTTOM):
        fitting = _plate(line, lower, face, (thick, width, half, gage), maker, shop)
        lower.fittings.append(fitting)
        for group, shaft in (("lower holes", lower), ("upper holes", upper)):
            points = field_points(lower, fitting, frozenset({group}))
            shaft.drill(f"{face}, splice", face, points, maker, shop.division)
    grip = thick + stock.tf
    size = bolt(practice.bolt)
    names = tuple(fit.name for fit in lower.fittings if fit.name.endswith("splice plate"))
    lower.bolts.append(BoltSet(names, size.size, _ROWS * 4, grip, field=False))
    lower.reasons.append(
        Reason(
            f"splice plates {shop.say(thick)} x {shop.say(width)} x {shop.say(half * 2)} on both flanges",
            f"the shafts of {stock.designation} bear on each other; {_ROWS} rows at {shop.say(pitch)} to "
            f"each side of the joint at gage {shop.say(gage)}, {shop.say(edge)} to the plates' ends and "
            f"{shop.say(edge + edge * Fraction(1, 2))} to the joint",
            _OSHA,
        )
    )


def _plate(
    line: Line,
    lower: Carrier,
    face: Face,
    sizes: tuple[Length, Length, Length, Length],
    maker: HoleMaker,
    shop: Shop,
) -> Fitting:
    """A plate flat on a flange, half of it past the end of the lower shaft."""
    thick, width, half, gage = sizes
    edge, pitch = shop.practice.end_distance, shop.practice.pitch
    stock = plate_stock(thick, width, shop.system)
    across = ((width - gage) / 2, (width + gage) / 2)
    first = tuple(edge + pitch * number for number in range(_ROWS))
    lows = maker.grid(first, across)
    ups = maker.grid(tuple(half * 2 - x for x in first), across)
    groups = (
        HoleGroup("lower holes", Face.FACE, lows, maker.bolt, maker.kind),
        HoleGroup("upper holes", Face.FACE, ups, maker.bolt, maker.kind),
    )
    part = Part("", stock, grade_of(stock, None), half * 2, groups=groups)
    top = face is Face.TOP
    x = lower.part.length - half
    placement = (
        Placement((x, line.stock.d + thick, width / 2), (1, 0, 0), (0, 0, -1))
        if top
        else Placement((x, ZERO - thick, -(width / 2)), (1, 0, 0), (0, 0, 1))
    )
    return Fitting(f"{face} splice plate", FittingKind.PLATE, part, placement, face, None, Join.BOLTED)
