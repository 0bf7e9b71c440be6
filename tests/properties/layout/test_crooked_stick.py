"""Laws of laying out on sticks with any skew at both ends."""

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.job import Corner, EndReadings, Practice, Stick
from gageline.layout import Choice, Way, lay_out, lay_out_on, place, tape_from
from gageline.part import End, opposite_hand
from gageline.units import Length, System
from jobs import inches
from sticks import ANGLES, example_piece

PIECE = example_piece(ANGLES + '[[piece.holes]]\nface = "near"\nx = "7\'-3"\nrows = 2\n')
LAYOUT = lay_out(PIECE, Practice(), System.FT_IN)
SIXTY_FOURTH = inches("1/64")
offsets = st.integers(-32, 32).map(lambda count: SIXTY_FOURTH * count)
ends = st.tuples(offsets, offsets, offsets, offsets).map(EndReadings)
ways = st.sampled_from([Way(choice, held) for choice in Choice for held in End])


@st.composite
def sticks(draw: st.DrawFn) -> Stick:
    """A stick up to 2 in too long or 1 in too short, with any skew at both ends."""
    length = PIECE.main.length + SIXTY_FOURTH * draw(st.integers(-64, 128))
    temperatures = draw(st.sampled_from([(None, None), (95.0, 60.0), (20.0, 68.0)]))
    camber = draw(st.sampled_from([None, inches("1/2"), -inches("1/2")]))
    return Stick(
        "B1", "", length, None, draw(ends), draw(ends), camber=camber,
        steel_temperature=temperatures[0], tape_temperature=temperatures[1],
    )  # fmt: skip


def corner_in_space(read: EndReadings, corner: Corner) -> Length:
    """How far a corner stands behind the furthest of its end, from the readings alone."""
    known = [offset for offset in read.corners if offset is not None]
    own = read.corner(corner)
    assert own is not None
    return max(known) - own


@settings(deadline=None, max_examples=60)
@given(sticks(), ways)
def test_the_holes_lie_in_one_place_whichever_corner_the_tape_is_hooked_at(stick: Stick, way: Way) -> None:
    on = lay_out_on(LAYOUT, stick, way)
    lies = on.stick
    factor = on.tape.factor
    for group in PIECE.main.groups:
        for hole in group.holes:
            places = []
            for corner in Corner:
                left = tape_from(on, hole.x, End.LEFT, corner) * (1 / factor)
                right = tape_from(on, hole.x, End.RIGHT, corner) * (1 / factor)
                places.append(corner_in_space(lies.left, corner) + left)
                places.append(on.placed.length - corner_in_space(lies.right, corner) - right)
            assert max(places) - min(places) <= Length(4)


@settings(deadline=None, max_examples=60)
@given(sticks(), ways)
def test_the_card_prints_what_a_tape_hooked_at_its_datum_reads(stick: Stick, way: Way) -> None:
    """The furthest corner of the left end as it came, or the end as it is after the trim."""
    on = lay_out_on(LAYOUT, stick, way)
    high = on.placed.left.plane.high
    printed = {one.actual.true for one in on.readings if one.actual.from_ == "left end"}
    for group in PIECE.main.groups:
        for hole in group.holes:
            hooked = tape_from(on, hole.x, End.LEFT, high) * (1 / on.tape.factor) - on.placed.left.trim
            assert any(abs(hooked - reading) <= Length(4) for reading in printed)


@settings(deadline=None, max_examples=60)
@given(sticks(), ways)
def test_the_other_hand_on_the_stick_in_the_mirror_has_the_same_readings(stick: Stick, way: Way) -> None:
    """Near and far change places on the piece, and on a stick with camber as it is to lie."""
    up = replace(stick, camber=None)
    tn, tf, bn, bf = up.left.corners
    tn2, tf2, bn2, bf2 = up.right.corners
    mirrored = replace(up, left=EndReadings((tf, tn, bf, bn)), right=EndReadings((tf2, tn2, bf2, bn2)))
    hand = opposite_hand(PIECE, "B2", 1)
    one, other = place(PIECE, up, way, inches("1/16")), place(hand, mirrored, way, inches("1/16"))
    assert (one.shift, one.origin, one.length) == (other.shift, other.origin, other.length)
    assert (one.left.least, one.left.most) == (other.left.least, other.left.most)
    assert sorted(e.lost for e in one.edgings) == sorted(e.lost for e in other.edgings)


@settings(deadline=None, max_examples=60)
@given(sticks(), ways)
def test_steel_and_shortness_add_up(stick: Stick, way: Way) -> None:
    """Whatever is chosen: stick = trims + piece - shortness at the furthest corners of both ends."""
    placed = place(PIECE, stick, way, inches("1/16"))
    short = placed.left.start + placed.right.start
    over = placed.left.trim + placed.right.trim
    assert placed.length == PIECE.main.length + over - short or placed.spare.ticks < 0


@settings(deadline=None, max_examples=60)
@given(sticks(), st.sampled_from([Choice.AS_IS, Choice.SPLIT]))
def test_patterns_keep_their_exact_spacing(stick: Stick, choice: Choice) -> None:
    on = lay_out_on(LAYOUT, stick, Way(choice))
    rows = [
        reading.actual.tape
        for reading in on.readings
        if reading.for_ == "left end, for the angles" and reading.actual.from_ == "top edge"
    ]
    assert {later - first for first, later in pairwise(rows)} <= {
        inches("3"), -inches("3"), inches("6"), -inches("6"), Length(0)
    }  # fmt: skip
    assert all(Fraction(row.ticks, inches("1/16").ticks).denominator == 1 for row in rows)
