from frames import demo_frame
from gageline.quality import Act, odds_of
from gageline.sheets import Block, Page, Table, odds_sheets
from gageline.sheets.odds_table import odds_parts
from gageline.units import System
from jobs import job_of, piece_of
from pages import crowded, in_title_block, outside, page_texts
from sticks import ANGLES, example_piece


def test_each_joint_the_span_and_the_whole_have_a_row() -> None:
    odds = odds_of(example_piece(), count=2000)
    chances, worst, gains, note = odds_parts(odds, System.FT_IN, 180)
    assert isinstance(chances.body, Table)
    assert [row[0] for row in chances.body.rows] == [
        *(joint.name for joint in odds.joints), "between its supports", "the whole piece",
    ]  # fmt: skip
    assert chances.body.total
    assert chances.body.rows[-1][1] == f"{odds.whole.value:.2%}"
    assert chances.body.rows[-2][2:] == ("-", "exact")
    assert " to " in chances.body.rows[0][2]
    assert isinstance(worst.body, Table)
    assert worst.body.rows[0][0] == odds.worst[0].change
    assert worst.body.rows[0][2].startswith("+")
    assert isinstance(gains.body, Table)
    assert gains.body.rows[0][0] == odds.gains[0].change
    assert isinstance(note.body, Block)


def test_gains_too_small_to_print_are_left_out() -> None:
    odds = odds_of(example_piece(), count=2000)
    _, worst, gains, _ = odds_parts(odds, System.FT_IN, 180)
    for part in (worst, gains):
        assert isinstance(part.body, Table)
        assert all(row[2] != "+0.00%" and row[2].startswith("+") for row in part.body.rows)


def test_what_slots_would_gain_is_always_told() -> None:
    rows = odds_parts(odds_of(example_piece(), count=2000), System.FT_IN, 180)[2].body
    assert isinstance(rows, Table)
    assert [row[0] for row in rows.rows].count("horizontal short slots at the supports") == 1
    assert len(rows.rows) <= 4


def test_a_piece_without_joints_has_no_odds() -> None:
    (only,) = odds_parts(odds_of(piece_of()), System.FT_IN, 180)
    assert isinstance(only.body, Block)


def test_holes_without_odds_are_named() -> None:
    """A column on its base plate, with holes in its flange or with none at all."""
    for mark, parts in (("P4", 5), ("P1", 2)):
        odds = odds_of(demo_frame().job.piece(mark), count=2000)
        found = odds_parts(odds, System.FT_IN, 180)
        assert len(found) == parts
        assert "Not reckoned" in [part.title for part in found]


def said(units: str, piece: str) -> str:
    job = job_of(piece, units=units)
    sheet = odds_sheets(job, [(one, odds_of(one, count=2000)) for one in job.assemblies])
    for page in sheet.pages:
        assert isinstance(page, Page)
        assert not crowded(page)
        assert not outside(page)
        assert not in_title_block(page)
    return " ".join(text for page in page_texts(sheet) for text in page)


def test_the_sheet_writes_the_spread_in_the_units_of_the_job() -> None:
    spread = odds_of(piece_of()).spread
    text = said("ft-in", f'mark = "B1"\nstock = "W16x26"\nlength = "10\'"\n{ANGLES}')
    assert f"tape {spread.of(Act.TAPE):.4f}" in text
    assert "inches (square: in a foot)" in text
    assert "square 0.0156" in text
    angles = (
        '[[piece.angles]]\nend = "both"\nstock = "L100x65x9"\nrows = 3\nout_gage = 60\nto_web = "welded"\n'
    )
    metric = said("mm", f'mark = "M1"\nstock = "IPE 300"\nlength = 5000\n{angles}')
    assert "mm (square: in a metre): tape 0.79" in metric
    assert "square 1.30" in metric
