import pytest

from gageline.layout.cut_steps import (
    check_step,
    clip_step,
    cope_step,
    diagonal,
    end_steps,
    finished,
    trim_step,
)
from gageline.layout.mark import Bench
from gageline.part import Clip, Cope, End, EndCut, Face, FlangeTrim, Part, Side
from gageline.units import System, parse_slope
from pieces import at, piece


def on_bench(part: Part, system: System = System.FT_IN) -> Bench:
    return Bench(part, at("1/16") if system is System.FT_IN else at("1mm"), system)


def test_the_first_step_names_the_datum_the_overall_and_how_square() -> None:
    step = check_step(on_bench(piece()), Face.NEAR)
    assert step.text == (
        "Lay it near web up. The left end is the datum: hook the tape there, and write B1 there, upright. "
        "Overall 10'-0\"."
    )
    assert step.check == (
        'Along the bottom edge 10\'-0"; square both ends, at most 1/16" open at the square.'
    )
    assert [reading.text for reading in step.readings] == ["10'-0\""]


@pytest.mark.parametrize(
    ("left", "point"),
    [
        (EndCut(parse_slope("3 in 12")), "top edge"),
        (EndCut(-parse_slope("3 in 12")), "bottom edge"),
        (EndCut(mitre=parse_slope("3 in 12")), "near side"),
        (EndCut(parse_slope("3 in 12"), -parse_slope("3 in 12")), "top edge, far side"),
    ],
)
def test_the_tape_is_hooked_on_the_long_point(left: EndCut, point: str) -> None:
    step = check_step(on_bench(piece(left=left)), Face.NEAR)
    assert (
        f"hook the tape there, at the long point on the {point}, and write B1 there, upright. Overall"
        in step.text
    )
    assert step.check.endswith('; square the right end, at most 1/16" open at the square.')


def test_an_angle_is_cut_from_heel_to_toe() -> None:
    """Its heel is at the bottom of leg A and at the near side of leg B: it has no top edge."""
    bench = on_bench(piece("L6X4X1/2", left=EndCut(parse_slope("3 in 12")), right=MITRE))
    assert (
        "at the long point on the toe of leg A, and write B1 there, upright. Overall"
        in check_step(bench, Face.LEG_A).text
    )
    (bevel,) = end_steps(bench, End.LEFT)
    (mitre,) = end_steps(bench, End.RIGHT)
    assert bevel.text.startswith('Mark 0" at the toe of leg A and 1 1/2" at the heel; strike the bevel')
    assert mitre.text.startswith("Mark 10'-0\" at the heel and 9'-10\" at the toe of leg B; strike the mitre")
    said = finished(bench)
    assert all(word in said for word in (" toe of leg A ", " heel ", ", leg B, heel ", ", toe of leg B "))
    assert "side" not in said


def test_the_second_length_is_taken_where_the_section_has_a_line_for_it() -> None:
    checks = [check_step(on_bench(piece(stock)), Face.NEAR).check for stock in ("L6X4X1/2", "HSS6.000X0.375")]
    assert [check.partition(" 10'")[0] for check in checks] == ["Along the heel", "Along the bottom line"]


@pytest.mark.parametrize(
    ("part", "check"),
    [
        (
            piece(left=EndCut(parse_slope("3 in 12"))),
            'Along the bottom edge 10\'-0"; square the right end, at most 1/16" open at the square.',
        ),
        (
            piece(right=EndCut(parse_slope("3 in 12"))),
            'Along the bottom edge at least 10\'-0"; square the left end, at most 1/16" open at the square.',
        ),
        (
            piece(left=EndCut(parse_slope("3 in 12")), right=EndCut(mitre=parse_slope("3 in 12"))),
            "Along the bottom edge at least 10'-0\".",
        ),
    ],
)
def test_the_first_step_checks_the_steel_as_it_is_before_any_cut(part: Part, check: str) -> None:
    assert check_step(on_bench(part), Face.NEAR).check == check


BEVEL, MITRE = EndCut(parse_slope("3 in 12")), EndCut(mitre=parse_slope("6 in 12"))


@pytest.mark.parametrize(
    ("part", "says"),
    [
        (piece(), ""),
        # 15.7 deep: 10'-0 less twice 15.7 / 4
        (piece(left=BEVEL, right=BEVEL), " Finished: top edge 10'-0\", bottom edge 9'-4 1/8\"."),
        (
            piece(right=EndCut(-parse_slope("3 in 12"))),
            " Finished: top edge 9'-8 1/16\", bottom edge 10'-0\".",
        ),
        # 5 1/2 wide: 2 3/4 less on the far side
        (piece(left=MITRE), " Finished: near side 10'-0\", far side 9'-9 1/4\"."),
        (piece("PL1/2X8", left=MITRE), " Finished: near side 10'-0\", far side 9'-11 3/4\"."),
    ],
)
def test_the_finished_lengths_are_those_along_the_edges_that_a_cut_reaches(part: Part, says: str) -> None:
    assert finished(on_bench(part)) == says


def test_both_leans_have_four_lengths_and_an_edge_that_is_coped_has_none() -> None:
    bench = on_bench(piece(left=BEVEL, right=MITRE))
    web = ["top edge 9'-10 11/16\"", "bottom edge 9'-6 3/4\""]  # the mitre reaches half of 2 3/4, nearly
    flange = ["top flange, near side 10'-0\"", "far side 9'-9 1/4\""]
    assert finished(bench) == f" Finished: {', '.join(web + flange)}."
    assert finished(bench, {Face.TOP}) == f" Finished: {web[1]}."
    assert finished(on_bench(piece(left=MITRE)), {Face.TOP}) == ""


