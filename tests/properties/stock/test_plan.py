"""Laws of whole plans; the checker verifies each."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.stock import CutPlan, Effort, End, Held, Offer, Piece, Saw, Steel, check_plan, plan_cuts
from gageline.units import Length

BEAM = Steel("W12X26", "A992")
EFFORT = Effort(seconds=20.0)


def eighths(count: int) -> Length:
    return Length.from_inches(Fraction(count, 8))


def checked(pieces: list[Piece], stocks: list[Offer | Held], saw: Saw) -> CutPlan:
    plan = plan_cuts(pieces, stocks, saw, effort=EFFORT)
    assert check_plan(plan, pieces, stocks, saw) == []
    return plan


@st.composite
def pieces(draw: st.DrawFn) -> list[Piece]:
    lengths = draw(st.lists(st.integers(160, 800), min_size=1, max_size=4))
    found = []
    for k, length in enumerate(lengths):
        ends = [
            End(eighths(draw(st.sampled_from([0, 0, 48, 96]))), eighths(96), long_side=side)  # type: ignore[arg-type]  # one of two words
            for side in draw(st.permutations(["high", "low"]))
        ]
        turnable = draw(st.booleans())
        found.append(
            Piece(
                f"B{k}",
                BEAM,
                eighths(length),
                draw(st.integers(1, 3)),
                left=ends[0],
                right=ends[1],
                turnable=turnable,
            )
        )
    return found


@st.composite
def stocks(draw: st.DrawFn) -> list[Offer | Held]:
    bought = [
        Offer(BEAM, eighths(96 * feet), 1000 * feet)
        for feet in draw(st.sets(st.sampled_from([20, 30, 40]), min_size=1))
    ]
    rack = [
        Held(f"R{k}", BEAM, eighths(length), 100 * k, f"H{k}")
        for k, length in enumerate(draw(st.lists(st.integers(400, 1600), max_size=3)))
    ]
    return [*bought, *rack]


saws = st.builds(
    Saw,
    kerf=st.sampled_from([eighths(0), eighths(1)]),
    start_trim=st.sampled_from([eighths(0), eighths(4)]),
    end_trim=st.sampled_from([eighths(0), eighths(4)]),
    grip=st.sampled_from([eighths(0), eighths(48)]),
    keep=st.just(eighths(200)),
    drop_percent=st.sampled_from([0, 50]),
)


@settings(max_examples=40, deadline=None)
@given(pieces(), stocks(), saws, st.randoms())
def test_plan_is_right_and_does_not_depend_on_the_order_of_input(
    wanted: list[Piece], sticks: list[Offer | Held], saw: Saw, random: object
) -> None:
    one = checked(wanted, sticks, saw)
    mixed, other = list(wanted), list(sticks)
    random.shuffle(mixed)  # type: ignore[attr-defined]  # hypothesis hands a Random
    random.shuffle(other)  # type: ignore[attr-defined]  # hypothesis hands a Random
    again = checked(mixed, other, saw)
    assert [s.sticks for s in one.sections] == [s.sticks for s in again.sections]
    assert one.bound == again.bound


@settings(max_examples=25, deadline=None)
@given(pieces(), stocks(), st.sampled_from([eighths(1), eighths(2)]))
def test_square_pieces_with_a_wider_kerf_never_cost_less(
    wanted: list[Piece], sticks: list[Offer | Held], kerf: Length
) -> None:
    square = [replace(p, left=End(), right=End()) for p in wanted]
    narrow, wide = checked(square, sticks, Saw(eighths(0))), checked(square, sticks, Saw(kerf))
    assert narrow.proven
    assert wide.proven
    assert wide.cents >= narrow.cents


@settings(max_examples=25, deadline=None)
@given(pieces(), stocks(), saws)
def test_recutting_changes_nothing_that_is_done(
    wanted: list[Piece], sticks: list[Offer | Held], saw: Saw
) -> None:
    first = checked(wanted, sticks, saw).sections[0]
    done = first.sticks[: len(first.sticks) // 2]
    again = plan_cuts(wanted, sticks, saw, done, EFFORT)
    assert check_plan(again, wanted, sticks, saw) == []
    kept = again.sections[0].sticks[: len(done)]
    assert [replace(s, done=False) for s in kept] == list(done)
    assert again.cents >= first.bound
