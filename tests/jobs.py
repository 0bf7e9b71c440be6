"""Small job documents for tests, all of them invented."""

from __future__ import annotations

from gageline.job import Job, read_job
from gageline.part import Assembly, Fitting
from gageline.steel import Section
from gageline.units import Length, parse_length

__all__ = ["fitting_of", "inches", "job_of", "mm", "piece_of", "section_of"]


def job_of(*pieces: str, units: str = "ft-in", practice: str = "") -> Job:
    """A job of pieces given as the lines of their tables."""
    tables = "\n".join(f"[[piece]]\n{piece}" for piece in pieces)
    return read_job(f'[job]\nname = "test"\nunits = "{units}"\n[practice]\n{practice}\n{tables}\n')


def piece_of(
    lines: str = "",
    *,
    stock: str = "W16x26",
    length: str = '"10\'-0"',
    units: str = "ft-in",
    practice: str = "",
) -> Assembly:
    """The only piece of a job, B1, of any stock, with further lines in its table."""
    table = f'mark = "B1"\nstock = "{stock}"\nlength = {length}\n{lines}'
    return job_of(table, units=units, practice=practice).assemblies[0]


def fitting_of(assembly: Assembly, name: str) -> Fitting:
    """The fitting of a name."""
    return next(fitting for fitting in assembly.fittings if fitting.name == name)


def section_of(assembly: Assembly) -> Section:
    """The section of a piece's main part."""
    assert isinstance(assembly.main.stock, Section)
    return assembly.main.stock


def inches(text: str) -> Length:
    """A length as a fitter types it; a leading minus is allowed."""
    return parse_length(text)


def mm(value: int) -> Length:
    """A length of whole millimetres."""
    return Length.from_mm(value)
