from __future__ import annotations

import pytest

from assembling import bay, detailed
from gageline.detail import Site
from gageline.detail.site import face_plane, fillet_of, largest_fillet, web_offset
from gageline.part import End, Face
from gageline.steel import Section, find


def section(name: str) -> Section:
    found = find(name)
    assert isinstance(found, Section)
    return found


def site(end: End = End.LEFT, **keys: object) -> Site:
    return detailed(bay(**keys)).joints["B1", end].site  # type: ignore[arg-type] # keys of the beam


def test_the_face_of_a_girder_is_half_its_web_from_the_work_point() -> None:
    assert site().point == pytest.approx((120, 0.2, 144))
    assert site(End.RIGHT).point == pytest.approx((120, 179.8, 144))


def test_a_skew_is_measured_from_the_faces_normal() -> None:
    skewed = site(to={"on": "G2", "at": 210})
    assert skewed.skew == pytest.approx(-26.565, abs=0.001)
    assert not skewed.square
    assert site().square


def test_flanges_stand_out_from_webs() -> None:
    # W21X62: (8.24 - 0.400) / 2; flat between the largest fillets, 1 5/16
    assert site().reach == pytest.approx(3.92, abs=0.001)
    assert site().flat == pytest.approx((144 - 21 + 1.3125, 144 - 1.3125))


def test_a_channel_has_flanges_on_one_side() -> None:
    assert site(girder="C15X33.9").reach == pytest.approx(3.4 - 0.4, abs=0.01)
    assert site(End.RIGHT, girder="C15X33.9").reach == 0.0


def test_fillets_of_the_tables() -> None:
    assert largest_fillet(section("W21X62")) == 1.3125
    assert fillet_of(section("W21X62")) == pytest.approx(1.12, abs=0.001)
    assert web_offset(section("C12X20.7")) == pytest.approx(-0.141, abs=0.001)
    assert web_offset(section("W8X31")) == 0.0


def test_a_face_looks_out_of_its_member() -> None:
    point, out = face_plane(site().support, Face.NEAR)
    assert out == (0.0, -1.0, 0.0)
    assert point[1] == pytest.approx(-0.2)
