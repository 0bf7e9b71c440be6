from dataclasses import replace

import pytest

from gageline.part import (
    Assembly,
    Cope,
    End,
    Face,
    FittingKind,
    Placement,
    bounds,
    check_assembly,
    foot,
    foot_across,
    lean,
    lean_across,
)
from gageline.units import System
from pieces import at, clip_angle, drilled, hole, leaning_aside, leaning_plate, piece


def messages(assembly: Assembly, system: System = System.FT_IN) -> list[str]:
    return [finding.text() for finding in check_assembly(assembly, system)]


def test_the_box_of_a_fitting_where_it_stands() -> None:
    beam = piece("W16X26")
    x, y, z = bounds(clip_angle(beam, length="9", low="3"))
    assert x == (-at("1/2"), at("3 1/2"))
    assert y == (at("3in"), at("12in"))
    assert z[0] == at("1/8")


@pytest.mark.parametrize("on", [Face.NEAR, Face.FAR])
@pytest.mark.parametrize("toward", [1, -1])
def test_a_leaning_plate_touches_the_web_over_less_than_its_box(toward: int, on: Face) -> None:
    plate = leaning_plate(toward, on)
    assert float(lean(plate).ratio) == pytest.approx(0.75 * toward)
    low, high = foot(plate, piece().stock)
    assert (high - low).inches == pytest.approx(0.375 / 0.8, abs=1e-3)  # its thickness, cut aslant
    assert min(abs(low - at("5'")), abs(high - at("5'"))).inches < 1e-3  # where its corner stands
    box = bounds(plate)[0]
    assert (box[1] - box[0]).inches == pytest.approx(5 * 0.6 + 0.375 * 0.8, abs=1e-3)


@pytest.mark.parametrize("stock", ["HSS6X6X3/8", "W10X49"])
@pytest.mark.parametrize("on", [Face.TOP, Face.BOTTOM, Face.NEAR, Face.FAR])
@pytest.mark.parametrize("toward", [1, -1])
def test_a_plate_that_leans_across_touches_less_than_its_box_covers(
    toward: int, on: Face, stock: str
) -> None:
    plate = leaning_aside(on, toward, stock)
    assert not lean(plate)
    assert float(lean_across(plate).ratio) == pytest.approx(0.75 * toward)
    main = piece(stock).stock
    assert foot(plate, main) == (at("5'"), at("5'-9"))
    low, high = foot_across(plate, main)
    assert (high - low).inches == pytest.approx(0.375 / 0.8, abs=1e-3)
    middle = at("0") if on in {Face.TOP, Face.BOTTOM} else at("3")
    assert min(abs(low - middle), abs(high - middle)).inches < 1e-3


def test_what_stands_square_or_lies_flat_does_not_lean() -> None:
    square = replace(
        leaning_plate(1), placement=Placement((at("5'"), at("3"), at("1/8")), (0, 0, 1), (0, 1, 0))
    )
    angle = clip_angle(piece())
    for fitting in (square, angle, replace(leaning_plate(1), on=None)):
        assert not lean(fitting)
        assert not lean_across(fitting)
        assert foot(fitting, piece().stock) == bounds(fitting)[0]
        assert foot_across(fitting, piece().stock) == bounds(fitting)[1]


# W16X26: d = 15.7, kdes = 0.747 (AISC Manual Table 1-1), so the flat of the web runs from 0.747 to 14.953.
def test_an_angle_in_the_flat_of_the_web() -> None:
    assert messages(Assembly(piece(), 1, (clip_angle(piece(), length="9", low="3"),))) == []


@pytest.mark.parametrize(
    ("low", "flange", "over", "mm"),
    [("1/2", "bottom", '1/4"', "6.3"), ("6 1/2", "top", '35/64"', "13.9")],
)
def test_an_angle_that_rides_up_a_fillet(low: str, flange: str, over: str, mm: str) -> None:
    assembly = Assembly(piece(), 1, (clip_angle(piece(), length="9", low=low),))
    say = "warning: B1 left near angle: runs {} into the fillet of the {} flange: "
    remedy = "shorten it, move it, or grind its corner to clear"
    assert messages(assembly) == [say.format(over, flange) + remedy]
    assert messages(assembly, System.MM) == [say.format(mm, flange) + remedy]


def test_where_the_flange_is_coped_there_is_no_fillet() -> None:
    cope = Cope(End.LEFT, Face.TOP, at("4in"), at("1 1/2"), at("1/2"))
    angle = clip_angle(piece(), length="9", low="6 1/2")
    assert messages(Assembly(piece(copes=(cope,)), 1, (angle,))) == []
    short = replace(cope, length=at("2in"))
    assert len(messages(Assembly(piece(copes=(short,)), 1, (angle,)))) == 1


def test_the_edge_of_a_tees_stem_has_no_fillet() -> None:
    tee = piece("WT8X18")
    angle = clip_angle(tee, length="6", low="0")
    assert messages(Assembly(tee, 1, (angle,))) == []
    high = clip_angle(tee, length="6", low="1 1/2")
    assert "into the fillet of the top flange" in messages(Assembly(tee, 1, (high,)))[0]


def test_only_what_lies_on_a_web_is_looked_at() -> None:
    angle = clip_angle(piece(), length="9", low="1/2")
    assert messages(Assembly(piece(), 1, (replace(angle, kind=FittingKind.STIFFENER),))) == []
    assert messages(Assembly(piece(), 1, (replace(angle, on=Face.TOP),))) == []
    assert messages(Assembly(piece("HSS6X6X3/8"), 1, (angle,))) == []


def test_equal_fittings_are_reported_once_and_after_the_main_part() -> None:
    off = drilled(Face.NEAR, hole("20'-0", "8"))
    on_angle = (drilled(Face.LEG_A, hole("20", "3"), name="legs"),)
    near = clip_angle(piece(), holes=on_angle)
    assembly = Assembly(piece(groups=(off,)), 1, (near, replace(near, name="left far angle")))
    found = messages(assembly)
    assert len(found) == 2
    assert found[0].startswith("error: B1 web, hole at 20'-0\": lies outside the part")
    assert found[1].startswith("error: a1 legs, hole at 1'-8\": lies outside the part")
