from __future__ import annotations

from gageline.steel import Fact, Section, all_sections, facts, find
from gageline.units import Unit


def by_name(text: str, units: Unit = Unit.INCH) -> dict[str, tuple[str, str]]:
    return {name: (value, unit) for name, value, unit in facts(find(text, units=units))}


def test_an_american_section_is_written_in_inches_and_pounds() -> None:
    found = by_name("W16X26")
    assert found["d"] == ("15.7", "in")
    assert found["kdet"] == ("1.0625", "in")
    assert found["weight"] == ("26", "lb/ft")
    assert found["Ix"] == ("301", "in4")
    assert found["Cw"] == ("565", "in6")
    assert found["PD"] == ("42.4", "in")
    assert found["flange_slope"] == ("0", "")


def test_a_european_section_is_written_in_its_own_units() -> None:
    found = by_name("IPE 300")
    assert found["d"] == ("300", "mm")
    assert found["tf"] == ("10.7", "mm")
    assert found["weight"] == ("42.2", "kg/m")
    assert found["Ix"] == ("8356", "cm4")
    assert found["Zx"] == ("628.4", "cm3")
    assert found["PD"] == ("900", "mm")


def test_what_is_not_known_is_left_out() -> None:
    assert "kdet" not in by_name("HSS6X6X3/8")
    assert "Cw" not in by_name("L 100x100x10")


def test_a_plate_is_written_by_its_sides() -> None:
    assert facts(find("PL1/2x8")) == (
        Fact("thickness", "0.5", "in"),
        Fact("width", "8", "in"),
        Fact("area", "4", "in2"),
        Fact("weight", "13.61", "lb/ft"),
    )


def test_a_metric_plate_is_written_in_millimetres() -> None:
    assert facts(find("PL12x200", units=Unit.MM)) == (
        Fact("thickness", "12", "mm"),
        Fact("width", "200", "mm"),
        Fact("area", "24", "cm2"),
        Fact("weight", "18.84", "kg/m"),
    )


UNITS = {"", "in", "in2", "in3", "in4", "in6", "lb/ft", "mm", "cm", "cm2", "cm3", "cm4", "cm6", "kg/m"}


def test_every_value_of_every_section_is_a_plain_number() -> None:
    for section in all_sections():
        for name, value, unit in facts(section):
            assert float(value) != float("inf"), (section.designation, name)
            assert "e" not in value or float(value) < 1e-3, (section.designation, name, value)
            assert unit in UNITS


def test_no_known_number_is_forgotten() -> None:
    text_fields = {"designation", "family", "system", "edition", "note"}
    for section in (find("W16X26"), find("L4X3X1/4"), find("HSS6X6X3/8"), find("UPN 200")):
        assert isinstance(section, Section)
        known = {name for name in Section.__dataclass_fields__ if getattr(section, name) is not None}
        assert known - text_fields <= {name for name, _, _ in facts(section)}
