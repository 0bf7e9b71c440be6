"""Which holes of a piece are in which joint, and which in none."""

from dataclasses import replace

from frames import demo_frame
from gageline.part import Assembly
from gageline.quality.bolted import Joining
from gageline.quality.drilled import bolted_of, left_out
from jobs import piece_of
from sticks import example_piece


def framed(mark: str) -> Assembly:
    return demo_frame().job.piece(mark)


def test_every_hole_that_is_for_a_bolt_is_in_one_joint() -> None:
    """Of the demo's frame, where every fitting that is bolted in the shop lies on both sides of its web."""
    for piece in demo_frame().job.assemblies:
        bolts = {way: sum(len(one.bolts) for one in bolted_of(piece) if one.way is way) for way in Joining}
        drilled = sum(len(group.holes) for group in piece.main.groups if group.mates and group.bolt)
        assert bolts[Joining.PART] + bolts[Joining.SHOP] // 2 == drilled


def test_holes_in_the_flanges_of_a_column_and_in_its_plates_are_joints() -> None:
    assert [(one.name, one.way, len(one.bolts)) for one in bolted_of(framed("P4"))] == [
        ("top, for a beam", Joining.PART, 8),
        ("near plate, bolt holes", Joining.FITTING, 3),
    ]


def test_plain_holes_are_in_a_joint_where_the_frame_says_which_bolt_goes_through_them() -> None:
    post = framed("P1")
    key = ("right cap plate", "bolt holes")
    assert bolted_of(post) == ()
    (joint,) = bolted_of(post, {key: "3/4"})
    assert (joint.name, len(joint.bolts), {bolt.clear for bolt in joint.bolts}) == (
        "right cap plate, bolt holes", 4, {1 / 16},
    )  # fmt: skip
    assert left_out(post, {key: "3/4"}) == ("left base plate, bolt holes: over anchor rods",)
    assert left_out(post)[1] == "right cap plate, bolt holes: no bolt size is given"


def test_holes_that_meet_nothing_in_their_frame_are_left_out_and_said() -> None:
    column = framed("P4")
    met = {("", "top, for a beam"): "3/4"}
    assert [one.name for one in bolted_of(column, met)] == ["top, for a beam"]
    assert "near plate, bolt holes: meets no hole of another piece" in left_out(column, met)


def test_nothing_is_left_out_of_a_piece_whose_holes_are_all_bolted() -> None:
    assert left_out(example_piece()) == ()


def test_holes_that_do_not_mate_are_no_joint() -> None:
    holes = '[[piece.holes]]\nname = "weep"\nx = "5\'"\nmates = false\n'
    assert (bolted_of(piece_of(holes)), left_out(piece_of(holes))) == ((), ())


def test_slots_that_run_up_are_looked_at_along_them() -> None:
    web = '[[piece.holes]]\nname = "beam"\nx = "5\'"\nrows = 3\nhole = "SSL"\n'
    level = piece_of(web)
    upright = replace(
        level,
        main=replace(
            level.main,
            groups=tuple(
                replace(group, holes=tuple(replace(hole, angle=hole.angle + 90) for hole in group.holes))
                for group in level.main.groups
            ),
        ),
    )
    one, two = (bolted_of(piece)[0].bolts for piece in (level, upright))
    assert {bolt.slot for bolt in one} == {bolt.slot for bolt in two} == {3 / 32}
    # three rows in one line: across the slots in the one, along them in the other
    assert {bolt.across for bolt in one} == {60.0}
    assert {bolt.up for bolt in two} == {60.0}


def test_lines_further_apart_than_a_square_reaches_are_lots_of_their_own() -> None:
    """Posts 4'-6" apart, two holes each; one line and one a foot off belong together."""
    posts = '[[piece.holes]]\nname = "posts"\nface = "top"\nx = "1\'"\ncolumns = 2\nspacing = "{}"\n'
    posts += 'gage = "3 1/2"\n'
    (far,) = bolted_of(piece_of(posts.format("4'-6")))
    assert [bolt.lot for bolt in far.bolts] == [0, 0, 1, 1]
    (near,) = bolted_of(piece_of(posts.format("12")))
    assert {bolt.lot for bolt in near.bolts} == {0}
