"""Texts that no sheet can print are found before one is drawn."""

from __future__ import annotations

from gageline.job import read_job
from gageline.part import Severity
from gageline.sheets import check_texts

DOCUMENT = """
[job]
name = "Loft 漢"
notes = ["as agreed ∅"]

[[piece]]
mark = "B1"
stock = "W16x26"
length = 120
finish = "grüne Farbe, ½ coat"
"""


def test_each_text_is_named_with_its_character() -> None:
    findings = check_texts(read_job(DOCUMENT))
    assert [finding.subject for finding in findings] == ["job name", "job notes"]
    assert all(finding.severity is Severity.ERROR for finding in findings)
    assert findings[0].text() == (
        "error: job name: text \"Loft 漢\" has the character '漢' (U+6F22), which IBM Plex Sans Condensed "
        "cannot print: write it in letters that the font has instead"
    )
    assert findings[1].remedy == "write Ø instead"


def test_what_the_font_has_is_no_finding() -> None:
    assert not check_texts(read_job(DOCUMENT.replace("漢", "Ø").replace("∅", "")))


def test_names_of_holes_and_of_the_frame_are_looked_at() -> None:
    holes = '\n[[piece.holes]]\nname = "left 漢"\nx = 5\ndown = 4\nrows = 2\n'
    frame = """
[frame.grid]
x = { names = ["1", "漢"], spacing = [100] }
y = { names = ["A"] }

[[frame.level]]
name = "Floor 漢"
elevation = 0

[[frame.opening]]
name = "Stair 漢"
level = "Floor 漢"
corners = [{ point = "1/A" }, { point = "1/A", x = 9, y = 9 }]
"""
    sound = DOCUMENT.replace("漢", "").replace("∅", "")
    said = [finding.subject for finding in check_texts(read_job(sound + holes + frame))]
    assert said == ["piece B1 holes", "grid line", "level Floor 漢", "opening Stair 漢"]
