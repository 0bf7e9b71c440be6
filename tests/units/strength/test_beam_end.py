"""The end of a beam as it is cut."""

from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.part import End
from gageline.strength import Notch, beam_of
from gageline.strength.beam_end import web_end
from jobs import inches, piece_of

COPE = 'copes = [{ end = "left", length = "4", depth = "2" }]'


def test_a_square_end_has_its_copes_as_drawn() -> None:
    beam = beam_of(piece_of(COPE).main, End.LEFT)
    assert (beam.section, beam.top, beam.bottom) == ("W16X26", Notch(4.0, 2.0), None)
    assert beam_of(piece_of(COPE).main, End.RIGHT).top is None


def test_a_mitred_end_is_measured_from_the_web() -> None:
    """W16x26, flange 5 1/2 in wide, mitred 6 in 12: the web's middle ends 2 3/4/2 in behind the corner."""
    part = piece_of(f'{COPE}\nleft = {{ mitre = "6 in 12" }}').main
    assert web_end(part, End.LEFT, inches("5")).inches == pytest.approx(1.375, abs=1e-3)
    top = beam_of(part, End.LEFT).top
    assert top is not None
    assert top.c == pytest.approx(4 - 1.375, abs=1e-3)


def test_a_bevelled_end_has_its_cope_from_the_web_at_its_own_depth() -> None:
    """Cut back 1 in 12 towards the bottom: 2 in down the web ends 2/12 in behind the corner."""
    part = piece_of(f'{COPE}\nleft = {{ bevel = "1 in 12" }}').main
    top = beam_of(part, End.LEFT).top
    assert top is not None
    assert top.c == pytest.approx(4 - 2 / 12, abs=1e-3)


def test_a_plate_is_no_beam() -> None:
    with pytest.raises(ValueProblem, match="is no I-shape or channel: its end is not covered"):
        beam_of(piece_of(stock="PL1/2x6").main, End.LEFT)
