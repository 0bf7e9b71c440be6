from collections import Counter
from dataclasses import replace

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gageline.part import (
    Assembly,
    End,
    EndCut,
    HoleGroup,
    Part,
    extent_y,
    extent_z,
    face_range,
    opposite_hand,
    reflect_x,
    reflect_z,
)
from gageline.solid import Mass, body_of, weigh
from gageline.steel import HoleKind, Plate, Profile, Stock
from gageline.units import ZERO, Length, System
from pieces import clip_angle, piece
from strategies import lengths, parts, stocks

INCH = Length.from_inches(1)
NEAR = Length.from_inches(0.001)
TWO_SIDED = (Profile.I_SHAPE, Profile.TEE, Profile.BOX, Profile.TUBE)

quietly = settings(deadline=None, max_examples=60, suppress_health_check=[HealthCheck.too_slow])


def is_closed(part: Part) -> bool:
    """Whether every edge of the mesh is between two triangles that run along it in opposite ways."""
    triangles = body_of(part).mesh().triangles
    edges = Counter((int(t[i]), int(t[i - 2])) for t in triangles for i in range(3))
    return all(count == 1 and edges[b, a] == 1 for (a, b), count in edges.items())


def centre(mass: Mass) -> tuple[float, ...]:
    return tuple(side.inches for side in mass.centre)


def close(one: Mass, two: Mass) -> bool:
    """The same weight but for end cuts kept to whole ticks, and centres within a thousandth."""
    same_weight = abs(one.weight - two.weight) < 1e-4 * (1 + one.weight)
    return same_weight and all(abs(a - b) < NEAR for a, b in zip(one.centre, two.centre, strict=True))


@quietly
@given(parts())
def test_a_valid_part_has_a_closed_body_that_is_not_empty(part: Part) -> None:
    assert weigh(part).weight > 0
    assert is_closed(part)


@quietly
@given(parts())
def test_a_body_fills_the_box_of_its_part(part: Part) -> None:
    wide = Length.from_inches(0.02)  # chords of a tube stand out 0.0004 of its radius
    body = body_of(part).box
    box = ((ZERO, part.length), extent_y(part.stock), extent_z(part.stock))
    for (low, high), (least, most) in zip(body, box, strict=True):
        assert low > least - wide
        assert high < most + wide
    for (low, high), (least, most) in zip(body[1:], box[1:], strict=True):
        assert abs(low - least) < wide
        assert abs(high - most) < wide
    whole = not (part.copes or part.trims or part.clips)
    reached = {end for end in End if part.cut(end).square or (whole and not part.cut(end).mitre)}
    (low, high), *_ = body
    assert End.LEFT not in reached or abs(low) < wide
    assert End.RIGHT not in reached or abs(high - part.length) < wide


@quietly
@given(parts(), st.data())
def test_one_more_hole_never_raises_the_weight(part: Part, data: st.DataObject) -> None:
    groups = [group for group in part.groups if group.holes]
    if not groups:
        return
    group = data.draw(st.sampled_from(groups))
    low, high = face_range(part.stock, group.face)
    hole = replace(group.holes[0], x=data.draw(lengths(ZERO, part.length)), y=data.draw(lengths(low, high)))
    more = replace(part, groups=(*part.groups, HoleGroup("more", group.face, (hole,), "", HoleKind.STD)))
    assert weigh(more).weight <= weigh(part).weight + 1e-6
    fewer = replace(part, groups=())
    assert weigh(part).weight < weigh(fewer).weight


@quietly
@given(st.sampled_from(Profile).flatmap(lambda p: stocks(p, System.FT_IN)), lengths(INCH, INCH * 400))
def test_weight_grows_with_length(stock: Stock, length: Length) -> None:
    short = replace(piece(), stock=stock, length=length)
    long = replace(short, length=length * 3)
    assert abs(weigh(long).weight / weigh(short).weight - 3) < 1e-6
    x, y, z = centre(weigh(short))
    assert all(abs(a - b) < 1e-4 for a, b in zip(centre(weigh(long)), (3 * x, y, z), strict=True))


@quietly
@given(parts())
def test_end_for_end_keeps_the_weight_and_mirrors_the_centre(part: Part) -> None:
    mass = weigh(part)
    x, y, z = mass.centre
    assert close(weigh(reflect_x(part)), replace(mass, centre=(part.length - x, y, z)))


@quietly
@given(st.sampled_from(TWO_SIDED).flatmap(parts))
def test_near_for_far_keeps_the_weight_and_mirrors_the_centre(part: Part) -> None:
    mass = weigh(part)
    x, y, z = mass.centre
    assert close(weigh(reflect_z(part)), replace(mass, centre=(x, y, -z)))


@quietly
@given(parts())
def test_the_opposite_hand_weighs_the_same(part: Part) -> None:
    shown = Assembly(part, 1, (clip_angle(piece("W16X26")),))
    hand = opposite_hand(shown, "X2", 1)
    mass, mirrored = weigh(shown), weigh(hand)
    x, y, z = mass.centre
    turned = (x, y, -z) if part.profile in TWO_SIDED else (part.length - x, y, z)
    assert close(mirrored, replace(mass, centre=turned))


@quietly
@given(parts())
def test_no_cut_adds_weight(part: Part) -> None:
    bare = replace(part, copes=(), trims=(), clips=(), groups=(), openings=(), left=EndCut(), right=EndCut())
    assert weigh(part).weight <= weigh(bare).weight * (1 + 1e-9)
    if isinstance(part.stock, Plate):
        assert abs(weigh(bare).volume - part.length.inches * part.stock.area) < 1e-6 * weigh(bare).volume
