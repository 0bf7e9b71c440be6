import math
from dataclasses import replace
from fractions import Fraction

import pytest

from gageline.layout.fit_steps import fit_steps, join_steps
from gageline.layout.mark import Bench
from gageline.layout.seats import seat_of
from gageline.part import End, EndCut, Face, Fitting, FittingKind, Join, Placement, extent_y
from gageline.units import Length, Slope, System
from pieces import at, clip_angle, drilled, hole, leaning_aside, leaning_plate, piece

MAIN = piece()
DEPTH = extent_y(MAIN.stock)[1]
BENCH = Bench(MAIN, at("1/16"), System.FT_IN)
SPAN = (-at("1/2"), at("10'-0 1/2"))
ROW = drilled(Face.LEG_A, hole("1 1/2", "2"), hole("7 1/2", "2"))


def test_an_angle_is_set_by_its_projection_and_drop_and_checked_at_its_first_row() -> None:
    (step,) = fit_steps(BENCH, seat_of(BENCH, clip_angle(MAIN, holes=(ROW,))))
    assert step.title == "Set the left near angle"
    assert (step.face, step.from_) == (Face.NEAR, "left end and top edge")
    assert [reading.text for reading in step.readings] == ['3 1/2"', '3 11/16"', "1'-0 11/16\""]
    assert step.text == 'Set a1: 1/2" past the left end, its top 3 11/16" below the top edge.'
    assert step.check == 'First row of holes 5 3/16" below the top edge.'


def test_a_plain_angle_is_checked_at_its_line() -> None:
    (step,) = fit_steps(BENCH, seat_of(BENCH, clip_angle(MAIN)))
    assert step.check == "From its last line to the right end 9'-8 1/2\"."


def test_an_angle_may_stop_short_or_be_flush_and_level_with_the_top() -> None:
    angle = clip_angle(MAIN, low="6.7in")
    flush = replace(angle, placement=replace(angle.placement, origin=(at("0"), at("6.7in"), at("1/8"))))
    short = replace(angle, placement=replace(angle.placement, origin=(at("1"), at("7in"), at("1/8"))))
    texts = [next(fit_steps(BENCH, seat_of(BENCH, one))).text for one in (flush, short)]
    assert texts == [
        "Set a1: flush with the left end, its top level with the top edge.",
        'Set a1: 1" short of the left end, its top 5/16" above the top edge.',
    ]


def test_a_leaning_plate_is_set_to_where_it_touches_and_told_which_way_it_leans() -> None:
    # 3/8 thick, leaning 3 in 4: its foot is 3/8 over 0.8, 15/32 along the web, not the 3 5/16 of its box
    (step,) = fit_steps(BENCH, seat_of(BENCH, leaning_plate(1)))
    low, high = (reading.tape.inches for reading in step.readings[:2])
    assert high - low in (0.4375, 0.5)
    assert (
        step.text
        == 'Set p1: to its lines, leaning 9 in 12 to the right end, its top 3 11/16" below the top edge.'
    )
    (step,) = fit_steps(
        replace(BENCH, system=System.MM, tape=at("1 mm")), seat_of(BENCH, leaning_plate(-1, Face.FAR))
    )
    assert "leaning 36.9° to the left end" in step.text


@pytest.mark.parametrize(
    ("stock", "on", "ways"),
    [
        ("HSS6X6X3/8", Face.TOP, ("near side", "far side")),
        ("HSS6X6X3/8", Face.BOTTOM, ("near side", "far side")),
        ("W10X49", Face.TOP, ("near side", "far side")),
        ("W10X49", Face.BOTTOM, ("near side", "far side")),
        ("HSS6X6X3/8", Face.NEAR, ("top edge", "bottom edge")),
        ("HSS6X6X3/8", Face.FAR, ("top edge", "bottom edge")),
        ("W10X49", Face.NEAR, ("top edge", "bottom edge")),
        ("W10X49", Face.FAR, ("top edge", "bottom edge")),
    ],
)
@pytest.mark.parametrize("toward", [1, -1])
def test_a_plate_that_leans_across_a_column_has_both_lines_of_its_foot_and_a_check_of_its_lean(
    stock: str, on: Face, ways: tuple[str, str], toward: int
) -> None:
    bench = Bench(piece(stock), at("1/16"), System.FT_IN)
    seat = seat_of(bench, leaning_aside(on, toward, stock))
    (step,) = fit_steps(bench, seat)
    along, across = step.readings[:2], step.readings[2:]
    assert [reading.text for reading in along] == ["5'-0\"", "5'-9\""]
    low, high = sorted(mark.y.true.inches for mark in seat.lines if not mark.runs_across)
    assert high - low == pytest.approx(0.375 / 0.8, abs=1e-3)  # its thickness, cut aslant
    assert len(across) == 2
    way = ways[0] if toward > 0 else ways[1]
    assert f"Set p1: to its lines, leaning 9 in 12 to the {way}" in step.text
    # its face of 5 runs 3 aside; the other, shorter by 3/8 x 3/4, 3 - 0.169
    past = {
        f"By a square on the face its outer edge {far} past its foot toward the {way}."
        for far in ('3"', '2 13/16"')
    }
    start, _, lean = step.check.partition(" By ")
    assert start == "From its last line to the right end 4'-3\"."
    assert f"By {lean}" in past
    metric = replace(bench, system=System.MM, tape=at("1 mm"))
    (step,) = fit_steps(metric, seat_of(metric, leaning_aside(on, toward, stock)))
    assert f"leaning 36.9° to the {way}" in step.text


