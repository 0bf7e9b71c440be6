"""Readings of the example stick, each worked by hand beside the nominal ones."""

from dataclasses import replace

import pytest

from gageline.job import Corner, EndReadings, Practice, Stick
from gageline.layout import lay_out
from gageline.layout.mark import MarkKind
from gageline.layout.on_stick import StickLayout, lay_out_on, tape_from
from gageline.layout.ways import Choice, Way
from gageline.part import End, Face
from gageline.units import System
from jobs import inches, piece_of
from sticks import corners, example_piece, example_stick

LAYOUT = lay_out(example_piece(), Practice(), System.FT_IN)


def laid(choice: Choice, stick: Stick | None = None, held: Face = Face.TOP) -> StickLayout:
    return lay_out_on(LAYOUT, stick or example_stick(), Way(choice), held)


def pairs(on: StickLayout, for_: str, kind: MarkKind = MarkKind.HOLE) -> list[tuple[str, str, str]]:
    return [
        (reading.nominal.text, reading.actual.text, reading.why)
        for reading in on.readings
        if reading.for_ == for_ and reading.kind is kind
    ]


def test_as_it_is_readings_along_stay_and_the_bottom_edge_takes_the_depth() -> None:
    """15.825 in deep: the first row, 3 from the top, is 12.825 from the bottom, 12 13/16 on the tape."""
    first = pairs(laid(Choice.AS_IS), "left end, for the angles")[:3]
    assert first == [
        ('1 1/2"', '1 1/2"', ""),
        ('3"', '3"', ""),
        ("1'-0 11/16\"", "1'-0 13/16\"", "deeper than drawn"),
    ]


def test_split_every_reading_along_is_3_16_less() -> None:
    on = laid(Choice.SPLIT)
    why = "length split between the ends"
    assert pairs(on, "left end, for the angles")[0] == ('1 1/2"', '1 5/16"', why)
    assert pairs(on, "right end, for the angles")[0] == ("18'-5 3/4\"", "18'-5 9/16\"", why)
    assert on.datum == "left end, bottom edge"


def test_no_end_line_is_struck_on_an_end_that_is_used_as_it_came() -> None:
    assert not pairs(laid(Choice.AS_IS), "left end", MarkKind.CUT_LINE)
    long = laid(Choice.TRIM, example_stick("18'-8"))
    assert pairs(long, "right end", MarkKind.CUT_LINE)[0][1] == "18'-7 1/4\""
    assert long.datum == "left end, after the trim"


def test_rows_held_from_the_bottom_change_from_the_top() -> None:
    first = pairs(laid(Choice.AS_IS, held=Face.BOTTOM), "left end, for the angles")[:3]
    assert first[1] == ('3"', '3 1/8"', "deeper than drawn")
    assert first[2][:2] == ("1'-0 11/16\"", "1'-0 11/16\"")


def test_a_stick_deeper_at_one_end_changes_along_its_length() -> None:
    stick = Stick("B1", left=EndReadings(depth=inches("15.7in")), right=EndReadings(depth=inches("15.95in")))
    on = laid(Choice.AS_IS, stick)
    assert on.depth_over == (inches("0"), inches("1/4"))
    assert pairs(on, "left end, for the angles")[2][1] == "1'-0 11/16\""
    assert pairs(on, "right end, for the angles")[2][1] == "1'-0 15/16\""
    shallow = laid(Choice.AS_IS, Stick("B1", right=EndReadings(depth=inches("15.575in"))))
    assert shallow.depth_over == (-inches("1/8"), -inches("1/8"))
    assert pairs(shallow, "left end, for the angles")[2] == (
        "1'-0 11/16\"",
        "1'-0 9/16\"",
        "shallower than drawn",
    )


def test_gage_lines_keep_to_the_web_and_the_edge_takes_the_rest() -> None:
    """bf 5 1/2, 5 5/8 as it came, web 1/8 off to the near side: near edge 2 13/16 - 1/8 = 2 11/16 out."""
    piece = piece_of('[[piece.holes]]\nname = "posts"\nface = "top"\nx = "2\'"\ngage = "3 1/2"\n')
    wide = EndReadings(top_width=inches("5 5/8"))
    stick = Stick("B1", left=wide, right=wide, web_off=inches("1/8"))
    on = lay_out_on(lay_out(piece, Practice(), System.FT_IN), stick, Way(Choice.AS_IS))
    found = pairs(on, "posts")
    assert ('1 3/4" near', '1 3/4" near', "") in found
    assert ('1"', '15/16"', "width and web off centre") in found
    unread = lay_out_on(on.layout, replace(stick, web_off=None), Way(Choice.AS_IS))
    assert ('1"', '1 1/16"', "width as it came") in pairs(unread, "posts")


