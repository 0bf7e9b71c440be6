import pytest

from gageline.errors import ValueProblem
from gageline.quality.joint import BoltPlace, Joint


def test_a_joint_without_bolts_is_refused() -> None:
    with pytest.raises(ValueProblem, match="joint web has no bolts: give at least one"):
        Joint("web", ())


def test_a_lot_that_is_not_there_is_refused() -> None:
    with pytest.raises(ValueProblem, match="joint web has a bolt of lot 1 and 1 lots: number from 0"):
        Joint("web", (BoltPlace(0, 0, 1 / 16, lot=1),))


def test_a_hole_smaller_than_its_bolt_is_refused() -> None:
    with pytest.raises(ValueProblem, match=r"a hole 0\.125 in smaller than its bolt: enlarge it"):
        Joint("web", (BoltPlace(0, 0, -1 / 8),))
