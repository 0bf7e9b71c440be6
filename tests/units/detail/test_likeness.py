from __future__ import annotations

from dataclasses import replace
from typing import Any

from assembling import bay, detailed
from gageline.detail.likeness import Likeness, likeness_of
from gageline.part import Assembly, End, Face, opposite_hand
from gageline.units import Length
from pieces import drilled, hole, piece


def one(*xs: str, **features: Any) -> Assembly:
    holes = drilled(Face.NEAR, *(hole(x, "5") for x in xs))
    return Assembly(piece("W16X26", "10'-0", groups=(holes,), **features), 1)


def alike(a: Assembly, b: Assembly) -> bool:
    return any(likeness_of(b).same(seen) for _, seen in likeness_of(a).turns())


def test_names_marks_and_order_do_not_count() -> None:
    other = one("2", "6")
    renamed = replace(
        other, main=replace(other.main, mark="Z", groups=(replace(other.main.groups[0], name="q"),))
    )
    assert alike(one("2", "6"), renamed)


def test_a_web_hole_is_the_same_from_both_sides() -> None:
    near, far = one("2"), one("2")
    far = replace(far, main=replace(far.main, groups=(replace(far.main.groups[0], face=Face.FAR),)))
    assert alike(near, far)


def test_a_piece_turned_end_for_end_is_itself() -> None:
    assert alike(one("2", "6"), one("9'-10", "9'-6"))
    assert not alike(one("2", "6"), one("2", "7"))


def test_a_channel_has_a_back() -> None:
    channel = Assembly(piece("C12X20.7", "10'-0", groups=(drilled(Face.NEAR, hole("2", "5")),)), 1)
    turned = Assembly(piece("C12X20.7", "10'-0", groups=(drilled(Face.NEAR, hole("9'-10", "5")),)), 1)
    assert not alike(channel, turned)
    assert any(likeness_of(turned).same(seen) for seen in likeness_of(channel).mirrored())


def test_a_few_steps_of_length_do_not_tell_pieces_apart() -> None:
    first, shifted = one("2", "6"), one("2", "6")
    group = shifted.main.groups[0]
    moved = replace(group, holes=tuple(h.moved(Length(3)) for h in group.holes))
    assert alike(first, replace(shifted, main=replace(shifted.main, groups=(moved,))))


def test_the_opposite_hand_of_a_detailed_piece_is_seen() -> None:
    beam = detailed(bay(ends={"connection": "single angle", "side": "near"})).member("B1").assembly
    skew = detailed(bay(ends={"connection": "single angle"}, start={"side": "far"})).member("B1").assembly
    mirrored: Likeness = likeness_of(opposite_hand(skew, "X", 1))
    assert any(mirrored.same(seen) for seen in likeness_of(skew).mirrored())
    assert not alike(beam, skew)
    assert beam.fittings[0].end is End.LEFT


def test_a_few_steps_at_the_border_of_a_rounding_do_not_tell_pieces_apart() -> None:
    """Two holes at 2.005 in, of which one is 3 ticks to the right: it was put after the other one."""
    border = Length(1625 * 200 + 812)
    first = hole("2", "5"), hole("2", "3")
    upright = tuple(replace(one_, x=border) for one_ in first)
    leaning = replace(upright[0], x=border), replace(upright[1], x=border + Length(3))
    pieces = [
        Assembly(piece("W16X26", "10'-0", groups=(drilled(Face.NEAR, *holes),)), 1)
        for holes in (upright, leaning)
    ]
    assert alike(*pieces)
