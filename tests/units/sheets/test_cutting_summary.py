from gageline.sheets import Table
from gageline.sheets.cutting_summary import drop_marks, heat_of, money, proof, summary_parts
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
