"""Footprints of welds on the faces of a web."""

from __future__ import annotations

import pytest

from gageline.part import Face
from gageline.strength.opposite import Footprint, stands_opposite

ONE = Footprint(Face.NEAR, (60.0, 64.0), (5.0, 14.0))


@pytest.mark.parametrize(
    ("other", "stands"),
    [
        (Footprint(Face.FAR, (60.0, 64.0), (5.0, 14.0)), True),
        (Footprint(Face.FAR, (63.0, 67.0), (1.0, 6.0)), True),
        (Footprint(Face.FAR, (64.0, 68.0), (5.0, 14.0)), False),
        (Footprint(Face.FAR, (60.0, 64.0), (14.0, 20.0)), False),
        (Footprint(Face.NEAR, (60.0, 64.0), (5.0, 14.0)), False),
        (Footprint(Face.TOP, (60.0, 64.0), (5.0, 14.0)), False),
    ],
)
def test_only_what_covers_the_same_steel_from_the_other_face_is_opposite(
    other: Footprint, stands: bool
) -> None:
    assert stands_opposite(ONE, [other]) is stands
    assert not stands_opposite(ONE, [])