def test_the_foot_of_a_plate_that_leans_is_struck_where_its_corner_stands() -> None:
    """3/8 over 0.8 is 0.469: one line on the middle, the other 1/2 to the side that the plate is thick to."""
    bench = Bench(piece("HSS6X6X3/8"), at("1/16"), System.FT_IN)
    (step,) = fit_steps(bench, seat_of(bench, leaning_aside(Face.TOP, 1)))
    assert [reading.text for reading in step.readings[2:]] == ['1/2" near', '0" near']
    drop = seat_of(bench, leaning_aside(Face.NEAR, 1)).drop
    assert drop is not None
    assert drop.inches == pytest.approx(3, abs=1e-3)


def end_plate(*groups: str) -> Fitting:
    holes = tuple(drilled(Face.FACE, hole("3", "2"), name=name) for name in groups)
    plate = piece("PL1/2X8", "1'-6", "e1", groups=holes)
    stand = Placement((at("0"), DEPTH + at("1"), at("4")), (0, -1, 0), (0, 0, -1))
    return Fitting("left end plate", FittingKind.END_PLATE, plate, stand, None, End.LEFT, Join.WELDED)


def test_an_end_plate_gets_the_outline_of_the_beam_before_it_is_set() -> None:
    outline, step = fit_steps(BENCH, seat_of(BENCH, end_plate()))
    assert outline.title == "Outline on e1"
    assert outline.from_ == "left end and top edge of e1"
    assert [reading.text for reading in outline.readings] == ['1"', "1'-4 11/16\"", '1 1/4"', '6 3/4"']
    assert outline.text == (
        'Strike the outline of the piece on e1, on the side that meets it, the middle of its web 4" from the '
        "top edge. Its left end goes up, its bottom edge to the near side."
    )
    assert outline.check == "Between the two lines from the left end 1'-3 11/16\"."
    assert step.text == 'Set e1: across the left end, its top 1" above the top edge.'
    assert step.check == 'Its bottom 1 5/16" below the bottom edge.'


@pytest.mark.parametrize("way", [1, -1])
def test_a_plate_on_a_sloped_end_is_set_along_the_cut_where_it_meets_the_steel(way: int) -> None:
    """A hollow section 8 deep cut 6 in 12 is 8 x 1.118 = 8.944 along its cut: a cap of 8 1/2 leaves 0.222."""
    main = piece("HSS8X4X1/4", left=EndCut(Slope(Fraction(way, 2))))
    scale = math.hypot(1, 0.5)
    down = (0.5 * way / scale, -1 / scale, 0.0)
    start = at("8 1/2").inches / 2 - 8 * scale / 2  # from the corner at the top to the cap's upper end
    middle = main.end_x(End.LEFT, at("4"), at("0")).inches, 4.0
    x, y = (Length.from_inches(m - d * 4.25) for m, d in zip(middle, down, strict=False))
    cap = piece("PL1/2X4-1/2", "8 1/2", "k1")
    stand = Placement((x, y, at("2 1/4")), down, (0, 0, -1))
    fitting = Fitting("left end cap", FittingKind.END_PLATE, cap, stand, None, End.LEFT, Join.WELDED)
    bench = Bench(main, at("1/16"), System.FT_IN)
    seat = seat_of(bench, fitting)
    assert seat.drop is not None
    assert (seat.drop.inches, seat.rise.inches) == pytest.approx((-start, -start), abs=1e-4)
    _, step = fit_steps(bench, seat)
    assert step.text == 'Set k1: across the left end, its top 1/4" below the top edge, along the cut.'
    assert step.check == 'Its bottom 1/4" above the bottom edge, along the cut.'
    rows = drilled(Face.FACE, hole("2", "2"), hole("5", "2"))
    holed = seat_of(bench, replace(fitting, part=replace(cap, groups=(rows,))))
    assert holed.first_row is not None
    assert holed.first_row.inches == pytest.approx(2 - start, abs=1e-4)
    _, step = fit_steps(bench, holed)
    assert step.check == 'First row of holes 2 1/4" below the top edge, along the cut.'


