"""Laws of dimensions: no text on another, none on a leader, all inside, order kept."""

from __future__ import annotations

from itertools import chain as joined
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import LineString, STRtree
from shapely import Polygon as Shape

from gageline.errors import ValueProblem
from gageline.sheets import (
    Dimensions,
    Polyline,
    Reading,
    Side,
    Text,
    Writing,
    chain,
    extent,
    running,
    text_box,
    texts,
)

LIMITS = (10.0, 270.0)
BASE = 400.0

anywhere = st.floats(*LIMITS)
clustered = st.builds(
    lambda centre, shifts: [min(max(centre + s, LIMITS[0]), LIMITS[1]) for s in shifts],
    anywhere,
    st.lists(st.floats(0, 3), min_size=1, max_size=40),
)
coincident = st.builds(lambda at, n: [at] * n, anywhere, st.integers(1, 20))
places = st.one_of(
    st.lists(anywhere, min_size=1, max_size=60),
    st.lists(st.one_of(clustered, coincident), min_size=1, max_size=3).map(
        lambda groups: list(joined.from_iterable(groups))
    ),
)


def readings(ats: list[float]) -> list[Reading]:
    return [Reading(at, f"{i % 60}'-{i % 12} {2 * (i % 8) + 1}/16\"") for i, at in enumerate(sorted(ats))]


def check_clear(drawn: Dimensions, side: Side) -> None:
    found = list(texts(drawn.items))
    boxes = [Shape(text_box(text)) for text in found]
    tree = STRtree(boxes)
    for a, b in tree.query(boxes, predicate="intersects").T:
        assert a == b or boxes[a].intersection(boxes[b]).area < 1e-9, (found[a], found[b])
    leaders = [LineString(item.points) for item in drawn.items if isinstance(item, Polyline)]
    if leaders:
        assert tree.query(leaders, predicate="intersects").size == 0, "a leader runs into a text"
        assert STRtree(leaders).query(leaders, predicate="crosses").size == 0, "leaders cross"
    box = extent(tuple(found))
    low, high = (box.left, box.right) if side in {Side.ABOVE, Side.BELOW} else (box.top, box.bottom)
    assert LIMITS[0] - 1e-6 <= low
    assert high <= LIMITS[1] + 1e-6
    reach = {
        Side.ABOVE: BASE - box.top,
        Side.BELOW: box.bottom - BASE,
        Side.LEFT: BASE - box.left,
        Side.RIGHT: box.right - BASE,
    }[side]
    assert reach <= drawn.depth + 1e-6


@settings(max_examples=150, deadline=None)
@given(places, st.sampled_from(Side), st.sampled_from([8.0, 10.0, 12.0]))
def test_running_dimensions_never_collide(ats: list[float], side: Side, size: float) -> None:
    given_readings = readings(ats)
    drawn = running(given_readings, side, BASE, LIMITS, size=size)
    found = list(texts(drawn.items))
    assert [t.text for t in found] == [r.text for r in given_readings]
    check_clear(drawn, side)
    upright = side in {Side.ABOVE, Side.BELOW}
    rows: dict[float, list[float]] = {}
    for text in found:
        rows.setdefault(text.y if upright else text.x, []).append(text.x if upright else text.y)
    assert all(row == sorted(row) for row in rows.values())


@pytest.mark.parametrize("side", [Side.ABOVE, Side.LEFT])
def test_hundreds_of_readings_go_in_many_rows(side: Side) -> None:
    ats = [10 + i * 260 / 299 for i in range(300)]
    drawn = running(readings(ats), side, BASE, LIMITS)
    assert len(list(texts(drawn.items))) == 300
    check_clear(drawn, side)


@settings(max_examples=60, deadline=None)
@given(places, st.floats(5, 60), st.sampled_from(Writing))
def test_a_depth_is_kept_or_the_dimensions_are_refused(
    ats: list[float], depth: float, writing: Writing
) -> None:
    try:
        drawn = running(readings(ats), Side.ABOVE, BASE, LIMITS, depth=depth, writing=writing)
    except ValueProblem as problem:
        assert "do not fit" in str(problem)  # noqa: PT017 either outcome is lawful, each is checked
        return
    assert drawn.depth <= depth + 1e-9
    check_clear(drawn, Side.ABOVE)


@settings(max_examples=100, deadline=None)
@given(st.lists(anywhere, min_size=2, max_size=30), st.sampled_from(Side))
def test_chains_never_collide(points: list[float], side: Side) -> None:
    points = sorted(points)
    words = [f"{b - a:.2f}" for a, b in pairwise(points)]
    drawn = chain(points, words, side, BASE, LIMITS)
    assert sorted(t.text for t in texts(drawn.items)) == sorted(words)
    check_clear(drawn, side)


def test_a_text_wider_than_the_view_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"do not fit on 20\.0 mm"):
        running([Reading(5, "a note that is much too long")], Side.ABOVE, 50, (0, 20), writing=Writing.LEVEL)


def test_the_collision_check_sees_a_collision() -> None:
    on_top = Dimensions((Text(50, 390, "3"), Text(50.5, 390, "4")), 50)
    with pytest.raises(AssertionError):
        check_clear(on_top, Side.ABOVE)
