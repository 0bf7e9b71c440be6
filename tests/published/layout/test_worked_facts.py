"""Facts any fitter works out in his head (common practice, no source)."""

from dataclasses import replace

from gageline.job import Practice
from gageline.layout import lay_out
from gageline.part import Assembly, End, Face, Part, Placement, extent_y
from gageline.units import System
from pieces import at, clip_angle, drilled, hole, piece

SHORT = "1'-4 1/2"


def steps(part: Part) -> dict[str, list[str]]:
    layout = lay_out(Assembly(part, 1), Practice(), System.FT_IN)
    return {step.title: [reading.text for reading in step.readings] for step in layout.main.steps}


def test_a_member_of_1_4_1_2_has_its_centre_at_8_1_4_and_4_gage_at_6_1_4_and_10_1_4() -> None:
    half = at(SHORT).parts(2)[0]
    xs = (half - at("2"), half + at("2"))
    group = drilled(
        Face.TOP, *(hole(f"{x.inches}in", y) for x in xs for y in ("1 3/4", "-1 3/4")), name="top"
    )
    found = steps(piece(length=SHORT, groups=(group,)))
    assert found["Centre line"] == ['8 1/4"']
    assert found["top: cross lines"] == ['6 1/4"', '10 1/4"']


def test_rows_3_down_at_3_pitch_read_3_6_9() -> None:
    depth = extent_y(piece().stock)[1]
    ys = (depth - at("3"), depth - at("6"), depth - at("9"))
    group = drilled(Face.NEAR, *(hole("4", f"{y.inches}in") for y in ys), name="web")
    found = steps(piece(groups=(group,)))
    assert found["web: rows"] == ['3"', '6"', '9"']


def test_angles_1_2_past_each_end_of_1_4_1_2_make_1_5_1_2_out_to_out() -> None:
    main = piece(length=SHORT)
    left = clip_angle(main, length="9", low="3")  # projects 1/2 past the left end
    x, y, z = left.placement.origin
    end_for_end = Placement((main.length - x, y + at("9"), z), (0, -1, 0), (-1, 0, 0))
    right = replace(left, name="right near angle", placement=end_for_end, end=End.RIGHT)
    layout = lay_out(Assembly(main, 1, (left, right)), Practice(), System.FT_IN)
    assert [seat.projection for seat in layout.seats] == [at("1/2"), at("1/2")]
    assert layout.out_to_out == at("1'-5 1/2")
    assert layout.main.steps[-1].text == "Measure over everything: 1'-5 1/2\" out-to-out."
