"""The script that rebuilds the section tables, as far as it can be shown without its sources."""

from __future__ import annotations

import importlib.util
import sys
from collections.abc import Iterator
from pathlib import Path
from types import ModuleType

import pytest
from shapely import Polygon

from gageline.steel import Measure
from gageline.steel.table import lines

SCRIPT = Path(__file__).parents[3] / "tools" / "build_sections.py"


@pytest.fixture(scope="module")
def script() -> Iterator[ModuleType]:
    spec = importlib.util.spec_from_file_location("build_sections", SCRIPT)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module  # records look their module up while they are made
    spec.loader.exec_module(module)
    yield module
    del sys.modules[spec.name]


@pytest.mark.parametrize(
    ("label", "kind", "printed"),
    [
        ("HSS5_1_2X5_1_2X3_8", "HSS", "HSS5-1/2X5-1/2X3/8"),
        ("HSS28_000X1_000", "HSS_R", "HSS28.000X1.000"),
        ("Pipe3_1_2STD", "PIPE", "Pipe3-1/2STD"),
        ("WT18X193_5", "WT", "WT18X193.5"),
        ("L12X12X1_3_8", "L", "L12X12X1-3/8"),
    ],
)
def test_mangled_labels_are_put_right(script: ModuleType, label: str, kind: str, printed: str) -> None:
    assert script._label(label, kind) == printed


def test_a_mend_whose_cause_is_gone_stops_the_script(script: ModuleType) -> None:
    rows = {name: dict(line) for name, line in lines(Measure.US).items()}
    with pytest.raises(
        SystemExit, match=r"HP14X117 pa_in: expected the known wrong value 4\.15, found 70\.5"
    ):
        script._mend(rows)


def test_every_mend_stands_in_the_table(script: ModuleType) -> None:
    table = lines(Measure.US)
    assert all(table[mend.designation][mend.column] == mend.right for mend in script.MENDS)


def test_the_table_has_the_columns_of_the_script(script: ModuleType) -> None:
    assert list(lines(Measure.US)["W16X26"]) == script.US_HEAD
    assert list(lines(Measure.EU)["IPE 300"]) == script.EU_HEAD


def test_properties_of_a_rectangle(script: ModuleType) -> None:
    rectangle = Polygon([(0, 0), (30, 0), (30, 60), (0, 60)])
    area, ix, iy, ixy = script._moments(rectangle)
    assert (area, ix, iy) == pytest.approx((1800, 30 * 60**3 / 12, 60 * 30**3 / 12))
    assert ixy == pytest.approx(0, abs=1e-6)
    assert script._plastic(rectangle, along=1) == pytest.approx(30 * 60**2 / 4)
    assert script._plastic(rectangle, along=0) == pytest.approx(60 * 30**2 / 4)


@pytest.mark.parametrize(
    ("value", "text"), [(8356.12, "8356"), (53.812, "53.81"), (0.43812, "0.4381"), (125934.2, "125934")]
)
def test_numbers_are_written_to_four_digits(script: ModuleType, value: float, text: str) -> None:
    assert script._digits(value) == text
