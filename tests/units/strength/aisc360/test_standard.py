from __future__ import annotations

from gageline.strength.aisc360 import MANUAL, SPECIFICATION
from gageline.strength.aisc360.standard import manual, spec


def test_clauses_carry_title_and_edition() -> None:
    assert spec("J4.3", "Block shear").standard == SPECIFICATION
    assert manual("Part 9", "Prying").standard == MANUAL
    assert "360-22" in SPECIFICATION
