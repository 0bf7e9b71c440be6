"""The connections of one piece with what they must carry, checked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from gageline.errors import ValueProblem
from gageline.job import Job, frame_practice
from gageline.part import End, FittingKind
from gageline.strength.check import Method
from gageline.strength.connections import check_connection
from gageline.strength.demands import GIVEN, reaction_at
from gageline.strength.drawn import Drawn, connections_of
from gageline.strength.framed import Subject
from gageline.strength.leeway import leeway_of
from gageline.strength.steels import bolt_steel
from gageline.strength.verdict import NotChecked, Verdict

__all__ = ["checked_ends"]

_CONNECTING = frozenset({FittingKind.ANGLE, FittingKind.PLATE, FittingKind.END_PLATE})


def checked_ends(
    job: Job, subject: Subject, method: Method
) -> Iterator[tuple[End | None, Verdict | NotChecked]]:
    """The checks of each connection of a piece, or why it was not checked.

    Args:
        job: of the piece, for its bolts and welds.
        subject: the piece with its supports and reactions.
        method: design method.

    Returns:
        Of each connection the end, None for a plate that carries a beam which is not known, and its checks.
    """
    assembly = subject.assembly
    if not subject.carried and not any(fitting.kind in _CONNECTING for fitting in assembly.fittings):
        return
    try:
        steel = bolt_steel(job.practice.bolt_grade)
    except ValueProblem as problem:
        yield None, NotChecked(f"{assembly.mark}, its connections", str(problem))
        return
    plates = iter(subject.given.plates)
    weld = job.practice.weld
    for one in connections_of(assembly, steel, weld, subject.supports, subject.carried, subject.known):
        force = next(plates, None) if one.end is None else None
        try:
            yield (
                one.end,
                _verdict(_in_its_frame(one, job, subject), subject, force.kips if force else None, method),
            )
        except ValueProblem as problem:
            yield one.end, NotChecked(one.name, str(problem))


def _in_its_frame(drawn: Drawn, job: Job, subject: Subject) -> Drawn:
    """A connection of a frame with its play at the face, and what its place there lets be changed."""
    joint = subject.joints.get(drawn.end) if drawn.end else None
    if drawn.connection is None or joint is None or job.frame is None:
        return drawn
    step = frame_practice(job.frame.practice, job.system).cope_step
    leeway = leeway_of(joint, job.practice.drop, step)
    play = joint.choice.play.inches if joint.ladder else 0.0  # a seat itself is on the face
    return replace(drawn, connection=replace(drawn.connection, leeway=leeway, play=play))


def _verdict(drawn: Drawn, subject: Subject, plate: float | None, method: Method) -> Verdict:
    if drawn.connection is None:
        raise ValueProblem(drawn.why)
    if drawn.end is not None:
        demand = subject.demands.get(drawn.end) or reaction_at(
            subject.assembly, drawn.end, subject.given, method
        )
        return check_connection(replace(drawn.connection, **demand._asdict()), method)
    known = replace(drawn.connection, V=plate or 1.0, load=GIVEN if plate else "")
    return check_connection(known, method)
