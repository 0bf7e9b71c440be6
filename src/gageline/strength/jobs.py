"""The strength of a whole job: a reaction for every connection, its checks, and the beams with loads."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from gageline.detail import Detailed, joint_of
from gageline.errors import ValueProblem
from gageline.job import EndEntry, Job, PieceLoads, stock_named
from gageline.part import End
from gageline.steel import Section
from gageline.strength.bases import CheckedColumn, columns_of
from gageline.strength.beams import SimpleBeam, check_beam
from gageline.strength.bearings import bearings_of
from gageline.strength.check import Check, Method
from gageline.strength.checked_ends import checked_ends
from gageline.strength.connection import Support, SupportFace
from gageline.strength.cut_beams import check_holes, left_out_of_openings
from gageline.strength.demands import SUGGESTED, BelowLoads, below_at, is_given, loads_on
from gageline.strength.framed import Span, Subject, subjects_of_frame
from gageline.strength.handed import Handed, hand_down
from gageline.strength.left_out import left_out_of_beams, left_out_of_bearings, left_out_of_job
from gageline.strength.steels import material_of, support_of
from gageline.strength.verdict import NotChecked, Verdict

__all__ = ["CheckedBeam", "CheckedConnection", "JobStrength", "check_strength"]


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
        checks: bending, shear and deflection; or of its web over a column.
        beam: with its loads, its span and its braces; None where it bears on a column.
    """

    piece: str
    section: str
    checks: tuple[Check, ...]
    beam: SimpleBeam | None = None


@dataclass(frozen=True, slots=True)
class JobStrength:
    """What is known of the strength of a job.

    Args:
        method: by which design method.
        connections: those that were checked, in the order of the job.
        refused: those that lie outside the methods, with the reason.
        beams: simple beams with their loads.
        not_checked: what else of the job was not checked.
        columns: of its frame, with what comes down them.
        below: reactions that are given although the loads ask for more.
        openings: of the beams, which no check here sees; they are in `not_checked` too.
    """

    method: Method
    connections: tuple[CheckedConnection, ...]
    refused: tuple[NotChecked, ...]
    beams: tuple[CheckedBeam, ...]
    not_checked: tuple[NotChecked, ...]
    columns: tuple[CheckedColumn, ...] = ()
    below: tuple[BelowLoads, ...] = ()
    openings: tuple[NotChecked, ...] = ()

    @property
    def below_suggested(self) -> tuple[Verdict, ...]:
        """The ends without a reaction that carry less than the Manual suggests; forbidden ones apart."""
        verdicts = (one.verdict for one in self.connections if not one.verdict.forbidden)
        return tuple(v for v in verdicts if v.connection.load == SUGGESTED and not v.governing.passes)

    @property
    def failed(self) -> tuple[str, ...]:
        """What is not strong enough for a load that the job gives, or not allowed under any."""
        names = [
            one.verdict.connection.name
            for one in self.connections
            if one.verdict.forbidden
            or (is_given(one.verdict.connection.load) and not one.verdict.governing.passes)
        ]
        beams = [beam.piece for beam in self.beams if not all(check.passes for check in beam.checks)]
        bases = [one.member for one in self.columns if not all(check.passes for check in one.checks)]
        return (*names, *beams, *bases)


def check_strength(job: Job, method: Method | None = None, detailed: Detailed | None = None) -> JobStrength:
    """Check every connection of a job.

    Args:
        job: the job with all of its pieces.
        method: design method; the job's own when left out.
        detailed: its frame, so that every end is checked with what carries it; without it the pieces of
            the frame are taken as drawn ones.

    Returns:
        Checks of all connections, and everything that was not checked with its reason.

    Raises:
        ValueProblem: a method that is not the one that the reactions are given by.
    """
    own = Method(job.strength.method)
    chosen = method or own
    if chosen is not own and (_gives_reactions(job) or (detailed and _frame_gives_reactions(detailed))):
        raise ValueProblem(
            f"the job gives its reactions by {own.value}, not by {chosen.value}: "
            "give loads instead, or write the method of the reactions in [strength]"
        )
    return _checked(job, chosen, detailed)


def _gives_reactions(job: Job) -> bool:
    return any(end.reaction or end.axial for loads in job.loads for end in (loads.left, loads.right)) or any(
        force for loads in job.loads for force in loads.plates
    )


def _frame_gives_reactions(detailed: Detailed) -> bool:
    at_tops = ((one.member, one.end) for one in detailed.supports.bearings)
    on_tops = any(joint_of(member, end).reaction for member, end in at_tops if end)
    return on_tops or any(site.joint.reaction for site in detailed.supports.sites)


