"""The words of a piece drawing: bill of material, notes on holes, bolts, welds and hands."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.job import Job
from gageline.part import Assembly, BoltSet, Face, Fitting, HoleGroup, Part, extent_y
from gageline.sheets.furniture import bolt_text
from gageline.sheets.notation import Scribe, is_scattered, short_name
from gageline.sheets.scene import Anchor
from gageline.sheets.style import FINE
from gageline.sheets.table import Column, Table
from gageline.steel import Profile
from gageline.takeoff import PieceBill, weight_text, weight_unit
from gageline.units import ZERO, Length

__all__ = ["bill_table", "hole_lists", "piece_notes"]

_RIGHT = Anchor.RIGHT


def bill_table(bill: PieceBill, scribe: Scribe) -> Table:
    """The bill of material of one piece.

    Args:
        bill: what it is made of.
        scribe: writes in the units of the job.
    """
    system = scribe.system
    unit = weight_unit(system)
    columns = (
        Column("Mark", wraps=False),
        Column("No.", _RIGHT, wraps=False),
        Column("Section"),
        Column("Length", _RIGHT, wraps=False),
        Column("Grade"),
        Column(f"Each bare, {unit}", _RIGHT, wraps=False),
        Column(f"All bare, {unit}", _RIGHT, wraps=False),
    )
    rows = [
        (
            line.mark,
            str(line.quantity),
            line.designation,
            scribe.tell(line.length),
            line.grade,
            weight_text(line.weight, system),
            weight_text(line.total_weight, system),
        )
        for line in bill.lines
    ]
    total = ("", "", "One piece with its fittings", "", "", "", weight_text(bill.mass.weight, system))
    return Table(columns, (*rows, total), FINE, total=True)


def hole_lists(part: Part, scribe: Scribe) -> list[Table]:
    """A list for every group of holes that lie on no regular lines: each hole from the left end and across.

    Args:
        part: the main part or a fitting.
        scribe: writes in the units of the job.
    """
    return [_hole_list(group, part, scribe) for group in part.groups if is_scattered(group)]


def _hole_list(group: HoleGroup, part: Part, scribe: Scribe) -> Table:
    high = extent_y(part.stock)[1]
    if group.face in {Face.TOP, Face.BOTTOM}:
        hollow = part.profile in {Profile.BOX, Profile.TUBE}
        across = "From middle" if hollow else "From web"
        places = [_toward(hole.y, scribe) for hole in group.holes]
    elif group.face in {Face.LEG_A, Face.LEG_B}:
        across, places = "From heel", [scribe.tell(hole.y) for hole in group.holes]
    else:
        across, places = "Down", [scribe.tell(high - hole.y) for hole in group.holes]
    columns = (
        Column(f"{part.mark}: {short_name(group)}"),
        Column("From left", _RIGHT),
        Column(across, _RIGHT),
    )
    rows = tuple(
        (scribe.hole_size(hole), scribe.tell(hole.x), place)
        for hole, place in zip(group.holes, places, strict=True)
    )
    return Table(columns, rows, FINE)


def _toward(offset: Length, scribe: Scribe) -> str:
    """An offset on a flange from the middle or the back of the web, and toward which side."""
    text = scribe.tell(abs(offset))
    return f"{text} near" if offset > ZERO else f"{text} far" if offset < ZERO else text


def piece_notes(job: Job, assembly: Assembly, scribe: Scribe) -> list[str]:
    """The notes of a piece, one sentence each."""
    return [
        *_hands(job, assembly),
        *_holes(assembly, scribe),
        *_bolts(job, assembly, scribe),
        f"Finish: {assembly.finish}." if assembly.finish else "",
        *_ways(assembly),
        *job.facts.notes,
    ]


def _hands(job: Job, assembly: Assembly) -> Iterator[str]:
    if assembly.hand_of:
        yield f"{assembly.mark}: drawn as made, the opposite hand of {assembly.hand_of}."
    for other in job.assemblies:
        if other.hand_of == assembly.mark:
            wanted = f"{other.mark} ({other.quantity} wanted)"
            yield f"{wanted}: as shown, opposite hand; it has a sheet of its own."


def _holes(assembly: Assembly, scribe: Scribe) -> Iterator[str]:
    """Which holes are for which bolts, each size once."""
    parts = [assembly.main, *(fitting.part for fitting in assembly.fittings)]
    groups: list[HoleGroup] = [group for part in parts for group in part.groups]
    said: dict[str, None] = {}
    for group in groups:
        kind = scribe.kind(group)
        if kind:
            said[f"{scribe.hole_size(group.holes[0])} {kind}"] = None
    if said:
        yield f"Holes: {'; '.join(said)}."


def _bolts(job: Job, assembly: Assembly, scribe: Scribe) -> Iterator[str]:
    for field, name in ((False, "Shop"), (True, "Field")):
        counts: dict[str, int] = {}
        for bolts in assembly.bolts:
            if bolts.field is field:
                words = _bolt_words(bolts, job, scribe)
                counts[words] = counts.get(words, 0) + bolts.count
        if counts:
            yield f"{name} bolts: {'; '.join(f'{count} of {words}' for words, count in counts.items())}."


def _bolt_words(bolts: BoltSet, job: Job, scribe: Scribe) -> str:
    if not bolts.bolt:
        return "a size to suit the holes, which the job does not give"
    grip = f", grip {scribe.fine(bolts.grip)}" if bolts.grip is not None else ""
    return f"{bolt_text(bolts.bolt)} {job.practice.bolt_grade}{grip}"


def _ways(assembly: Assembly) -> Iterator[str]:
    def is_between(fitting: Fitting) -> bool:
        return fitting.end is None

    rows = "its heel" if assembly.main.profile is Profile.ANGLE else "its top"
    views = "Views in third angle; the near side faces the reader."
    yield f"{views} Readings run from the left end of the steel, rows from {rows}."
    if any(map(is_between, assembly.fittings)):
        yield "Plates and stiffeners are measured to their middle."
