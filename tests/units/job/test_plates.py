from __future__ import annotations

import pytest

from gageline.job import JobProblems
from gageline.part import Assembly, BoltSet, Face, Weld, bounds
from gageline.steel import Plate
from gageline.units import ZERO
from jobs import fitting_of, inches, mm, piece_of, section_of

PLATE = '[[piece.plates]]\nx = "4\'-0"\nthickness = "3/8"\nwidth = "4"\nrows = 3\n'
STIFFENER = '[[piece.stiffeners]]\nx = "5\'-0"\nthickness = "3/8"\n'


def with_plate(more: str = "", stock: str = "W16x26") -> Assembly:
    return piece_of(PLATE + more, stock=stock)


def test_a_plate_across_the_web_hangs_by_its_drop() -> None:
    piece = with_plate('drop = "4"\n')
    section = section_of(piece)
    near, _ = section.tw.parts(2)
    x, y, z = bounds(piece.fittings[0])
    assert x == (inches("4'-0") - inches("3/16"), inches("4'-0") + inches("3/16"))
    assert y[1] == section.d - inches("4") + inches("1 1/4")
    assert y[1] - y[0] == inches("8 1/2")
    assert z == (near, near + inches("4"))


@pytest.mark.parametrize("stock", ["W8x31", "C12x20.7", "HSS6x6x3/8", "HSS6.000x0.375"])
@pytest.mark.parametrize("on", ["top", "near", "bottom", "far"])
def test_a_plate_along_stands_out_from_every_face(stock: str, on: str) -> None:
    piece = with_plate(f'on = "{on}"\nruns = "along"\n', stock)
    section = section_of(piece)
    x, y, z = bounds(piece.fittings[0])
    assert x == (inches("4'-0") - inches("4 1/4"), inches("4'-0") + inches("4 1/4"))
    outside = {
        "top": (y, (section.d, section.d + inches("4"))),
        "bottom": (y, (-inches("4"), ZERO)),
        "near": (z, (z[0], z[0] + inches("4"))),
        "far": (z, (z[1] - inches("4"), z[1])),
    }
    found, expected = outside[on]
    assert found == expected
    middle = sum((y[0] + y[1]).ticks for _ in range(1)) if on in {"near", "far"} else 0
    assert middle in {0, section.d.ticks, section.d.ticks + 1, section.d.ticks - 1}


def test_a_plate_across_a_flange_stands_over_the_middle_of_the_flange() -> None:
    piece = with_plate('on = "top"\nruns = "across"\noffset = "1/2"\n', "C12x20.7")
    section = section_of(piece)
    _, _, z = bounds(piece.fittings[0])
    assert z[1] - z[0] == inches("8 1/2")
    assert abs((z[0] + z[1]).ticks - (-section.bf + inches("1")).ticks) <= 1


def test_a_plate_has_its_weld_and_its_field_bolts() -> None:
    piece = with_plate('weld = "3/16"\n')
    name = "near plate, 4'-0\" from left"
    assert piece.welds == (
        Weld(name, inches("3/16"), inches("8 1/2"), 2, "both sides of the plate", both_sides=True),
    )
    assert piece.bolts == (BoltSet((name,), "3/4", 3, None, field=True),)


def test_plain_holes_bring_no_bolts() -> None:
    assert with_plate('diameter = "1"\n').bolts == ()


def test_a_plate_from_the_centre_names_its_side() -> None:
    piece = piece_of(PLATE.replace("4'-0", "-6") + 'from = "centre"\n')
    assert piece.fittings[0].name == 'near plate, 6" left of the centre'


def test_drop_does_not_place_a_plate_on_a_flange() -> None:
    with pytest.raises(
        JobProblems, match="drop does not place a plate that runs along the top face: give offset"
    ):
        with_plate('on = "top"\ndrop = "3"\n')


def test_holes_beyond_the_plate_are_refused() -> None:
    with pytest.raises(
        JobProblems, match='gage 4" is not less than width 4": give the distance from the face'
    ):
        with_plate('gage = "4"\n')
    with pytest.raises(
        JobProblems, match='length 7" ends before the last of 3 rows, at 7 1/4": give a longer plate'
    ):
        with_plate('length = "7"\n')


def test_no_plate_on_an_angle() -> None:
    with pytest.raises(JobProblems, match="takes no plate on it: plates stand on W, C, tee and HSS"):
        with_plate(stock="L4x4x1/4")


