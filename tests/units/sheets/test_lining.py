import pytest
import shapely

from gageline.sheets import Circle, Line, Polygon, Polyline, Role, broken_scale, extent
from gageline.sheets.lining import Lining, bore_outline, plain_scale
from gageline.sheets.sight import ELEVATION, look
from gageline.sheets.slabs import Bore, Slab

PLATE = Slab(2, shapely.box(0, 0, 100, 4), -1, 0, (Bore((5, 1), 1, 1, (1, 0)), Bore((50, 1), 1, 3, (1, 0))))


def test_a_view_at_a_plain_scale() -> None:
    lining = Lining(look([PLATE], ELEVATION), plain_scale(0, 100, 20, 2.0))
    assert lining.height == pytest.approx(8)
    assert lining.ends == pytest.approx((20, 220))
    assert lining.at(5, 1) == pytest.approx((30, 6))
    circles = [item for item in lining.items() if isinstance(item, Circle)]
    assert [(c.x, c.y, c.radius, c.role) for c in circles] == [(30, 6, 1, Role.FRAME)]


def test_what_a_break_takes_out_is_not_drawn() -> None:
    along = broken_scale([0, 5, 50, 100], 0, 120, wanted=2.0)
    assert along.gaps
    lining = Lining(look([PLATE], ELEVATION), along)
    for item in lining.items():
        if isinstance(item, Line) and item.role is Role.OUTLINE:
            for left, right in along.gaps:
                assert not min(item.x1, item.x2) < (left + right) / 2 < max(item.x1, item.x2)
    assert sum(isinstance(item, Polyline) and item.role is Role.BREAK for item in lining.items()) == 2 * len(
        along.gaps
    )


def test_a_slot_keeps_both_sizes_and_its_turn() -> None:
    slot = bore_outline((0, 0), 2, 6, (0, 1))
    assert isinstance(slot, Polygon)
    box = extent((slot,))
    assert (box.width, box.height) == pytest.approx((2, 6), abs=1e-6)
    assert bore_outline((0, 0), 2, 2, (1, 0)) == 1


def test_a_small_hidden_hole_is_its_cross_alone() -> None:
    cover = Slab(2, shapely.box(0, 0, 100, 4), 1, 2)
    lining = Lining(look([PLATE, cover], ELEVATION), plain_scale(0, 100, 0, 2.0))
    assert not [item for item in lining.items() if isinstance(item, Circle)]
