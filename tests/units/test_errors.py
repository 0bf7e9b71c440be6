import pytest

from gageline.errors import GagelineError, ValueProblem
from gageline.job import JobProblems


def test_one_base_for_every_refusal() -> None:
    assert issubclass(ValueProblem, GagelineError)
    assert issubclass(ValueProblem, ValueError)
    assert issubclass(JobProblems, GagelineError)


def test_a_refusal_is_caught_as_either() -> None:
    with pytest.raises(ValueError, match="too long"):
        raise ValueProblem("too long")
