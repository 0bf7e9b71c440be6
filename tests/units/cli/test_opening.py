"""A job opened for a command: what is said of it."""

from pathlib import Path

from gageline.cli.opening import spoken
from gageline.part import Finding, Severity
from typed import Run, broken


def test_an_unknown_piece_is_refused_with_the_known(run: Run) -> None:
    code, _, err = run("marks", "mezzanine.toml", "--piece", "Z9")
    assert (code, err.strip()[:49]) == (2, 'there is no piece "Z9": the job has B1, B2, B3, G')


def test_every_problem_of_a_document_is_said_with_its_line(run: Run, tmp_path: Path) -> None:
    job = broken(tmp_path, ('stock = "W16x26"\nlength', 'stock = "W16x27"\nlenght'))
    code, out, err = run("verify", job)
    assert (code, out) == (2, "")
    assert 'did you mean "length"?' in err
    assert "W16X26" in err
    assert err.count("line ") >= 2


def test_a_missing_file_is_said(run: Run) -> None:
    code, _, err = run("parts", "nothing.toml")
    assert (code, err.strip()) == (2, "nothing.toml: there is no such file: check the name")


def test_warnings_that_say_the_same_of_many_pieces_are_said_once() -> None:
    def found(severity: Severity, mark: str) -> Finding:
        return Finding("edge", severity, f"{mark} left web", 'edge 1" is short', "move it")

    warnings = tuple(found(Severity.WARNING, mark) for mark in ("B1", "B2", "B3"))
    errors = tuple(found(Severity.ERROR, mark) for mark in ("B1", "B2"))
    said = spoken((*warnings, *errors))
    assert said[:2] == errors
    assert [one.subject for one in said[2:]] == ["B1 left web (and 2 alike on B2, B3)"]
