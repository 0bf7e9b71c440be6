"""The numbered steps of a card, in the order a fitter works."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from gageline.layout.cut_steps import check_step, clip_step, cope_step, end_steps, finished, trim_step
from gageline.layout.cuts import cope_name, flange_face, is_hollow, opposite_wall, other_wall, web_faces
from gageline.layout.fit_steps import fit_steps, join_steps
from gageline.layout.hole_steps import centre_step, opening_step, pattern_steps
from gageline.layout.holes import Pattern, centred_faces
from gageline.layout.mark import Bench
from gageline.layout.rolling import face_walk, roll_step
from gageline.layout.seats import Seat
from gageline.layout.step import Step, numbered
from gageline.part import End, Face, Part, faces_of
from gageline.units import Length

__all__ = ["part_steps"]


def part_steps(
    bench: Bench,
    patterns: tuple[Pattern, ...],
    seats: tuple[Seat, ...] = (),
    span: tuple[Length, Length] | None = None,
) -> tuple[Step, ...]:
    """Every step of one part: check, cuts, then face by face centre line, openings and holes, then fittings.

    Args:
        bench: the part and the tape.
        patterns: of the part.
        seats: of its fittings; none for a fitting's own card.
        span: from the leftmost to the rightmost point of the piece; None for a fitting's own card.
    """
    part = bench.part
    phases = (
        _by_face(_cuts(bench), part),
        _by_face(_on_faces(bench, patterns), part),
        _by_face(_fits(bench, seats), part),
    )
    walk = face_walk(tuple(tuple(phase) for phase in phases))
    order = [face for faces in walk for face in faces]
    up = order[0] if order else web_faces(part)[0]
    steps = [check_step(bench, up)]
    for phase, faces in zip(phases, walk, strict=True):
        for face in faces:
            if face is not up:
                steps.append(roll_step(up, face, hollow=is_hollow(part)))
                up = face
            steps.extend(phase[face])
    steps = _checked(steps, bench)
    steps.extend(step for seat in seats if seat.fitting.on is None for step in fit_steps(bench, seat))
    if seats and span is not None:
        steps.extend(join_steps(bench, seats, span))
    return numbered(steps)


def _checked(steps: list[Step], bench: Bench) -> list[Step]:
    """The same steps, the last cut of an end checked by the finished lengths too."""
    ends = {step.title for end in End for step in end_steps(bench, end)}
    last = max((number for number, step in enumerate(steps) if step.title in ends), default=None)
    if last is None:
        return steps
    before = {step.for_ for step in steps[:last]}
    lengths = finished(bench, {cope.edge for cope in bench.part.copes if cope_name(cope) in before})
    return [*steps[:last], replace(steps[last], check=steps[last].check + lengths), *steps[last + 1 :]]


def _by_face(work: Iterable[tuple[Face, Step]], part: Part) -> dict[Face, list[Step]]:
    """Steps gathered by the face that is up for them, the faces in the order they unfold."""
    found: dict[Face, list[Step]] = {face: [] for face in faces_of(part.stock)}
    for face, step in work:
        found[face].append(step)
    return {face: steps for face, steps in found.items() if steps}


def _cuts(bench: Bench) -> Iterator[tuple[Face, Step]]:
    part, web = bench.part, web_faces(bench.part)[0]
    for end in End:
        for step in end_steps(bench, end):
            yield step.face or web, step
    for cope in part.copes:
        yield web, cope_step(bench, cope)
    for trim in part.trims:
        if flange_face(part, trim.flange) is trim.flange:
            yield trim.flange, trim_step(bench, trim)
    for clip in part.clips:
        if web is Face.FACE:
            yield web, clip_step(bench, clip)


def _on_faces(bench: Bench, patterns: tuple[Pattern, ...]) -> Iterator[tuple[Face, Step]]:
    for face in centred_faces(bench.part):
        yield face, centre_step(bench, face)
    for number, opening in enumerate(bench.part.openings, 1):
        name = f"opening {number}"
        yield opening.face, opening_step(bench, opening, opening.face, name)
        if opening.through:
            wall = opposite_wall(opening.face)
            yield wall, opening_step(bench, opening, wall, other_wall(name))
    for pattern in patterns:
        for step in pattern_steps(bench, pattern):
            yield pattern.face, step


def _fits(bench: Bench, seats: tuple[Seat, ...]) -> Iterator[tuple[Face, Step]]:
    for seat in seats:
        if seat.fitting.on is not None:
            for step in fit_steps(bench, seat):
                yield seat.fitting.on, step
