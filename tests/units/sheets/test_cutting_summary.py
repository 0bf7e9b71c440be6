from gageline.sheets import Table
from gageline.sheets.cutting_summary import (
    drop_length,
    drop_marks,
    heat_of,
    money,
    proof,
    scribe_of,
    summary_parts,
)
from gageline.sheets.notation import Scribe
from gageline.stock import Effort, ShopPlan, answer, ask, read_rack
from gageline.units import System
from jobs import inches, job_of

RACK = """
[saw]
kerf = 0
keep = "2'"
[[held]]
mark = "D1"
stock = "W16x26"
length = "12'"
value = 1
[[buy]]
stock = "W16x26"
lengths = "20'"
each = 500
certificate = true
arrives = 2026-12-01
"""
BEAM = 'mark = "B1"\nquantity = 2\nstock = "W16x26"\nlength = "9\'-0"\n'
SCRIBE = Scribe(System.FT_IN, inches("1/16"))


def planned() -> ShopPlan:
    return answer(ask([job_of(BEAM, BEAM.replace("B1", "B2"))], read_rack(RACK)), Effort(2.0))


def test_the_proof_in_plain_words() -> None:
    assert proof(100, 100) == "proven: none costs less"
    assert proof(123456, 100000) == "best found: none can save more than 234.56"
    assert money(123456789) == "1,234,567.89"


def test_a_drop_takes_no_mark_that_the_rack_has() -> None:
    marks = drop_marks(planned())
    assert marks
    assert "D1" not in marks.values()
    assert len(set(marks.values())) == len(marks)


def test_heats() -> None:
    said = {heat_of(stick) for stick in planned().cuts.sections[0].sticks}
    assert "____________" in said
    assert said <= {"____________", "not known"}


def test_the_order_and_the_total() -> None:
    plan = planned()
    tables = {part.title: part.body for part in summary_parts(plan, SCRIBE, 190.0)}
    order, steels = tables["To order"], tables["By section and grade"]
    assert isinstance(order, Table)
    assert isinstance(steels, Table)
    # four pieces of 9 ft: two sticks of 20 ft hold two each, 1000.00; with the 12 ft stick they cost 1001.00
    assert order.rows == (
        ("W16X26 A992", "20'-0\"", "2", "500.00", "1,000.00", "with the steel", "2026-12-01", ""),
    )
    assert steels.rows[-1][6] == "1,000.00"


def test_a_drop_takes_no_mark_that_a_piece_has() -> None:
    beam = BEAM.replace('"B1"', '"D2"').replace("9'", "8'")
    marks = drop_marks(answer(ask([job_of(beam)], read_rack(RACK)), Effort(2.0)))
    assert set(marks.values()) == {"D3"}


def test_the_drop_of_a_stick_cut_already_is_not_marked_again() -> None:
    done = '[[done]]\nstick = "D1"\npieces = "B1"\n'
    plan = answer(ask([job_of(BEAM)], read_rack(RACK + done)), Effort(2.0))
    first, second = plan.cuts.sections[0].sticks
    assert first.done
    assert first.kept
    assert second.kept
    assert drop_marks(plan) == {("W16X26 A992", 2): "D2"}
    tables = {part.title: part.body for part in summary_parts(plan, SCRIBE, 190.0)}
    drops = tables["Drops to mark and put on the rack"]
    assert isinstance(drops, Table)
    assert [row[0] for row in drops.rows] == ["D2"]


def test_a_stick_of_whole_millimetres_is_read_in_millimetres() -> None:
    metric = 'mark = "M1"\nstock = "IPE 300"\nlength = "4200mm"\n'
    rack = '[saw]\nkerf = "1/8"\nstart_trim = "1/2"\n'
    rack += '[[held]]\nmark = "R4"\nstock = "IPE 300"\nlength = "6000mm"\n'
    (stick,) = answer(ask([job_of(metric)], read_rack(rack)), Effort(2.0)).cuts.sections[0].sticks
    own = scribe_of(stick, SCRIBE)
    assert own.tell(stick.pieces[0].stop) == "4213"  # 12.7 + 4200
    assert drop_length(stick, SCRIBE) == "1784 mm"  # 6000 - 4212.7 - 3.175
    inch = planned().cuts.sections[0].sticks[0]
    assert scribe_of(inch, SCRIBE) is SCRIBE
    assert "mm" not in drop_length(inch, SCRIBE)
