"""Judgement on receipt: is the steel that came what was ordered?"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from gageline.job import Stick
from gageline.layout import Decision, plane_of, stick_length
from gageline.part import End, Finding, Part, Severity, extent_y, extent_z
from gageline.quality.codes import own_limits
from gageline.quality.limits import Judgement, Limit, Trust, Verdict, overridden
from gageline.quality.mill import astm_a6, astm_a500, en_10034, en_10056, en_10219
from gageline.steel import Family, Measure, Plate, Profile, Section
from gageline.units import ZERO, Length, System, write_length

__all__ = ["Receipt", "length_limit", "receive", "usable"]

_CLAIM = "claim it from the mill, or accept it in writing and lay out on it as it is"
_STRAIGHTEN = "straighten it, turn the camber up where it may be, or claim it from the mill"
_FACE = "lay out from the furthest corner, or trim it square where there is steel for it"
_EUROPEAN_I = frozenset({Family.IPE, Family.HEA, Family.HEB, Family.HEM})


@dataclass(frozen=True, slots=True)
class _Limits:
    """The limits that hold for one stick; None where none is held."""

    length: Limit | None = None
    square: Limit | None = None
    depth: Limit | None = None
    depth_max: Limit | None = None
    width: Limit | None = None
    tilt: Limit | None = None
    web_off: Limit | None = None
    camber: Limit | None = None
    sweep: Limit | None = None


@dataclass(frozen=True, slots=True)
class Receipt:
    """A stick judged as it came.

    Args:
        part: the piece that is to be made of it.
        stick: its readings.
        ordered: the length it was ordered at.
        judgements: every reading beside its limit, those that were not read too.
    """

    part: Part
    stick: Stick
    ordered: Length
    judgements: tuple[Judgement, ...]

    @property
    def accepted(self) -> bool:
        """Whether nothing that was read is out of its limit."""
        return not any(one.verdict is Verdict.OUT for one in self.judgements)

    def findings(self, system: System) -> tuple[Finding, ...]:
        """Every judgement as a finding."""
        heat = f", heat {self.stick.heat}" if self.stick.heat else ""
        subject = f"{self.part.mark} {self.part.stock.designation}{heat}:"
        return tuple(one.finding(subject, system) for one in self.judgements)


def receive(
    part: Part,
    stick: Stick,
    tolerances: Mapping[str, Length] | None = None,
) -> Receipt:
    """Judge a stick by the standard that its section is rolled or formed to.

    Args:
        part: the piece that is to be made of it.
        stick: as measured; of camber that the mill was asked for three quarters are enough.
        tolerances: the shop's own limits by the code of the rule.

    Raises:
        ValueProblem: when a tolerance has a code that no limit has.

    Source: of camber by the mill AISC 303, 6.4.4.
    """
    want, camber = stick.ordered or part.length, stick.ordered_camber
    limits = _limits(part, want, stick)
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
    return Receipt(part, stick, want, judgements)


def _limits(part: Part, ordered: Length, stick: Stick) -> _Limits:
    section = part.stock
    if isinstance(section, Plate):
        return _Limits()
    if section.system is Measure.US:
        if section.profile in {Profile.BOX, Profile.TUBE} and section.family is not Family.PIPE:
            bow = astm_a500.straightness(ordered)
            sides = astm_a500.side(section, section.d), astm_a500.side(section, section.bf)
            return _Limits(astm_a500.length(ordered), depth=sides[0], width=sides[1], camber=bow, sweep=bow)
        return _a6(section, ordered, as_column=stick.as_column)
    return _european(section, ordered)


def length_limit(part: Part) -> Limit | None:
    """The mill's limits on a stick that was ordered at a piece's length; None where none are held."""
    return _limits(part, part.length, Stick(part.mark)).length


def _a6(section: Section, ordered: Length, *, as_column: bool) -> _Limits:
    return _Limits(
        astm_a6.length(section, ordered, as_column=as_column),
        astm_a6.out_of_square(section),
        astm_a6.depth(section),
        astm_a6.depth_anywhere(section),
        astm_a6.flange_width(section),
        astm_a6.flange_tilt(section),
        astm_a6.web_off(section),
        astm_a6.camber(section, ordered, as_column=as_column),
        astm_a6.sweep(section, ordered, as_column=as_column),
    )


def _european(section: Section, ordered: Length) -> _Limits:
    if section.family in _EUROPEAN_I:
        bow = en_10034.straightness(section, ordered)
        return _Limits(
            en_10034.length(), depth=en_10034.depth(section), width=en_10034.width(section),
            tilt=en_10034.tilt(section), web_off=en_10034.web_off(section), camber=bow, sweep=bow,
        )  # fmt: skip
    if section.family is Family.L_EU:
        bow = en_10056.straightness(section, ordered)
        return _Limits(
            en_10056.length(), depth=en_10056.leg(section.d), width=en_10056.leg(section.bf),
            tilt=en_10056.tilt(section), camber=bow, sweep=bow,
        )  # fmt: skip
    if section.profile in {Profile.BOX, Profile.TUBE}:
        bow = en_10219.straightness(section, ordered)
        sides = en_10219.side(section, section.d), en_10219.side(section, section.bf)
        return _Limits(en_10219.length(), depth=sides[0], width=sides[1], camber=bow, sweep=bow)
    return _Limits()


def _judged(part: Part, stick: Stick, wanted: tuple[Length, Length], limits: _Limits) -> Iterator[Judgement]:
    ordered, camber = wanted
    (low, high), (far, near) = extent_y(part.stock), extent_z(part.stock)
    overall = None if stick.length is None else stick_length(stick, part)
    yield Judgement("length", ordered, overall, limits.length, _CLAIM)
    for end in End:
        read, plane = stick.at(end), plane_of(stick, part, end)
        open_ = None if plane.assumed else plane.out_of_square
        yield Judgement(f"{end} end out of square", ZERO, open_, limits.square, _FACE)
        yield Judgement(f"{end} end depth", high - low, read.depth, limits.depth, _CLAIM)
        if limits.depth_max is not None:
            yield Judgement(f"{end} end depth, at most", high - low, read.depth, limits.depth_max, _CLAIM)
        for flange, width in (("top", read.top_width), ("bottom", read.bottom_width)):
            yield Judgement(f"{end} end {flange} width", near - far, width, limits.width, _CLAIM)
        yield Judgement(
            f"{end} end flange tilt", ZERO, _tilt(read.top_tilt, read.bottom_tilt), limits.tilt, _CLAIM
        )
    yield Judgement("web off centre", ZERO, stick.web_off, limits.web_off, _CLAIM)
    yield Judgement("camber", camber, stick.camber, limits.camber, _STRAIGHTEN)
    yield Judgement("sweep", ZERO, stick.sweep, limits.sweep, _STRAIGHTEN)


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

    def say(length: Length) -> str:
        text = write_length(length, system, 64)
        return f"{text} mm" if system is System.MM else text

    chosen = decision.chosen
    trims = f"trim {say(chosen.left.trim)} at the left end and {say(chosen.right.trim)} at the right"
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
