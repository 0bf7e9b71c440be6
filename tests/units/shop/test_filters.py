from __future__ import annotations

from gageline.layout import Step
from gageline.part import Face
from gageline.shop.filters import face, said_at, stage, weight
from gageline.units import System


def test_words_of_the_pages() -> None:
    step = Step("Roll", Face.LEG_A, "hook", "", (), "", "")
    assert face(step) == "leg A"
    assert face(Step("Bolt", None, "wrench", "", (), "", "")) == ""
    assert stage("bench") == "Bench"
    assert (weight(12345.6, System.FT_IN), weight(None, System.FT_IN)) == ("12,346 lb", "-")
    assert weight(100 / 0.45359237, System.MM) == "100 kg"
    assert said_at({}, "copes-0").text == ""
