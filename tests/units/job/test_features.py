from __future__ import annotations

from fractions import Fraction

from gageline.job.features import CopeEntry, EndEntry, HolesEntry, OpeningEntry, TrimEntry
from gageline.steel import HoleKind
from gageline.units import SQUARE, ZERO, parse_length


def test_what_is_left_out_is_usual() -> None:
    assert EndEntry().bevel == SQUARE
    assert EndEntry().long == "top"
    cope = CopeEntry.model_validate({"end": "left", "length": 4, "depth": "1 1/2"})
    assert (cope.flange, cope.radius, cope.depth) == ("top", None, parse_length("1 1/2"))
    trim = TrimEntry.model_validate({"end": "both", "flange": "top", "length": 6})
    assert (trim.side, trim.keep) == ("both", ZERO)


def test_holes_are_read_by_the_words_of_the_document() -> None:
    holes = HolesEntry.model_validate({"from": "right", "x": [3, 6], "hole": "SSL", "turn": "across"})
    assert (holes.from_, holes.x) == ("right", (parse_length("3"), parse_length("6")))
    assert (holes.hole, holes.turn, holes.mates, holes.through) == (HoleKind.SSL, Fraction(90), True, False)


def test_an_opening_may_lie_below_the_middle() -> None:
    assert OpeningEntry.model_validate({"offset": "-2"}).offset == -parse_length("2")
