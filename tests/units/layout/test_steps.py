from gageline.layout.holes import patterns
from gageline.layout.mark import Bench
from gageline.layout.seats import seat_of
from gageline.layout.steps import part_steps
from gageline.part import Clip, Cope, End, EndCut, Face, FlangeTrim, Opening, Part, Side
from gageline.units import System, parse_slope
from pieces import at, clip_angle, drilled, hole, piece


def titles(part: Part) -> list[str]:
    bench = Bench(part, at("1/16"), System.FT_IN)
    return [step.title for step in part_steps(bench, patterns(bench))]


def test_cuts_come_first_then_the_faces_with_the_fewest_rolls() -> None:
    part = piece(
        left=EndCut(parse_slope("3 in 12")),
        copes=(Cope(End.RIGHT, Face.TOP, at("4"), at("1 1/2"), at("1/2")),),
        openings=(Opening(Face.NEAR, at("5'"), at("7.7"), at("6"), at("6"), at("3")),),
        groups=(
            drilled(Face.TOP, hole("3'", "1 3/4"), hole("3'", "-1 3/4"), name="top"),
            drilled(Face.NEAR, hole("9'", "9.7"), name="web"),
        ),
    )
    assert titles(part) == [
        "Check the steel",
        "Bevel the left end",
        "Right top cope",
        "Centre line",
        "Opening 1",
        "web: cross lines",
        "web: rows",
        "web: punch and drill",
        "Roll",
        "top: cross lines",
        "top: rows",
        "top: punch and drill",
    ]


def test_the_finished_lengths_are_checked_when_the_last_end_is_cut() -> None:
    cope = Cope(End.RIGHT, Face.TOP, at("4"), at("1 1/2"), at("1/2"))
    cuts = EndCut(parse_slope("3 in 12")), EndCut(mitre=parse_slope("6 in 12"))
    bench = Bench(piece(left=cuts[0], right=cuts[1], copes=(cope,)), at("1/16"), System.FT_IN)
    steps = part_steps(bench, patterns(bench))
    assert [(step.title, "Finished: top edge" in step.check) for step in steps] == [
        ("Check the steel", False),
        ("Mitre the right end", False),
        ("Roll", False),
        ("Bevel the left end", True),
        ("Right top cope", False),
    ]


def test_an_edge_that_is_coped_already_is_not_measured() -> None:
    cope = Cope(End.RIGHT, Face.TOP, at("4"), at("1 1/2"), at("1/2"))
    top = drilled(Face.TOP, hole("3'", "1 3/4"), name="top")  # the top is up last
    part = piece(left=EndCut(mitre=parse_slope("6 in 12")), copes=(cope,), groups=(top,))
    bench = Bench(part, at("1/16"), System.FT_IN)
    steps = part_steps(bench, patterns(bench))
    assert [step.title for step in steps[:4]] == [
        "Check the steel", "Right top cope", "Roll", "Mitre the left end",
    ]  # fmt: skip
    assert not any("Finished" in step.check for step in steps)


def test_the_first_step_says_which_face_lies_up() -> None:
    part = piece(groups=(drilled(Face.BOTTOM, hole("3'", "1 3/4"), name="bottom"),))
    bench = Bench(part, at("1/16"), System.FT_IN)
    first = part_steps(bench, patterns(bench))[0]
    assert first.text.startswith("Lay it bottom flange up.")


def test_a_trim_is_cut_on_its_flange_and_one_that_has_no_flange_is_left_out() -> None:
    trims = (FlangeTrim(End.LEFT, Face.BOTTOM, Side.NEAR, at("6")),)
    assert titles(piece(trims=trims)) == ["Check the steel", "Left bottom flange trim"]
    assert titles(piece("WT8X18", trims=trims)) == ["Check the steel"]


def test_a_plate_has_a_short_card() -> None:
    part = piece(
        "PL1/2X8",
        clips=(Clip(End.LEFT, Face.TOP, at("1"), at("1")),),
        groups=(drilled(Face.FACE, hole("3", "2"), name="holes"),),
    )
    assert titles(part) == [
        "Check the steel", "Left top clip", "holes: cross lines", "holes: rows", "holes: punch and drill",
    ]  # fmt: skip


def test_what_goes_through_a_box_is_struck_on_the_other_wall_too() -> None:
    part = piece(
        "HSS6X6X3/8",
        openings=(Opening(Face.NEAR, at("3'"), at("3"), at("2"), at("2"), at("1"), through=True),),
        groups=(drilled(Face.NEAR, hole("9'", "3"), name="bolt", through=True),),
    )
    found = titles(part)
    assert found.index("Opening 1, other wall") > found.index("Roll")
    assert found.count("Roll") == 1
    assert "bolt, other wall: rows" in found


def test_fittings_come_last() -> None:
    main = piece(groups=(drilled(Face.NEAR, hole("3'", "9.7"), name="web"),))
    bench = Bench(main, at("1/16"), System.FT_IN)
    seats = (seat_of(bench, clip_angle(main)),)
    steps = part_steps(bench, patterns(bench), seats, (-at("1/2"), at("10'")))
    assert [step.title for step in steps[-3:]] == ["Set the left near angle", "Bolt", "Out to out"]
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
