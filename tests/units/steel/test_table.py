from __future__ import annotations

import csv
from importlib.resources import files

import pytest

from gageline.steel import Measure, find
from gageline.steel.table import lines, read_csv, section

TABLES = [
    entry.name for entry in files("gageline.steel").joinpath("data").iterdir() if entry.name.endswith(".csv")
]


@pytest.mark.parametrize("name", TABLES)
def test_every_table_is_even_and_names_its_source(name: str) -> None:
    text = files("gageline.steel").joinpath("data", name).read_text(encoding="utf-8")
    head, *rows = csv.reader(text.splitlines())
    assert rows
    assert {len(row) for row in rows} == {len(head)}
    assert len(set(head)) == len(head)
    assert all(line.get("source") or line.get("edition") for line in read_csv(name))


def test_the_readme_speaks_of_every_table() -> None:
    readme = files("gageline.steel").joinpath("data", "README.md").read_text(encoding="utf-8")
    assert [name for name in TABLES if f"`{name}`" not in readme] == []


def test_no_designation_stands_twice() -> None:
    for system in Measure:
        assert len(lines(system)) == len(read_csv(f"{system}_shapes.csv"))


def test_a_section_is_built_once() -> None:
    assert section(Measure.US, "W16X26") is find("w16x26")


def test_european_values_are_brought_to_inches() -> None:
    line = section(Measure.EU, "IPE 300")
    assert line.area == pytest.approx(5381 / 25.4**2, rel=1e-3)
    assert line.Ix == pytest.approx(8.356e7 / 25.4**4, rel=1e-3)
    assert line.weight == pytest.approx(42.2 / 1.488164, rel=1e-5)
    assert pytest.approx((750 / 25.4, 900 / 25.4)) == (line.PC, line.PD)
