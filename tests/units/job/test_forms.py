import pytest

from gageline.job import Entry, JobProblems, LengthText, filled, parse
from gageline.units import System


class Form(Entry):
    width: LengthText
    depth: LengthText


def test_a_form_is_filled_in_its_units() -> None:
    text = "width = 25.4\ndepth = 0\n"
    assert filled(Form, parse(text), text, System.MM).width.inches == 1


def test_everything_wrong_is_said_with_its_line() -> None:
    text = 'width = "x"\ndpeth = 1\n'
    with pytest.raises(JobProblems) as refused:
        filled(Form, parse(text), text, System.FT_IN)
    assert {(problem.path, problem.line) for problem in refused.value.problems} == {
        ("width", 1),
        ("depth", None),
        ("dpeth", 2),
    }
