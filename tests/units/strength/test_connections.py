from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from connections import EXAMPLES, bolts, check_named, of_step, worked_out
from gageline.errors import ValueProblem
from gageline.strength import Fillet, Kind, Method, Notch, SupportFace, check_connection
from gageline.strength.aisc360.j3_bolts import Hole

LRFD = Method.LRFD


def titles(name: str) -> list[str]:
    return [check.title for check in check_connection(EXAMPLES[name], LRFD).checks]


def left_out(**changes: Any) -> list[str]:
    connection = replace(EXAMPLES["II.A-4"], **changes)
    return [item.what for item in check_connection(connection, LRFD).not_checked]


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_governing_check_comes_first_and_every_check_has_its_working(name: str) -> None:
    verdict = check_connection(EXAMPLES[name], LRFD)
    shares = [check.utilisation for check in verdict.checks]
    assert shares == sorted(shares, reverse=True)
    assert all(check.steps and check.steps[-1].value == check.capacity for check in verdict.checks)


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("N", [0.0, 15.0])
def test_every_line_of_the_working_comes_to_its_value(name: str, N: float) -> None:
    verdict = check_connection(replace(EXAMPLES[name], N=N), LRFD)
    for check in (*verdict.checks, *verdict.rules):
        for line in check.steps:
            if line.values:
                assert worked_out(line) == pytest.approx(line.value, rel=1e-9), f"{check.title}: {line.line}"


def test_a_web_without_a_cope_tears_no_block() -> None:
    assert "block shear of the beam web" in titles("II.A-4")
    assert "block shear of the beam web" not in titles("II.A-1A")


def test_what_is_left_out_hangs_on_the_support() -> None:
    assert "the supporting member" in left_out(support=None)
    assert "torsion of the supporting member" in left_out()
    support = EXAMPLES["II.A-4"].support
    assert support is not None
    assert "bending of the wall of the hollow support" in left_out(
        support=replace(support, face=SupportFace.WALL)
    )
    for support_ in (None, support):
        assert "structural integrity (Section B3.9)" in left_out(support=support_)


def test_an_axial_force_where_no_method_follows_it_is_said() -> None:
    assert "the axial force on the weld to the support" in left_out(N=10.0, to_support=Fillet(0.25))
    single = check_connection(replace(EXAMPLES["II.A-28A"], N=10.0), LRFD)
    assert "the axial force" in [item.what for item in single.not_checked]
    assert check_connection(replace(EXAMPLES["II.A-4"], N=10.0), LRFD).capacity is None


def test_a_plate_without_a_beam_is_checked_as_far_as_it_goes() -> None:
    verdict = check_connection(replace(EXAMPLES["II.A-18"], beam=None), LRFD)
    assert "the supported beam" in [item.what for item in verdict.not_checked]
    assert not any("of the beam web" in check.title for check in verdict.checks)


def test_both_flanges_coped_bend_as_a_plate() -> None:
    example = EXAMPLES["II.A-4"]
    assert example.beam is not None
    both = replace(example.beam, bottom=Notch(4.0, 2.0))
    found = [check.title for check in check_connection(replace(example, beam=both), LRFD).checks]
    assert "bending of the web between the copes" in found
    assert "shear rupture of the coped beam web" in found


def test_a_cope_of_the_bottom_alone_is_said_not_to_be_checked_in_bending() -> None:
    example = EXAMPLES["II.A-4"]
    assert example.beam is not None
    low = replace(example.beam, top=None, bottom=Notch(4.0, 2.0))
    assert "bending of the web at a bottom cope" in left_out(beam=low)


def test_an_extended_plate_bends_and_has_its_own_limits() -> None:
    plate = replace(
        EXAMPLES["II.A-18"],
        kind=Kind.EXTENDED_PLATE,
        fitting=replace(EXAMPLES["II.A-18"].fitting, t=0.5, leg=10.5),
        to_beam=bolts(4, 9.0, 1.5),
        setback=6.5,
    )
    verdict = check_connection(plate, LRFD)
    found = {check.title: check for check in verdict.checks}
    assert found["shear and bending of the plate together"].capacity < min(
        found["shear yielding of the plate"].capacity, 0.9 * 50 * 0.5 * 11.5**2 / 4 / 9.0
    )
    assert [rule.title for rule in verdict.broken_rules] == ["weld of the plate"]


@pytest.mark.parametrize(
    ("change", "message"),
    [
        ({"to_beam": bolts(13, 3.0, 1.5)}, "n = 13 bolts must be 2 to 12 in a conventional single plate"),
        ({"to_beam": bolts(1, 3.0, 1.5)}, "n = 1 bolts must be 2 to 12"),
        ({"to_beam": bolts(4, 4.0, 1.5)}, "a = 4 in must be at most 3.5 in"),
        ({"to_support": bolts(4, 3.0, 1.5)}, "a single plate is welded to its support and bolted"),
        ({"to_beam": replace(bolts(4, 3.0, 1.5), columns=2, between=3.0)}, "2 columns of bolts are outside"),
        (
            {
                "to_beam": replace(
                    bolts(4, 3, 1.5), holes=replace(bolts(4, 3, 1.5).holes, kind=Hole.OVERSIZED)
                )
            },
            "oversized holes are outside the method",
        ),
        ({"to_beam": bolts(3, 3.0, 1.5), "kind": Kind.END_PLATE}, "a shear end plate is welded"),
    ],
)
def test_plates_outside_the_method_are_refused(change: dict[str, Any], message: str) -> None:
    with pytest.raises(ValueProblem, match=message):
        check_connection(replace(EXAMPLES["II.A-18"], **change), LRFD)


