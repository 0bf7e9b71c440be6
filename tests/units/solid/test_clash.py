from dataclasses import replace

import pytest

from gageline.part import (
    Assembly,
    Cope,
    End,
    Face,
    Fitting,
    FittingKind,
    Join,
    Placement,
    Severity,
    extent_y,
    extent_z,
)
from gageline.solid import TOLERANCE, clashes
from gageline.units import ZERO, Length, System
from pieces import ONE_OF_EACH, at, clip_angle, piece


def messages(assembly: Assembly, system: System = System.FT_IN) -> list[str]:
    return [finding.text() for finding in clashes(assembly, system)]


def plate_on(stock: str, into: Length = ZERO) -> Assembly:
    """A plate 1 in wide that lies along the near side of a stick, or is sunk into it."""
    main = piece(stock, "5'-0")
    near = extent_z(main.stock)[1]
    low = extent_y(main.stock)[1] / 2
    stand = Placement((at("6in"), low - at("1/2"), near + at("1/2") - into))
    fitting = Fitting(
        "bar", FittingKind.PLATE, piece("PL1/2X1", "4'-0", "p1"), stand, Face.NEAR, None, Join.WELDED
    )
    return Assembly(main, 1, (fitting,))


def test_an_angle_that_touches_the_web_is_no_clash() -> None:
    beam = piece("W16X26", "10'-0")
    assert messages(Assembly(beam, 1, (clip_angle(beam, length="9", low="3"),))) == []


def test_an_angle_that_runs_into_the_flange() -> None:
    beam = piece("W16X26", "10'-0")
    assembly = Assembly(beam, 1, (clip_angle(beam, length="9", low="7"),))
    # the upper 3/4 of the angle's web leg stands in the fillet and the flange, kdes 0.747 in all
    (found,) = messages(assembly)
    assert found == (
        'error: B1 left near angle: runs into the main part from 0" to 3 1/2" along the piece: '
        'the overlap is 3 1/2" long, 3/4" high and 5/16" across: move it, shorten it, or cut it to clear'
    )
    (metric,) = messages(assembly, System.MM)
    assert (
        "runs into the main part from 0 to 88.9 along the piece: the overlap is 88.9 long, 19 high" in metric
    )
    assert clashes(assembly)[0].severity is Severity.ERROR
    assert clashes(assembly)[0].code == "clash"


def test_where_the_flange_is_coped_there_is_room() -> None:
    cope = Cope(End.LEFT, Face.TOP, at("4in"), at("1 1/2"), at("1/2"))
    beam = piece("W16X26", "10'-0", copes=(cope,))
    assert messages(Assembly(beam, 1, (clip_angle(beam, length="7", low="7"),))) == []


@pytest.mark.parametrize("stock", [name for name in ONE_OF_EACH if name not in {"WT8X18", "W16X26"}])
def test_a_bar_along_any_stick_touches_or_clashes(stock: str) -> None:
    assert messages(plate_on(stock)) == []
    assert len(messages(plate_on(stock, into=at("1/8")))) == 1


def test_fittings_clash_with_each_other() -> None:
    beam = piece("W16X26", "10'-0")
    angle = clip_angle(beam)
    twin = replace(angle, name="left far angle")
    found = messages(Assembly(beam, 1, (angle, twin)))
    assert len(found) == 1
    assert found[0].startswith("error: B1 left far angle: runs into left near angle from")


def test_the_tolerance_is_a_volume() -> None:
    # 48 in long and 1 in wide: sunk in by 1/8192 in it overlaps by 0.006 in3, by 1/2048 in 0.023 in3
    assert clashes(plate_on("PL1/2X8", into=Length.from_inches(1 / 8192))) == ()
    sunk = plate_on("PL1/2X8", into=Length.from_inches(1 / 2048))
    assert TOLERANCE == 0.01
    assert len(clashes(sunk)) == 1
    assert clashes(sunk, tolerance=0.05) == ()
