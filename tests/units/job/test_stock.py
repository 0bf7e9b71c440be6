from __future__ import annotations

import pytest

from gageline.errors import ValueProblem
from gageline.job.stock import stock_named
from gageline.units import System


@pytest.mark.parametrize("system", list(System))
@pytest.mark.parametrize(
    ("text", "name"), [("w16x26", "W16X26"), ("ipe300", "IPE 300"), ("L4x3x1/4", "L4X3X1/4")]
)
def test_every_table_is_open_to_every_job(text: str, name: str, system: System) -> None:
    assert stock_named(text, system).designation == name


def test_bare_sizes_of_plates_are_in_the_units_of_the_job() -> None:
    assert stock_named("PL12x200", System.MM).designation == "PL 12x200"
    assert stock_named("PL1/2x8", System.FT_IN).designation == "PL1/2X8"


def test_an_unknown_one_names_the_nearest() -> None:
    with pytest.raises(ValueProblem, match='section "W16x27" is not in the tables: did you mean W16X26'):
        stock_named("W16x27", System.FT_IN)