def test_each_flange_has_its_own_width() -> None:
    holes = '[[piece.holes]]\nname = "{0}"\nface = "{0}"\nx = "2\'"\ngage = "3 1/2"\n'
    piece = piece_of(holes.format("top") + holes.format("bottom"))
    read = EndReadings(top_width=inches("5 5/8"), bottom_width=inches("5 3/8"))
    stick = Stick("B1", left=read, right=read)
    on = lay_out_on(lay_out(piece, Practice(), System.FT_IN), stick, Way(Choice.AS_IS))
    assert ('1"', '1 1/16"', "width as it came") in pairs(on, "top")
    assert ('1"', '15/16"', "width as it came") in pairs(on, "bottom")


def test_fittings_stand_out_past_this_steel() -> None:
    """Split: 1/2 and 3/16, and at the left 1/4 x (5.45 to 13.95)/15.7 more over the angle's height."""
    on = laid(Choice.SPLIT)
    left, right = on.seats[0], on.seats[2]
    assert left.projection is not None
    low, high = (length.inches for length in left.projection)
    by_hand = [0.6875 + 0.25 * level / 15.7 for level in (5.45, 13.95)]
    assert [low, high] == pytest.approx(by_hand, abs=1e-5)
    assert right.projection == (inches("11/16"), inches("11/16"))
    assert left.rise == inches("5.45in") + inches("1/8")


def test_tilt_and_web_off_centre_enter_where_angles_are_set() -> None:
    """A tilt of 1/8 over 5 1/2 leans an angle 8 1/2 tall by 1/8 x 8.5/5.5."""
    stick = Stick("B1", left=EndReadings(top_tilt=inches("1/8")), web_off=-inches("1/16"))
    seat = laid(Choice.AS_IS, stick).seats[0]
    assert seat.plumb.inches == pytest.approx(8.5 / 5.5 / 8, abs=1e-5)
    assert seat.web_off == -inches("1/16")
    assert laid(Choice.AS_IS).seats[0].plumb == inches("0")


def test_long_readings_are_corrected_and_short_ones_are_not_spoken_of() -> None:
    """221.75 in of steel 100 °F warmer: 221.75 x 6.5e-4 = 0.144 in more, 1/8 on the tape."""
    hot = Stick("B1", steel_temperature=168, tape_temperature=68)
    on = laid(Choice.AS_IS, hot)
    assert pairs(on, "right end, for the angles")[0] == (
        "18'-5 3/4\"", "18'-5 7/8\"", "steel at 168°F (76°C), tape at 68°F (20°C)"
    )  # fmt: skip
    assert pairs(on, "left end, for the angles")[0][2] == ""


def test_camber_down_turns_the_stick_and_its_skew_with_it() -> None:
    stick = replace(example_stick(), camber=-inches("1/2"))
    on = laid(Choice.AS_IS, stick)
    assert on.laid.turned
    assert on.datum == "left end, top edge"
    # 4 x 1/2 x 15.7 / 222.875
    assert on.lean.inches == pytest.approx(4 * 0.5 * 15.7 / 222.875, abs=1e-4)


def test_a_tape_hooked_at_another_corner_reads_less_by_what_that_corner_stands_back() -> None:
    on = laid(Choice.AS_IS)
    x = inches("1 1/2")
    assert tape_from(on, x, End.LEFT, Corner.BOTTOM_NEAR) == inches("1 1/2")
    assert tape_from(on, x, End.LEFT, Corner.TOP_NEAR) == inches("1 1/4")
    assert tape_from(on, x, End.RIGHT, Corner.TOP_NEAR) == inches("18'-5 3/8")
    assert tape_from(laid(Choice.SPLIT), x, End.LEFT, Corner.BOTTOM_NEAR) == inches("1 5/16")


def test_only_what_changed_is_listed_as_changed() -> None:
    same = laid(Choice.AS_IS, Stick("B1", left=corners("0", "0", "0", "0")))
    assert not same.changed
    assert same.stick.piece == "B1"
    assert len(laid(Choice.SPLIT).changed) > 20


@pytest.mark.parametrize(
    "stock", ["W16X26", "C8X11.5", "WT8X18", "HSS6X6X3/8", "HSS6.000X0.375", "L6X4X1/2", "PL1/2X8"]
)
def test_every_shape_is_laid_out_on_a_crooked_stick(stock: str) -> None:
    piece = piece_of(stock=stock)
    layout = lay_out(piece, Practice(), System.FT_IN)
    stick = Stick(
        "B1", length=inches("10'-1"), left=corners("0", "-1/8", "-1/8", "-1/4"), camber=inches("1/8")
    )
    on = lay_out_on(layout, stick, Way(Choice.TRIM))
    assert on.placed.left.trim == inches("1/2")
    assert {reading.actual.text for reading in on.readings if reading.for_ == "right end"} >= {"10'-0\""}
