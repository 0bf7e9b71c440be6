from __future__ import annotations

import math
from typing import Any

import pytest

from assembling import bay, detailed
from gageline.detail import Detailed, Joint
from gageline.detail.tongue import Tongue
from gageline.part import End, Severity
from gageline.units import System, parse_length

HOLLOW: dict[str, Any] = {"beam": "HSS8X4X1/4", "girder": "HSS16X8X3/8"}


def tongue(result: Detailed) -> tuple[Joint, Tongue]:
    joint = result.joints["B1", End.LEFT]
    assert joint.tongue is not None
    return joint, joint.tongue


def test_a_closed_end_square_to_a_wall() -> None:
    # 3 to the bolts; 1 1/2 of plate, a 1/4 fillet and 1/8 to the cap; 4 + 2 (1/4 + 1/8) wide
    joint, made = tongue(detailed(bay(**HOLLOW)))
    assert joint.kind == "single plate"
    assert (joint.gage, joint.grip, joint.web) == (
        parse_length("3"),
        parse_length("3/4"),
        parse_length("3/8"),
    )
    assert (made.tip, made.to_cap, made.reach, made.width) == (
        0.5,
        parse_length("1-7/8"),
        parse_length("4-7/8"),
        parse_length("4-3/8"),
    )
    assert (made.wide, made.high, made.steel) == tuple(map(parse_length, ("4-3/4", "8", "5-1/4")))


def test_a_closed_end_of_a_metric_job() -> None:
    # 75 to the bolts; 40 of plate, a 7 fillet and 3; 101.6 + 2 (6 + 3) wide, up to 5; 203.2 high, down to 1
    result = detailed(bay(**HOLLOW), System.MM)
    joint, made = tongue(result)
    assert (joint.gage, made.to_cap, made.steel) == tuple(map(parse_length, ("75 mm", "50 mm", "135 mm")))
    assert (made.wide, made.high) == (parse_length("120 mm"), parse_length("203 mm"))


@pytest.mark.parametrize("across", [-150.0, 100.0, 178.0])
def test_askew_the_tongues_nearest_corner_keeps_the_setback_and_the_caps_corner_stays_off(
    across: float,
) -> None:
    table = bay(beam="HSS10X6X3/8", girder="HSS16X8X3/8")
    table["grid"]["x"]["spacing"] = [600]  # type: ignore[index] # a table
    for name, at in (("from", 250.0), ("to", 250.0 + across)):
        table["member"][2][name]["at"] = at  # type: ignore[index] # a list
    joint, made = tongue(detailed(table))
    skew = math.atan(abs(across) / 180)
    assert abs(math.radians(abs(joint.site.skew)) - skew) < 1e-9
    assert made.tip * math.cos(skew) - 3 / 16 * math.sin(skew) == pytest.approx(0.5)
    corner = made.reach.inches * math.cos(skew) - made.wide.inches / 2 * math.sin(skew)
    assert corner >= 0.5 - 1e-9
    assert made.to_cap >= parse_length("1-7/8")


def test_the_cap_stays_outside_the_flanges_of_what_carries_the_beam() -> None:
    # W30X99: (10.5 - 0.52) / 2 = 4.99 and 1/8 to enter, up to 5 1/8; not the 4 7/8 at a wall
    joint, made = tongue(
        detailed(bay(beam="HSS8X4X1/4", girder="W30X99", ends={"connection": "single plate"}))
    )
    assert made.reach == parse_length("5-1/8")
    assert not joint.notches.copes
    column = {"name": "P", "at": "1/A", "stock": "W12X65", "base": 0, "top": "240 in"}
    table = bay(beam="HSS8X4X1/4", girder="W21X62", column=column)
    table["member"][2]["from"] = "1/A"  # type: ignore[index] # a list
    table["member"][2]["to"] = "1/B"  # type: ignore[index]
    table["member"][2]["start"] = {"connection": "extended plate"}  # type: ignore[index]
    table["member"] = table["member"][1:]  # type: ignore[index]
    joint, made = tongue(detailed(table))
    assert joint.kind == "extended plate"
    # (12 - 0.39) / 2 = 5.805 and 1/2, up to 6 3/8; the tongue itself ends there
    assert made.tip == pytest.approx(6.375)


@pytest.mark.parametrize(
    ("beam", "system", "size", "pitch"),
    [
        ("HSS6X4X1/4", System.FT_IN, "3/4", "3"),  # 5 1/2 and a weld of 1/4 at each end just go
        ("HSS5-1/2X5-1/2X3/8", System.FT_IN, "3/4", "2-1/4"),
        ("HSS6X4X1/4", System.MM, "M16", "50 mm"),  # 152 - 2 x 5 has 142: M20 want 150 or 140 and 2 x 7
    ],
)
def test_a_tongue_keeps_within_its_cap_with_closer_rows_or_smaller_bolts(
    beam: str, system: System, size: str, pitch: str
) -> None:
    joint, made = tongue(detailed(bay(beam=beam, girder="HSS16X8X3/8"), system))
    assert joint.ladder is not None
    assert (joint.ladder.rows, joint.choice.size.size, joint.ladder.pitch) == (2, size, parse_length(pitch))
    assert joint.ladder.length + made.weld * 2 <= made.high


def test_a_beam_too_low_for_two_rows_is_one_clear_error() -> None:
    result = detailed(bay(beam="HSS4X4X1/4", girder="HSS16X8X3/8"))
    assert result.joints["B1", End.LEFT].kind == "free"
    (found,) = [
        one for one in result.findings if one.severity is Severity.ERROR and one.subject == "B1 start"
    ]
    assert found.text() == (
        'error: B1 start: a tongue at the closed end of HSS4X4X1/4 has room for 3 1/2" at G1, two rows of '
        '3/4 bolts want 5 1/2": no connection is detailed: use a hollow beam 6" deep, or a W beam, let it '
        "bear on top, or enter the end as drawn"
    )


def test_a_beam_that_stands_over_its_support_is_to_be_lowered() -> None:
    # 6 in 12 over the 4 in from the middle of G1 to its wall, and 5 1/4 on to the cap
    table = bay(**HOLLOW, rise="6 in 12")
    table["member"][1]["top"] = str(144 + 90)  # type: ignore[index] # a list
    (found,) = [one for one in detailed(table).findings if one.severity is Severity.ERROR]
    assert found.remedy == (
        "lower or raise the beam, use a deeper support, or a W beam, let it bear on top, or enter the end as "
        "drawn"
    )


def test_the_length_says_that_the_end_is_closed() -> None:
    reason, *_ = detailed(bay(**HOLLOW)).reasons["B1"]
    assert reason.text().startswith(
        "cut 13'-5 1/2\" long between the furthest points, because 15'-0\" between work points, the start's "
        "face "
        'is 4" from its work point and the closed end 5 1/4" off it, the end\'s face is 4" from'
    )


def test_a_tongue_is_no_thicker_than_half_a_bolt_and_a_sixteenth() -> None:
    keys: dict[str, Any] = {**HOLLOW, "ends": {"connection": "single plate", "thickness": "1/2"}}
    joint, made = tongue(detailed(bay(**keys)))
    assert (made.thickness, joint.thickness, joint.grip) == tuple(map(parse_length, ("3/8", "1/2", "7/8")))
    assert not joint.findings
    keys["ends"] |= {"bolt": "1"}
    joint, made = tongue(detailed(bay(**keys)))
    assert (made.thickness, joint.grip) == (parse_length("1/2"), parse_length("1"))
    assert made.to_cap == parse_length("2-1/2")  # 2, a 5/16 fillet and 1/8, up to 1/8
