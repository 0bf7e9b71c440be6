"""The foot of a single plate on the face of a column."""

from __future__ import annotations

import math

import pytest

from assembling import detailed
from gageline.detail import Detailed
from gageline.part import End, Side


def askew(
    degrees: float, stock: str = "HSS6X6X3/8", beam: str = "W12X26", turn: int = 0, **start: object
) -> Detailed:
    """The beam B1 from a column at so many degrees in the plan to nothing."""
    out = 120 * math.tan(math.radians(degrees))
    member = {
        "name": "B1",
        "stock": beam,
        "from": "1/A",
        "to": {"point": "1/B", "x": f"{out:.6f}"},
        "top": 144,
        "start": {"connection": "single plate"} | start,
        "end": {"connection": "free"},
    }
    column = {"name": "P", "at": "1/A", "stock": stock, "base": 0, "top": 240, "turn": turn}
    return detailed(
        {
            "grid": {"x": {"names": ["1"]}, "y": {"names": ["A", "B"], "spacing": [120]}},
            "column": [column],
            "member": [member],
        }
    )


def side(result: Detailed) -> tuple[str, Side]:
    joint = result.joints["B1", End.LEFT]
    return joint.kind, joint.side


@pytest.mark.parametrize("beam", ["W12X26", "HSS8X4X1/4"])
def test_a_plate_goes_on_the_other_side_where_its_foot_would_stand_beside_the_flat(beam: str) -> None:
    """HSS6X6X3/8: flat to 3 less twice 0.349, 2.302; at 30 degrees the line meets it 1.73 off the middle."""
    assert side(askew(0, beam=beam)) == ("single plate", Side.NEAR)
    kinds = {side(askew(sign * 30, beam=beam)) for sign in (1, -1)}
    assert kinds == {("single plate", Side.NEAR), ("single plate", Side.FAR)}


def test_why_a_plate_is_on_the_other_side() -> None:
    (wrong,) = [angle for angle in (30, -30) if side(askew(angle))[1] is Side.FAR]
    (why,) = [one for one in askew(wrong).reasons["B1"] if one.decision.startswith("plate on")]
    # 3 tan 30 = 1.732; web 0.23, half, and plate 3/8, over cos 30: 0.566; weld 1/4
    assert why.because == (
        'on the near side the foot of its plate and the weld 1/4" would reach 2 35/64" from the middle of P, '
        'past the flat of its face, 2 19/64"'
    )


def test_a_plate_that_stands_on_no_side_is_an_error() -> None:
    result = askew(44)
    assert side(result)[0] == "free"
    (found,) = [one.text() for one in result.findings if one.code == "plate-off-the-face"]
    assert found == (
        'error: B1 start: the foot of its plate and the weld 5/16" reach 3 3/64" from the middle of P, the '
        'flat of its face 2 19/64": no connection is detailed: turn the column, use a wider one or a thinner '
        "plate, bring the beam nearer to its middle, or skew it less"
    )


def test_a_side_that_is_given_stays() -> None:
    (wrong,) = [angle for angle in (30, -30) if side(askew(angle))[1] is Side.FAR]
    result = askew(wrong, side="near")
    assert side(result)[0] == "free"
    (found,) = [one.text() for one in result.findings if one.code == "plate-off-the-face"]
    assert found.endswith("bring the beam nearer to its middle, or leave side out")


def test_the_edge_of_a_flange_is_an_edge_too() -> None:
    """W10X49, flange 10 in wide: at 43 degrees the line meets it 4.65 from the middle, 0.35 from its edge."""
    found = [askew(sign * 43, "W10X49", turn=90) for sign in (1, -1)]
    assert {str(one.joints["B1", End.LEFT].site.kind) for one in found} == {"column flange"}
    assert {side(one) for one in found} == {("single plate", Side.NEAR), ("single plate", Side.FAR)}
