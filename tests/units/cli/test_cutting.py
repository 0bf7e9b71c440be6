"""The cutting plan from the command line."""

import json
import re
from pathlib import Path

import pypdfium2

from typed import Run


def test_the_cutting_plan(run: Run, tmp_path: Path) -> None:
    code, out, err = run("cut", "mezzanine.toml", "--rack", "rack.toml", "--out", "cut.pdf")
    assert (code, err) == (0, "")
    assert "no plan can cost less than" in out
    assert re.search(r"^order 1 stick W16X26 A992 \d+'-0\"$", out, re.MULTILINE)
    assert re.search(r"^order 1 sheet PL1/2 A572-50 4'-0\" x 4'-0\"$", out, re.MULTILINE)
    text = "".join(
        page.get_textpage().get_text_bounded() for page in pypdfium2.PdfDocument(tmp_path / "cut.pdf")
    )
    assert "To order" in text
    assert "7K2214" in text


def test_the_cutting_plan_as_json_traces_every_piece_to_its_heat(run: Run, tmp_path: Path) -> None:
    code, out, _ = run("cut", "mezzanine.toml", "--rack", "rack.toml", "--json")
    assert code == 0
    facts = json.loads(out)
    assert facts["bound"] <= facts["cents"]
    assert sum(entry["sheets"] for entry in facts["order_sheets"]) == sum(
        len(p["sheets"]) for p in facts["plates"]
    )
    assert any(trace["piece"] == "B1" and trace["heat"] == "7K2214" for trace in facts["traces"])
    assert not list(tmp_path.glob("*.pdf"))


def test_steel_that_the_rack_has_not_is_named(run: Run, tmp_path: Path) -> None:
    rack = (tmp_path / "rack.toml").read_text("utf8").replace('"W16x31"', '"W16x36"')
    (tmp_path / "rack.toml").write_text(rack, "utf8")
    code, _, err = run("cut", "mezzanine.toml", "--rack", "rack.toml")
    assert code == 2
    assert 'W16X31 A992: there is no stick of this steel for "B2", "B3"' in err


WRONG = """
[job]
name = "One that cannot be"
[[piece]]
mark = "B1"
stock = "W12x26"
length = "10'"
[[piece]]
mark = "B2"
stock = "W12x26"
length = "10'"
copes = [{ end = "left", flange = "both", length = "4", depth = "7" }]
"""
LEAN = """
[saw]
kerf = 0
[[buy]]
stock = "W12x26"
lengths = "20'"
each = 500
"""


def test_a_piece_with_an_error_is_not_cut(run: Run, tmp_path: Path) -> None:
    (tmp_path / "wrong.toml").write_text(WRONG, "utf8")
    (tmp_path / "lean.toml").write_text(LEAN, "utf8")
    code, out, err = run("cut", "wrong.toml", "--rack", "lean.toml", "--json")
    assert code == 1
    assert err.endswith("left out for their errors: B2\n")
    assert [trace["piece"] for trace in json.loads(out)["traces"]] == ["B1"]
