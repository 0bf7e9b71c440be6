"""Laws of broken views."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.sheets import broken_scale

features = st.lists(st.integers(0, 60 * 12 * 16), min_size=2, max_size=25, unique=True).map(
    lambda xs: [x / 16 for x in sorted(xs)]
)


@settings(max_examples=300, deadline=None)
@given(features, st.floats(60, 300), st.floats(0.05, 5))
def test_the_map_rises_stays_on_its_paper_and_keeps_scale_off_the_breaks(
    places: list[float], width: float, wanted: float
) -> None:
    scale = broken_scale(places, 15, width, wanted=wanted)
    on_paper = [scale.at(x) for x in places]
    assert all(a < b for a, b in pairwise(scale.paper))
    assert all(a < b for a, b in pairwise(scale.true))
    assert on_paper[0] == pytest.approx(15)
    assert on_paper[-1] <= 15 + width + 1e-6
    if scale.gaps:
        assert on_paper[-1] == pytest.approx(15 + width)
        assert scale.scale > width / (places[-1] - places[0])
    for (x1, x2), (p1, p2) in zip(pairwise(places), pairwise(on_paper), strict=True):
        cut = [gap for gap in scale.gaps if p1 < gap[0] < p2]
        if cut:
            assert p2 - p1 < (x2 - x1) * scale.scale
        else:
            assert p2 - p1 == pytest.approx((x2 - x1) * scale.scale)
        assert all(not gap[0] <= p <= gap[1] for gap in scale.gaps for p in (p1, p2))


@settings(max_examples=100, deadline=None)
@given(features, st.data())
def test_what_is_seen_of_a_line_and_the_gaps_make_the_whole(places: list[float], data: st.DataObject) -> None:
    scale = broken_scale(places, 0, 200, wanted=2)
    inside = st.floats(places[0], places[-1])
    start, end = sorted((data.draw(inside), data.draw(inside)))
    left, right = scale.at(start), scale.at(end)
    seen = sum(b - a for a, b in scale.pieces(start, end))
    hidden = sum(max(0.0, min(right, b) - max(left, a)) for a, b in scale.gaps)
    assert seen + hidden == pytest.approx(right - left, abs=1e-9)