def _checked(job: Job, method: Method, detailed: Detailed | None) -> JobStrength:
    checked: list[CheckedConnection] = []
    refused: list[NotChecked] = []
    beams: list[CheckedBeam] = []
    handed = hand_down(detailed, job.system) if detailed else None
    framed = {assembly.mark for assembly in detailed.assemblies} if detailed else set()
    for subject in _subjects(job, method, detailed, handed, framed):
        for _, result in checked_ends(job, subject, method):
            if isinstance(result, Verdict):
                checked.append(CheckedConnection(subject.piece, subject.quantity, result))
            else:
                refused.append(result)
        try:
            beams.extend(_beam(subject, method))
        except ValueProblem as problem:
            refused.append(NotChecked(f"{subject.piece} as a beam", str(problem)))
    bases = list(columns_of(detailed, handed, method)) if detailed and handed else []
    for over in bearings_of(detailed, handed, method) if detailed and handed else ():
        if isinstance(over, NotChecked):
            refused.append(over)
        else:
            beams.append(CheckedBeam(*over))
    refused.extend(base for base in bases if isinstance(base, NotChecked))
    columns = tuple(base for base in bases if isinstance(base, CheckedColumn))
    simple = [(one.piece, one.beam) for one in beams if one.beam is not None]
    left_out = (
        *left_out_of_job(job, detailed),
        *left_out_of_beams(simple, _with_point_loads(job, detailed)),
        *left_out_of_bearings(len(beams) - len(simple)),
        *(item for one in columns for item in one.not_checked),
    )
    if handed:
        left_out += tuple(NotChecked(f"{name} as a beam", why) for name, why in handed.why.items())
    openings = tuple(
        dict.fromkeys(
            item for one in job.assemblies for item in left_out_of_openings(one.mark, one.main, job.system)
        )
    )
    left_out += openings
    below = (*_below(job, framed, method), *(handed.below_loads(method) if handed else ()))
    return JobStrength(
        method, tuple(checked), tuple(refused), tuple(beams), left_out, columns, below, openings
    )


def _below(job: Job, framed: set[str], method: Method) -> Iterator[BelowLoads]:
    """Drawn pieces with reactions that are less than their loads ask for."""
    loads = {one.mark: one for one in job.loads}
    for assembly in job.assemblies:
        for end in End if assembly.mark not in framed else ():
            given = loads.get(assembly.mark, PieceLoads(assembly.mark))
            below = below_at(assembly, end, given, method)
            yield from [below] if below else []


def _with_point_loads(job: Job, detailed: Detailed | None) -> Iterator[str]:
    """The pieces and members with point loads of their own."""
    yield from (one.mark for one in job.loads if any(load.point for load in one.loads))
    for own in detailed.loads if detailed else ():
        if any(load.point for load in own.loads):
            yield own.member


def _subjects(
    job: Job, method: Method, detailed: Detailed | None, handed: Handed | None, framed: set[str]
) -> Iterator[Subject]:
    """The pieces as drawn, then every member of the frame."""
    loads = {one.mark: one for one in job.loads}
    for assembly in job.assemblies:
        if assembly.mark not in framed:
            given = loads.get(assembly.mark, PieceLoads(assembly.mark))
            yield Subject(assembly.mark, assembly.quantity, assembly, given, _supports(job, given))
    if detailed is not None and handed is not None:
        yield from subjects_of_frame(detailed, handed, method)


def _supports(job: Job, given: PieceLoads) -> dict[End, Support]:
    ends = {End.LEFT: given.left, End.RIGHT: given.right}
    return {end: _support(job, entry, entry.support) for end, entry in ends.items() if entry.support}


def _support(job: Job, entry: EndEntry, name: str) -> Support:
    section = stock_named(name, job.system)
    if not isinstance(section, Section):
        raise ValueProblem(f"support {section.designation} is a plate: name the section that carries the end")
    return support_of(section, SupportFace[entry.face.upper().replace(" ", "_")])


def _beam(subject: Subject, method: Method) -> Iterator[CheckedBeam]:
    main, given = subject.assembly.main, subject.given
    span = subject.span
    if span is None and given.loads:
        length = main.length.inches
        span = Span(length, loads_on(given.loads, length), given.span)
    if span is None or not isinstance(main.stock, Section):
        return
    entry = span.entry
    unbraced = entry.unbraced.inches if entry.unbraced is not None else None
    beam = SimpleBeam(
        main.stock, material_of(main), span.length, span.loads, unbraced, entry.live, entry.total
    )
    checks = (*check_beam(beam, method), *check_holes(main, beam, method))
    yield CheckedBeam(subject.assembly.mark, main.stock.designation, checks, beam)
