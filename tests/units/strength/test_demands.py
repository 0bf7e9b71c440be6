"""What an end must carry."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.job import LoadEntry, PieceLoads
from gageline.part import End
from gageline.strength import Case, Method
from gageline.strength.demands import SUGGESTED, handed_demand, loads_on, reaction_at, suggested
from jobs import job_of, piece_of

LRFD, ASD = Method.LRFD, Method.ASD
BEAM = 'mark = "B1"\nstock = "W18x50"\nlength = "20\'-0"\n'


def given(lines: str) -> PieceLoads:
    (loads,) = job_of(BEAM + lines).loads
    return loads


def test_a_given_reaction_with_its_axial_force() -> None:
    beam = piece_of(stock="W18x50", length='"20\'-0"')
    demand = reaction_at(beam, End.LEFT, given('left = { reaction = "40 kip", axial = "10 kip" }'), LRFD)
    assert demand == (40.0, 10.0, "given")


def test_loads_give_the_worst_combination() -> None:
    """1 kip/ft dead and 2 live on 20 ft: 1.2 10 + 1.6 20 = 44 by LRFD, 30 by ASD."""
    beam = piece_of(stock="W18x50", length='"20\'-0"')
    both = given('loads = [{ uniform = "1 kip/ft" }, { case = "live", uniform = "2 kip/ft" }]')
    assert pytest.approx(44.0) == reaction_at(beam, End.RIGHT, both, LRFD).V
    assert reaction_at(beam, End.RIGHT, both, ASD).load == "from the loads, D + L"


def test_half_of_the_largest_uniform_load_is_suggested() -> None:
    """Manual Table 3-6, W18x50 at 20 ft: 152 kips by LRFD and 101 by ASD."""
    beam = piece_of(stock="W18x50", length='"20\'-0"')
    for method, total in ((LRFD, 152), (ASD, 101)):
        demand = suggested(beam, method)
        assert pytest.approx(total / 2, rel=0.005) == demand.V
        assert demand.load == SUGGESTED
    assert reaction_at(beam, End.LEFT, PieceLoads("B1"), LRFD) == suggested(beam, LRFD)


def test_a_plate_suggests_nothing() -> None:
    with pytest.raises(ValueProblem, match="no reaction is given: give it at the end"):
        suggested(piece_of(stock="PL1/2x6"), LRFD)


def test_a_handed_reaction_is_combined_and_a_given_one_is_kept() -> None:
    """1.2 10 + 1.6 20 = 44."""
    demand = handed_demand({Case.DEAD: 10.0, Case.LIVE: 20.0}, LRFD)
    assert pytest.approx(44.0) == demand.V
    assert demand.load == "from the loads, 1.2D + 1.6L + 0.5Lr"
    assert handed_demand({Case.GIVEN: 30.0}, LRFD) == (30.0, 0.0, "given")


def test_uplift_is_refused() -> None:
    with pytest.raises(ValueProblem, match="its largest reaction is -1 kip, it lifts"):
        handed_demand({Case.DEAD: -1.0}, ASD)


def test_a_load_is_uniform_or_point() -> None:
    (uniform, point) = loads_on(
        given(
            'loads = [{ uniform = "1.2 kip/ft", start = "5\'-0" }, { point = "4 kip", at = "6\'-0" }]'
        ).loads,
        240.0,
    )
    assert uniform.amount == pytest.approx(0.1)
    assert (uniform.start, uniform.end) == (60.0, 240.0)
    assert (point.amount, point.start, point.end) == (4.0, 72.0, None)


@pytest.mark.parametrize("entry", [LoadEntry(point="2 kip"), LoadEntry()])
def test_a_load_without_an_amount_or_a_place_is_refused(entry: LoadEntry) -> None:
    """A document that says so is refused as it is read; these come from elsewhere."""
    with pytest.raises(ValueProblem, match="a load is uniform, or a point load with its place: give one of"):
        loads_on((entry,), 240.0)