def test_a_single_angle_welded_to_the_web_is_weld_a_on_one_side() -> None:
    """Half of what two such angles carry, on the web and in the weld (Manual Table 10-2, weld A)."""
    pair = check_connection(EXAMPLES["II.A-5"], LRFD)
    one = check_connection(replace(EXAMPLES["II.A-5"], kind=Kind.SINGLE_ANGLE), LRFD)
    for title, share in (("weld to the beam web", 0.5), ("beam web beside the weld", 1.0)):
        assert check_named(one, title).capacity == pytest.approx(share * check_named(pair, title).capacity)


def test_bolts_far_from_the_heel_count_their_eccentricity() -> None:
    """Four bolts 3 1/2 in from the heel: C of Table 7-6 between 2.81 at 3 in and 2.36 at 4 in."""
    far = check_connection(replace(EXAMPLES["II.A-28A"], to_beam=bolts(4, 3.5, 1.25)), LRFD)
    check = check_named(far, "bolts through the beam web, eccentric")
    assert 2.36 < of_step(check, "R_n") / of_step(check, "R_b") * 4 < 2.81
    bent = check_named(far, "bending of the legs on the beam")
    assert bent.capacity == pytest.approx(0.9 * 50 * 0.375 * 11.5**2 / 4 / 3.5)


def test_a_cope_deeper_than_half_the_beam_is_refused() -> None:
    example = EXAMPLES["II.A-4"]
    assert example.beam is not None
    deep = replace(example, beam=replace(example.beam, top=Notch(4.0, 9.5)))
    with pytest.raises(ValueProblem, match=r"cope depth d_c = 9.5 in must be at most d/2 = 9 in"):
        check_connection(deep, LRFD)


def test_a_bolt_group_of_no_table_is_refused() -> None:
    with pytest.raises(ValueProblem, match="bolt group '99' is not one of"):
        check_connection(replace(EXAMPLES["II.A-4"], to_beam=replace(bolts(3, 2, 1.5), group="99")), LRFD)


def test_holes_that_take_the_whole_fitting_are_refused() -> None:
    crowded = replace(EXAMPLES["II.A-4"], to_beam=replace(bolts(10, 2.125, 1.375), pitch=1.0))
    with pytest.raises(ValueProblem, match=r"10 holes take 8\.75 in of the 8\.5 in"):
        check_connection(crowded, LRFD)


def test_a_seat_under_a_coped_bottom_is_refused() -> None:
    example = EXAMPLES["II.A-16"]
    assert example.beam is not None
    with pytest.raises(ValueProblem, match="coped at its bottom, where a seat bears"):
        check_connection(replace(example, beam=replace(example.beam, bottom=Notch(4.0, 2.0))), LRFD)


def test_a_seat_that_does_not_reach_the_beam_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"does not reach past the gap of 5\.25 in"):
        check_connection(replace(EXAMPLES["II.A-16"], setback=5.0), LRFD)


ORIGIN = frozenset({"A_g", "A_e", "A_gv", "A_nv", "A_nt", "L_w", "Z_net", "q", "R_y", "R_c", "l_1", "l_2"})


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("N", [0.0, 5.0])
def test_no_area_of_a_working_comes_from_nowhere(name: str, N: float) -> None:
    """A line that uses an area, a length of weld or a bearing strength has one before it that finds it."""
    for check in check_connection(replace(EXAMPLES[name], N=N), Method.LRFD).checks:
        known: set[str] = set()
        for line in check.steps:
            used = {symbol for symbol, _ in line.values} & ORIGIN - {line.symbol}
            assert used <= known, f"{check.title}: {line.line}"
            known |= {line.symbol} | {symbol for symbol in ORIGIN if f"also {symbol}:" in line.note}


def test_alike_connections_are_worked_out_once_and_each_keeps_its_own_name() -> None:
    one, other = (check_connection(replace(EXAMPLES["II.A-4"], name=name), LRFD) for name in ("B1", "B2"))
    assert (one.connection.name, other.connection.name) == ("B1", "B2")
    assert one.checks is other.checks
    heavier = check_connection(replace(EXAMPLES["II.A-4"], V=2 * EXAMPLES["II.A-4"].V), LRFD)
    assert heavier.utilisation == pytest.approx(2 * one.utilisation)


def test_what_cannot_be_checked_says_its_own_name() -> None:
    for name in ("B1 left", "B2 right"):
        with pytest.raises(ValueProblem, match=f"{name} has no beam"):
            check_connection(replace(EXAMPLES["II.A-4"], name=name, beam=None), LRFD)
