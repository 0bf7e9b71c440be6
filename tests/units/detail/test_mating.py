"""Holes on one line in space."""

from assembling import bay, detailed
from frames import demo_frame
from gageline.detail.mating import Pile, met_by, piles_of
from gageline.part import FittingKind
from gageline.units import Length, parse_length

PLAY = Length.from_inches(1 / 16)


def demo_piles() -> tuple[Pile, ...]:
    full = demo_frame()
    assert full.detailed is not None
    return piles_of(full.detailed.placed, PLAY)


def test_every_hole_of_the_frame_is_in_one_pile() -> None:
    full = demo_frame()
    assert full.detailed is not None
    pieces = [one.assembly for one in full.detailed.placed]
    parts = [part for one in pieces for part in (one.main, *(fit.part for fit in one.fittings))]
    holes = sum(len(group.holes) for part in parts for group in part.groups)
    assert sum(len(pile.plies) for pile in demo_piles()) == holes


def test_only_the_holes_for_anchor_rods_meet_nothing() -> None:
    alone = [pile.plies[0] for pile in demo_piles() if len(pile.plies) == 1]
    assert {ply.kind for ply in alone} == {FittingKind.BASE_PLATE}
    assert len(alone) == 4 * 8


def test_the_grip_is_the_steel_between_head_and_nut() -> None:
    """Angles 5/16 on both sides of a W21X62, 0.400 in thick, and angles alone on it."""
    plies = {(pile.pieces, pile.grip) for pile in demo_piles() if "G3" in pile.pieces and "B1" in pile.pieces}
    web, angle = parse_length("0.4in"), parse_length("5/16")
    assert plies == {(("G3", "B1", "B3"), web + angle * 2), (("G3", "B1"), web + angle)}


def test_plies_that_stand_apart_are_not_bolted_together() -> None:
    """The near and the far angle at both ends: one line through the girder, but a span of steel between."""
    piles = piles_of(detailed(bay()).placed, PLAY)
    assert max(len(pile.plies) for pile in piles) == 3
    assert sum(len(pile.pieces) > 1 for pile in piles) == 12


def test_a_frame_without_pieces_has_no_holes() -> None:
    assert piles_of((), PLAY) == ()


def test_what_a_hole_meets_is_told_by_mark() -> None:
    full = demo_frame()
    assert full.detailed is not None
    assert full.detailed.met["P1"] == {("right cap plate", "bolt holes"): "3/4"}
    assert full.detailed.met == met_by(
        demo_piles(), {one.assembly.mark: one.mark for one in full.detailed.placed}
    )