def test_a_pipe_is_struck_on_its_plate_as_a_circle_about_two_middle_lines() -> None:
    pipe = piece("HSS6.000X0.250")
    base = replace(end_plate(), placement=Placement((at("0"), at("9"), at("4")), (0, -1, 0), (0, 0, -1)))
    bench = Bench(pipe, at("1/16"), System.FT_IN)
    outline, step = fit_steps(bench, seat_of(bench, base))
    assert [reading.text for reading in outline.readings] == ['6"', '4"']
    assert (
        'both middle lines of the pipe on e1, on the side that meets it, and a circle of 6" about'
        in outline.text
    )
    assert outline.check == 'Across the circle 6", both ways.'
    assert step.text == 'Set e1: across the left end, its top 3" above the top line.'
    assert step.check == 'Its bottom 9" below the bottom line.'


def test_a_channel_says_where_the_back_of_its_web_is() -> None:
    bench = Bench(piece("C12X20.7"), at("1/16"), System.FT_IN)
    outline, _ = fit_steps(bench, seat_of(bench, end_plate()))
    assert 'on the side that meets it, the back of its web 4" from the top edge. Its left end' in outline.text


def test_where_no_edge_falls_on_the_plate_the_line_of_the_web_is_struck() -> None:
    plate = piece("PL1/2X5", "9", "e1")
    low = replace(
        end_plate(), part=plate, placement=Placement((at("0"), at("12"), at("2 1/2")), (0, -1, 0), (0, 0, -1))
    )
    outline, _ = fit_steps(BENCH, seat_of(BENCH, low))
    assert [reading.text for reading in outline.readings] == ['2 1/2"']
    assert outline.text.startswith(
        "No edge of the piece falls on e1. Strike the middle of its web on the side that meets it. Its left"
    )
    assert outline.check == "The line square to the left end of e1."


def test_a_box_has_an_outline_and_no_web() -> None:
    bench = Bench(piece("HSS6X6X3/8"), at("1/16"), System.FT_IN)
    outline, _ = fit_steps(bench, seat_of(bench, end_plate()))
    assert "web" not in outline.text


def test_a_plate_that_lies_across_the_end_has_an_edge_up_and_an_end_near() -> None:
    lying = replace(end_plate(), placement=Placement((at("0"), -at("1"), -at("9")), (0, 0, 1), (0, 1, 0)))
    outline, _ = fit_steps(BENCH, seat_of(BENCH, lying))
    assert outline.text.endswith("Its top edge goes up, its right end to the near side.")


def test_a_plate_on_a_flange_is_set_to_its_lines() -> None:
    plate = piece("PL3/8X3", "6", "p1")
    stand = Placement((at("4'"), DEPTH, at("3/16")), (1, 0, 0), (0, 1, 0))
    fitting = Fitting("top plate", FittingKind.PLATE, plate, stand, Face.TOP, None, Join.WELDED)
    (step,) = fit_steps(BENCH, seat_of(BENCH, fitting))
    assert step.text == "Set p1: to its lines."
    assert step.from_ == "left end and centre line"


def test_tacks_go_to_both_edges_and_the_middle_on_both_sides() -> None:
    seat = seat_of(BENCH, replace(clip_angle(MAIN), join=Join.WELDED))
    tack, over = join_steps(BENCH, (seat,), SPAN)
    assert tack.text == (
        "Tack each fitting at both edges, then in the middle; near side first, then far side."
    )
    assert tack.check == "Still square, and 10'-1\" out-to-out, before any weld is run."
    assert over.text == "Measure over everything: 10'-1\" out-to-out."
    assert over.check == '1/2" past the left end and 1/2" past the right end.'


def test_bolted_fittings_are_pinned_and_bolted() -> None:
    seat = seat_of(BENCH, clip_angle(MAIN))
    bolts, over = join_steps(BENCH, (seat,), (at("0"), at("10'")))
    assert bolts.text == "Pin one hole of each bolted fitting, bolt the rest snug, then the pinned one."
    assert bolts.check == "10'-0\" out-to-out."
    assert over.check == "Flush at the left end and flush at the right end."
