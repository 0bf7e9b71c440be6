from dataclasses import replace

from gageline.layout.accuracy import Accuracy, accuracy
from gageline.layout.holes import patterns
from gageline.layout.mark import Bench
from gageline.layout.marks import marks_of
from gageline.part import Face, HoleGroup
from gageline.units import ZERO, System
from pieces import at, drilled, hole, piece

ODD = drilled(Face.FACE, hole("4 1/64", "6"), hole("7 3/64", "6"))


def errors(*groups: HoleGroup) -> Accuracy:
    bench = Bench(piece("PL1/2X8", groups=groups), at("1/16"), System.FT_IN)
    return accuracy(marks_of(bench), patterns(bench))


def test_a_mating_pattern_is_off_by_its_reference_and_exact_in_itself() -> None:
    assert errors(ODD) == Accuracy(mark=at("1/64"), hole_to_hole=ZERO, in_pattern=ZERO)


def test_holes_rounded_one_by_one_are_off_from_each_other() -> None:
    # 4 1/64 goes down to 4, 7 3/64 up to 7 1/16: each 1/64 off, together 1/32
    found = errors(replace(ODD, mates=False))
    assert found == Accuracy(mark=at("1/64"), hole_to_hole=at("1/32"), in_pattern=ZERO)


def test_two_patterns_of_a_face_are_off_from_each_other_by_both_references() -> None:
    other = drilled(Face.FACE, hole("5'-0 3/64", "6"), name="other")
    found = errors(ODD, other)
    assert (found.hole_to_hole, found.in_pattern) == (at("1/32"), ZERO)


def test_a_part_on_the_tape_without_holes_has_no_error() -> None:
    assert errors() == Accuracy(ZERO, ZERO, ZERO)
