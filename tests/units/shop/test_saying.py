from __future__ import annotations

import pytest

from gageline.job import PieceEntry, Problem
from gageline.part import Finding, Severity
from gageline.shop.fields import form_of
from gageline.shop.saying import echo, say_all, spoken
from gageline.units import System


@pytest.mark.parametrize(
    ("text", "system", "words"),
    [
        ("18-7 1/4", System.FT_IN, "18'-7 1/4\" = 5670.6 mm"),
        ("5670mm", System.FT_IN, "18'-7 15/64\" = 5670 mm"),
        ("2'-6; 5'", System.FT_IN, "2'-6\" = 762 mm; 5'-0\" = 1524 mm"),
        ("90", System.MM, '90 mm = 3 9/16"'),
    ],
)
def test_a_length_is_said_back_in_both_systems(text: str, system: System, words: str) -> None:
    # 1 in = 25.4 mm (international yard and pound agreement of 1959); the rest is arithmetic
    assert echo(text, system).text == words


@pytest.mark.parametrize(
    ("system", "words"),
    [(System.FT_IN, "3 in 12 = 14.04\u00b0"), (System.MM, "250.0 mm in 1 m = 14.04\u00b0")],
)
def test_a_bevel_is_said_back_in_the_terms_of_the_job(system: System, words: str) -> None:
    # arctan(1/4) = 14.036 degrees
    said = say_all(form_of(PieceEntry, {"left": {"bevel": "1:4"}}), (), (), system)
    assert {one.id: one.text for one in said}["left-bevel"] == words


def test_a_bevel_that_cannot_be_read_is_said_once() -> None:
    problem = Problem('piece "B1" → left → bevel', '"5%" is not a bevel')
    said = say_all(form_of(PieceEntry, {"left": {"bevel": "5%"}}), (problem,), (), System.MM)
    assert {one.id: one.text for one in said}["left-bevel"] == '"5%" is not a bevel'


def test_a_decimal_comma_makes_no_two_lengths() -> None:
    said = echo("62,5; 70", System.MM)
    assert said.kind == "error"
    assert '"62,5" is not a length' in said.text
    assert echo("62, 70", System.MM).text == '62 mm = 2 7/16"; 70 mm = 2 3/4"'


def test_a_length_that_cannot_be_read_is_an_error() -> None:
    said = echo("about a foot", System.FT_IN)
    assert said.kind == "error"
    assert "about a foot" in said.text


def test_problems_and_findings_stand_at_their_fields() -> None:
    table = {
        "copes": [{"end": "left", "depth": "9"}, {"end": "right"}],
        "holes": [{"name": "hanger", "x": "2"}],
    }
    problems = (Problem('piece "B1" → copes 2 → length', "is missing"), Problem('piece "B1" → stock', "no"))
    findings = (
        Finding("cope-deep", Severity.WARNING, "B1 left end, top cope", "is deep", "less"),
        Finding("edge-distance", Severity.WARNING, "B1 hanger, hole 1", "is near", "move it"),
        Finding("weight", Severity.NOTE, "B1", "is heavy", "two hooks"),
    )
    said = {one.id: one for one in say_all(form_of(PieceEntry, table), problems, findings, System.FT_IN)}
    assert said["copes-1-length"].text == "is missing"
    assert said["stock"].kind == "error"
    assert "is deep" in said["copes-0"].text
    assert "is near" in said["holes-0"].text
    assert "is heavy" in said["form"].text
    assert said["copes-0-depth"].text == '9" = 228.6 mm'
    assert said["mark"].text == ""


def test_trouble_is_added_to_trouble() -> None:
    problems = (Problem("piece 1 → mark", "one"), Problem("piece 1 → mark", "two"))
    said = {one.id: one for one in say_all(form_of(PieceEntry, {}), problems, (), System.FT_IN)}
    assert said["mark"].text == "one | two"


def test_a_job_says_the_same_warning_of_many_pieces_once_and_every_error() -> None:
    def found(severity: Severity, mark: str, far: str) -> Finding:
        return Finding("edge", severity, f"{mark} left end", f'hole {far}" from the edge', "move it")

    warnings = [found(Severity.WARNING, f"B{n}", f"{n}") for n in (1, 2, 3)]
    errors = [found(Severity.ERROR, f"G{n}", f"{n}") for n in (1, 2)]
    said = spoken([*warnings, *errors])
    assert said[:2] == tuple(errors)
    assert [one.subject for one in said[2:]] == ["B1 left end (and 2 alike on B2, B3)"]