def test_a_bevel_is_two_readings_and_an_offset() -> None:
    (step,) = end_steps(on_bench(piece(right=EndCut(parse_slope("3 in 12")))), End.RIGHT)
    assert step.title == "Bevel the right end"
    assert [reading.text for reading in step.readings] == ["10'-0\"", "9'-8 1/16\""]
    assert step.text == (
        "Mark 10'-0\" at the top edge and 9'-8 1/16\" at the bottom edge; strike the bevel, 3 in 12, and "
        "carry it round. Cut."
    )
    assert step.check == 'Off square by 3 15/16" from edge to edge.'


def test_a_bevel_of_a_metric_job_is_written_in_degrees() -> None:
    (step,) = end_steps(on_bench(piece(left=EndCut(parse_slope("45°"))), System.MM), End.LEFT)
    assert "strike the bevel, 45.0°," in step.text


@pytest.mark.parametrize(
    ("stock", "face", "readings"),
    [
        ("W16X26", Face.TOP, ['0"', '2 3/4"']),  # 5 1/2 wide, 6 in 12
        ("L6X4X1/2", Face.LEG_B, ['0"', '2"']),
        ("PL1/2X8", None, ['0"', '1/4"']),
    ],
)
def test_a_mitre_is_read_at_the_near_and_the_far_side(
    stock: str, face: Face | None, readings: list[str]
) -> None:
    (step,) = end_steps(on_bench(piece(stock, left=EndCut(mitre=parse_slope("6 in 12")))), End.LEFT)
    assert step.title == "Mitre the left end"
    assert step.face is face
    assert [reading.text for reading in step.readings] == readings
    near, far = ("heel", "toe of leg B") if face is Face.LEG_B else ("near side", "far side")
    assert f"Mark {readings[0]} at the {near} and {readings[1]} at the {far}" in step.text


def test_a_compound_cut_is_a_bevel_and_a_mitre_and_a_square_end_is_none() -> None:
    cut = EndCut(parse_slope("3 in 12"), parse_slope("6 in 12"))
    titles = [step.title for step in end_steps(on_bench(piece(left=cut)), End.LEFT)]
    assert titles == ["Bevel the left end", "Mitre the left end"]
    assert list(end_steps(on_bench(piece()), End.LEFT)) == []


def test_a_cope_is_struck_drilled_and_cut() -> None:
    step = cope_step(on_bench(piece()), Cope(End.RIGHT, Face.TOP, at("4"), at("3"), at("1/2")))
    assert step.title == "Right top cope"
    assert step.from_ == "left end and top edge"
    assert [reading.text for reading in step.readings] == ["9'-8\"", '3"']
    assert step.text == (
        'Strike 4" long, across the flange too, 3" deep. Drill or scribe 1/2" radius at the corner, centre '
        '3 1/2" in and 2 1/2" deep. Cut.'
    )
    assert step.check == 'Corner to corner 5"; 4" from the line to the right end.'


def test_a_cut_is_checked_from_the_end_that_it_was_not_read_from() -> None:
    part = piece()
    cope = cope_step(on_bench(part), Cope(End.LEFT, Face.TOP, at("4"), at("3"), at("1/2")))
    trim = trim_step(on_bench(part), FlangeTrim(End.RIGHT, Face.TOP, Side.FAR, at("6")))
    assert cope.check.endswith("9'-8\" from the line to the right end.")
    assert trim.check.endswith('; 6" from the line to the right end.')


def test_a_cope_at_the_bottom_is_read_from_the_bottom_and_of_an_angle_from_its_heel() -> None:
    cope = Cope(End.LEFT, Face.BOTTOM, at("4"), at("3"), at("0"))
    beam, angle = cope_step(on_bench(piece()), cope), cope_step(on_bench(piece("L6X4X1/2")), cope)
    assert (beam.from_, angle.from_) == ("left end and bottom edge", "left end and heel")
    assert [step.readings[1].text for step in (beam, angle)] == ['3"', '3"']
    assert beam.text == 'Strike 4" long, across the flange too, 3" deep. Cut.'


def test_a_cope_in_a_box_goes_all_round_and_at_a_slanted_end_from_the_long_point() -> None:
    cope = Cope(End.LEFT, Face.TOP, at("2"), at("1"), at("0"))
    box = cope_step(on_bench(piece("HSS6X6X3/8")), cope)
    slant = cope_step(on_bench(piece("PL1/2X8", left=EndCut(parse_slope("3 in 12")))), cope)
    assert box.text == 'Strike 2" long, all round, 1" deep. Cut.'
    assert slant.text == 'Strike 2" long from the long point, 1" deep. Cut.'


def test_a_trim_is_flush_with_the_web_or_leaves_some() -> None:
    flush = trim_step(on_bench(piece()), FlangeTrim(End.LEFT, Face.TOP, Side.FAR, at("6")))
    keep = trim_step(on_bench(piece()), FlangeTrim(End.LEFT, Face.TOP, Side.FAR, at("6"), at("1/2")))
    assert flush.text == 'Far side only: strike 6" long, flush with the web. Cut.'
    assert keep.text == 'Far side only: strike 6" long, leaving 1/2" outside the web. Cut.'
    assert keep.check == '5/8" from the centre line to the cut; 9\'-6" from the line to the right end.'


def test_a_clip_is_checked_along_the_cut() -> None:
    step = clip_step(on_bench(piece("PL1/2X8")), Clip(End.LEFT, Face.TOP, at("3"), at("4")))
    assert step.title == "Left top clip"
    assert step.text == ('Mark 3" along the top edge and 4" up the left end; strike across the corner. Cut.')
    assert step.check == 'Along the cut 5".'


def test_diagonals() -> None:
    assert diagonal(at("3"), -at("4")) == at("5")
