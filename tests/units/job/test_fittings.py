from __future__ import annotations

import pytest
from pydantic import ValidationError

from gageline.job.fittings import AnglesEntry, EndPlateEntry, PlateEntry, StiffenerEntry


def test_what_is_left_out_is_usual() -> None:
    angles = AnglesEntry.model_validate({"end": "left", "stock": "L4x4x3/8", "rows": 3})
    assert (angles.sides, angles.web_leg, angles.to_web, angles.out) == ("both", "short", "bolted", "bolted")
    plate = EndPlateEntry.model_validate({"end": "left", "thickness": 1, "width": 8, "length": 8})
    assert (plate.rows, plate.columns, plate.drop) == (0, 2, None)
    assert StiffenerEntry.model_validate({"x": 12, "thickness": "3/8"}).sides == "both"


@pytest.mark.parametrize("missing", ["thickness", "width", "x", "rows"])
def test_a_single_plate_needs_its_size_and_place(missing: str) -> None:
    table = {"thickness": "3/8", "width": 4, "x": 24, "rows": 3}
    assert PlateEntry.model_validate(table).on == "near"
    with pytest.raises(ValidationError, match="Field required"):
        PlateEntry.model_validate({name: value for name, value in table.items() if name != missing})
