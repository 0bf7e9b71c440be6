"""Which standard a section is held to."""

from dataclasses import fields

import pytest

from gageline.quality.mill import MillLimits, mill_limits
from gageline.steel import Family, Section, find
from gageline.units import Length
from jobs import inches

LONG = inches("20'")


def sources(limits: MillLimits) -> dict[str, str]:
    held = ((field.name, getattr(limits, field.name)) for field in fields(limits))
    return {name: limit.source.split(",")[0].removesuffix("-16") for name, limit in held if limit is not None}


@pytest.mark.parametrize(
    ("stock", "source", "held"),
    [
        ("W16X26", "ASTM A6", "length square depth depth_max width tilt web_off camber sweep"),
        ("HP12X53", "ASTM A6", "length square depth depth_max width tilt web_off camber sweep"),
        ("S8X18.4", "ASTM A6", "length square depth width tilt web_off camber"),
        ("MC8X22.8", "ASTM A6", "length square depth width tilt camber"),
        ("L4X4X1/4", "ASTM A6", "length square depth width tilt camber sweep"),
        ("WT6X20", "ASTM A6", "square depth width camber sweep"),
        ("HSS6X4X1/4", "ASTM A500", "length depth width camber sweep"),
        ("HSS6.000X0.375", "ASTM A500", "length depth width camber sweep"),
        ("Pipe6STD", "ASTM A53", "depth width"),
        ("PL1/2X6", "ASTM A6", "depth camber"),
        ("PL1/2X10", "", ""),
        ("IPE 300", "EN 10034", "length depth width tilt web_off camber sweep"),
        ("HEM 200", "EN 10034", "length depth width tilt web_off camber sweep"),
        ("UPE 200", "EN 10279", "length depth width tilt camber sweep"),
        ("L 100x65x9", "EN 10056-2", "length depth width tilt camber sweep"),
    ],
)
def test_each_series_has_its_standard(stock: str, source: str, held: str) -> None:
    found = sources(mill_limits(find(stock), LONG))
    assert list(found) == held.split()
    assert set(found.values()) <= {source}


def test_every_series_but_plate_has_a_limit_of_its_depth() -> None:
    designations = {
        Family.W: "W16X26", Family.M: "M12.5X12.4", Family.S: "S8X18.4", Family.HP: "HP12X53",
        Family.C: "C8X11.5", Family.MC: "MC8X22.8", Family.L: "L4X4X1/4", Family.WT: "WT6X20",
        Family.MT: "MT5X4.5", Family.ST: "ST6X25", Family.HSS: "HSS6X4X1/4",
        Family.HSS_ROUND: "HSS6.000X0.375", Family.PIPE: "Pipe6STD", Family.IPE: "IPE 300",
        Family.HEA: "HEA 200", Family.HEB: "HEB 200", Family.HEM: "HEM 200", Family.UPN: "UPN 200",
        Family.UPE: "UPE 200", Family.L_EU: "L 100x65x9",
    }  # fmt: skip
    assert set(designations) == set(Family)
    for family, name in designations.items():
        section = find(name)
        assert isinstance(section, Section)
        assert section.family is family
        assert mill_limits(section, LONG).depth is not None


def test_a_column_is_straighter_than_a_long_beam() -> None:
    column = mill_limits(find("W12X53"), inches("45'"), as_column=True)
    beam = mill_limits(find("W12X53"), inches("45'"))
    assert column.camber is not None
    assert beam.camber is not None
    assert column.camber.over == inches("3/8")
    assert beam.camber.over == Length.from_inches(45) / 80
