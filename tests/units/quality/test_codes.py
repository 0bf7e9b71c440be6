import re
from pathlib import Path

import pytest

import gageline.quality
from gageline.errors import ValueProblem
from gageline.quality.codes import CODES, own_limits
from jobs import inches

ROOM = Path(gageline.quality.__file__).parent


def test_every_limit_of_the_room_is_in_the_list_and_no_other() -> None:
    """A limit is made by `Limit("code", ...)`, or by a helper that takes the code first."""
    made = re.compile(r'(?:Limit|_limit|_steps|_wide_bow)\(\s*"([a-z0-9-]+)"')
    texts = [path.read_text("utf8") for path in ROOM.rglob("*.py")]
    assert set(CODES) == {code for text in texts for code in made.findall(text)}


def test_a_mistyped_code_is_refused_with_the_nearest() -> None:
    with pytest.raises(
        ValueProblem, match=r'tolerance "a6-cambr" is the code of no limit: did you mean "a6-camber"'
    ):
        own_limits({"a6-cambr": inches("1")})
    with pytest.raises(ValueProblem, match="use one of a500-length"):
        own_limits({"zzzzzzzzzz": inches("1")})
    with pytest.raises(ValueProblem) as raised:
        own_limits({"zzzzzzzzzz": inches("1"), "a6-cambr": inches("1"), "a6-depth": inches("1")})
    assert len(str(raised.value).splitlines()) == 2


def test_known_codes_pass() -> None:
    own = {"a6-camber": inches("1")}
    assert own_limits(own) is own
    assert own_limits(None) == {}
