"""Work points brought onto what supports them: what a point is off its support's middle, moved and said."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace

from gageline.detail.line import Frame, Line
from gageline.detail.shop import Shop
from gageline.detail.space import Vec, along, dot, line_crossing, minus, sideways
from gageline.detail.supports import Supports, entered
from gageline.part import End, Finding, Severity

__all__ = ["met"]

_EXACT = 1e-6  # inches that a work point may be off its support's middle and stay
_FELT = 1 / 16  # inches from which on it is said


def met(frame: Frame, supports: Supports, shop: Shop) -> tuple[Frame, tuple[Finding, ...]]:
    """The frame with every end on the middle of what supports it, and what was moved for that.

    A point is given to lie within its support, seldom on its middle to a hair; the span of a beam is from
    middle to middle.

    Args:
        frame: every member where the document puts it.
        supports: what carries what.
        shop: the practice.

    Returns:
        The same frame where nothing had to be moved.
    """
    lines = dict(frame.lines)
    findings: list[Finding] = []
    for line, end, support in _ends(supports):
        run = _to_middle(line, end, support)
        if abs(run) > _EXACT:
            lines[line.name] = _moved(lines[line.name], end, run)
            off = _off(entered(line, end), line, support)
            if off > _FELT:
                findings.append(_said(line, lines[line.name], end, support, (off, shop)))
    return (replace(frame, lines=lines) if lines != frame.lines else frame), tuple(findings)


def _ends(supports: Supports) -> Iterator[tuple[Line, End, Line]]:
    """Every end that something carries, with what carries it."""
    yield from ((site.member, site.end, site.support) for site in supports.sites)
    yield from ((one.member, one.end, one.column) for one in supports.bearings if one.end is not None)


def _point(line: Line, end: End) -> Vec:
    return line.start if end is End.LEFT else line.finish


def _to_middle(line: Line, end: End, support: Line) -> float:
    """How far along the plan, in the member's own direction, the support's middle is from the end, inches."""
    point = _point(line, end)
    if support.is_column:
        return dot(minus(support.start, point), line.plan)
    return line_crossing(point, line.plan, support.start, sideways(support.plan)) or 0.0


def _off(point: Vec, line: Line, support: Line) -> float:
    """How far the point of the document is off the support's middle, inches."""
    away = minus(point, support.start)
    return abs(dot(away, line.plan if support.is_column else support.ez))


def _moved(line: Line, end: End, run: float) -> Line:
    """The member with an end moved along itself, so far in the plan."""
    step = run / math.hypot(*line.ex[:2])
    if end is End.LEFT:
        return line.moved(along(line.start, line.ex, step), line.finish)
    return line.moved(line.start, along(line.finish, line.ex, step))


def _said(old: Line, new: Line, end: End, support: Line, by: tuple[float, Shop]) -> Finding:
    off, shop = by
    word = "start" if end is End.LEFT else "end"
    return Finding(
        "point-moved",
        Severity.WARNING,
        old.name,
        f"its {word} is {shop.say(off)} off the middle of {support.name} and was moved there: it is "
        f"{shop.say(new.run)} between work points, not {shop.say(old.run)}",
        f"give the {word} on {support.name}, or move one of them",
        "common practice, no source: a beam spans from middle to middle of its supports",
    )
