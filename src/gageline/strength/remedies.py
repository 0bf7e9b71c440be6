"""What to do about a connection: the first ordinary remedy that is enough, or a lighter one that still is."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from gageline.errors import ValueProblem
from gageline.strength.aisc360.j2_welds import maximum_fillet
from gageline.strength.connection import Bolted, Connection, Fillet, Kind, Tongue
from gageline.strength.connections import check_connection
from gageline.strength.verdict import Verdict
from gageline.units import Length, System, inches_text, millimetres

__all__ = ["MUCH_TO_SPARE", "Suggestion", "enough_rows", "lighter", "remedy"]

MUCH_TO_SPARE = 0.6
"""Utilisation below which a lighter connection is looked for (common practice, no source)."""

_LEAST_ROWS = 2
_BARELY = 0.01  # a row that takes no more than a hundredth off is not worth its holes
_MOST_ROWS = 12  # of the Manual's tables; a plate whose beam is not known has no other end
_MM = 1 / 25.4


@dataclass(frozen=True, slots=True)
class _Sizes:
    """The sizes that a shop has, in.

    Args:
        system: that they are written in.
        t: from one thickness to the next.
        thinnest: that is suggested.
        thickest: that is suggested.
        leg: from one size of weld to the next.
        largest: weld that is made in one pass or two.
        cope: from one depth of cope to the next, and its clearance to the flange.
        longer: from one length of a fitting to the next.
    """

    system: System
    t: float
    thinnest: float
    thickest: float
    leg: float
    largest: float
    cope: float
    longer: float

    def say(self, size: float) -> str:
        """A size in words."""
        length = Length.from_inches(size)
        return inches_text(length, 64) if self.system is System.FT_IN else f"{millimetres(length)} mm"

    def after(self, size: float, step: float) -> float:
        """The next size that is a whole number of steps, in."""
        return (math.floor(size / step + 1e-6) + 1) * step

    def before(self, size: float, step: float) -> float:
        """The size before that is a whole number of steps, in."""
        return (math.ceil(size / step - 1e-6) - 1) * step


_SIZES = {
    System.FT_IN: _Sizes(System.FT_IN, 1 / 16, 1 / 4, 3 / 4, 1 / 16, 3 / 8, 0.25, 0.5),
    System.MM: _Sizes(System.MM, 2 * _MM, 6 * _MM, 20 * _MM, _MM, 10 * _MM, 5 * _MM, 10 * _MM),
}
Changes = Iterator[tuple[str, Connection]]
Change = Callable[[Connection, _Sizes], Changes]


@dataclass(frozen=True, slots=True)
class Suggestion:
    """A change to a connection and what comes of it.

    Args:
        change: in words.
        verdict: of the changed connection; None where the change takes it out of the methods that check it.
    """

    change: str
    verdict: Verdict | None


def remedy(verdict: Verdict, system: System = System.FT_IN) -> Suggestion | None:
    """The first ordinary remedy that makes a connection pass, or the first of them together that do.

    Tried in this order: more rows, a thicker fitting, a longer one where it is welded, a larger weld, threads
    excluded from the shear planes, a shallower cope, a thinner fitting where its own thickness breaks a rule,
    and a doubler on the beam's web. When none is enough by itself, each is added to those before it that
    help.

    Args:
        verdict: of a connection that does not pass.
        system: whose sizes are tried.

    Returns:
        The remedy with its checks; a doubler has none, for it needs a design of its own. None when the
        connection passes, or when all of them together are not enough.

    Source: common practice, no source.
    """
    if verdict.passes:
        return None
    changes = (_more_rows, _thicker, _longer, _larger_weld, _threads_out, _shallower, _thinner)
    for change in changes:
        found = _first(change(verdict.connection, _SIZES[system]), verdict)
        if found:
            return found
    if not verdict.governing.passes and _helped_by_a_doubler(verdict):
        return Suggestion("a doubler plate on the beam's web, which needs a design of its own", None)
    return _together(changes, verdict, _SIZES[system])


def _together(changes: Sequence[Change], verdict: Verdict, sizes: _Sizes) -> Suggestion | None:
    """Two changes, the first in its best form; else each added to those before it that help."""
    for number, change in enumerate(changes):
        words, better = _best(change, verdict, sizes)
        for second in changes[number + 1 :] if words else ():
            found = _first(second(better.connection, sizes), verdict)
            if found:
                return Suggestion(f"{words}, with {found.change}", found.verdict)
    best, taken = verdict, list[str]()
    for change in changes:
        found = _first(change(best.connection, sizes), verdict)
        if found:
            return Suggestion(", with ".join((*taken, found.change)), found.verdict)
        words, best = _best(change, best, sizes)
        taken.extend([words] if words else [])
    return None


def _best(change: Change, verdict: Verdict, sizes: _Sizes) -> tuple[str, Verdict]:
    """A change in the form that brings a connection nearest to passing; no words where none does."""
    found = [("", verdict)]
    for words, connection in change(verdict.connection, sizes):
        tried = _checked(connection, verdict)
        if tried is not None:
            found.append((words, tried))
    return min(found, key=lambda pair: _shortfall(pair[1]))


def _shortfall(verdict: Verdict) -> tuple[int, float]:
    """How far a connection is from passing: broken rules first."""
    return len(verdict.broken_rules), verdict.utilisation


def enough_rows(verdict: Verdict, system: System) -> int | None:
    """The fewest rows of bolts that are strong enough where those there are not, else the strongest.

    Whether they have room in a frame is left to detailing, which says so where they have none.

    Args:
        verdict: of a connection.
        system: whose sizes are tried.

    Returns:
        How many; None where they are enough, or where no more that have room in the web are stronger.
    """
    if verdict.governing.passes:
        return None
    rows, least = None, verdict.utilisation
    for _, connection in _more_rows(replace(verdict.connection, leeway=None), _SIZES[system]):
        tried = _checked(connection, verdict)
        if tried is None or tried.utilisation >= least - _BARELY:
            continue
        rows, least = _rows_of(connection), tried.utilisation
        if tried.governing.passes:
            break
    return rows


def lighter(verdict: Verdict, system: System = System.FT_IN) -> Suggestion | None:
    """A lighter standard connection that is still enough, where one has much to spare.

    Tried: fewer rows, then a thinner fitting; the last that passes is given.

    Args:
        verdict: of a connection that passes.
        system: whose sizes are tried.

    Returns:
        The lighter connection with its checks; None without much to spare, or when nothing lighter passes.

    Source: common practice, no source.
    """
    if not verdict.passes or verdict.utilisation >= MUCH_TO_SPARE:
        return None
    for change in (_fewer_rows, _thinner):
        passing: Suggestion | None = None
        for words, connection in change(verdict.connection, _SIZES[system]):
            tried = _checked(connection, verdict)
            if tried is None or not tried.passes:
                break
            passing = Suggestion(words, tried)
        if passing:
            return passing
    return None


def _first(changes: Changes, verdict: Verdict) -> Suggestion | None:
    for words, connection in changes:
        tried = _checked(connection, verdict)
        if tried is not None and tried.passes:
            return Suggestion(words, tried)
    return None


def _checked(connection: Connection, verdict: Verdict) -> Verdict | None:
    try:
        return check_connection(connection, verdict.method)
    except ValueProblem:  # a change may leave the methods; it is then no suggestion
        return None


def _with_rows(connection: Connection, added: int) -> Connection | None:
    """The connection with more or fewer rows, its first row where it is."""
    joints = [connection.to_beam, connection.to_support]
    pitches = {
        pitch for joint in joints if isinstance(joint, Bolted) for pitch in joint.steps or (joint.pitch,)
    }
    counts = {joint.rows for joint in joints if isinstance(joint, Bolted)}
    if len(pitches) != 1 or len(counts) != 1:
        return None
    if not _LEAST_ROWS <= min(counts) + added <= _MOST_ROWS:
        return None
    length = connection.fitting.length + added * pitches.pop()
    if not _fits(connection, length):
        return None

    def longer(joint: Bolted | Fillet) -> Bolted | Fillet:
        return replace(joint, rows=joint.rows + added) if isinstance(joint, Bolted) else joint

    return replace(
        connection,
        fitting=replace(connection.fitting, length=length),
        to_beam=longer(connection.to_beam),
        to_support=longer(connection.to_support),
        tongue=_as_long(connection, length),
    )


def _as_long(connection: Connection, length: float) -> Tongue | None:
    """The tongue of a hollow beam, longer or shorter by as much as the fitting."""
    tongue = connection.tongue
    if tongue is None:
        return None
    whole = tongue.plate.length + length - connection.fitting.length
    return replace(tongue, plate=replace(tongue.plate, length=whole))


def _fits(connection: Connection, length: float) -> bool:
    """Whether a fitting so long has room above the fillet of the bottom flange, or above a bottom cope.

    In a frame it must also stay clear of the fillets of the support, and a tongue of its beam's corners.
    """
    leeway, beam = connection.leeway, connection.beam
    if leeway is not None and length > leeway.reach + 1e-6:
        return False
    return beam is None or connection.drop + length <= beam.h_o - (0.0 if beam.bottom else beam.k)


def _rows_of(connection: Connection) -> int:
    joints = (connection.to_beam, connection.to_support)
    return next((joint.rows for joint in joints if isinstance(joint, Bolted)), 0)


def _more_rows(connection: Connection, _: _Sizes) -> Changes:
    added = 1
    while connection.kind is not Kind.SEAT and (longer := _with_rows(connection, added)) is not None:
        yield f"{_rows_of(connection) + added} rows of bolts", longer
        added += 1


def _fewer_rows(connection: Connection, _: _Sizes) -> Changes:
    taken = 1
    while connection.kind is not Kind.SEAT and (shorter := _with_rows(connection, -taken)) is not None:
        yield f"{_rows_of(connection) - taken} rows of bolts", shorter
        taken += 1


def _thicker(connection: Connection, sizes: _Sizes) -> Changes:
    t = sizes.after(connection.fitting.t, sizes.t)
    while t <= sizes.thickest + 1e-9:
        yield f"a fitting {sizes.say(t)} thick", _as_thick(connection, t)
        t += sizes.t


def _as_thick(connection: Connection, t: float) -> Connection:
    """The connection with a fitting so thick, and a tongue that is no thicker."""
    tongue = connection.tongue
    made = replace(connection, fitting=replace(connection.fitting, t=t))
    if tongue is None:
        return made
    return replace(made, tongue=replace(tongue, plate=replace(tongue.plate, t=min(t, tongue.plate.t))))


def _thinner(connection: Connection, sizes: _Sizes) -> Changes:
    t = sizes.before(connection.fitting.t, sizes.t)
    while t >= sizes.thinnest - 1e-9:
        yield f"a fitting {sizes.say(t)} thick", _as_thick(connection, t)
        t -= sizes.t


def _longer(connection: Connection, sizes: _Sizes) -> Changes:
    """A longer fitting where no bolts ask for its length."""
    fitting, beam = connection.fitting, connection.beam
    joints = (connection.to_beam, connection.to_support)
    if connection.kind is Kind.SEAT or beam is None or any(isinstance(one, Bolted) for one in joints):
        return
    length = fitting.length + sizes.longer
    while _fits(connection, length):
        yield (
            f"a fitting {sizes.say(length)} long",
            replace(connection, fitting=replace(fitting, length=length)),
        )
        length += sizes.longer


def _larger_weld(connection: Connection, sizes: _Sizes) -> Changes:
    edge = maximum_fillet(connection.fitting.t).value if connection.fitting.out else sizes.largest

    def welded(joint: Bolted | Fillet, leg: float) -> Bolted | Fillet:
        return replace(joint, leg=max(leg, joint.leg)) if isinstance(joint, Fillet) else joint

    legs = [j.leg for j in (connection.to_beam, connection.to_support) if isinstance(j, Fillet)]
    leg = sizes.after(min(legs, default=1.0), sizes.leg)
    while leg <= min(edge, sizes.largest) + 1e-9:
        yield (
            f"welds of {sizes.say(leg)}",
            replace(
                connection,
                to_beam=welded(connection.to_beam, leg),
                to_support=welded(connection.to_support, leg),
            ),
        )
        leg += sizes.leg


def _threads_out(connection: Connection, _: _Sizes) -> Changes:
    def excluded(joint: Bolted | Fillet) -> Bolted | Fillet:
        return replace(joint, threads="X") if isinstance(joint, Bolted) else joint

    changed = replace(
        connection, to_beam=excluded(connection.to_beam), to_support=excluded(connection.to_support)
    )
    if changed != connection:
        yield "threads excluded from the shear planes (X)", changed


def _shallower(connection: Connection, sizes: _Sizes) -> Changes:
    """A top cope less deep step by step, down to the flange and a clearance; the bolts stay.

    In a frame a cope is as deep as the support's flange asks for: only a lower beam has a shallower one, and
    rows that the cope kept low come up with it.
    """
    beam, leeway = connection.beam, connection.leeway
    if beam is None or beam.top is None:
        return
    step, least = (leeway.step, leeway.radius) if leeway else (sizes.cope, sizes.cope)
    depth = sizes.before(beam.top.d_c, step)
    while depth >= beam.t_f + least - 1e-9 and (not leeway or beam.top.d_c - depth <= leeway.lower + 1e-9):
        higher = replace(beam, top=replace(beam.top, d_c=depth))
        change = beam.top.d_c - depth
        words, rise = f"a cope {sizes.say(depth)} deep", 0.0
        if leeway:
            words, rise = f"the beam {sizes.say(change)} lower, with {words} then", min(change, leeway.rise)
        else:
            words = f"{words}, if the support's flange lets it be"
        yield words, replace(connection, beam=higher, drop=connection.drop + change - rise)
        depth -= step


def _helped_by_a_doubler(verdict: Verdict) -> bool:
    """Whether the connection would pass with a web twice as thick."""
    beam = verdict.connection.beam
    if beam is None:
        return False
    thick = replace(beam, t_w=2 * beam.t_w)
    tried = _checked(replace(verdict.connection, beam=thick), verdict)
    return tried is not None and tried.governing.passes
