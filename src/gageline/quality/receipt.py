"""Judgement on receipt: is the steel that came what was ordered?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from gageline.job import EndReadings, Stick, say
from gageline.layout import Decision, plane_of, stick_length
from gageline.part import End, Finding, Part, Severity, extent_y, extent_z
from gageline.quality.codes import own_limits
from gageline.quality.limits import FINEST, Judgement, Limit, Trust, Verdict, overridden
from gageline.quality.mill import MillLimits, mill_limits
from gageline.steel import Profile
from gageline.units import ZERO, Length, System, round_to

__all__ = ["Receipt", "length_limit", "receive", "usable"]

_CLAIM = "claim it from the mill, or accept it in writing and lay out on it as it is"
_STRAIGHTEN = "straighten it, turn the camber up where it may be, or claim it from the mill"
_FACE = "lay out from the furthest corner, or trim it square where there is steel for it"


@dataclass(frozen=True, slots=True)
class Receipt:
    """A stick judged as it came.

    Args:
        part: the piece that is to be made of it.
        stick: its readings.
        ordered: the length it was ordered at.
        judgements: every reading beside its limit, those that were not read too.
        tape: the smallest division of the tape that it was read with.
    """

    part: Part
    stick: Stick
    ordered: Length
    judgements: tuple[Judgement, ...]
    tape: Length = FINEST

    @property
    def accepted(self) -> bool:
        """Whether nothing that was read is out of its limit."""
        return not any(one.verdict is Verdict.OUT for one in self.judgements)

    def findings(self, system: System) -> tuple[Finding, ...]:
        """Every judgement as a finding."""
        heat = f", heat {self.stick.heat}" if self.stick.heat else ""
        subject = f"{self.part.mark} {self.part.stock.designation}{heat}:"
        return tuple(one.finding(subject, system, self.tape) for one in self.judgements)


def receive(
    part: Part,
    stick: Stick,
    tolerances: Mapping[str, Length] | None = None,
    tape: Length = FINEST,
) -> Receipt:
    """Judge a stick by the standard that its section is rolled or formed to.

    Args:
        part: the piece that is to be made of it.
        stick: as measured; of camber that the mill was asked for three quarters are enough.
        tolerances: the shop's own limits by the code of the rule.
        tape: the smallest division of the tape that it was read with.

    Raises:
        ValueProblem: when a tolerance has a code that no limit has.

    Source: of camber by the mill AISC 303, 6.4.4.
    """
    want, camber = stick.ordered or part.length, stick.ordered_camber
    limits = mill_limits(part.stock, want, as_column=stick.as_column)
    if camber:
        rule = "cambered by the mill: three quarters at the least"
        enough = Limit("aisc303-mill-camber", None, camber / 4, rule, "AISC 303, 6.4.4", Trust.READ)
        limits = replace(limits, camber=enough)
    own = own_limits(tolerances)
    judgements = tuple(
        Judgement(
            one.name, one.wanted, one.read, overridden(one.limit, own) if one.limit else None, one.remedy
        )
        for one in _judged(part, stick, (want, camber), limits)
    )
    return Receipt(part, stick, want, judgements, tape)


def length_limit(part: Part) -> Limit | None:
    """The mill's limits on a stick that was ordered at a piece's length; None where none are held."""
    return mill_limits(part.stock, part.length).length


def _judged(
    part: Part, stick: Stick, wanted: tuple[Length, Length], limits: MillLimits
) -> Iterator[Judgement]:
    ordered, camber = wanted
    overall = None if stick.length is None else stick_length(stick, part)
    name = "length" if overall == stick.length else "length, corrected"
    yield Judgement(name, ordered, overall, limits.length, _CLAIM)
    for end in End:
        yield from _end_judged(part, stick, end, limits)
    if stick.web_off is not None or limits.web_off is not None:
        yield Judgement("web off centre", ZERO, stick.web_off, limits.web_off, _CLAIM)
    yield Judgement("camber", camber, stick.camber, limits.camber, _STRAIGHTEN)
    yield Judgement("sweep", ZERO, stick.sweep, limits.sweep, _STRAIGHTEN)


def _end_judged(part: Part, stick: Stick, end: End, limits: MillLimits) -> Iterator[Judgement]:
    """The readings of one end; those that its shape has not are left out unless somebody read them."""
    (low, high), (far, near) = extent_y(part.stock), extent_z(part.stock)
    read, plane = stick.at(end), plane_of(stick, part, end)
    open_ = None if plane.assumed else plane.square_gap
    yield Judgement(f"{end} end out of square", ZERO, open_, limits.square, _FACE)
    yield Judgement(f"{end} end depth", high - low, read.depth, limits.depth, _CLAIM)
    edges = _edge_depth(read)
    if edges is not None and limits.depth_max is not None:
        name = f"{end} end depth at the flange edges"
        yield Judgement(name, high - low, edges, limits.depth_max, _CLAIM)
    has = _WIDTHS.get(part.profile, ("top", "bottom"))
    for flange, width in (("top", read.top_width), ("bottom", read.bottom_width)):
        if width is not None or flange in has:
            yield Judgement(f"{end} end {flange} width", near - far, width, limits.width, _CLAIM)
    tilt = _tilt(read.top_tilt, read.bottom_tilt)
    if tilt is not None or limits.tilt is not None:
        yield Judgement(f"{end} end flange tilt", ZERO, tilt, limits.tilt, _CLAIM)


_WIDTHS = {
    Profile.ANGLE: ("bottom",), Profile.TEE: ("top",), Profile.TUBE: ("top",), Profile.PLATE: (),
}  # fmt: skip


def _edge_depth(read: EndReadings) -> Length | None:
    """The greatest depth at an end: at the edges, where flanges that lean apart lie furthest apart."""
    if read.depth is None or (read.top_tilt is None and read.bottom_tilt is None):
        return None
    return read.depth + abs((read.top_tilt or ZERO) - (read.bottom_tilt or ZERO)) / 2


def _tilt(top: Length | None, bottom: Length | None) -> Length | None:
    """T + T': both flanges together, without regard to which way each leans."""
    read = [abs(one) for one in (top, bottom) if one is not None]
    return sum(read, ZERO) if read else None


def usable(decision: Decision, part: Part, system: System) -> Finding:
    """Whether the piece wanted can still be made of the stick, and what must come off each end.

    Args:
        decision: how it would be laid on it.
        part: the piece.
        system: the units of the message.
    """

    def told(length: Length) -> str:
        return say(round_to(length, decision.tape), system)

    chosen = decision.chosen
    trims = f"trim {told(chosen.left.trim)} at the left end and {told(chosen.right.trim)} at the right"
    severity = Severity.NOTE if chosen.possible and not decision.ask else Severity.WARNING
    if not chosen.possible:
        severity = Severity.ERROR
    cut = trims if chosen.left.trim or chosen.right.trim else "trim nothing"
    can = (
        f"can be made: {chosen.way.words}, {cut}"
        if chosen.possible
        else "cannot be made of this stick as drawn"
    )
    return Finding("piece-from-stick", severity, part.mark, can, decision.because)
