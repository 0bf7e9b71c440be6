from hypothesis import given
from hypothesis import strategies as st

from gageline.part import (
    Assembly,
    Cope,
    End,
    EndCut,
    Face,
    FlangeTrim,
    Hole,
    Opening,
    Part,
    Side,
    bounds,
    face_outline,
    face_range,
    faces_of,
    in_order,
    opposite_hand,
    reflect_x,
    reflect_z,
)
from gageline.units import Length, Slope
from pieces import clip_angle, drilled, piece

eighths = Length(20320)
TWO_SIDED = ("W16X26", "WT8X18", "HSS6X6X3/8", "HSS6.000X0.375", "IPE 300")
ONE_SIDED = ("C8X11.5", "L6X4X1/2", "PL1/2X8", "UPN 200")


def lengths(low: int, high: int) -> st.SearchStrategy[Length]:
    return st.integers(low, high).map(lambda count: eighths * count)


cuts = st.builds(EndCut, *[st.fractions(-1, 1, max_denominator=12).map(Slope)] * 2)
holes = st.builds(
    Hole,
    lengths(80, 700),
    lengths(-16, 40),
    lengths(4, 8),
    lengths(8, 16),
    st.fractions(-90, 90, max_denominator=2),
)


@st.composite
def parts(draw: st.DrawFn, stocks: tuple[str, ...] = TWO_SIDED + ONE_SIDED) -> Part:
    """Parts that need not be sound: the laws below hold for any."""
    bare = piece(draw(st.sampled_from(stocks)), "8'-0")
    face = st.sampled_from(faces_of(bare.stock))
    copes = st.builds(
        Cope, st.sampled_from(End), st.sampled_from([Face.TOP, Face.BOTTOM]), *[lengths(4, 24)] * 3
    )
    trims = st.builds(
        FlangeTrim,
        st.sampled_from(End),
        st.just(Face.TOP),
        st.sampled_from(Side),
        lengths(8, 48),
        lengths(0, 8),
    )
    openings = st.builds(
        Opening, face, lengths(160, 400), lengths(0, 16), *[lengths(4, 24)] * 3, st.booleans()
    )
    groups = [
        drilled(
            draw(face),
            *in_order(tuple(draw(st.lists(holes, min_size=1, max_size=4)))),
            name=f"group {number}",
        )
        for number in range(draw(st.integers(0, 3)))
    ]
    return piece(
        bare.stock.designation,
        "8'-0",
        left=draw(cuts),
        right=draw(cuts),
        copes=tuple(draw(st.lists(copes, max_size=2))),
        trims=tuple(draw(st.lists(trims, max_size=2))),
        openings=tuple(draw(st.lists(openings, max_size=2))),
        groups=tuple(groups),
    )


@given(parts())
def test_turned_end_for_end_twice_is_the_same(part: Part) -> None:
    assert reflect_x(reflect_x(part)) == part


@given(parts(TWO_SIDED))
def test_near_for_far_twice_is_the_same(part: Part) -> None:
    assert reflect_z(reflect_z(part)) == part


@given(parts(TWO_SIDED))
def test_the_two_mirrors_may_be_taken_in_either_order(part: Part) -> None:
    assert reflect_x(reflect_z(part)) == reflect_z(reflect_x(part))


@given(parts())
def test_faces_keep_their_area_end_for_end(part: Part) -> None:
    turned = reflect_x(part)
    for face in faces_of(part.stock):
        before, after = (face_outline(one, face).area for one in (part, turned))
        assert abs(before - after) < 1e-3  # end cuts are kept to whole ticks


@given(parts(TWO_SIDED))
def test_faces_keep_their_area_across_the_web(part: Part) -> None:
    across = reflect_z(part)
    other = {Face.NEAR: Face.FAR, Face.FAR: Face.NEAR}
    for face in faces_of(part.stock):
        before, after = face_outline(part, face).area, face_outline(across, other.get(face, face)).area
        assert abs(before - after) < 1e-3


@given(parts())
def test_no_cut_adds_to_a_face(part: Part) -> None:
    for face in faces_of(part.stock):
        low, high = face_range(part.stock, face)
        assert face_outline(part, face).area <= part.length.inches * (high - low).inches + 1e-6


@given(parts(), lengths(24, 72), lengths(0, 40))
def test_the_opposite_hand_fills_the_mirrored_box_and_its_own_opposite_is_the_piece(
    part: Part, length: Length, low: Length
) -> None:
    upright = clip_angle(piece("W16X26"), length=f"{length.inches}in", low=f"{low.inches}in")
    piece_shown = Assembly(part, 1, (upright,))
    hand = opposite_hand(piece_shown, "B2", 1)
    (x_low, x_high), y, (far, near) = bounds(upright)
    end = part.length
    two_sided = part.stock.designation in TWO_SIDED
    mirrored = (
        ((x_low, x_high), y, (-near, -far)) if two_sided else ((end - x_high, end - x_low), y, (far, near))
    )
    assert bounds(hand.fittings[0]) == mirrored
    again = opposite_hand(hand, part.mark, 1)
    assert again.main == part
    assert again.fittings == piece_shown.fittings
