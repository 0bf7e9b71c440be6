"""The tongue of a hollow beam: PL3/8 x 5 1/2 deep, bolts 3 in from the wall, 4 7/8 to the cap, by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from connections import bolts
from gageline.strength import (
    Check,
    Connection,
    Fillet,
    Fitting,
    Kind,
    Material,
    Method,
    Support,
    SupportFace,
    Tongue,
    check_connection,
)
from gageline.strength.kinds.tongue import bolts_of_tongue, ply_of_tongue

A36 = Material("A36", 36.0, 58.0)
WALL = Support("HSS6X6X3/8", Material("A500-C", 50.0, 62.0), SupportFace.WALL, 0.349)
TONGUE = Tongue(
    "HSS6X4X1/4",
    Fitting("PL3/8X4-3/8", A36, 0.375, 5.5, 4.375),
    Fitting("PL3/8X4-3/4", A36, 0.375, 6.0, 4.75),
    Fillet(0.25),
    1.25,
    1.875,
)
PLATE = Fitting("PL3/8X4-1/2", A36, 0.375, 5.5, 4.5)
BOLTS = bolts(2, 3.0, 1.5)
END = Connection(
    "B1 left", Kind.SINGLE_PLATE, None, PLATE, BOLTS, Fillet(0.25), 0.5, 0.0, 9.0, support=WALL, tongue=TONGUE
)


def checks(connection: Connection = END) -> dict[str, Check]:
    return {check.title: check for check in check_connection(connection, Method.LRFD).checks}


@pytest.mark.parametrize(
    ("title", "kips"),
    [
        # 1.0 0.6 36 5.5 0.375
        ("shear yielding of the tongue", 44.55),
        # 0.75 0.6 58 (5.5 - 2 7/8) 0.375
        ("shear rupture of the tongue", 36.70),
        # 4 1/4 up to its end, 3 - 1/2 - 1/4 out: 0.75 (0.6 36 1.594 + 58 (2.25 - 0.4375) 0.375)
        ("block shear of the tongue", 55.39),
        # Z 2.836 less 2 0.875 0.375 1.5 is 1.852; 0.75 58 1.852/3
        ("flexural rupture of the tongue at its bolts", 26.85),
        # 0.9 36 0.375 5.5^2/4 / 4.875
        ("bending of the tongue at the end cap", 18.85),
        # 1.875 5.5/0.375^2 = 73.3 over 64.4: (1.52 - 0.274 73.3 36/29000) 68.06 = 101.75; 0.9 of it / 4.875
        ("buckling of the tongue in bending", 18.78),
        # V_c 44.55 and M_c 91.88: the root of the sum of both squares is one over 17.36
        ("shear and bending of the tongue together, at the end cap", 17.36),
    ],
)
def test_the_tongue_by_hand(title: str, kips: float) -> None:
    assert checks()[title].capacity == pytest.approx(kips, rel=1e-3)


def test_its_weld_is_that_of_a_table() -> None:
    """Table 8-4, k = 0, a = 0.8 (re-computed, twice one line): C 1.564; 0.75 1.564 4 5.5 = 25.8 kips."""
    near = replace(END, to_beam=bolts(2, 0.8 * 5.5 - 1.875, 1.5))
    found = checks(near)
    weld = found["weld of the tongue to the end cap, eccentric"]
    assert weld.capacity == pytest.approx(25.8, rel=2e-3)
    # t_min 3.09 4/58 = 0.213 beside one fillet, 0.427 between two
    assert found["end cap beside the weld of the tongue"].capacity == pytest.approx(
        25.8 * 0.375 / 0.2134, rel=3e-3
    )
    assert found["tongue beside its weld"].capacity == pytest.approx(25.8 * 0.375 / 0.4268, rel=3e-3)


def test_bolts_bear_on_plate_and_tongue_and_are_as_far_from_the_reaction_as_from_the_wall() -> None:
    bearing = checks()["bolts through the tongue, eccentric"]
    assert next(step.value for step in bearing.steps if step.symbol == "e") == 3.0
    thin = replace(TONGUE, plate=replace(TONGUE.plate, t=0.125))
    assert (
        checks(replace(END, tongue=thin))["bolts through the tongue, eccentric"].capacity < bearing.capacity
    )
    ply = ply_of_tongue(TONGUE, BOLTS)
    assert (ply.edge, ply.at_top, ply.t) == (1.25, True, 0.375)


def test_bolts_as_they_lie_in_the_tongue() -> None:
    own = bolts_of_tongue(END, TONGUE, BOLTS)
    assert (own.gage, own.edge_top, own.edge_bottom, own.edge_side) == (1.875, 1.25, 1.25, 2.25)


def test_what_no_method_covers_is_named() -> None:
    said = [one.what for one in check_connection(END, Method.LRFD).not_checked]
    assert "bending of the end cap" in said
    assert "torsion of plate and tongue, which lie side by side" in said
    assert "weld of the end cap to the walls, and the walls beside it" in said
    assert "shear of the walls of the hollow beam" in said
    assert "the supported beam" not in said
    pulled = check_connection(replace(END, N=2.0), Method.LRFD)
    assert "the tongue and its weld under the axial force" in [one.what for one in pulled.not_checked]


def test_rules_of_detail_look_at_the_tongue_as_at_a_web() -> None:
    rules = {rule.title: rule for rule in check_connection(END, Method.LRFD).rules}
    assert rules["end of the tongue to its bolts, under-run taken off"].capacity == 2.25
    assert rules["end distance in the tongue"].capacity == 1.25
    assert rules["weld of the tongue to the end cap"].passes  # 3/16 for 3/8 in, Table J2.4
    small = replace(END, tongue=replace(TONGUE, weld=Fillet(0.125)))
    short = {rule.title: rule for rule in check_connection(small, Method.LRFD).broken_rules}
    assert "weld of the tongue to the end cap" in short


def test_slip_counts_the_whole_eccentricity() -> None:
    held = {
        check.title: check
        for check in check_connection(replace(END, to_beam=replace(BOLTS, surface="A")), Method.LRFD).checks
    }
    slip = held["slip of the bolts to the beam, surfaces A"]
    # both bolts 2 1.13 0.3 28 = 19.0, times C/n of two at 3 in, 3 in off: 0.88/2 (Table 7-6, from memory)
    assert slip.capacity == pytest.approx(19.0 * 0.88 / 2, rel=0.01)
