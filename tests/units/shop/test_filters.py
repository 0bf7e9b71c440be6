from __future__ import annotations

from gageline.layout import Step
from gageline.part import Face
from gageline.shop.filters import face, said_at, said_within, stage, weight
from gageline.shop.saying import Said
from gageline.units import System


def test_words_of_the_pages() -> None:
    step = Step("Roll", Face.LEG_A, "hook", "", (), "", "")
    assert face(step) == "leg A"
    assert face(Step("Bolt", None, "wrench", "", (), "", "")) == ""
    assert stage("bench") == "Bench"
    assert (weight(12345.6, System.FT_IN), weight(None, System.FT_IN)) == ("12,346 lb", "-")
    assert weight(100 / 0.45359237, System.MM) == "100 kg"
    assert said_at({}, "copes-0").text == ""


def test_what_is_wrong_in_a_part_of_a_form_unfolds_it() -> None:
    said = {"end-rows": Said("end-rows", "error", "too many"), "start-drop": Said("start-drop", "echo", '3"')}
    assert said_within(said, "end")
    assert not said_within(said, "start")
    assert not said_within(said, "en")
    assert said_within({"end": Said("end", "error", "nothing supports it")}, "end")
