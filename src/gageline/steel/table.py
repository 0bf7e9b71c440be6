"""The section tables read from the data files, a line at a time and once only."""

from __future__ import annotations

import csv
from collections.abc import Callable
from fractions import Fraction
from functools import cache
from importlib.resources import files
from typing import Any

from gageline.steel.families import Family, Measure, Profile, profile_of
from gageline.steel.outline import fillet_radius
from gageline.steel.section import Section
from gageline.units import Length

__all__ = ["lines", "read_csv", "section"]

Line = dict[str, str]

_US_LENGTHS = {
    "d": "d_in", "bf": "bf_in", "tw": "tw_in", "tf": "tf_in", "d_det": "d_det_in", "bf_det": "bf_det_in",
    "tw_det": "tw_det_in", "tf_det": "tf_det_in", "t_nominal": "t_nominal_in", "kdes": "kdes_in",
    "kdet": "kdet_in", "k1": "k1_in", "T": "t_clear_in", "gage": "gage_in", "gage_outer": "gage_outer_in",
}  # fmt: skip
_EU_LENGTHS = {
    "d": "d_mm", "bf": "bf_mm", "tw": "tw_mm", "tf": "tf_mm", "taper_run": "taper_run_mm",
    "fillet": "root_mm", "toe": "toe_mm", "kdes": "kdes_mm", "kdet": "kdes_mm", "k1": "k1_mm",
    "T": "t_clear_mm",
}  # fmt: skip
_US_NUMBERS = {
    "weight": "weight_lb_ft", "area": "a_in2", "Ix": "ix_in4", "Zx": "zx_in3", "Sx": "sx_in3", "rx": "rx_in",
    "Iy": "iy_in4", "Zy": "zy_in3", "Sy": "sy_in3", "ry": "ry_in", "x_bar": "x_bar_in", "y_bar": "y_bar_in",
    "eo": "eo_in", "xp": "xp_in", "yp": "yp_in", "Iz": "iz_in4", "Sz": "sz_in3", "rz": "rz_in",
    "tan_alpha": "tan_alpha", "J": "j_in4", "Cw": "cw_in6", "C": "c_in3", "ro": "ro_in", "H": "h_flexural",
    "rts": "rts_in", "ho": "ho_in", "PA": "pa_in", "PA2": "pa2_in", "PB": "pb_in", "PC": "pc_in",
    "PD": "pd_in",
}  # fmt: skip
_MM, _CM = 1 / 25.4, 1 / 2.54
_LB_FT = 0.3048 / 0.45359237  # lb/ft in 1 kg/m
_EU_NUMBERS = {
    "weight": ("weight_kg_m", _LB_FT), "area": ("a_cm2", _CM**2),
    "Ix": ("ix_cm4", _CM**4), "Zx": ("zx_cm3", _CM**3), "Sx": ("sx_cm3", _CM**3), "rx": ("rx_cm", _CM),
    "Iy": ("iy_cm4", _CM**4), "Zy": ("zy_cm3", _CM**3), "Sy": ("sy_cm3", _CM**3), "ry": ("ry_cm", _CM),
    "x_bar": ("x_bar_cm", _CM), "y_bar": ("y_bar_cm", _CM), "eo": ("eo_cm", _CM),
    "Iz": ("iz_cm4", _CM**4), "rz": ("rz_cm", _CM),
    "tan_alpha": ("tan_alpha", 1.0), "J": ("j_cm4", _CM**4), "Cw": ("cw_cm6", _CM**6),
    "PA": ("pa_mm", _MM), "PB": ("pb_mm", _MM), "PC": ("pc_mm", _MM), "PD": ("pd_mm", _MM),
}  # fmt: skip


def read_csv(name: str) -> list[Line]:
    """The lines of one data file of the room, as dictionaries of text."""
    text = files("gageline.steel").joinpath("data", name).read_text(encoding="utf-8")
    return list(csv.DictReader(text.splitlines()))


@cache
def lines(system: Measure) -> dict[str, Line]:
    """The section table of one system by designation, as text.

    Args:
        system: US or EU.

    Returns:
        Lines in the order of the data file.
    """
    return {line["designation"]: line for line in read_csv(f"{system}_shapes.csv")}


@cache
def section(system: Measure, designation: str) -> Section:
    """One section of the tables by its exact designation."""
    line = lines(system)[designation]
    return _us(line) if system is Measure.US else _eu(line)


def _lengths(line: Line, columns: dict[str, str], make: Callable[[Fraction], Length]) -> dict[str, Length]:
    return {field: make(Fraction(line[column])) for field, column in columns.items() if line[column]}


def _us(line: Line) -> Section:
    family = Family(line["family"])
    lengths = _lengths(line, _US_LENGTHS, Length.from_inches)
    numbers = {field: float(line[column]) for field, column in _US_NUMBERS.items() if line[column]}
    slope = _slope(line)
    derived = _us_fillet(profile_of(family), slope or 0.0, lengths)
    fields: dict[str, Any] = {**lengths, **derived, **numbers}
    return Section(
        designation=line["designation"],
        family=family,
        system=Measure.US,
        edition=f"AISC Shapes Database {line['edition']}",
        flange_slope=slope,
        note=line["note"],
        **fields,
    )


def _us_fillet(profile: Profile, slope: float, lengths: dict[str, Length]) -> dict[str, Length]:
    """Fillet radius and taper run, which the American tables leave to be derived.

    The fillet ends at kdes on the web, so its radius follows from kdes and the flange thickness at the
    web; tf is the thickness at the middle of the flange's overhang.
    """
    tf, kdes = lengths["tf"], lengths.get("kdes")
    if kdes is None:
        return {}
    if not slope:
        return {"fillet": kdes - tf}
    run = (lengths["bf"] - lengths["tw"]) / (2 if profile is Profile.CHANNEL else 4)
    radius = fillet_radius(kdes.inches, tf.inches + slope * run.inches, slope)
    return {"taper_run": run, "fillet": Length.from_inches(radius)}


def _slope(line: Line) -> float | None:
    return float(Fraction(line["slope"])) if line["slope"] else None


def _eu(line: Line) -> Section:
    lengths = _lengths(line, _EU_LENGTHS, Length.from_mm)
    numbers = {
        field: float(line[column]) * factor for field, (column, factor) in _EU_NUMBERS.items() if line[column]
    }
    fields: dict[str, Any] = {**lengths, **numbers}
    return Section(
        designation=line["designation"],
        family=Family(line["family"]),
        system=Measure.EU,
        edition=line["edition"],
        flange_slope=_slope(line),
        note=line["note"],
        **fields,
    )