def test_stiffeners_fill_the_web_on_both_sides() -> None:
    piece = piece_of(STIFFENER)
    section = section_of(piece)
    near, far = (fitting_of(piece, f"{side} stiffener, 5'-0\" from left") for side in ("near", "far"))
    web, _ = section.tw.parts(2)
    flange, _ = section.bf.parts(2)
    # 15.7 - 2 * 0.345 = 15.01 in between the flanges, 15 in as it is cut, tight to the top flange
    assert bounds(near)[1] == (section.d - section.tf - inches("15"), section.d - section.tf)
    # (5.50 - 0.25) / 2 = 2 5/8 in to the flange's edge, 2 1/2 in as plate comes
    assert bounds(near)[2] == (web, web + inches("2 1/2"))
    assert flange - web == inches("2 5/8")
    assert near.part == far.part
    assert near.on is Face.NEAR


def test_the_clip_of_a_stiffener_clears_the_fillet() -> None:
    """W16X26: kdet 1 1/16, tf 0.345, k1 3/4, tw 1/4: 0.72 in up and 5/8 out, so 3/4 in."""
    piece = piece_of(STIFFENER)
    assert {clip.along for clip in piece.fittings[0].part.clips} == {inches("3/4")}
    assert piece.welds[0].length == piece.fittings[0].part.length - inches("3/4") * 2
    stock = piece.fittings[0].part.stock
    assert isinstance(stock, Plate)
    assert piece.welds[1].length == stock.width - inches("3/4")
    assert [weld.runs for weld in piece.welds] == [2, 4, 2, 4]


def test_a_short_stiffener_is_welded_to_the_top_flange_only() -> None:
    piece = piece_of(STIFFENER + 'sides = "near"\nlength = "10"\n')
    assert piece.welds[1].where == "both sides, to the top flange"
    assert piece.welds[1].runs == 2


def test_a_channel_has_its_stiffener_on_the_far_side() -> None:
    piece = piece_of(STIFFENER, stock="C12x20.7")
    assert [fitting.name for fitting in piece.fittings] == ["far stiffener, 5'-0\" from left"]
    section = section_of(piece)
    # 2.94 - 0.282 leaves 2.66 in (AISC Manual Table 1-5), 2 1/2 in as plate comes
    assert bounds(piece.fittings[0])[2] == (-section.tw - inches("2 1/2"), -section.tw)


def test_a_clip_that_leaves_nothing_is_refused_in_millimetres() -> None:
    lines = "stiffeners = [{ x = 900, thickness = 8, clip = 80 }]"
    with pytest.raises(JobProblems, match=r"clip 80 mm leaves nothing of a stiffener 70 mm by 278 mm"):
        piece_of(lines, stock="IPE 300", length="4000", units="mm")
    assert piece_of(lines.replace("80", "20"), stock="IPE 300", length="4000", units="mm").fittings
    assert (
        mm(20)
        == piece_of(lines.replace("80", "20"), stock="IPE 300", length="4000", units="mm")
        .fittings[0]
        .part.clips[0]
        .along
    )


def test_a_stiffener_between_tapered_flanges_clears_them_past_its_clip() -> None:
    """S12X31.8 tapers 1 in 6 (ASTM A6): the flange is thicker near the web than where tf is measured."""
    piece = piece_of(STIFFENER, stock="S12x31.8")
    section = section_of(piece)
    stiffener = piece.fittings[0].part
    run = (section.bf.inches - section.tw.inches) / 4 - stiffener.clips[0].across.inches
    flange = section.tf.inches + run / 6
    assert 0 <= section.d.inches - 2 * flange - stiffener.length.inches < 1 / 16
    assert stiffener.length < section.d - section.tf * 2


def test_a_stiffener_is_as_wide_as_plate_comes_in_the_units_of_the_job() -> None:
    """IPE 300: (150 - 7.1) / 2 is 71.45 mm, 70 mm in steps of 5; HEA 200: (200 - 6.5) / 2 is 96.75 mm."""
    for stock, wide in (("IPE 300", 70), ("HEA 200", 95)):
        lines = "stiffeners = [{ x = 900, thickness = 8 }]"
        plate = piece_of(lines, stock=stock, length="4000", units="mm").fittings[0].part.stock
        assert isinstance(plate, Plate)
        assert plate.width == mm(wide)
    given = piece_of(STIFFENER + 'width = "2 3/8"\n').fittings[0].part.stock
    assert isinstance(given, Plate)
    assert given.width == inches("2 3/8")
