"""From pieces and sticks to whole numbers: lengths and rooms by hand, on the safe side each way."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from random import Random

import pytest

from gageline.stock.problem import Pattern
from gageline.stock.records import End, Held, Offer, Piece, Saw, Steel
from gageline.stock.reduce import drop_credit, drop_rate, loose_ticks, reduced, safe_ticks
from gageline.units import ZERO, Length

BEAM = Steel("W12X26", "A992")
SAW = Saw(Length(200))
SLOPE = End(Length(300), Length(400))  # 3-4-5: the saw takes 250 along the piece
PIECE = Piece("B1", BEAM, Length(1000))
STICK = Offer(BEAM, Length(5000), 900)


def test_square_ends_take_one_cut_a_piece_either_way() -> None:
    assert safe_ticks(PIECE, SAW) == 1200
    assert loose_ticks(PIECE, SAW, []) == 1200


def test_an_angled_end_takes_its_own_cut_unless_it_is_shared() -> None:
    sloped = replace(PIECE, right=SLOPE)
    assert safe_ticks(sloped, SAW) == 1000 + 200 + 250
    # alone: half a square cut and the whole sloped one
    assert loose_ticks(sloped, SAW, []) == 1000 + 100 + 250
    # shared: half of the sloped cut, and the run overlaps that of the neighbour
    assert loose_ticks(sloped, SAW, [SLOPE]) == 1000 + 100 + 125 - 150


def test_what_is_odd_is_rounded_down_where_it_must_be_least() -> None:
    assert loose_ticks(replace(PIECE, left=SLOPE), Saw(Length(100)), [SLOPE]) == 962  # 962.5


def test_square_pieces_make_three_equal_questions_in_the_coarsest_unit() -> None:
    found = reduced([replace(PIECE, quantity=3)], [replace(STICK, length=Length(4600))], SAW, {})
    # 1200 a piece in a room of 4600 and the 200 of a last cut beyond the end; 200 divides them all
    assert found.safe == found.loose == found.near
    assert found.safe.lengths == (6,)
    assert found.safe.demand == (3,)
    assert (found.safe.sticks[0].length, found.safe.sticks[0].cost) == (24, 900)


def test_shared_ends_lie_between_safe_and_loose() -> None:
    sloped = replace(PIECE, right=SLOPE, quantity=2)
    found = reduced([sloped], [STICK], SAW, {})
    # in units of 25: 1450 and 1075 long; room 5200, less 300 + 250 + 200 where one end finds no partner
    assert (found.safe.lengths, found.safe.sticks[0].length) == ((58,), 208)
    assert (found.loose.lengths, found.loose.sticks[0].length) == ((43,), 208)
    assert (found.near.lengths, found.near.sticks[0].length) == ((43,), 178)
    # a single one has nobody to share with
    alone = reduced([replace(sloped, quantity=1)], [STICK], SAW, {})
    assert alone.loose.lengths[0] * 50 == 1350
    # nor has one that is alike at both ends, for it does not nest with itself
    both = reduced([replace(sloped, left=SLOPE, quantity=1)], [STICK], SAW, {})
    assert both.loose.lengths[0] * 100 == 1500


def test_trims_and_grip_shorten_the_room() -> None:
    saw = Saw(Length(200), start_trim=Length(100), end_trim=Length(300), grip=Length(600))
    found = reduced([PIECE], [STICK], saw, {})
    assert (found.safe.lengths, found.safe.sticks[0].length) == ((12,), 42)


@pytest.mark.parametrize(
    ("others", "safe", "loose"),
    [(0, (100_001, 200_000), (100_000, 200_001)), (199, (29412, 58823), (29411, 58824))],
)
def test_very_fine_lengths_are_rounded_to_the_safe_side(
    others: int, safe: tuple[int, int], loose: tuple[int, int]
) -> None:
    # two of 500 001 and a tick fill the stick; in units of 5, or with many kinds of 17, they no longer may in
    # the safe question, and do with room to spare in the loose one
    pieces = [Piece("B1", BEAM, Length(500_001), 2)]
    pieces += [Piece(f"C{k}", BEAM, Length(400_000 - 17 * 5 * k)) for k in range(others)]
    found = reduced(pieces, [Offer(BEAM, Length(1_000_003), 9)], Saw(ZERO), {})
    assert (found.safe.lengths[0], found.safe.sticks[0].length) == safe
    assert (found.loose.lengths[0], found.loose.sticks[0].length) == loose


def test_sticks_that_are_alike_are_counted_and_useless_ones_left_out() -> None:
    rack = [
        Held("R2", BEAM, Length(3000)),
        Held("R1", BEAM, Length(3000)),
        Held("R3", BEAM, Length(3000), heat="H"),
    ]
    offers = [
        STICK,
        replace(STICK, cents=800, limit=2),
        replace(STICK, cents=800, limit=2),
        replace(STICK, limit=0),
    ]
    found = reduced([PIECE], [*rack, *offers, Held("R4", BEAM, ZERO)], SAW, {})
    names = [tuple(s.mark if isinstance(s, Held) else s.cents for s in group) for group in found.stocks]
    assert names == [("R3",), ("R1", "R2"), (800, 800), (900,)]
    assert [s.limit for s in found.safe.sticks] == [1, 2, 4, None]


def test_pieces_that_are_alike_are_one_kind_and_none_wanted_is_none() -> None:
    pieces = [replace(PIECE, mark="B2", quantity=2), PIECE, replace(PIECE, mark="B3", quantity=0)]
    found = reduced([*pieces, replace(PIECE, mark="B4", length=Length(1500))], [STICK], SAW, {})
    assert [tuple(p.mark for p in kind) for kind in found.kinds] == [("B4",), ("B1", "B2")]
    assert found.safe.demand == (1, 3)


def test_the_question_is_the_same_in_any_order() -> None:
    pieces = [
        replace(PIECE, mark=f"B{k}", length=Length(1000 + 100 * (k % 3)), right=[SLOPE, End()][k % 2])
        for k in range(6)
    ]
    stocks: list[Offer | Held] = [
        STICK,
        replace(STICK, limit=3),
        Held("R1", BEAM, Length(4000)),
        Held("R2", BEAM, Length(4000)),
    ]
    first = reduced(pieces, stocks, SAW, {})
    random = Random(1)  # noqa: S311  # orders to try
    for _ in range(5):
        assert reduced(random.sample(pieces, 6), random.sample(stocks, 4), SAW, {}) == first


def test_heats_certificates_and_days_say_what_may_come_from_what() -> None:
    late, soon = date(2030, 5, 9), date(2030, 5, 1)
    stocks = [
        replace(STICK, cents=1, heat="A"),
        replace(STICK, cents=2, heat="B", certificate=True),
        replace(STICK, cents=3, arrives=late),
    ]

    def fits(piece: Piece, **heats: str) -> tuple[bool, ...]:
        found = reduced([piece], stocks, SAW, heats)
        return tuple(not s.fits or s.fits[0] for s in found.safe.sticks)

    assert fits(PIECE) == (True, True, True)
    assert fits(replace(PIECE, heat="A")) == (True, False, False)
    assert fits(replace(PIECE, certificate=True)) == (False, True, False)
    assert fits(replace(PIECE, needed=soon)) == (True, True, False)
    assert fits(replace(PIECE, needed=late)) == (True, True, True)
    assert fits(replace(PIECE, one_heat="frame"), frame="B") == (False, True, False)


def test_a_drop_earns_its_share_of_the_price_rounded_down() -> None:
    saw = replace(SAW, keep=Length(300), drop_percent=50)
    stock = Held("R1", BEAM, Length(3000), 1000)
    assert drop_rate(stock, saw) == (50_000, 300_000)
    assert drop_credit(stock, Length(300), saw) == 50
    assert drop_credit(stock, Length(305), saw) == 50  # 50.83
    assert drop_credit(stock, Length(299), saw) == 0
    assert drop_credit(stock, ZERO, replace(saw, keep=ZERO)) == 0
    assert drop_credit(stock, Length(300), SAW) == 0


def test_a_pattern_costs_the_stick_less_the_credit_of_the_drop_left_on_the_floor() -> None:
    saw = Saw(Length(10), end_trim=Length(20), grip=Length(30), keep=Length(100), drop_percent=50)
    stock = Offer(BEAM, Length(1060), 1000)
    found = reduced([Piece("B1", BEAM, Length(245), 4)], [stock], saw, {})
    for count in (1, 2, 3):
        # each piece and its cut; what the saw could not use stays on the drop
        drop = 1060 - count * (245 + 10)
        cost = 1000 - 1000 * drop // (2 * 1060)
        assert (
            found.safe.cost(Pattern(0, ((0, count),))) == found.loose.cost(Pattern(0, ((0, count),))) == cost
        )
        assert cost == 1000 - drop_credit(stock, Length(drop), saw)
    assert found.safe.cost(Pattern(0, ((0, 4),))) == 1000  # 40 left, too short to keep
