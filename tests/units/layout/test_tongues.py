from __future__ import annotations

from typing import Any

import pytest

from assembling import bay, detailed
from gageline.job import default_practice
from gageline.layout import lay_out
from gageline.layout.mark import Bench
from gageline.layout.tongues import cap_of, stand_of, tongue_step
from gageline.part import Assembly, Fitting
from gageline.units import System
from pieces import at

HOLLOW: dict[str, Any] = {"beam": "HSS8X4X1/4", "girder": "HSS16X8X3/8"}


def beam(system: System = System.FT_IN, rise: int = 0, **keys: Any) -> Assembly:
    """The hollow beam between hollow girders, fittings marked."""
    table = bay(**HOLLOW | keys | ({"rise": f"{rise} in 12"} if rise else {}))
    if rise:
        table["member"][1]["top"] = f"{144 + 15 * rise} in"  # type: ignore[index] # a list
    return next(one for one in detailed(table, system).assemblies if one.mark == "B1")


def pair(piece: Assembly, end: str) -> tuple[Fitting, Fitting]:
    """The end cap and the tongue of an end."""
    named = {fitting.name: fitting for fitting in piece.fittings}
    return named[f"{end} end cap"], named[f"{end} tongue"]


def test_a_tongue_knows_its_own_cap_and_no_other_fitting_has_one() -> None:
    piece = beam()
    for end in ("left", "right"):
        cap, tongue = pair(piece, end)
        assert cap_of(piece, tongue) == cap
        assert cap_of(piece, cap) is None


@pytest.mark.parametrize("end", ["left", "right"])
@pytest.mark.parametrize(
    "keys", [{}, {"to": {"on": "G2", "at": "150 in"}}, {"rise": 2}, {"rise": 6, "drop": "3 in"}]
)
def test_a_tongue_is_measured_on_its_cap_however_the_end_is_cut(end: str, keys: dict[str, Any]) -> None:
    """Cap 4 3/4 wide, tongue 3/8: 2 3/16 beside it; bolts 1 7/8 out, the first 1 1/4 under its top."""
    piece = beam(**keys)
    stand = stand_of(*pair(piece, end))
    assert stand.aside.inches == pytest.approx(2.1875, abs=1e-4)
    assert stand.bolts.inches == pytest.approx(1.875, abs=1e-4)
    assert (stand.first_row - stand.drop).inches == pytest.approx(1.25, abs=1e-4)
    assert stand.out.inches == pytest.approx(4.375, abs=0.05)  # at a skew a corner comes nearer
    assert stand.drop.inches >= 0.25 - 1e-4


def test_the_step_gives_what_can_be_measured_on_the_cap() -> None:
    piece = beam()
    cap, tongue = pair(piece, "left")
    step = tongue_step(Bench(piece.main, at("1/16"), System.FT_IN), tongue, stand_of(cap, tongue))
    k, t = cap.part.mark, tongue.part.mark
    assert (step.title, step.from_, step.face) == ("Set the left tongue", f"top and near edge of {k}", None)
    assert step.text == (
        f'Set {t} upright on the outside of {k}: its near face 2 3/16" from the near edge of {k}, its top '
        f'1 3/4" below the top of {k}, its holes 1 7/8" out.'
    )
    assert step.check == (
        f'First row of holes 3" below the top of {k}; it stands square to {k} and 4 3/8" out.'
    )


def test_caps_are_set_before_their_tongues_and_the_tongue_strikes_no_outline() -> None:
    piece = beam(System.MM)
    layout = lay_out(piece, default_practice(System.MM), System.MM)
    titles = [step.title for step in layout.main.steps if step.title.startswith(("Set", "Outline"))]
    k = pair(piece, "left")[0].part.mark
    assert titles == [
        f"Outline on {k}", "Set the left end cap", "Set the left tongue",
        f"Outline on {k}", "Set the right end cap", "Set the right tongue",
    ]  # fmt: skip
    assert [seat.stand is not None for seat in layout.seats] == [False, True, False, True]
