"""The strength of a whole job: a reaction for every connection, its checks, and the beams with loads."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from gageline.errors import ValueProblem
from gageline.job import EndEntry, Job, LoadEntry, PieceLoads, stock_named
from gageline.part import Assembly, End, FittingKind
from gageline.steel import Profile, Section, usual_grade
from gageline.strength.beams import SimpleBeam, check_beam, largest_uniform_load
from gageline.strength.check import Check, Method
from gageline.strength.connection import Connection, Material, Support, SupportFace
from gageline.strength.connections import check_connection
from gageline.strength.drawn import Drawn, bolt_steel, connections_of, material_of, support_of
from gageline.strength.loads import Case, Load, combinations, worst
from gageline.strength.verdict import NotChecked, Verdict

__all__ = ["SUGGESTED", "CheckedBeam", "CheckedConnection", "JobStrength", "check_strength"]

SUGGESTED = "none given: half of the beam's largest uniform load, Manual Table 3-6"
_NOT_GIVEN = frozenset({"", SUGGESTED})
_FACES = {
    "girder web": SupportFace.GIRDER_WEB,
    "column flange": SupportFace.COLUMN_FLANGE,
    "column web": SupportFace.COLUMN_WEB,
    "wall": SupportFace.WALL,
}
_BEAMS = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_CONNECTING = frozenset({FittingKind.ANGLE, FittingKind.PLATE, FittingKind.END_PLATE})
_OTHER_FITTINGS = frozenset({FittingKind.BASE_PLATE, FittingKind.CAP_PLATE, FittingKind.STIFFENER})


@dataclass(frozen=True, slots=True)
class CheckedConnection:
    """A connection of the job with its checks.

    Args:
        piece: mark of the piece it belongs to.
        quantity: of that piece.
        verdict: its checks.
    """

    piece: str
    quantity: int
    verdict: Verdict


@dataclass(frozen=True, slots=True)
class CheckedBeam:
    """A beam of the job whose loads are given.

    Args:
        piece: its mark.
        section: its designation.
        checks: bending, shear and deflection.
    """

    piece: str
    section: str
    checks: tuple[Check, ...]


@dataclass(frozen=True, slots=True)
class JobStrength:
    """What is known of the strength of a job.

    Args:
        method: by which design method.
        connections: those that were checked, in the order of the job.
        refused: those that lie outside the methods, with the reason.
        beams: simple beams with their loads.
        not_checked: what else of the job was not checked.
    """

    method: Method
    connections: tuple[CheckedConnection, ...]
    refused: tuple[NotChecked, ...]
    beams: tuple[CheckedBeam, ...]
    not_checked: tuple[NotChecked, ...]

    @property
    def failed(self) -> tuple[str, ...]:
        """What is not strong enough for a load that the job gives."""
        ends = [one.verdict for one in self.connections if one.verdict.connection.load not in _NOT_GIVEN]
        names = [verdict.connection.name for verdict in ends if not verdict.governing.passes]
        beams = [beam.piece for beam in self.beams if not all(check.passes for check in beam.checks)]
        return (*names, *beams)


def check_strength(job: Job, method: Method | None = None) -> JobStrength:
    """Check every connection that a job document describes, as drawn.

    Args:
        job: the job.
        method: design method; the job's own when left out.

    Returns:
        Checks of all connections, and everything that was not checked with its reason.

    Raises:
        ValueProblem: a method that is not the one that the reactions are given by.
    """
    own = Method(job.strength.method)
    chosen = method or own
    if chosen is not own and _gives_reactions(job):
        raise ValueProblem(
            f"the job gives its reactions by {own.value}, not by {chosen.value}: "
            "give loads instead, or write the method of the reactions in [strength]"
        )
    return _checked(job, chosen)


def _gives_reactions(job: Job) -> bool:
    return any(end.reaction or end.axial for loads in job.loads for end in (loads.left, loads.right)) or any(
        force for loads in job.loads for force in loads.plates
    )


def _checked(job: Job, method: Method) -> JobStrength:
    loads = {one.mark: one for one in job.loads}
    checked: list[CheckedConnection] = []
    refused: list[NotChecked] = []
    beams: list[CheckedBeam] = []
    for assembly in job.assemblies:
        given = loads.get(assembly.mark, PieceLoads(assembly.mark))
        for result in _of_piece(job, assembly, given, method):
            if isinstance(result, Verdict):
                checked.append(CheckedConnection(assembly.mark, assembly.quantity, result))
            else:
                refused.append(result)
        try:
            beams.extend(_beam(assembly, given, method))
        except ValueProblem as problem:
            refused.append(NotChecked(f"{assembly.mark} as a beam", str(problem)))
    return JobStrength(method, tuple(checked), tuple(refused), tuple(beams), tuple(_left_out(job)))


def _of_piece(
    job: Job, assembly: Assembly, given: PieceLoads, method: Method
) -> Iterator[Verdict | NotChecked]:
    if not any(fitting.kind in _CONNECTING for fitting in assembly.fittings):
        return
    try:
        steel = bolt_steel(job.practice.bolt_grade)
        drawn = connections_of(assembly, steel, job.practice.weld, _supports(job, given))
    except ValueProblem as problem:
        yield NotChecked(f"{assembly.mark}, its connections", str(problem))
        return
    plates = iter(given.plates)
    for one in drawn:
        force = next(plates, None) if one.end is None else None
        try:
            yield _verdict(one, assembly, given, force.kips if force else None, method)
        except ValueProblem as problem:
            yield NotChecked(one.name, str(problem))


def _verdict(
    drawn: Drawn, assembly: Assembly, given: PieceLoads, plate: float | None, method: Method
) -> Verdict:
    if drawn.connection is None:
        raise ValueProblem(drawn.why)
    if drawn.end is not None:
        return check_connection(_with_reaction(drawn, drawn.end, assembly, given, method), method)
    known = replace(drawn.connection, V=plate or 1.0, load="given" if plate else "")
    return check_connection(known, method)


def _with_reaction(
    drawn: Drawn, end: End, assembly: Assembly, given: PieceLoads, method: Method
) -> Connection:
    connection = drawn.connection
    if connection is None:
        raise ValueProblem(drawn.why)
    entry = given.left if end is End.LEFT else given.right
    N = entry.axial.kips if entry.axial else 0.0
    if entry.reaction:
        return replace(connection, V=entry.reaction.kips, N=N, load="given")
    length = assembly.main.length.inches
    if given.loads:
        pair, which = worst(_loads(given.loads, length), length, method)
        V, index = (pair.left, which.left) if end is End.LEFT else (pair.right, which.right)
        return replace(connection, V=V, N=N, load=f"from the loads, {combinations(method)[int(index)].name}")
    section = assembly.main.stock
    if not isinstance(section, Section):
        raise ValueProblem("no reaction is given: give it at the end")
    half = largest_uniform_load(section, material_of(assembly.main), length, method) / 2
    return replace(connection, V=half, N=N, load=SUGGESTED)


def _loads(entries: tuple[LoadEntry, ...], length: float) -> tuple[Load, ...]:
    return tuple(_load(entry, length) for entry in entries)


def _load(entry: LoadEntry, length: float) -> Load:
    if (entry.uniform is None) == (entry.point is None):
        raise ValueProblem("a load is either uniform or point: give one of them")
    case = Case(entry.case)
    if entry.uniform is not None:
        end = entry.end.inches if entry.end else length
        return Load(case, entry.uniform.kips_per_inch, entry.start.inches, end)
    if entry.point is None or entry.at is None:
        raise ValueProblem("a point load has no place: give at, from the left end")
    return Load(case, entry.point.kips, entry.at.inches)


def _supports(job: Job, given: PieceLoads) -> dict[End, Support]:
    ends = {End.LEFT: given.left, End.RIGHT: given.right}
    return {end: _support(job, entry, entry.support) for end, entry in ends.items() if entry.support}


def _support(job: Job, entry: EndEntry, name: str) -> Support:
    section = stock_named(name, job.system)
    if not isinstance(section, Section):
        raise ValueProblem(f"support {section.designation} is a plate: name the section that carries the end")
    face = _FACES[entry.face]
    thickness = section.tf if face is SupportFace.COLUMN_FLANGE else section.tw
    grade = usual_grade(section)
    F_y, F_u = grade.strength(thickness)
    return support_of(section, Material(grade.name, F_y, F_u), face)


def _beam(assembly: Assembly, given: PieceLoads, method: Method) -> Iterator[CheckedBeam]:
    section, length = assembly.main.stock, assembly.main.length.inches
    if not given.loads or not isinstance(section, Section):
        return
    span = given.span
    beam = SimpleBeam(
        section,
        material_of(assembly.main),
        length,
        _loads(given.loads, length),
        span.unbraced.inches if span.unbraced is not None else None,
        span.live,
        span.total,
    )
    yield CheckedBeam(assembly.mark, section.designation, check_beam(beam, method))


def _left_out(job: Job) -> Iterator[NotChecked]:
    bare = [
        f"{assembly.mark} {end}"
        for assembly in job.assemblies
        if assembly.main.profile in _BEAMS and not _is_column(assembly)
        for end in End
        if not any(fitting.end is end for fitting in assembly.fittings)
    ]
    if bare:
        yield NotChecked(f"ends without connection material: {', '.join(bare)}", "it is not in the job")
    others = sorted(
        {f.kind.value for assembly in job.assemblies for f in assembly.fittings if f.kind in _OTHER_FITTINGS}
    )
    if others:
        yield NotChecked(", ".join(f"{name}s" for name in others), "their forces are not in the job")
    if not all(loads.loads for loads in job.loads):
        yield NotChecked("bending and deflection of members", "their loads are not in the job")


def _is_column(assembly: Assembly) -> bool:
    return any(f.kind in {FittingKind.BASE_PLATE, FittingKind.CAP_PLATE} for f in assembly.fittings)
