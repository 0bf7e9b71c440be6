from gageline.part import Face
from gageline.sheets.notation import Scribe
from gageline.sheets.piece_words import bill_table, hole_lists, piece_notes
from gageline.takeoff import bill_of_piece
from gageline.units import System
from jobs import job_of
from pieces import at, drilled, hole, piece

FEET = Scribe(System.FT_IN, at("1/16"))
BEAM = 'mark = "B1"\nstock = "W16x26"\nlength = "10\'-0"\n'
ANGLES = '[[piece.angles]]\nend = "left"\nstock = "L4x3-1/2x5/16"\nrows = 3'


def test_the_bill_counts_equal_fittings_and_adds_up() -> None:
    job = job_of(BEAM + ANGLES)
    table = bill_table(bill_of_piece(job.assemblies[0]), FEET)
    assert [row[:4] for row in table.rows] == [
        ("B1", "1", "W16X26", "10'-0\""),
        (job.assemblies[0].fittings[0].part.mark, "2", "L4X3-1/2X5/16", '8 1/2"'),
        ("", "", "One piece with its fittings", ""),
    ]
    assert abs(sum(float(row[6]) for row in table.rows[:2]) - float(table.rows[2][6])) < 0.11
    assert table.total


def test_notes_name_holes_bolts_and_hands() -> None:
    job = job_of(BEAM + ANGLES, 'mark = "B2"\nas_hand_of = "B1"\nquantity = 3')
    said = "\n".join(piece_notes(job, job.piece("B1"), Scribe.of(job)))
    assert 'Ø13/16" for 3/4" bolts' in said
    assert 'Shop bolts: 3 of 3/4" A325-N, grip 7/8".' in said
    assert 'Field bolts: 6 of 3/4" A325-N.' in said
    assert "B2 (3 wanted): as shown, opposite hand" in said
    mirrored = "\n".join(piece_notes(job, job.piece("B2"), Scribe.of(job)))
    assert "B2: drawn as made, the opposite hand of B1." in mirrored


def test_scattered_holes_are_listed_one_by_one() -> None:
    scribe = Scribe(System.FT_IN, at("1/16"))
    places = ("3", "4", "6", "7 1/2", "11")
    scattered = drilled(Face.NEAR, *(hole(f"{n + 9}", y) for n, y in enumerate(places)), name="odd")
    part = piece(groups=(scattered, drilled(Face.TOP, hole("9", "1 3/4"), hole("9", "-1 3/4"))))
    assert scribe.holes(scattered, part, rows=True) == '5 Ø13/16", see the list of odd'
    (table,) = hole_lists(part, scribe)
    assert [column.title for column in table.columns] == ["B1: odd", "From left", "Down"]
    # W16X26 is 15.7 deep: 15.7 - 3 = 12.7, which a 1/16 tape reads as 12 11/16
    assert table.rows[0] == ('Ø13/16"', '9"', "1'-0 11/16\"")
    assert len(table.rows) == 5


def test_a_piece_in_millimetres_is_listed_in_them_in_a_job_of_feet_and_inches() -> None:
    job = job_of('mark = "M1"\nstock = "IPE 300"\nlength = "4200 mm"\n')
    table = bill_table(bill_of_piece(job.assemblies[0]), FEET)
    assert table.rows[0][:4] == ("M1", "1", "IPE 300", "4200 mm")
