import pytest

from gageline.errors import ValueProblem
from gageline.job import Practice, default_practice
from gageline.layout.accuracy import Accuracy
from gageline.layout.result import lay_out
from gageline.part import Assembly, EndCut, Face, Fitting, opposite_hand
from gageline.units import System, parse_slope
from pieces import ONE_OF_EACH, at, clip_angle, drilled, hole, piece

WEB = drilled(Face.NEAR, *(hole("4", y) for y in ("12.7", "9.7", "6.7")), name="left web")
MAIN = piece(groups=(WEB,))
ROW = drilled(Face.LEG_A, hole("1 1/2", "2"), hole("4 1/2", "2"), name="web leg")


def angles() -> tuple[Fitting, ...]:
    one = clip_angle(MAIN, holes=(ROW,))
    hand = opposite_hand(Assembly(MAIN, 1, (one,)), "B2", 1)
    return one, *hand.fittings


def test_each_distinct_fitting_is_laid_out_once_and_counted() -> None:
    one = clip_angle(MAIN, holes=(ROW,))
    layout = lay_out(Assembly(MAIN, 1, (one, one)), Practice(), System.FT_IN)
    assert [(part.part.mark, part.quantity) for part in layout.fittings] == [("a1", 2)]
    assert len(layout.seats) == 2
    assert layout.main.quantity == 1


def test_the_main_part_carries_its_marks_and_the_edges_of_its_fittings() -> None:
    layout = lay_out(Assembly(MAIN, 1, angles()), Practice(), System.FT_IN)
    assert {mark.for_ for mark in layout.main.on(Face.NEAR)} == {
        "left end", "right end", "left web", "left near angle",
    }  # fmt: skip
    assert {mark.for_ for mark in layout.main.on(Face.FAR)} == {"left end", "right end", "left far angle"}
    assert layout.main.faces == (Face.TOP, Face.NEAR, Face.BOTTOM, Face.FAR)


def test_counts_of_placements_are_summed_over_the_faces() -> None:
    layout = lay_out(Assembly(MAIN, 1), Practice(), System.FT_IN)
    assert (layout.main.by_hand, layout.main.with_template, layout.main.saving) == (4, 1, 3)


def test_the_errors_of_a_piece_are_the_largest_of_its_parts() -> None:
    odd = drilled(Face.LEG_A, hole("1 33/64", "2"), name="web leg")
    layout = lay_out(Assembly(MAIN, 1, (clip_angle(MAIN, holes=(odd,)),)), Practice(), System.FT_IN)
    assert layout.fittings[0].accuracy.mark == at("1/64")
    assert layout.accuracy.mark == max(layout.main.accuracy.mark, at("1/64"))
    assert layout.accuracy.in_pattern == at("0")
    assert isinstance(layout.accuracy, Accuracy)


def test_the_datum_is_the_long_point_of_an_end_that_is_not_square() -> None:
    bevelled = piece(left=EndCut(parse_slope("3 in 12")))
    assert lay_out(Assembly(MAIN, 1), Practice(), System.FT_IN).datum == "left end"
    assert lay_out(Assembly(bevelled, 1), Practice(), System.FT_IN).datum == "left end, long point"


@pytest.mark.parametrize("stock", ONE_OF_EACH)
@pytest.mark.parametrize("system", System)
def test_every_section_is_laid_out_in_both_systems(stock: str, system: System) -> None:
    layout = lay_out(Assembly(piece(stock), 1), default_practice(system), system)
    (step,) = layout.main.steps
    assert step.readings[0].text == ("10'-0\"" if system is System.FT_IN else "3048")
    assert step.text.endswith(f"Overall {step.readings[0].text}.")


def test_a_tape_without_divisions_is_refused() -> None:
    with pytest.raises(ValueProblem, match="tape step 0 ticks is not above zero"):
        lay_out(Assembly(MAIN, 1), Practice(tape=at("0")), System.FT_IN)
