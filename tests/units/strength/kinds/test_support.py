"""The supporting member where a connection stands on it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import EXAMPLES, bolts
from gageline.strength import Method, Support, SupportFace
from gageline.strength.kinds import support_left_out
from gageline.strength.kinds.support import shared_bolts, support_ply

A4 = EXAMPLES["II.A-4"]


def girder(**changes: object) -> Support:
    assert A4.support is not None
    return replace(A4.support, **changes)  # type: ignore[arg-type] # any field


def left_out(support: Support | None, N: float = 0.0) -> set[str]:
    found = {item.what for item in support_left_out(replace(A4, support=support, N=N))}
    return found - {"structural integrity (Section B3.9)", "seismic detailing"}


@pytest.mark.parametrize(
    ("face", "what"),
    [
        (SupportFace.GIRDER_WEB, {"torsion of the supporting member"}),
        (SupportFace.COLUMN_FLANGE, set()),
        (SupportFace.COLUMN_WEB, {"bending of the column web out of its plane"}),
        (SupportFace.WALL, {"bending of the wall of the hollow support"}),
    ],
)
def test_what_is_left_out_of_each_face(face: SupportFace, what: set[str]) -> None:
    assert left_out(girder(face=face, both_faces=False)) == what


def test_what_stands_on_the_other_side_of_a_web_is_not_known_without_a_frame() -> None:
    other = "a beam on the other side of the supporting web"
    assert other in left_out(girder())
    assert other not in left_out(girder(face=SupportFace.COLUMN_FLANGE))
    assert other not in left_out(girder(both_faces=True))


def test_a_beam_on_the_other_side_takes_the_torsion_away() -> None:
    assert left_out(girder(opposite=10.0, opposite_rows=3, both_faces=False)) == set()


def test_an_axial_force_pulls_the_face_and_an_unknown_support_is_said() -> None:
    pulled = left_out(girder(face=SupportFace.COLUMN_FLANGE), N=5.0)
    assert pulled == {"bending of the support's face that the axial force pulls"}
    assert left_out(None) == {"the supporting member"}


def test_a_support_bears_for_a_whole_row() -> None:
    joint = bolts(3, 3.0, 2.0)
    (ply,) = support_ply(girder(), joint, 2)
    assert (ply.t, ply.edge) == (0.8, None)
    assert support_ply(None, joint, 2) == ()


def test_bolts_that_carry_two_beams() -> None:
    """60 kips on 3 rows of pairs and 30 on 2: 10 + 7.5 a bolt; 0.75 54 0.4418 2 = 35.8 against
    0.75 2.4 0.75 0.400 65 = 35.1 kips."""
    shared = replace(A4, support=girder(opposite=30.0, opposite_rows=2))
    (check,) = shared_bolts(shared, 2, Method.LRFD).checks
    assert check.demand == pytest.approx(17.5)
    assert check.capacity == pytest.approx(35.1)
    assert not shared_bolts(A4, 2, Method.LRFD).checks
