import pytest

from gageline.job import Stick
from gageline.layout.turning import camber_lean, lay_down
from gageline.steel import find
from jobs import inches

DOWN = Stick("B1", camber=-inches("1/2"))


def test_camber_up_is_left_and_none_is_not_spoken_of() -> None:
    up = Stick("B1", camber=inches("1/2"))
    assert lay_down(up, find("W16X26")).stick is up
    assert "up as it lies" in lay_down(up, find("W16X26")).note
    assert not lay_down(Stick("B1"), find("W16X26")).note


@pytest.mark.parametrize("stock", ["W16X26", "HSS6X6X3/8", "HSS6.000X0.375", "PL1/2X8", "C8X11.5"])
def test_camber_down_is_turned_up(stock: str) -> None:
    laid = lay_down(DOWN, find(stock))
    assert laid.turned
    assert laid.stick.camber == inches("1/2")


def test_a_channel_keeps_its_toes_on_their_side() -> None:
    sideways = Stick("B1", camber=-inches("1/2"), sweep=inches("1/4"))
    assert lay_down(sideways, find("C8X11.5")).stick.sweep == inches("1/4")
    assert lay_down(sideways, find("W16X26")).stick.sweep == -inches("1/4")


@pytest.mark.parametrize("stock", ["L4X4X1/4", "WT8X18"])
def test_what_is_not_alike_top_and_bottom_stays(stock: str) -> None:
    laid = lay_down(DOWN, find(stock))
    assert not laid.turned
    assert "is not alike top and bottom" in laid.note


def test_a_stick_with_holes_in_it_stays() -> None:
    laid = lay_down(Stick("B1", camber=-inches("1/2"), worked=True), find("W16X26"))
    assert (laid.turned, laid.stick.camber) == (False, -inches("1/2"))
    assert "it has holes or cuts in it" in laid.note


def test_the_ends_of_a_cambered_stick_lean() -> None:
    """4 x 1/2 / 240 x 12 = 1/10 in (geometry of a flat arc, by hand)."""
    assert camber_lean(inches("1/2"), inches("20'"), inches("12")).inches == pytest.approx(0.1, abs=1e-4)
