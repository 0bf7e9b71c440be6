"""What is known about a piece of stock, written out in its own system."""

from __future__ import annotations

from typing import NamedTuple

from gageline.steel.families import Measure
from gageline.steel.lookup import Stock
from gageline.steel.plate import Plate
from gageline.steel.section import Section
from gageline.units import Length, millimetres

__all__ = ["Fact", "facts"]


class Fact(NamedTuple):
    """One value of a section: its name, its text and its unit."""

    name: str
    value: str
    unit: str


_LENGTHS = (
    "d", "d_det", "bf", "bf_det", "tw", "tw_det", "tf", "tf_det", "t_nominal", "kdes", "kdet", "k1", "T",
    "gage", "gage_outer", "fillet", "toe", "taper_run", "corner",
)  # fmt: skip
# power of the length in each property, which is also how its unit is written
_POWERS = {
    "area": 2,
    "Ix": 4, "Zx": 3, "Sx": 3, "rx": 1, "Iy": 4, "Zy": 3, "Sy": 3, "ry": 1, "Iz": 4, "Sz": 3, "rz": 1,
    "tan_alpha": 0, "x_bar": 1, "y_bar": 1, "xp": 1, "yp": 1, "eo": 1, "J": 4, "Cw": 6, "C": 3, "ro": 1,
    "H": 0, "rts": 1, "ho": 1, "flange_slope": 0,
}  # fmt: skip
_PERIMETERS = ("PA", "PA2", "PB", "PC", "PD")
_KG_M = 0.45359237 / 0.3048  # kg/m in 1 lb/ft


def facts(stock: Stock) -> tuple[Fact, ...]:
    """Every known value of a piece of stock, in inches and pounds or in millimetres and kilograms.

    Args:
        stock: a section or a plate.

    Returns:
        Names, values and units, in the order of the tables; what is not known is left out.
    """
    metric = stock.system is Measure.EU
    weight = Fact("weight", f"{stock.weight * (_KG_M if metric else 1):.4g}", "kg/m" if metric else "lb/ft")
    if isinstance(stock, Plate):
        area = Fact("area", f"{stock.area * (6.4516 if metric else 1):.5g}", "cm2" if metric else "in2")
        sides = (("thickness", stock.thickness), ("width", stock.width))
        return (*(_dimension(name, side, metric=metric) for name, side in sides), area, weight)
    return (*_dimensions(stock, metric=metric), weight, *_properties(stock, metric=metric))


def _dimensions(section: Section, *, metric: bool) -> list[Fact]:
    found = ((name, getattr(section, name)) for name in _LENGTHS)
    return [_dimension(name, length, metric=metric) for name, length in found if length is not None]


def _dimension(name: str, length: Length, *, metric: bool) -> Fact:
    if metric:
        return Fact(name, millimetres(length, 2), "mm")
    return Fact(name, f"{length.inches:.4f}".rstrip("0").rstrip("."), "in")


def _properties(section: Section, *, metric: bool) -> list[Fact]:
    written = []
    for name, power in _POWERS.items():
        value = getattr(section, name)
        if value is not None:
            scale, unit = (2.54**power, "cm") if metric else (1.0, "in")
            label = "" if power == 0 else unit if power == 1 else f"{unit}{power}"
            written.append(Fact(name, _number(value * scale), label))
    for name in _PERIMETERS:
        value = getattr(section, name)
        if value is not None:
            written.append(Fact(name, _number(value * (25.4 if metric else 1.0)), "mm" if metric else "in"))
    return written


def _number(value: float) -> str:
    """Four significant digits without an exponent."""
    return f"{value:.0f}" if abs(value) >= 1000 else f"{value:.4g}"
