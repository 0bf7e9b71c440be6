from gageline.part import End, EndCut
from gageline.steel import Profile
from gageline.units import ZERO, parse_slope
from pieces import at, piece

FOUR_IN_12 = parse_slope("4 in 12")


def test_a_square_part() -> None:
    beam = piece(length="10'-0")
    assert beam.profile is Profile.I_SHAPE
    assert beam.end_x(End.LEFT, at("15.7in"), ZERO) == ZERO
    assert beam.end_x(End.RIGHT, ZERO, at("2in")) == at("10'-0")


def test_a_bevel_leaves_the_top_longer_when_positive() -> None:
    beam = piece("PL1/2X12", "2'-0", left=EndCut(bevel=FOUR_IN_12), right=EndCut(bevel=-FOUR_IN_12))
    assert beam.end_x(End.LEFT, at("12in"), ZERO) == ZERO
    assert beam.end_x(End.LEFT, ZERO, ZERO) == at("4in")
    assert beam.end_x(End.RIGHT, ZERO, ZERO) == at("2'-0")
    assert beam.end_x(End.RIGHT, at("12in"), ZERO) == at("1'-8")


def test_a_mitre_leaves_the_near_side_longer_when_positive() -> None:
    box = piece("HSS6X6X3/8", "5'-0", left=EndCut(mitre=FOUR_IN_12))
    assert box.end_x(End.LEFT, ZERO, at("3in")) == ZERO
    assert box.end_x(End.LEFT, ZERO, -at("3in")) == at("2in")


def test_both_at_once_add_up() -> None:
    cut = EndCut(bevel=FOUR_IN_12, mitre=FOUR_IN_12)
    box = piece("HSS6X6X3/8", "5'-0", right=cut)
    assert box.cut(End.RIGHT) == cut
    assert box.end_x(End.RIGHT, at("6in"), at("3in")) == at("5'-0")
    assert box.end_x(End.RIGHT, ZERO, -at("3in")) == at("4'-8")
