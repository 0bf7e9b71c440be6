from gageline.layout.mark import Bench
from gageline.layout.marks import marks_of
from gageline.part import Clip, Cope, End, Face, FlangeTrim, Opening, Side
from gageline.units import System
from pieces import at, drilled, hole, piece


def test_marks_stand_in_the_order_of_work() -> None:
    part = piece(
        copes=(Cope(End.LEFT, Face.TOP, at("4"), at("1 1/2"), at("1/2")),),
        trims=(FlangeTrim(End.RIGHT, Face.TOP, Side.FAR, at("6")),),
        openings=(Opening(Face.NEAR, at("5'"), at("7.7"), at("6"), at("6"), at("3")),),
        groups=(drilled(Face.NEAR, hole("4", "9.7"), name="left web"),),
    )
    order = list(dict.fromkeys(mark.for_ for mark in marks_of(Bench(part, at("1/16"), System.FT_IN))))
    assert order == [
        "left end", "right end", "left top cope", "right top trim, far side", "middle of the part",
        "opening 1", "left web",
    ]  # fmt: skip


def test_a_plate_has_its_clips_among_the_cuts() -> None:
    part = piece("PL1/2X8", clips=(Clip(End.LEFT, Face.TOP, at("1"), at("1")),))
    found = [mark.for_ for mark in marks_of(Bench(part, at("1/16"), System.FT_IN))]
    assert found == ["left end", "right end", "left top clip"]
