"""Rack documents: read whole, and refused with everything that is wrong in one go."""

from __future__ import annotations

import re
from datetime import date
from importlib.resources import files
from pathlib import Path

import pytest

from gageline.job import JobProblems
from gageline.stock import Done, Held, Offer, Rack, Steel, open_rack, read_rack
from gageline.units import System, parse_length

PAGE = (Path(__file__).parents[3] / "docs" / "cutting.md").read_text("utf8")
EXAMPLE, AGAIN = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)
SAW = '[saw]\nkerf = "1/8"\n'
BUY = '[[buy]]\nstock = "W16x26"\nlengths = "40\'"\nper_pound = 0.9\n'


def offer_of(rack: Rack) -> Offer:
    (stick,) = rack.sticks
    assert isinstance(stick, Offer)
    return stick


def test_the_example_of_the_page_is_read() -> None:
    rack = read_rack(EXAMPLE)
    held = [stick for stick in rack.sticks if isinstance(stick, Held)]
    assert held == [Held("R1", Steel("W16X26", "A992"), parse_length("22'-4"), 29000, "7K2214", True)]
    assert [stick.length.inches / 12 for stick in rack.sticks[1:4]] == [20, 40, 60]
    assert rack.done == (Done("R1", ("B1",)),)
    assert rack.wishes[0].one_heat == "girder line"
    assert not rack.burner.shear


def test_the_page_names_every_key() -> None:
    for key in re.findall(r"^(\w+) =", EXAMPLE, re.MULTILINE):
        assert f"`{key}`" in PAGE


def test_the_demo_rack_is_read() -> None:
    rack = open_rack(Path(str(files("gageline") / "demo" / "rack.toml")))
    assert len(rack.sheets) == 3


def test_price_by_weight() -> None:
    # 26 lb/ft (the section's name says so) x 40 ft x 0.90 a pound
    assert offer_of(read_rack(SAW + BUY)).cents == 93600


def test_price_by_kilogram() -> None:
    # 1040 lb are 471.736 kg (1 lb = 0.45359237 kg, exactly, by international agreement of 1959)
    per_kg = BUY.replace("per_pound = 0.9", "per_kg = 2")
    assert offer_of(read_rack(SAW + per_kg)).cents == round(471.736065 * 200)


def test_a_metric_rack_reads_bare_millimetres() -> None:
    buy = '[[buy]]\nstock = "IPE 300"\nlengths = [6000, 12000]\nper_kg = 1.1\n'
    rack = read_rack(f'[rack]\nunits = "mm"\n[saw]\nkerf = 3\n{buy}')
    assert rack.system is System.MM
    assert [stick.length.mm for stick in rack.sticks] == [6000, 12000]
    assert rack.saw.kerf.mm == 3


def test_dates_and_limits() -> None:
    offer = offer_of(read_rack(SAW + BUY + 'limit = 3\narrives = 2026-12-01\nheat = "H1"\n'))
    assert (offer.limit, offer.arrives, offer.heat) == (3, date(2026, 12, 1), "H1")


HELD = '[[held]]\nmark = "R1"\nstock = "W16x26"\nlength = "20\'"\n'


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (BUY, "saw: is missing: give it"),
        ('[saw]\nkerf = "-1/8"\n', "line 2: saw → kerf: .* is below zero: give zero or more"),
        (SAW + "gripp = 6\n", 'saw → gripp: there is no such key: did you mean "grip"'),
        (SAW + "drop_percent = 120\n", "drop_percent: 120 is more than 100: give 100 or less"),
        (SAW + BUY.replace("W16x26", "W16x27"), "line 4: buy 1 → stock: .*W16"),
        (SAW + BUY.replace("per_pound = 0.9", ""), "buy 1: has no price: give one of per_pound, per_kg"),
        (SAW + BUY + "each = 5\n", "buy 1: has per_pound and each: give one"),
        (SAW + BUY.replace("0.9", "-1"), "per_pound: -1 is less than 0: give 0 or more"),
        (SAW + BUY.replace("0.9", "0"), r"per_pound: is zero: give the price, or list it under \[\[held\]\]"),
        (SAW + BUY.replace("0.9", '"cheap"'), 'per_pound: "cheap" is wrong here'),
        (SAW + BUY.replace('"40\'"', "[]"), "lengths: is empty: give at least one"),
        (
            SAW + BUY.replace('"40\'"', '["20\'", "40\'"]').replace("per_pound = 0.9", "each = 5"),
            "each: is one price for several lengths",
        ),
        (SAW + HELD + HELD, 'held "R1" → mark: "R1" is on two sticks: give each its own mark'),
        (SAW + HELD.replace("20'", "0"), 'held "R1" → length: "0" is not above zero'),
        (SAW + '[[done]]\nstick = "R9"\npieces = "B1"\n', r'"R9" is no stick of the rack: .* has none'),
        (
            SAW + HELD + 2 * '[[done]]\nstick = "R1"\npieces = "B1"\n',
            'done 2 → stick: "R1" stands here twice',
        ),
        (SAW + '[[wish]]\npieces = "B1"\n', "wish 1: wishes nothing: give heat, one_heat"),
        (SAW + '[burner]\ncut = "saw"\n', 'burner → cut: "saw" is not one of "free", "shear": choose one'),
        ("[saw\n", "line 1: is not TOML"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said(text: str, said: str) -> None:
    with pytest.raises(JobProblems, match=said):
        read_rack(text)


def test_all_problems_at_once() -> None:
    with pytest.raises(JobProblems) as refused:
        read_rack('[saw]\nkerf = "x"\ngrip = -1\n' + BUY.replace("W16x26", "Q9"))
    assert [problem.line for problem in refused.value.problems] == [2, 3, 5]


def test_no_such_file(tmp_path: Path) -> None:
    with pytest.raises(JobProblems, match="there is no such file"):
        open_rack(tmp_path / "rack.toml")


def test_the_example_of_cutting_again_goes_with_the_demo() -> None:
    rack = read_rack((files("gageline") / "demo" / "rack.toml").read_text("utf8") + AGAIN)
    assert rack.done == (Done("N1", ("B1",)),)
    lengths = {stick.mark: stick.length for stick in rack.sticks if isinstance(stick, Held)}
    # 40 ft less the trim of 1/2 in, the B1 of 18'-7 1/4 and a kerf of 1/8 in
    assert lengths["D3"].inches == 480 - 0.5 - 223.25 - 0.125
