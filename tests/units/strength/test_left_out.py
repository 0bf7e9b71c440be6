"""What of a job is not checked, said by name."""

from __future__ import annotations

from gageline.job import read_job
from gageline.strength import JobStrength, check_strength
from gageline.strength.left_out import left_out_of_beams, left_out_of_bearings

JOB = '[job]\nname = "x"\n'
POINT = '{ case = "live", point = "5 kip", at = "4\'-0" }'
EVEN = '{ uniform = "0.5 klf" }'


def piece(mark: str, stock: str, more: str) -> str:
    return f'[[piece]]\nmark = "{mark}"\nstock = "{stock}"\nlength = "9\'-0"\n{more}\n'


def strength_of(*pieces: str) -> JobStrength:
    return check_strength(read_job(JOB + "".join(pieces)))


def left_out(*pieces: str) -> dict[str, str]:
    return {item.what: item.why for item in strength_of(*pieces).not_checked}


def test_deflection_without_a_limit_names_its_beams() -> None:
    found = left_out(
        piece("B1", "W16x26", f"loads = [{EVEN}]"),
        piece("B2", "W16x26", f"loads = [{EVEN}]\nspan = {{ total = 240 }}"),
        piece("B3", "W16x26", f"loads = [{EVEN}]"),
    )
    assert found["deflection of B1, B3"] == "no limit is given: give live or total in span"


def test_torsion_of_channels_and_the_weight_of_members_are_named() -> None:
    found = left_out(piece("C1", "C12x20.7", f"loads = [{EVEN}]"), piece("B1", "W16x26", f"loads = [{EVEN}]"))
    assert "torsion of C1" in found
    assert "the weight of the members themselves" in found


def test_webs_under_point_loads_of_their_own_are_named() -> None:
    found = left_out(piece("B1", "W16x26", f"loads = [{POINT}]"), piece("B2", "W16x26", f"loads = [{EVEN}]"))
    assert "the webs of B1 under their point loads (J10)" in found


def test_many_names_are_cut_short_and_counted() -> None:
    beam = strength_of(piece("B1", "W16x26", f"loads = [{EVEN}]")).beams[0].beam
    assert beam is not None
    (_, deflection) = left_out_of_beams([(f"B{number}", beam) for number in range(14)], ())
    assert deflection.what.endswith("B11 and 2 more")


def test_without_beams_or_bearings_nothing_is_left_out() -> None:
    assert not list(left_out_of_beams([], ["B1"]))
    assert not list(left_out_of_bearings(0))
    assert "J10.4" in next(left_out_of_bearings(2)).what
