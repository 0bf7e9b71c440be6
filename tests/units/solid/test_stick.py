import numpy as np
import pytest

from gageline.errors import ValueProblem
from gageline.part import SQUARE_CUT, EndCut, extent_y, extent_z
from gageline.solid.stick import cross_section, stick
from gageline.steel import find
from gageline.units import Slope, parse_slope
from pieces import ONE_OF_EACH, piece

STEEP = parse_slope("4 in 12")


@pytest.mark.parametrize("name", [*ONE_OF_EACH, "S12X35", "IPE 300", "UPN 200", "L 100x65x9"])
def test_the_outline_lies_where_the_part_has_it(name: str) -> None:
    stock = find(name)
    outer = cross_section(stock)[0]
    limits = [length.inches for length in (*extent_y(stock), *extent_z(stock))]
    low, high = outer.min(axis=0), outer.max(axis=0)
    # chords of a tube stand out 0.0004 of the radius
    assert [low[0], high[0], low[1], high[1]] == pytest.approx(limits, abs=0.002)


def test_a_channels_back_looks_at_the_reader_and_an_angles_heel_is_low() -> None:
    channel = cross_section(find("C8X11.5"))[0]
    # at mid height only the web is there, from the back at z = 0 to its inside
    assert sorted({round(z, 4) for y, z in channel if 0.77 < y < 7.23}) == [-0.22]
    angle = cross_section(find("L6X4X1/2"))[0]
    assert any(np.allclose(point, (0, 0)) for point in angle)
    assert not any(np.allclose(point, (6, -4), atol=1) for point in angle)


def test_a_tees_flange_is_on_top() -> None:
    tee = cross_section(find("WT8X18"))[0]
    assert {round(y, 2) for y, z in tee if abs(z) > 1} == {7.5, 7.93}


def test_hollow_sections_have_two_lines() -> None:
    assert len(cross_section(find("HSS6X6X3/8"))) == len(cross_section(find("Pipe6STD"))) == 2
    assert len(cross_section(find("W16X26"))) == 1


# Volumes by hand: a prism less the wedges that the end cuts take off.
@pytest.mark.parametrize(
    ("left", "right", "lost"),
    [
        (SQUARE_CUT, SQUARE_CUT, 0.0),
        (EndCut(bevel=STEEP), SQUARE_CUT, 12 * 4 / 2 * 0.5),
        (EndCut(bevel=STEEP), EndCut(bevel=-STEEP), 12 * 4 * 0.5),
        (SQUARE_CUT, EndCut(mitre=STEEP), 0.5 * (0.5 / 3) / 2 * 12),
        # both: the offsets of the two leans add up over the whole section
        (SQUARE_CUT, EndCut(bevel=STEEP, mitre=STEEP), 12 * 4 / 2 * 0.5 + 0.5 * (0.5 / 3) / 2 * 12),
    ],
)
def test_end_cuts_of_a_plate(left: EndCut, right: EndCut, lost: float) -> None:
    plate = piece("PL1/2X12", "2'-0", left=left, right=right)
    assert stick(plate).volume() == pytest.approx(24 * 12 * 0.5 - lost, abs=1e-4)


@pytest.mark.parametrize("bevel", [STEEP, -STEEP])
def test_a_bevelled_beam_reaches_its_length_at_the_longer_flange(bevel: Slope) -> None:
    beam = piece("W16X26", "10'-0", left=EndCut(bevel=bevel), right=EndCut(bevel=bevel))
    low_x, low_y, low_z, high_x, high_y, high_z = stick(beam).bounding_box()
    assert (low_x, low_y, low_z) == pytest.approx((0, 0, -2.75), abs=1e-5)
    assert (high_x, high_y, high_z) == pytest.approx((120, 15.7, 2.75), abs=1e-5)
    vertices = stick(beam).to_mesh64().vert_properties
    short = vertices[np.abs(vertices[:, 1] - (15.7 if bevel.ratio < 0 else 0)) < 1e-6]
    assert short[:, 0].min() == pytest.approx(15.7 / 3, abs=1e-4)
    assert short[:, 0].max() == pytest.approx(120 - 15.7 / 3, abs=1e-4)


def test_a_positive_mitre_leaves_the_near_side_longer() -> None:
    box = piece("HSS6X6X3/8", "5'-0", left=EndCut(mitre=STEEP))
    vertices = stick(box).to_mesh64().vert_properties
    near, far = (vertices[np.abs(vertices[:, 2] - z) < 1e-6][:, 0].min() for z in (3, -3))
    assert (near, far) == pytest.approx((0, 2), abs=1e-4)


def test_end_cuts_that_cross_leave_no_stick() -> None:
    part = piece("W16X26", "0'-10", left=EndCut(bevel=STEEP), right=EndCut(bevel=STEEP))
    with pytest.raises(ValueProblem, match="part B1 has end cuts that cross: give a longer part"):
        stick(part)
