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

from gageline.quality import BoltPlace, Joint, Lot, Spread, odds_of, sample
from sticks import example_piece

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


# A whole piece: three rows of 3/4 bolts at 3 in, 13/16 holes, angles 2 5/8 in either side of the web's
# middle. A rough shop, so that the odds are far from 1.
ROUGH = Spread(tape=1 / 20, gage=1 / 30, square=1 / 250, punch=1 / 70, drill=1 / 80, setting=1 / 50)
ROWS = (-3.0, 0.0, 3.0)


def drilled(draw: Random, spread: Spread) -> tuple[float, float]:
    """How far a hole lies off the cross that was struck for it: punched, then drilled."""
    return (
        draw.gauss(0, spread.punch) + draw.gauss(0, spread.drill),
        draw.gauss(0, spread.punch) + draw.gauss(0, spread.drill),
    )


def ply(draw: Random, spread: Spread, rows: tuple[tuple[float, float], ...]) -> list[tuple[float, float]]:
    """The holes of one ply: struck with tape, gage and square, each then punched and drilled."""
    along, across, turn = draw.gauss(0, spread.tape), draw.gauss(0, spread.gage), draw.gauss(0, spread.square)
    return [
        (along + x * cos(turn) - y * sin(turn) + dx, across + x * sin(turn) + y * cos(turn) + dy)
        for x, y in rows
        for dx, dy in (drilled(draw, spread),)
    ]


def enters(one: list[tuple[float, float]], other: list[tuple[float, float]]) -> bool:
    """Whether some shift of one ply brings every pair of holes within its play."""
    play = allowed(CLEAR, 0.0)
    left: BaseGeometry = Point(0, 0).buffer(100)
    for (x, y), (to_x, to_y) in zip(one, other, strict=True):
        left = left.intersection(translate(play, x - to_x, y - to_y))
        if left.is_empty:
            return False
    return True


def web(draw: Random) -> bool:
    rows = tuple((0.0, row) for row in ROWS)
    return enters(ply(draw, ROUGH, rows), ply(draw, ROUGH, rows))


def support(draw: Random) -> bool:
    """Two angles, each set to its lines and turned a little, to one pattern of the support."""
    holes = []
    for side in (-1, 1):
        up, turn = draw.gauss(0, ROUGH.setting), draw.gauss(0, ROUGH.square)
        for row in ROWS:
            dx, dy = drilled(draw, ROUGH)
            holes.append((side * ACROSS / 2 - row * sin(turn) + dx, row * cos(turn) + up + dy))
    turn = draw.gauss(0, ROUGH.square)
    pattern = []
    for side in (-1, 1):
        for row in ROWS:
            x, (dx, dy) = side * ACROSS / 2, drilled(draw, ROUGH)
            pattern.append((x * cos(turn) - row * sin(turn) + dx, x * sin(turn) + row * cos(turn) + dy))
    return enters(holes, pattern)


def between(draw: Random) -> bool:
    """Both ends struck and set; it may be 1/4 in short of the supports or 1/8 long."""
    out_to_out = sum(draw.gauss(0, ROUGH.tape) + draw.gauss(0, ROUGH.setting) for _ in range(2))
    return -1 / 4 <= out_to_out - draw.gauss(0, ROUGH.supports) <= 1 / 8


def test_the_odds_of_a_piece_are_those_of_its_holes_drilled_one_by_one() -> None:
    odds = odds_of(example_piece(), ROUGH, count=100_000)
    assert odds.span is not None
    told = {"web": odds.joints[0].value, "support": odds.joints[4].value, "between": odds.span.value}
    for seed, (name, happens) in enumerate((("web", web), ("support", support), ("between", between))):
        draw = Random(seed)  # noqa: S311 - a simulation, no secret
        brute = sum(happens(draw) for _ in range(MANY)) / MANY
        value = told[name]
        assert 0.05 < value < 0.98, name
        assert abs(value - brute) < 4 * sqrt(value * (1 - value) / MANY) + 0.002, (name, value, brute)
    assert odds.whole.value == pytest.approx(
        told["web"] ** 4 * told["support"] ** 2 * told["between"], abs=0.01
    )
