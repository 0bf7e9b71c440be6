"""The steps that come first: check the steel, then ends, copes, trims and clips."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from gageline.layout.cuts import (
    clip_name,
    cope_name,
    cut_x,
    end_line_x,
    flange_face,
    is_hollow,
    trim_level,
    trim_name,
    web_faces,
)
from gageline.layout.mark import Bench
from gageline.layout.rolling import face_up
from gageline.layout.step import Step, source
from gageline.part import Clip, Cope, End, Face, FlangeTrim, Part, extent_y, extent_z, face_range
from gageline.steel import Profile
from gageline.units import Length, Slope

__all__ = ["check_step", "clip_step", "cope_step", "diagonal", "end_steps", "finished", "trim_step"]

_SQUARE = "tape and square"
_BEVELLED = ("top edge", "bottom edge"), ("toe of leg A", "heel")  # of other parts, then of an angle
_MITRED = ("near side", "far side"), ("heel", "toe of leg B")


def diagonal(one: Length, two: Length) -> Length:
    """The long side of a right triangle, to the nearest tick."""
    return Length(round((one.ticks**2 + two.ticks**2) ** 0.5))


def check_step(bench: Bench, up: Face) -> Step:
    """Overall length and square of both ends, which end everything is measured from, and where its mark goes.

    The mark at the left end, upright, tells whoever stands the piece in the frame which way round it is
    (common practice, no source).
    The steel has no cut yet: a bevelled or mitred end is still square, and what is cut off may be longer.
    """
    part = bench.part
    least = "" if part.right.square else "at least "
    edge = {Profile.ANGLE: "heel", Profile.TUBE: "bottom line"}.get(part.profile, "bottom edge")
    point = "" if part.left.square else f", at the long point on the {_long_edge(part, End.LEFT)}"
    cut = [end for end in End if not part.cut(end).square]
    squared = {0: "square both ends", 1: f"square the {cut[0].other} end" if cut else "", 2: ""}[len(cut)]
    open_ = f"; {squared}, at most {bench.exact(bench.tape)} open at the square" if squared else ""
    return Step(
        "Check the steel",
        None,
        _SQUARE,
        "left end",
        (bench.x(part.length),),
        f"Lay it {face_up(up, hollow=is_hollow(part))} up. The left end is the datum: hook the tape "
        f"there{point}{f', and write {part.mark} there, upright' if part.mark else ''}. "
        f"Overall {bench.say(part.length)}.",
        f"Along the {edge} {least}{bench.say(part.length)}{open_}.",
        "overall",
    )


def _long_edge(part: Part, end: End) -> str:
    """The edge or corner that runs furthest out at an end."""
    cut = part.cut(end)
    leans = (cut.bevel, _edges(part, _BEVELLED)), (cut.mitre, _edges(part, _MITRED))
    return ", ".join(names[lean.ratio < 0] for lean, names in leans if lean)


def _edges(part: Part, names: tuple[tuple[str, str], tuple[str, str]]) -> tuple[str, str]:
    """What the two edges of a slanting cut are called on a part: an angle has no top and no near side."""
    return names[part.profile is Profile.ANGLE]


def end_steps(bench: Bench, end: End) -> Iterator[Step]:
    """The bevel of an end from edge to edge of the web, and its mitre across the flange."""
    part, cut = bench.part, bench.part.cut(end)
    if cut.bevel:
        yield _slant(bench, end, web_faces(part)[0], ("Bevel", cut.bevel), _edges(part, _BEVELLED))
    if cut.mitre:
        yield _slant(bench, end, _mitred_face(part), ("Mitre", cut.mitre), _edges(part, _MITRED))


def finished(bench: Bench, coped: Collection[Face] = ()) -> str:
    """The lengths along the edges that bevels and mitres reach, once every end is cut; empty where none is.

    Args:
        bench: the part and the tape.
        coped: edges that a cope has shortened by then, and that are not measured.
    """
    part = bench.part
    bevelled, mitred = (any(part.cut(end).bevel for end in End), any(part.cut(end).mitre for end in End))
    found: list[str] = []
    if bevelled:
        edges, sides = _edges(part, _BEVELLED), (Face.TOP, Face.BOTTOM)
        lengths = zip(edges, sides, _lengths(part, web_faces(part)[0]), strict=True)
        found.extend(f"{edge} {bench.say(length)}" for edge, side, length in lengths if side not in coped)
    face = _mitred_face(part)
    if mitred and face not in coped:
        on = f"{face_up(face, hollow=is_hollow(part))}, " if bevelled and face else ""
        near, far = (
            f"{side} {bench.say(length)}"
            for side, length in zip(_edges(part, _MITRED), _lengths(part, face), strict=True)
        )
        found.extend((f"{on}{near}", far))
    return f" Finished: {', '.join(found)}." if found else ""


def _lengths(part: Part, face: Face | None) -> tuple[Length, ...]:
    """The length from cut to cut at both edges of a face."""
    ends = zip(_at_edges(part, End.LEFT, face), _at_edges(part, End.RIGHT, face), strict=True)
    return tuple(right - left for left, right in ends)


def _mitred_face(part: Part) -> Face | None:
    """The face that a mitre is struck on; None for a plate, whose thickness it crosses."""
    return flange_face(part, Face.TOP) or flange_face(part, Face.BOTTOM)


def _at_edges(part: Part, end: End, face: Face | None) -> tuple[Length, Length]:
    """Where an end's cut lies at the top and the bottom edge of a face, or at its near and far side."""
    if face is None:
        (_, y), (far, near) = extent_y(part.stock), extent_z(part.stock)
        return part.end_x(end, y, near), part.end_x(end, y, far)
    low, high = face_range(part.stock, face)
    if face is Face.LEG_B:  # its y grows from the heel, which is its near side
        low, high = high, low
    return end_line_x(part, end, face, high), end_line_x(part, end, face, low)


