"""The page about frames names every key and no other, and its examples are detailed without a problem."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from gageline.detail import read_full
from gageline.job import (
    ColumnEntry,
    ColumnPlateEntry,
    Entry,
    FrameEndEntry,
    LevelEntry,
    MemberEntry,
    OpeningInFrameEntry,
    PlaceEntry,
    check_job,
)
from gageline.job.frame import GridLinesEntry, PointEntry
from gageline.job.frame_practice import FramePracticeEntry

PAGE = (Path(__file__).parents[2] / "docs/framing.md").read_text(encoding="utf-8")
SECTIONS = dict(re.findall(r"^##+ (.+?)\n(.*?)(?=^##+ |\Z)", PAGE, re.MULTILINE | re.DOTALL))
EXAMPLES = re.findall(r"```toml\n(.*?)```", PAGE, re.DOTALL)
TABLES: dict[str, type[Entry]] = {
    "The grid: `[frame.grid]`": GridLinesEntry,
    "A place": PlaceEntry,
    "Levels: `[[frame.level]]`": LevelEntry,
    "Named places: `[[frame.point]]`": PointEntry,
    "Columns: `[[frame.column]]`": ColumnEntry,
    "Base plates and cap plates: `base_plate`, `cap_plate`": ColumnPlateEntry,
    "Beams: `[[frame.member]]`": MemberEntry,
    "How an end is joined: `start`, `end`, `ends`": FrameEndEntry,
    "Openings: `[[frame.opening]]`": OpeningInFrameEntry,
    "Clearances of the shop: `[frame.practice]`": FramePracticeEntry,
}


@pytest.mark.parametrize("heading", TABLES)
def test_the_page_names_every_key_and_no_other(heading: str) -> None:
    own = re.findall(r"^\| `(\w+)` \|", SECTIONS[heading], re.MULTILINE)
    fields = TABLES[heading].model_fields
    assert len(own) == len(set(own))
    assert set(own) == {field.alias or name for name, field in fields.items()}


def test_the_examples_together_are_a_frame_without_an_error() -> None:
    full = read_full("\n".join(EXAMPLES))
    assert full.detailed is not None
    five_minutes = {"P1", "P2", "P3", "P4", "G1", "G2", "B1", "B2"}
    stair = {"T1", "T2", "H1", "L1", "S1"}
    assert {one.member for one in full.detailed.placed} == five_minutes | stair
    assert not full.findings
    assert not check_job(full.job)
    hung, girder = (full.job.piece(mark).main.groups[0].holes for mark in ("M1", "G3"))
    assert len(hung) == len(girder) == 4
    assert max(h.x for h in hung) - min(h.x for h in hung) == max(h.x for h in girder) - min(
        h.x for h in girder
    )
