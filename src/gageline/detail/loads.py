"""What each member of the frame carries by itself: its own loads and those of its level's area."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from gageline.detail.line import Frame, Line
from gageline.job import AreaLoadEntry, FrameEntry, LoadEntry, MemberEntry, Note, SpanEntry
from gageline.part import Finding, Severity
from gageline.units import Length, System

__all__ = ["MemberLoads", "carried_by", "unused_area_loads", "wrong_loads"]


@dataclass(frozen=True, slots=True)
class MemberLoads:
    """What a member carries by itself, without what other members hand to it.

    Args:
        member: its name.
        loads: unfactored; places are measured from its start work point along its top of steel.
        span: for the check of a simple beam.
    """

    member: str
    loads: tuple[LoadEntry, ...]
    span: SpanEntry


def carried_by(frame: Frame, entry: FrameEntry) -> tuple[MemberLoads, ...]:
    """The loads of every beam of a frame, in the order in which it was placed.

    A beam with a tributary width carries the area loads of its level over that width, from one work point
    to the other; without one it carries none, for what stands on it hands it its reactions.

    Args:
        frame: every member where it stands.
        entry: the frame's tables.
    """
    areas = {level.name: level.loads for level in entry.levels}
    return tuple(
        MemberLoads(
            line.name,
            (*_of_area(line.entry, areas.get(level_of(line, frame) or "", ())), *line.entry.loads),
            line.entry.span,
        )
        for line in frame.beams
        if isinstance(line.entry, MemberEntry)
    )


def _of_area(member: MemberEntry, area: tuple[AreaLoadEntry, ...]) -> Iterator[LoadEntry]:
    if member.tributary is None:
        return
    for load in area:
        yield LoadEntry(case=load.case, uniform=load.area.over(member.tributary))


def level_of(line: Line, frame: Frame) -> str | None:
    """The level that a beam's top is given by, itself or through the members it lies below."""
    entry = line.entry
    while isinstance(entry, MemberEntry) and entry.below is not None:
        entry = frame.lines[entry.below].entry
    return entry.top if isinstance(entry, MemberEntry) and entry.top in frame.levels else None


def wrong_loads(frame: Frame, system: System) -> Iterator[Note]:
    """Loads that lie beyond their member, or are neither uniform nor point.

    Args:
        frame: every member where it stands.
        system: the units that messages are written in.
    """
    for line in frame.beams:
        if isinstance(line.entry, MemberEntry):
            for number, load in enumerate(line.entry.loads):
                wrong = load.misplaced(Length.from_inches(line.run), system, "between its work points")
                if wrong:
                    yield (*line.path, "loads", number), wrong


def unused_area_loads(frame: Frame, entry: FrameEntry) -> Iterator[Finding]:
    """Levels whose loads no member carries.

    Args:
        frame: every member where it stands.
        entry: the frame's tables.
    """
    carrying = {
        level_of(line, frame)
        for line in frame.beams
        if isinstance(line.entry, MemberEntry) and line.entry.tributary is not None
    }
    for level in entry.levels:
        if level.loads and level.name not in carrying:
            yield Finding(
                "area-load-not-carried",
                Severity.WARNING,
                level.name,
                "it has loads on its area, and no member of it says how wide a strip it carries",
                "give tributary to the beams that carry the floor",
            )
