import pytest

from gageline.job import default_practice
from gageline.layout import PartLayout, lay_out
from gageline.part import Assembly, Face, Part
from gageline.sheets.view import DOWNWARD, view_of
from gageline.units import System
from pieces import at, drilled, hole, piece


def laid(part: Part) -> PartLayout:
    return lay_out(Assembly(part, 1), default_practice(System.FT_IN), System.FT_IN).main


LONG = laid(piece(length="40'-0", groups=(drilled(Face.NEAR, hole('3"', '6"')),)))
LIMITS = (20.0, 180.0)


def test_a_long_beam_is_broken_and_still_fills_the_paper() -> None:
    view = view_of(LONG, (Face.NEAR,), LIMITS, 100.0)
    assert view.scale.gaps
    assert view.left == 20.0
    assert view.right == pytest.approx(180.0)
    assert view.scale.scale >= view.across
    assert view.scale.at(at('3"').mm) == pytest.approx(20 + 76.2 * view.scale.scale)


def test_a_short_piece_is_drawn_whole_in_true_shape() -> None:
    view = view_of(laid(piece("PL3/8X10", '13 1/2"', "g1")), (Face.FACE,), LIMITS, 100.0)
    assert not view.scale.gaps
    assert view.scale.scale == pytest.approx(view.across)


def test_a_short_deep_piece_is_stretched_for_its_readings() -> None:
    view = view_of(laid(piece("W44X335", '13"')), (Face.NEAR, Face.FAR), LIMITS, 60.0)
    assert view.right - view.left == pytest.approx(70.0)
    assert view.scale.scale > view.across


def test_faces_lie_as_they_unfold_seen_from_outside() -> None:
    view = view_of(LONG, (Face.NEAR,), LIMITS, 100.0)
    depth = LONG.part.stock.d.mm  # type: ignore[union-attr] # it is a section
    assert view.down(Face.NEAR, depth, 40.0) == pytest.approx(0.0)
    assert view.down(Face.FAR, depth, 40.0) == pytest.approx(40.0)  # rolled over, its top edge is below
    half = LONG.part.stock.bf.mm / 2  # type: ignore[union-attr] # it is a section
    assert view.down(Face.TOP, half, 10.0) == pytest.approx(10.0)  # near edge next to the near web
    assert view.down(Face.BOTTOM, half, 10.0) == pytest.approx(0.0)
    assert {Face.TOP, Face.FAR, Face.LEG_B} == DOWNWARD


def test_a_line_stops_at_every_break() -> None:
    view = view_of(LONG, (Face.NEAR,), LIMITS, 100.0)
    ((left, right),) = view.scale.gaps
    first, second = view.trace(Face.NEAR, [(0.0, 100.0), (LONG.part.length.mm, 100.0)], 40.0)
    assert first[0][0] == 20.0
    assert first[-1][0] == pytest.approx(left)
    assert second[0][0] == pytest.approx(right)
    backward = list(view.trace(Face.NEAR, [(LONG.part.length.mm, 100.0), (0.0, 100.0)], 40.0))
    assert [run[0][0] for run in backward] == pytest.approx([180.0, left])
    assert view.seen()[0][0] == 0.0
