import datetime as dt
import json
from fractions import Fraction

import pytest

from gageline.exchange import json_text, plain
from gageline.part import Face, HoleGroup
from gageline.steel import find
from gageline.units import Length, System, parse_slope


def test_a_length_in_both_units() -> None:
    assert plain(Length.from_inches(223.25)) == {"text": "18'-7 1/4\"", "in": 223.25, "mm": 5670.55}
    assert plain(Length.from_mm(5670), System.MM)["text"] == "5670 mm"


def test_records_nest() -> None:
    group = HoleGroup("web", Face.NEAR, ())
    assert plain(group) == {
        "name": "web",
        "face": "near",
        "holes": [],
        "bolt": "",
        "kind": None,
        "mates": True,
        "through": False,
    }


def test_other_values() -> None:
    assert plain(parse_slope("3 in 12")) == {"in_12": 3.0, "degrees": pytest.approx(14.036, abs=1e-3)}
    assert plain(find("w16x26")) == "W16X26"
    assert plain({Face.TOP: (Fraction(1, 2), dt.date(2026, 11, 25))}) == {"top": [0.5, "2026-11-25"]}
    assert json.loads(json_text([Face.TOP, 1, None])) == ["top", 1, None]


def test_what_has_no_plain_form_is_refused() -> None:
    with pytest.raises(TypeError, match="a object has no plain form"):
        plain(object())