def _slant(
    bench: Bench, end: End, face: Face | None, lean: tuple[str, Slope], edges: tuple[str, str]
) -> Step:
    """A line across a face that is read at both edges; of a plate's mitre, through its thickness."""
    word, slope = lean
    first, second = _at_edges(bench.part, end, face)
    readings = bench.x(first), bench.x(second)
    return Step(
        f"{word} the {end} end",
        face,
        f"{_SQUARE}, straightedge",
        "left end",
        readings,
        f"Mark {readings[0].text} at the {edges[0]} and {readings[1].text} at the {edges[1]}; strike "
        f"the {word.lower()}, {slope.text(bench.system)}, and carry it round. Cut.",
        f"Off square by {bench.say(abs(first - second))} from edge to edge.",
        f"{end} end",
    )


def cope_step(bench: Bench, cope: Cope) -> Step:
    """Length line, depth line and the corner's radius of a cope."""
    part, face = bench.part, web_faces(bench.part)[0]
    low, high = face_range(part.stock, face)
    top = cope.edge is Face.TOP
    level = high - cope.depth if top else low + cope.depth
    spot = bench.spot(face, cut_x(part, cope.end, cope.length), level)
    depth = spot.y if top or part.profile is Profile.ANGLE else spot.y_back
    flange = flange_face(part, cope.edge)
    radius = (
        f" Drill or scribe {bench.exact(cope.radius)} radius at the corner, centre "
        f"{bench.say(cope.length - cope.radius)} in and {bench.say(cope.depth - cope.radius)} deep."
        if cope.radius
        else ""
    )
    point = "" if part.cut(cope.end).square else " from the long point"
    across = ", across the flange too" if flange and not is_hollow(part) else ", all round" if flange else ""
    return Step(
        f"{cope.end} {cope.edge} cope".capitalize(),
        face,
        f"{_SQUARE}, drill" if cope.radius else _SQUARE,
        f"left end and {source(depth.from_)}",
        (spot.x, depth),
        f"Strike {bench.say(cope.length)} long{point}{across}, {bench.say(cope.depth)} deep.{radius} Cut.",
        f"Corner to corner {bench.say(diagonal(cope.length, cope.depth))}; "
        f"{_to_right_end(bench, cope)} from the line to the right end.",
        cope_name(cope),
    )


def _to_right_end(bench: Bench, cut: Cope | FlangeTrim) -> str:
    """A cut's line from the end that its reading was not taken from."""
    return bench.say(cut.length if cut.end is End.RIGHT else bench.part.length - cut.length)


def trim_step(bench: Bench, trim: FlangeTrim) -> Step:
    """A flange cut back on one side of the web."""
    part, face = bench.part, trim.flange
    level, _ = trim_level(part, trim)
    spot = bench.spot(face, cut_x(part, trim.end, trim.length), level)
    left = f"leaving {bench.say(trim.keep)} outside the web" if trim.keep else "flush with the web"
    return Step(
        f"{trim.end} {trim.flange} flange trim".capitalize(),
        face,
        _SQUARE,
        f"left end and {source(spot.y.from_)}",
        (spot.x, spot.y),
        f"{trim.side.capitalize()} side only: strike {bench.say(trim.length)} long, {left}. Cut.",
        f"{bench.say(abs(level))} from the {source(spot.y.from_)} to the cut; "
        f"{_to_right_end(bench, trim)} from the line to the right end.",
        trim_name(trim),
    )


def clip_step(bench: Bench, clip: Clip) -> Step:
    """A corner of a plate snipped off."""
    part = bench.part
    return Step(
        f"{clip.end} {clip.edge} clip".capitalize(),
        Face.FACE,
        _SQUARE,
        f"left end and {clip.edge} edge",
        (bench.x(cut_x(part, clip.end, clip.along)),),
        f"Mark {bench.say(clip.along)} along the {clip.edge} edge and {bench.say(clip.across)} up the "
        f"{clip.end} end; strike across the corner. Cut.",
        f"Along the cut {bench.say(diagonal(clip.along, clip.across))}.",
        clip_name(clip),
    )
