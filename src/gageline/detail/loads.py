"""What each member of the frame carries by itself: its own loads and those of its level's area."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from gageline.detail.line import Frame, Line
from gageline.job import AreaLoadEntry, FrameEntry, LoadEntry, MemberEntry, Note, SpanEntry
from gageline.part import Finding, Severity
from gageline.units import Length, System

__all__ = ["MemberLoads", "carried_by", "unused_area_loads", "wrong_loads"]

_SAME = 1e-6  # inches between two elevations that are one
_MOST_NAMES = 12


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
        frame: every member where the document puts it.
        entry: the frame's tables.
    """
    areas = {level.name: level.loads for level in entry.levels}
    return tuple(
        MemberLoads(
            line.name,
            (*_of_area(line.entry, areas.get(_level_of(line, frame), ())), *line.entry.loads),
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


def _level_of(line: Line, frame: Frame) -> str:
    """The level of a beam's top, or of the top of what it lies below; empty for none or two."""
    first = _topmost(line, frame)
    top = first.entry.top
    if top in frame.levels:
        return top or ""
    there = _levels_at(first, frame)
    return there[0] if len(there) == 1 else ""


def _topmost(line: Line, frame: Frame) -> Line:
    """The beam whose own top is given, of those that a beam lies below."""
    while isinstance(line.entry, MemberEntry) and line.entry.below is not None:
        line = frame.lines[line.entry.below]
    return line


def _levels_at(line: Line, frame: Frame) -> tuple[str, ...]:
    """The levels at the elevation that a beam's top is given by."""
    drop = line.entry.drop if isinstance(line.entry, MemberEntry) else None
    top = line.start[2] + (drop.inches if drop else 0.0)
    return tuple(name for name, elevation in frame.levels.items() if abs(elevation - top) < _SAME)


def wrong_loads(frame: Frame, system: System) -> Iterator[Note]:
    """Loads that lie beyond their member, or are neither uniform nor point.

    Args:
        frame: every member where the document puts it.
        system: the units that messages are written in.
    """
    for line in frame.beams:
        if isinstance(line.entry, MemberEntry):
            for number, load in enumerate(line.entry.loads):
                wrong = load.misplaced(Length.from_inches(line.run), system, "between its work points")
                if wrong:
                    yield (*line.path, "loads", number), wrong
            if line.entry.tributary is not None and not _level_of(line, frame):
                yield (*line.path, "tributary"), _of_no_level(line, frame)


def _of_no_level(line: Line, frame: Frame) -> str:
    """Why a tributary width has no area loads to carry, with what is to be written."""
    first = _topmost(line, frame)
    there = _levels_at(first, frame)
    whose = "" if first is line else f" of {first.name}, which it lies below,"
    which = (
        f"levels {' and '.join(there)} both lie at its top" if there else "its top is at no level's elevation"
    )
    names = ", ".join(f'"{name}"' for name in there or tuple(frame.levels)[:_MOST_NAMES])
    remedy = (
        f"give top{whose} as a level's name ({names}) and drop, or leave tributary out"
        if names
        else "add the level with its loads and give top by its name"
    )
    return f"it carries the area loads of its level, and {which}: {remedy}"


def unused_area_loads(frame: Frame, entry: FrameEntry) -> Iterator[Finding]:
    """Levels whose loads no member carries.

    Args:
        frame: every member where the document puts it.
        entry: the frame's tables.
    """
    carrying = {
        _level_of(line, frame)
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
