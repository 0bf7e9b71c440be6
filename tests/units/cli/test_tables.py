"""Sections and sums of lengths from the command line."""

import json

import pytest

from typed import Run


def test_section(run: Run) -> None:
    code, out, _ = run("section", "w16", "x", "26")
    assert code == 0
    assert "W16X26" in out
    assert "15.7" in out
    code, out, _ = run("section", "W16x26", "--json")
    assert json.loads(out)["d"]["value"]
    code, _, err = run("section", "W16x27")
    assert code == 2
    assert "W16X26" in err


@pytest.mark.parametrize(
    ("terms", "answer"),
    [
        (("18-7 1/4", "+", "3/8"), "18'-7 5/8\""),
        (("5'", "-", "6"), "4'-6\""),
        (("3", "x", "5"), "1'-3\""),
        (("1'", "/", "8"), '1 1/2"'),
        (("7/8",), '7/8"'),
    ],
)
def test_length(run: Run, terms: tuple[str, ...], answer: str) -> None:
    code, out, _ = run("length", *terms)
    assert code == 0
    assert out.startswith(f"{answer}  =  ")


def test_a_length_that_fractions_cannot_say_is_given_exactly(run: Run) -> None:
    _, out, _ = run("length", "1mm")
    assert "exactly 1 mm; the fractions above are rounded to 1/64" in out


def test_a_third_of_a_millimetre_is_not_called_exact(run: Run) -> None:
    _, out, _ = run("length", "5mm", "/", "3")
    assert "nearest to it is 1.66671875 mm; the fractions above are rounded to 1/64" in out
    _, out, _ = run("length", "5mm", "/", "3", "x", "3")
    assert "exactly 5 mm" in out


@pytest.mark.parametrize(
    ("terms", "message"),
    [
        (("5", "+"), '"+" has nothing after it'),
        (("5", "?", "6"), '"?" is no sign between lengths: use +, -, x or /'),
        (("5", "x", "y"), '"y" is not a number to multiply or divide by'),
        (("5", "/", "0"), '"0" is not a number to multiply or divide by'),
        (("five",), '"five" is not a length'),
    ],
)
def test_a_sum_that_makes_no_sense_is_refused(run: Run, terms: tuple[str, ...], message: str) -> None:
    code, _, err = run("length", *terms)
    assert code == 2
    assert message in err
