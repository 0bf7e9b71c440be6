"""The odds beside a simulation of plain geometry that shares no code with them.

Holes are circles in shapely, errors come from Python's own random numbers one by one, and the shift that
lets every bolt in is what is left when the sets of shifts that each bolt allows are laid over one another.
"""

from math import cos, sin, sqrt
from random import Random

import pytest
from shapely import Point
from shapely.affinity import translate
from shapely.geometry import LineString
from shapely.geometry.base import BaseGeometry

from gageline.quality import BoltPlace, Joint, Lot, sample

CLEAR, PITCH, ACROSS = 1 / 16, 3.0, 5.25
MANY = 2500


def allowed(clear: float, slot: float) -> BaseGeometry:
    """The shifts that let one bolt in when its holes are true: a circle, or a circle drawn out."""
    return LineString([(-slot, 0), (slot, 0)]).buffer(clear, 48) if slot else Point(0, 0).buffer(clear, 48)


def simulated(free: bool, hole: float, turn: float, setting: float, slot: float, seed: int) -> float:
    """Two angles of four rows each on one support, struck one piece after another."""
    draw = Random(seed)  # noqa: S311 - a simulation, no secret
    shape = allowed(CLEAR, slot)
    good = 0
    for _ in range(MANY):
        left: BaseGeometry = Point(0, 0).buffer(100)
        entered = True
        for _ in ("near", "far"):
            dx, dy, angle = draw.gauss(0, setting), draw.gauss(0, setting), draw.gauss(0, turn)
            for row in (-1.5, -0.5, 0.5, 1.5):
                # Turn the angle about its middle, then set it off, then let the drill wander.
                arm = row * PITCH
                x = -arm * sin(angle) + dx + draw.gauss(0, hole)
                y = arm * cos(angle) - arm + dy + draw.gauss(0, hole)
                own = translate(shape, x, y)
                entered = entered and own.covers(Point(0, 0))
                left = left.intersection(own)
        good += (not left.is_empty) if free else entered
    return good / MANY


@pytest.mark.parametrize(
    ("free", "hole", "turn", "setting", "slot"),
    [
        (False, 0.02, 0.002, 0.01, 0.0),
        (False, 0.02, 0.002, 0.02, 3 / 32),
        (True, 0.028, 0.002, 0.0, 0.0),
        (True, 0.02, 0.003, 0.03, 0.0),
        (True, 0.022, 0.002, 0.03, 3 / 32),
    ],
)
def test_the_odds_are_those_of_plain_geometry(
    free: bool, hole: float, turn: float, setting: float, slot: float
) -> None:
    bolts = tuple(
        BoltPlace(side * ACROSS / 2, row * PITCH, CLEAR, slot, lot)
        for lot, side in enumerate((-1, 1))
        for row in (-1.5, -0.5, 0.5, 1.5)
    )
    lot = Lot(setting, setting, turn)
    told = sample(Joint("support", bolts, (lot, lot), hole, free=free), 200_000, 11).value
    brute = simulated(free, hole, turn, setting, slot, 12)
    assert 0.05 < told < 0.98  # a case that could be told wrong
    assert abs(told - brute) < 4 * sqrt(told * (1 - told) / MANY) + 0.002  # circles of chords take 0.002
