"""From jobs and rack to a checked plan with its traces, and what stands against one."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pytest

from gageline.errors import ValueProblem
from gageline.job import open_job
from gageline.stock import Effort, Rack, ShopPlan, answer, ask, check_answer, open_rack, read_rack, traces
from gageline.stock.weights import weigh_plan
from jobs import job_of

DEMO = files("gageline") / "demo"
BEAM = 'mark = "B1"\nquantity = 3\nstock = "W16x26"\nlength = "10\'-0"\n'
PLATE = 'mark = "P1"\nquantity = 4\nstock = "PL3/8x6"\nlength = "12"\n'
SAW = '[saw]\nkerf = "1/8"\nkeep = "2\'"\n'
BEAMS = '[[buy]]\nstock = "W16x26"\nlengths = "40\'"\neach = 1000\n'
HELD = '[[held]]\nmark = "R1"\nstock = "W16x26"\nlength = "12\'"\nvalue = 200\nheat = "H7"\n'
BAR = '[[buy]]\nstock = "PL3/8x6"\nlengths = "20\'"\neach = 150\n'
SHEET = '[[sheet]]\nthickness = "3/8"\ngrade = "A572-50"\nlength = 48\nwidth = 48\neach = 90\n'


def planned(rack: str, *pieces: str) -> ShopPlan:
    return answer(ask([job_of(*pieces)], read_rack(SAW + rack)), Effort(5.0))


def demo_rack() -> Rack:
    return open_rack(Path(str(DEMO / "rack.toml")))


def test_the_whole_way_on_the_demo() -> None:
    job = open_job(Path(str(DEMO / "mezzanine.toml")))
    plan = answer(ask([job], demo_rack()), Effort(10.0))
    assert check_answer(plan) == []
    wanted = Counter[str]()
    for assembly in job.assemblies:
        wanted[assembly.mark] += assembly.quantity
        for fitting in assembly.fittings:
            wanted[fitting.part.mark] += assembly.quantity
    assert Counter(trace.piece for trace in traces(plan)) == wanted
    assert 0 <= plan.cents - plan.bound <= 2
    weights = weigh_plan(plan)
    assert weights.taken > weights.pieces + weights.kept
    assert weights.scrap > 0


def test_a_plan_with_a_piece_missing_is_found_out() -> None:
    plan = planned(BEAMS, BEAM)
    (section,) = plan.cuts.sections
    stick = replace(section.sticks[0], pieces=section.sticks[0].pieces[:-1])
    less = replace(plan.cuts, sections=(replace(section, sticks=(stick,)),))
    assert check_answer(replace(plan, cuts=less)) == ["B1: 2 cut, 3 wanted"]


def test_the_drop_on_the_rack_is_traced() -> None:
    plan = planned(HELD + BEAMS, BEAM.replace("= 3", "= 1"))
    (trace,) = traces(plan)
    assert (trace.piece, trace.stock, trace.heat) == ("B1", "R1", "H7")
    assert plan.cents == 20000


def test_weights_by_hand() -> None:
    # 40 ft and 3 x 10 ft of 26 lb/ft; 40 ft - 30 ft - 3 kerfs of 1/8 in are kept
    weights = weigh_plan(planned(BEAMS, BEAM))
    assert (weights.taken, weights.pieces) == (1040, 780)
    assert weights.kept == pytest.approx((10 - 3 / 96) * 26)


def test_plates_come_from_bar_where_there_is_bar() -> None:
    plan = planned(BAR + SHEET, PLATE)
    assert plan.plates == ()
    assert len(plan.cuts.sections) == 1


def test_plates_come_from_sheets_else() -> None:
    plan = planned(SHEET, PLATE)
    assert plan.cuts.sections == ()
    assert [trace.stock for trace in traces(plan)] == ["sheet"] * 4


def test_a_finish_is_its_own_steel_only_where_the_rack_has_it() -> None:
    primed = BEAM + 'finish = "galvanized"\n'
    assert ask([job_of(primed)], read_rack(SAW + BEAMS)).pieces[0].steel.finish == ""
    coated = BEAMS + 'finish = "galvanized"\n'
    assert ask([job_of(primed)], read_rack(SAW + coated)).pieces[0].steel.finish == "galvanized"


def test_wishes_reach_the_pieces() -> None:
    plan = planned(HELD + BEAMS + 'certificate = true\n[[wish]]\npieces = "B1"\ncertificate = true\n', BEAM)
    assert {trace.stock for trace in traces(plan)} == {"bought"}


def test_what_was_cut_stays_and_the_rest_is_planned() -> None:
    plan = planned(HELD + BEAMS + '[[done]]\nstick = "R1"\npieces = "B1"\n', BEAM)
    first, second = plan.cuts.sections[0].sticks
    assert (first.done, first.heat, [p.mark for p in first.pieces]) == (True, "H7", ["B1"])
    assert [p.mark for p in second.pieces] == ["B1", "B1"]


@pytest.mark.parametrize(
    ("rack", "said"),
    [
        (BEAMS + '[[wish]]\npieces = "B9"\nheat = "H1"\n', 'wish: no piece "B9": the jobs have B1'),
        (HELD + '[[done]]\nstick = "R1"\npieces = "B9"\n', 'stick R1 cut already: no piece "B9"'),
        (
            HELD + '[[done]]\nstick = "R1"\npieces = ["B1", "B1"]\n',
            "stick R1 cut already: its pieces are longer than the stick",
        ),
        (
            HELD.replace("W16x26", "W16x31") + '[[done]]\nstick = "R1"\npieces = "B1"\n',
            '"B1" is not cut from W16X31 A992: correct the piece or the stick',
        ),
    ],
)
def test_what_names_no_piece_is_refused(rack: str, said: str) -> None:
    question = [job_of(BEAM)], read_rack(SAW + rack)
    with pytest.raises(ValueProblem, match=said):
        ask(*question)


def test_a_wish_for_a_plate_from_a_sheet_is_refused() -> None:
    question = [job_of(PLATE)], read_rack(SAW + SHEET + '[[wish]]\npieces = "P1"\nheat = "H1"\n')
    with pytest.raises(ValueProblem, match='"P1" is cut from a sheet, and a wish for it cannot be kept'):
        ask(*question)


def test_metric_refusals_are_in_millimetres() -> None:
    job = job_of('mark = "B1"\nstock = "IPE 300"\nlength = 13000', units="mm")
    buy = '[[buy]]\nstock = "IPE 300"\nlengths = 12000\nper_kg = 1\n'
    question = ask([job], read_rack(f'[rack]\nunits = "mm"\n[saw]\nkerf = 3\n{buy}'))
    with pytest.raises(ValueProblem, match=r'"B1", 13000 mm, is longer than any stick: .* 12000 mm'):
        answer(question)


def test_a_stick_cut_already_against_a_wish_is_refused() -> None:
    wish = '[[wish]]\npieces = "B1"\nheat = "H9"\n'
    with pytest.raises(
        ValueProblem,
        match=r'stick R1 cut already: "B1" must not come from it, by its wish for a heat, .*: correct',
    ):
        planned(HELD + BEAMS + wish + '[[done]]\nstick = "R1"\npieces = "B1"\n', BEAM)


@pytest.mark.parametrize(
    ("heat", "said"),
    [
        ('heat = "H8"', "but were cut from R1, heat H7, and R2, heat H8: correct the heats"),
        ("", "but were cut from R1, heat H7, and R2, heat not known: correct the heats"),
    ],
)
def test_one_heat_already_broken_is_refused(heat: str, said: str) -> None:
    other = HELD.replace("R1", "R2").replace('heat = "H7"', heat)
    done = "".join(f'[[done]]\nstick = "{mark}"\npieces = "B1"\n' for mark in ("R1", "R2"))
    with pytest.raises(ValueProblem, match=said):
        planned(HELD + other + BEAMS + '[[wish]]\npieces = "B1"\none_heat = "line"\n' + done, BEAM)
