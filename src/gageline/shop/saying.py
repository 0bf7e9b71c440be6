"""What a form says back: trouble at the field it belongs to, and lengths as they were understood."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from gageline.errors import ValueProblem
from gageline.job import Problem
from gageline.part import Finding, Severity, grouped
from gageline.shop.fields import Section, each_length, field_id
from gageline.units import System, Unit, feet_inches, millimetres, parse_length, parse_slope

__all__ = ["Said", "echo", "say_all", "spoken"]

_LISTS = {
    "cope": "copes",
    "copes": "copes",
    "trim": "trims",
    "clip": "clips",
    "opening": "openings",
    "openings": "openings",
    "hole": "holes",
    "edge": "holes",
    "spacing": "holes",
    "in": "holes",
}  # first word of a finding's code -> the list that it speaks of


@dataclass(frozen=True, slots=True)
class Said:
    """What is said at one place of a form.

    Args:
        id: of the place; `form` for what belongs to no field.
        kind: echo, note, warning or error.
        text: in plain words.
    """

    id: str
    kind: str
    text: str


def echo(text: str, system: System) -> Said:
    """What a length was understood as, in both unit systems, or why it was not."""
    unit = Unit.MM if system is System.MM else Unit.INCH
    try:
        lengths = [parse_length(part, unit) for part in each_length(text)[:50]]
    except ValueProblem as refused:
        return Said("", "error", str(refused))
    if system is System.MM:
        words = [f"{millimetres(length, 2)} mm = {feet_inches(length)}" for length in lengths]
    else:
        words = [f"{feet_inches(length, 64)} = {millimetres(length)} mm" for length in lengths]
    return Said("", "echo", "; ".join(words))


def _slope_echo(text: str, system: System) -> str:
    """What a bevel was understood as; nothing where it was not, which is said of it anyway."""
    try:
        slope = parse_slope(text)
    except ValueProblem:
        return ""
    said = f"{float(slope.ratio * 1000):.1f} mm in 1 m" if system is System.MM else slope.bevel_text()
    return f"{said} = {slope.degrees:.2f}\u00b0"


def _fields(section: Section) -> Iterator[tuple[str, str, str]]:
    for field in section.fields:
        yield field.id, field.kind, field.value
    for inner in section.sections:
        yield field_id(inner.name), "section", ""
        yield from _fields(inner)
    for rows in section.rows:
        yield rows.id, "rows", ""
        for item in rows.items:
            yield item.id, "section", ""
            yield from _fields(item)


def _place(path: str, root: str) -> str:
    """The place of a form for a problem's path: `piece "B4" → copes 1 → depth` is `copes-0-depth`."""
    steps = path.split(" → ")[1 if root else 0 :]
    names = []
    for step in steps:
        numbered = re.fullmatch(r"(.+) (\d+)", step)
        names.append(f"{numbered[1]}-{int(numbered[2]) - 1}" if numbered else step)
    return "-".join(names)


def _finding_place(finding: Finding, form: Section) -> str:
    """The place of a form for a finding, by its rule, and the end, number or name it speaks of."""
    name = _LISTS.get(finding.code.split("-")[0], "")
    rows = next((rows for rows in form.rows if rows.name == name), None)
    if rows is None:
        return "form"
    for number, item in enumerate(rows.items, 1):
        values = {field.label: field.value for field in item.fields}
        said = values.get("name") or (f"opening {number}" if name == "openings" else "")
        ends = {values.get("end", ""), *(("left", "right") if values.get("end") == "both" else ())}
        if (said and said in finding.subject) or any(end and f"{end} end" in finding.subject for end in ends):
            return item.id
    return rows.items[0].id if len(rows.items) == 1 else rows.id


def spoken(findings: Iterable[Finding]) -> tuple[Finding, ...]:
    """What is said of a whole job: every error, then warnings and notes that say the same once."""
    listed = tuple(findings)
    errors = tuple(one for one in listed if one.severity is Severity.ERROR)
    return (*errors, *grouped(one for one in listed if one.severity is not Severity.ERROR))


def say_all(
    form: Section, problems: Iterable[Problem], findings: Iterable[Finding], system: System
) -> tuple[Said, ...]:
    """Everything to say at the places of a form, each place once; empty text clears what stood there.

    Args:
        form: as it was typed.
        problems: that keep it from being read or built.
        findings: of the rules of the trade.
        system: the units of the job.
    """
    said: dict[str, Said] = {"form": Said("form", "echo", "")}
    tables = {place for place, kind, _ in _fields(form) if kind == "table"}
    for place, kind, value in _fields(form):
        text = ""
        if value and kind in {"length", "lengths"}:
            text = echo(value, system).text
        elif value and kind == "slope":
            text = _slope_echo(value, system)
        said[place] = Said(place, "echo", text)
    for problem in problems:
        place = _place(problem.path, "piece")
        text = problem.message if place in said else f"{problem.path}: {problem.message}".strip(": ")
        whole = _place(problem.path.rpartition(" → ")[0], "piece")
        if place not in said and whole in tables:  # a line of a field that holds several
            place = whole
        _add(said, Said(place if place in said else "form", "error", text))
    for finding in findings:
        place = _finding_place(finding, form)
        text = f"{finding.subject}: {finding.message}: {finding.remedy}"
        _add(said, Said(place, str(finding.severity), text))
    return tuple(said.values())


def _add(said: dict[str, Said], new: Said) -> None:
    """Put something at its place: beside other trouble, but instead of an echo."""
    old = said[new.id]
    if old.text and old.kind != "echo":
        worst = "error" if "error" in {old.kind, new.kind} else new.kind
        new = Said(new.id, worst, f"{old.text} | {new.text}")
    said[new.id] = new
