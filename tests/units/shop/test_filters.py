from __future__ import annotations

from gageline.layout import Step
from gageline.part import Face
from gageline.shop.filters import face, said_at, stage, thousands


def test_words_of_the_pages() -> None:
    step = Step("Roll", Face.LEG_A, "hook", "", (), "", "")
    assert face(step) == "leg A"
    assert face(Step("Bolt", None, "wrench", "", (), "", "")) == ""
    assert stage("bench") == "Bench"
    assert (thousands(12345.6), thousands(None)) == ("12,346", "-")
    assert said_at({}, "copes-0").text == ""
