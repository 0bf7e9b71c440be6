from fractions import Fraction

import pytest

from gageline.errors import ValueProblem
from gageline.job import Stick
from gageline.layout.long_tape import ALPHA, tape_of
from jobs import inches


def test_tape_and_steel_alike_need_no_correction() -> None:
    assert tape_of(Stick("B1")).factor == 1
    assert tape_of(Stick("B1", steel_temperature=95, tape_temperature=95)).factor == 1
    assert not tape_of(Stick("B1", steel_temperature=95, tape_temperature=95)).why


def test_steel_in_the_sun_is_longer_by_the_published_coefficient() -> None:
    """100 ft of steel 100 °F warmer than the tape: 1200 x 6.5e-6 x 100 = 0.78 in (AISC Manual 17-11)."""
    tape = tape_of(Stick("B1", steel_temperature=168, tape_temperature=68))
    assert Fraction(65, 10_000_000) == ALPHA
    assert tape.reading(inches("100'")).inches == pytest.approx(1200.78, abs=1e-5)
    assert tape.length(inches("1200.78")).inches == pytest.approx(1200, abs=1e-4)
    assert tape.why == "steel at 168°F (76°C), tape at 68°F (20°C)"


def test_a_long_tape_reads_short() -> None:
    """A tape 1/8 long over 100 ft reads 1/16 less over 50 ft (by hand)."""
    tape = tape_of(Stick("B1", tape_error=inches("1/8"), tape_length=inches("100'")))
    assert tape.reading(inches("50'")).inches == pytest.approx(600 - 1 / 16, abs=1e-4)
    assert tape.why == "tape long by its calibration"
    short = tape_of(Stick("B1", tape_error=-inches("1/8"), tape_length=inches("100'")))
    assert short.why == "tape short by its calibration"


def test_an_error_over_no_length_is_refused() -> None:
    stick = Stick("B1", tape_error=inches("1/8"), tape_length=inches("0"))
    with pytest.raises(ValueProblem, match="tape length 0 in is not above zero"):
        tape_of(stick)
