from decimal import Decimal

import pytest
from pydantic import ValidationError

from gageline.stock.document import RackDocument

BUY = {"stock": "W16x26", "lengths": "20'", "per_pound": 0.92}


def test_what_is_left_out() -> None:
    document = RackDocument.model_validate({"saw": {"kerf": "1/8"}, "buy": [BUY]})
    assert document.saw.keep.ticks == 0
    assert document.burner.cut == "free"
    assert document.buy[0].limit is None


def test_prices_are_exact_and_one_length_is_a_list() -> None:
    entry = RackDocument.model_validate({"saw": {"kerf": 0}, "buy": [BUY]}).buy[0]
    assert entry.per_pound == Decimal("0.92")
    assert [length.inches for length in entry.lengths] == [240]


def test_a_price_without_end_is_refused() -> None:
    with pytest.raises(ValidationError, match="per_pound"):
        RackDocument.model_validate({"saw": {"kerf": 0}, "buy": [{**BUY, "per_pound": float("inf")}]})
