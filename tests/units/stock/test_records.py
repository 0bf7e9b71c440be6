"""What the records of a cutting plan say about themselves."""

from __future__ import annotations

from fractions import Fraction

import pytest

from gageline.stock.records import (
    SQUARE_END,
    CutPlan,
    End,
    Held,
    Offer,
    Placed,
    SectionPlan,
    Steel,
    StickPlan,
    by_weight,
)
from gageline.units import Length

BEAM = Steel("W12X26", "A992")
ANGLE = Steel("L3X3X1/4", "A36", "galvanised")
LONG, SHORT = Offer(BEAM, Length(1000), 900, heat="7K22"), Offer(BEAM, Length(600), 500)


def stick(
    stock: Offer | Held, *cuts: tuple[int, int], drop: int = 0, kept: bool = False, credit: int = 0
) -> StickPlan:
    placed = tuple(Placed("B1", Length(a), Length(b)) for a, b in cuts)
    return StickPlan(1, stock, placed, Length(drop), kept, credit)


def test_a_steel_is_named_by_what_is_known_of_it() -> None:
    assert str(ANGLE) == "L3X3X1/4 A36 galvanised"
    assert str(Steel("W12X26", finish="painted")) == "W12X26 painted"
    assert sorted([BEAM, ANGLE]) == [ANGLE, BEAM]


def test_a_square_cut_takes_the_kerf_itself() -> None:
    assert not SQUARE_END.angled
    assert SQUARE_END.kerf(Length(7)) == Length(7)


@pytest.mark.parametrize(
    ("run", "across", "kerf", "taken"),
    [
        (300, 400, 100, 125),  # 3-4-5: the blade's width times 5/4
        (400, 300, 100, 167),  # 500/3 = 166.67, rounded up
        (1, 1, 100, 142),  # 100 times the root of 2 = 141.42, rounded up
        (300, 400, 4, 5),
        (300, 400, 5, 7),  # 6.25, rounded up
        (300, 400, 0, 0),  # a shear takes nothing
        (1, 1_000_000, 100, 101),  # never less than the angle asks for
    ],
)
def test_an_angled_cut_takes_the_kerf_over_the_cosine(run: int, across: int, kerf: int, taken: int) -> None:
    end = End(Length(run), Length(across))
    assert end.angled
    assert end.kerf(Length(kerf)) == Length(taken)


def test_a_price_by_weight() -> None:
    # 40 ft at 26 lb/ft are 1040 lb; at 85 cents 884 dollars
    assert by_weight(BEAM, Length.from_inches(480), Fraction(26), Fraction(85)) == Offer(
        BEAM, Length.from_inches(480), 88400
    )
    # 20 ft 6 in at 4.9 lb/ft are 100.45 lb; at 99.5 cents 9994.775
    assert by_weight(ANGLE, Length.from_inches(246), Fraction("4.9"), Fraction("99.5")).cents == 9995


def test_length_and_set_up_of_a_stick() -> None:
    one = stick(LONG, (10, 410), (420, 720))
    assert [p.length for p in one.pieces] == [Length(400), Length(300)]
    assert one.setup == (Length(1000), (Length(400), Length(300)))
    assert one.heat == "7K22"
    assert stick(SHORT).heat is None


def test_a_section_adds_up_its_sticks() -> None:
    sticks = (
        stick(LONG, (0, 400), (410, 710), drop=280, kept=True, credit=100),
        stick(LONG, (5, 405), (410, 710), drop=280, kept=True, credit=100),
        stick(LONG, (0, 300), (310, 710)),
        stick(SHORT, (0, 500), drop=90),
        stick(Held("R1", BEAM, Length(600), 40), (0, 500), drop=90),
    )
    section = SectionPlan(BEAM, sticks, 2600, 1.0)
    assert section.cents == 3 * 900 - 200 + 500 + 40
    assert (section.gap, section.proven) == (440, False)
    # the same lengths in the same order of the same stick length: two, one and two sticks
    assert section.setups == 3
    # the kept drops are not used yet, the others are lost
    assert section.yield_ == (3 * 700 + 1000) / (2 * 720 + 1000 + 2 * 600)


def test_a_section_without_sticks() -> None:
    empty = SectionPlan(BEAM, (), 0, 0.0)
    assert (empty.cents, empty.setups, empty.yield_, empty.proven) == (0, 0, 0.0, True)


def test_a_plan_is_proven_where_every_section_is() -> None:
    right = SectionPlan(BEAM, (stick(SHORT),), 500, 1.0)
    dear = SectionPlan(ANGLE, (stick(Offer(ANGLE, Length(600), 70)),), 60, 1.0)
    assert CutPlan((right,)).proven
    both = CutPlan((right, dear))
    assert (both.cents, both.bound, both.proven) == (570, 560, False)


def test_the_order_counts_what_is_bought_by_steel_and_length() -> None:
    angle = Offer(ANGLE, Length(700), 70)
    beams = SectionPlan(
        BEAM, (stick(LONG), stick(SHORT), stick(LONG), stick(Held("R1", BEAM, Length(600)))), 0, 1.0
    )
    assert CutPlan((beams, SectionPlan(ANGLE, (stick(angle),), 0, 1.0))).order() == (
        (angle, 1),
        (SHORT, 1),
        (LONG, 2),
    )
