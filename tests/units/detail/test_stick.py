from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.part import End, Part
from gageline.units import parse_length


def beam(**keys: object) -> Part:
    return detailed(bay(**keys)).member("B1").assembly.main  # type: ignore[arg-type] # keys of the beam


def test_a_square_beam_is_the_gap_less_two_setbacks() -> None:
    # 180 between work points, less twice half of the 0.400 web and twice 1/2
    assert beam().length == parse_length("180") - parse_length("0.4in") - parse_length("1")
    assert beam().left.square


def test_a_sloped_beam_is_cut_plumb() -> None:
    sloped = beam(rise="1/2 in 12", ends={"connection": "double angles"})
    assert float(sloped.left.bevel.ratio) == pytest.approx(-1 / 24)
    assert float(sloped.right.bevel.ratio) == pytest.approx(1 / 24)
    # between corners: the plumb gap over the cosine, and the lean over the depth
    cosine = 1 / (1 + (1 / 24) ** 2) ** 0.5
    assert sloped.length.inches == pytest.approx(178.6 / cosine + 18 / 24, abs=1e-4)


def test_a_skewed_beam_is_mitred_parallel_to_the_webs() -> None:
    skewed = beam(to={"on": "G2", "at": 210})
    assert abs(float(skewed.left.mitre.ratio)) == pytest.approx(0.5)
    assert skewed.left.mitre == -skewed.right.mitre
    assert not skewed.left.bevel


def test_a_free_end_is_square_at_its_overhang() -> None:
    free = {"connection": "free", "overhang": "2'-0"}
    long = beam(end=free, to={"between": ("1/A", "1/B"), "at": 100}, **{"from": {"on": "G1", "at": 0}})
    assert long.cut(End.RIGHT).square
    assert long.length == parse_length("100") - parse_length("0.2in") - parse_length("1/2") + parse_length(
        "24"
    )
