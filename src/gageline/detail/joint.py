"""A connection worked out: its rows, its spread, its material, before it is built."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from gageline.detail.choice import Choice
from gageline.detail.copes import Notches, notches_of
from gageline.detail.flange import flange_gage
from gageline.detail.foot import OFF_THE_FACE, foot_of
from gageline.detail.plating import bolt_edge, off_the_face, plate_thickness, stiff_from
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.rows import Ladder, clear_height, ladder_of
from gageline.detail.shop import Shop, up_to
from gageline.detail.site import FaceKind, Site, fillet_of
from gageline.detail.stagger import Legs, legs_of, staggered
from gageline.detail.stick import Stick
from gageline.detail.tongue import Tongue, room_of, tongue_of, tongue_reasons, too_short
from gageline.detail.wrench import wrench_of
from gageline.errors import ValueProblem
from gageline.job import stock_named
from gageline.part import Finding, Join, Severity, Side
from gageline.steel import Profile, Section, leg_gage, minimum_edge_distance
from gageline.units import ZERO, Length, System, round_down, round_up

__all__ = ["Joint", "gage_of", "joint_at", "without"]

_NARROW = "face-too-narrow"  # no connection is built that would run into the support
_ANGLES = frozenset({"double angles", "single angle"})
_PLATES = frozenset({"single plate", "extended plate"})
_SMALLER = {
    System.FT_IN: ("L3-1/2x3x5/16", "L3x3x5/16"),
    System.MM: ("L 90x90x9", "L 80x80x8"),
}  # outstanding legs to try where the face is narrow
_LARGER = {
    System.FT_IN: ("L5x3-1/2x5/16", "L6x3-1/2x5/16"),
    System.MM: ("L 120x80x10", "L 150x90x10"),
}  # those to try where the bolts of the two legs are in each other's way
_SPREAD = "AISC Design Examples v16, II.A-1A: half the web rounded up to the next 1/16 in"
_FIVE = Length.from_mm(5)


@dataclass(frozen=True, slots=True)
class Joint:
    """The connection of an end, worked out.

    Args:
        choice: which connection.
        notches: copes and trims of the end.
        ladder: its rows; None for a seat, and where no connection can be made.
        spread: between the two lines of bolts in the support; None where there are no two.
        angle: the connection angle or the seat.
        thickness: of a plate.
        length: of a seat.
        gage: along the beam to its bolts: in the web, at its middle, of plates from the face, of angles
            that are bolted to it from their heel; of a seat from its heel.
        edge: of a plate: from its bolts to its edge and to the end of the beam's web at the least.
        tongue: at the closed end of a hollow beam, which a plate is bolted to; None in any other.
        side: of the web, or the tongue, that a plate lies on.
        reasons: why, in the order decided.
        findings: what is wrong.
    """

    choice: Choice
    notches: Notches
    ladder: Ladder | None = None
    spread: Length | None = None
    angle: Section | None = None
    thickness: Length = ZERO
    length: Length = ZERO
    gage: Length = ZERO
    edge: Length = ZERO
    tongue: Tongue | None = None
    side: Side = Side.NEAR
    reasons: tuple[Reason, ...] = ()
    findings: tuple[Finding, ...] = ()

    @property
    def site(self) -> Site:
        """Where the end meets its support."""
        return self.choice.site

    @property
    def kind(self) -> str:
        """Which connection; free where none can be made."""
        return self.choice.kind

    @property
    def material(self) -> Length:
        """Thickness of the connection material that the field bolts go through."""
        return self.angle.tw if self.angle is not None else self.thickness

    @property
    def web(self) -> Length:
        """Thickness of what the material lies against: the beam's web, or the tongue of a hollow beam."""
        return self.tongue.thickness if self.tongue else self.site.member.stock.tw

    @property
    def grip(self) -> Length:
        """What the field bolts go through, without what is on the other side of the support."""
        if self.choice.to_support is Join.BOLTED:
            return self.material + self.site.thickness
        plies = 2 if self.kind == "double angles" else 1
        return self.material * plies + self.web

    @property
    def legs(self) -> Legs | None:
        """The bolt lines of its angles; None where not both legs are bolted, or no wrench is known."""
        bolted = self.choice.to_beam is self.choice.to_support is Join.BOLTED
        if not bolted or self.kind not in _ANGLES or self.angle is None or self.spread is None:
            return None
        return legs_of(self.choice.size, self.spread, self.site.member.stock.tw, self.angle.tw)

    @property
    def drills_support(self) -> bool:
        """Whether its bolts go through the support."""
        return self.kind in _ANGLES | {"end plate"} and self.choice.to_support is Join.BOLTED


def joint_at(choice: Choice, stick: Stick, shop: Shop) -> Joint:
    """The connection of an end, worked out without regard to what else meets the support there.

    Args:
        choice: which connection.
        stick: the beam cut to length.
        shop: the practice.
    """
    site = choice.site
    notches = Notches() if choice.tongued else notches_of(site, stick, choice.setback.inches, shop)
    start = Joint(
        choice,
        notches,
        reasons=(*choice.reasons, *notches.reasons),
        findings=(*choice.findings, *notches.findings),
    )
    if choice.kind == "free":
        return start
    if choice.kind == "seat":
        return _seat(start, shop)
    if choice.kind in _PLATES:
        material = _plate(start, shop)
    elif choice.kind == "end plate":
        material = _end_plate(start, shop)
    else:
        material = _angles(start, shop)
    if any(found.code in {_NARROW, OFF_THE_FACE} for found in material.findings):
        return without(material)
    if material.tongue is None:
        room = clear_height(site, notches, _span(material))
    else:
        room = room_of(choice, material.tongue)
        if (short := too_short(choice, material.tongue, room, shop)) is not None:
            return without(replace(material, findings=(*material.findings, short)))
    ladder, reasons, findings = ladder_of(choice, notches, room, shop, web=material.web)
    joint = replace(
        material,
        ladder=ladder,
        reasons=(*material.reasons, *reasons),
        findings=(*material.findings, *findings),
    )
    if ladder is None:
        return without(joint)
    if (legs := joint.legs) is None:
        return joint
    ladder, why = staggered(ladder, legs, site.word, shop)
    return replace(joint, ladder=ladder, reasons=(*joint.reasons, why)) if why else joint


def without(joint: Joint) -> Joint:
    """The end without a connection, its findings kept."""
    free = replace(joint.choice, kind="free")
    return replace(joint, choice=free, ladder=None, spread=None, tongue=None)


def _span(joint: Joint) -> tuple[float, float]:
    """Where along the plan, from the face, the material lies on the beam's web, inches."""
    level = math.cos(math.radians(joint.site.skew))
    setback = joint.choice.setback.inches / level
    if joint.kind in _ANGLES and joint.angle is not None:
        return setback, joint.angle.bf.inches
    if joint.kind in _PLATES:
        return setback, joint.gage.inches * 2
    return setback, setback


def gage_of(leg: Length, shop: Shop) -> Length:
    """The gage of an angle's leg: from the table, in millimetres a little over half of the leg.

    Source: AISC Manual Table 1-7A; for metric legs common practice, no source.
    """
    if shop.system is System.FT_IN:
        return leg_gage(leg).gage
    return round_up(leg * 11 / 20, _FIVE)


def _angles(joint: Joint, shop: Shop) -> Joint:
    """The angle and how far its bolts spread in the support."""
    choice, site = joint.choice, joint.site
    room = _face_room(site)
    angle, wide, why = _angle_that_goes(joint, room, shop)
    limit = "runs on to both sides" if room == math.inf else f"has {shop.say(room)}"
    reason = Reason(
        f"{angle.designation}, outstanding leg {shop.say(angle.d)}",
        f"{why}it wants {shop.say(wide)} of the face to each side of the web's middle, the face {limit}",
        PRACTICE,
        site.word,
    )
    gage = gage_of(angle.bf, shop) if choice.to_beam is Join.BOLTED else ZERO
    made = replace(joint, angle=angle, gage=gage, reasons=(*joint.reasons, reason))
    if wide > room + 1e-6:
        has, wants = shop.apart(room, wide)
        found = Finding(
            _NARROW,
            Severity.ERROR,
            f"{site.member.name} {site.word}",
            f"{angle.designation} wants {wants} to each side of the web, the face has {has}: no connection "
            "is detailed",
            "use a single plate, a narrower angle, or a wider support",
            "ANSI/AISC 360-22 Table J3.4",
        )
        made = replace(made, findings=(*made.findings, found))
    return _spread_of(made, angle, shop) if choice.to_support is Join.BOLTED else made


def _angle_that_goes(joint: Joint, room: float, shop: Shop) -> tuple[Section, float, str]:
    """The angle given or usual, or the first of the others that face and bolts have room for.

    Where none is both, it is the first that the face has room for, else the last one tried.

    Returns:
        The angle, what it wants of the face to each side of the web's middle, inches, and why it is not
        the usual one.
    """
    choice, given = joint.choice, joint.site.joint.angle
    usual = given or (shop.frame.welded_angle if choice.to_beam is Join.WELDED else shop.frame.angle)
    names = (given,) if given else (usual, *_LARGER[shop.system], *_SMALLER[shop.system])
    angles = [_angle(name, shop) for name in names]
    fitting = [angle for angle in angles if _width(joint, angle, shop) <= room + 1e-6]
    going = [angle for angle in fitting if _bolts_pass(joint, angle, shop)]
    angle = (going or fitting or angles[-1:])[0]
    why = ""
    if angle is not angles[0]:
        narrow = angles[0] not in fitting
        why = (
            f"{angles[0].designation} is too wide for the face"
            if narrow
            else (f"in {angles[0].designation} the bolts of the two legs are in each other's way")
        )
        why += "; "
    return angle, _width(joint, angle, shop), why


def _width(joint: Joint, angle: Section, shop: Shop) -> float:
    """What an angle wants of the face to each side of the web's middle, inches."""
    web = joint.site.member.stock.tw
    if joint.choice.to_support is Join.WELDED or joint.site.kind is FaceKind.COLUMN_WEB:
        return (angle.d + web / 2).inches  # the leg itself must lie on the face, between a column's fillets
    edge = minimum_edge_distance(joint.choice.size)
    return (gage_of(angle.d, shop) + _half_web(web, shop) + edge).inches


def _bolts_pass(joint: Joint, angle: Section, shop: Shop) -> bool:
    """Whether the bolts of an angle's two legs can be tightened beside each other or staggered."""
    web = joint.site.member.stock.tw
    spread = (gage_of(angle.d, shop) + _half_web(web, shop)) * 2
    legs = replace(joint, angle=angle, spread=spread).legs
    return legs is None or legs.goes or Length.from_inches(legs.stagger * 2) <= joint.choice.pitch


def _half_web(web: Length, shop: Shop) -> Length:
    return up_to(web.inches / 2, shop.frame.spread_step)


def _spread_of(joint: Joint, angle: Section, shop: Shop) -> Joint:
    """How far apart the two lines of bolts are in the support."""
    site, pair = joint.site, joint.kind == "double angles"
    web, out = site.member.stock.tw, gage_of(angle.d, shop)
    half = _half_web(web, shop)
    spread = (out + half) * 2
    reason = Reason(
        f"bolts spread {shop.say(spread)} in the support" if pair else f"bolts {shop.say(spread / 2)} off",
        f"gage {shop.say(out)} and half of the {shop.exact(web)} web rounded up, {shop.say(half)}"
        + (", twice" if pair else ""),
        f"{_SPREAD}; gage: AISC Manual Table 1-7A",
        site.word,
    )
    return replace(joint, spread=spread, reasons=(*joint.reasons, reason))


def _angle(name: str, shop: Shop) -> Section:
    stock = stock_named(name, shop.system)
    if not isinstance(stock, Section) or stock.profile is not Profile.ANGLE:
        raise ValueProblem(f"angle {stock.designation} is no angle: give one like L4x3-1/2x5/16")
    return stock


def _face_room(site: Site) -> float:
    """How far the face runs to each side of the beam's web, inches; endless along a girder."""
    if not site.support.is_column:
        return math.inf
    fillet = fillet_of(site.support.stock) if site.kind is FaceKind.COLUMN_WEB else 0.0
    return site.across.inches / 2 - fillet - site.off_centre


def _plate(joint: Joint, shop: Shop) -> Joint:
    """A single plate's thickness, and how far off the face its bolts are."""
    site, choice = joint.site, joint.choice
    thick = plate_thickness(choice, shop)
    tongue = tongue_of(choice, shop) if choice.tongued else None
    if tongue is None:
        setback = choice.setback.inches / math.cos(math.radians(site.skew))
        gage, rule = off_the_face(choice, site.member.stock.tw, setback, shop)
    else:
        gage, rule = tongue.gage, tongue.rule
    made = replace(joint, thickness=thick, gage=gage, edge=bolt_edge(choice, shop), tongue=tongue)
    foot = foot_of(site, made.web, thick, shop)
    reason = Reason(
        f"bolts {shop.say(gage)} off the face, plate {shop.say(thick)}", rule, PRACTICE, site.word
    )
    limit = stiff_from(choice.size)
    extra: tuple[Finding, ...] = ()
    if thick > limit and made.web > limit:
        extra = (
            Finding(
                "plate-stiff",
                Severity.WARNING,
                f"{site.member.name} {site.word}",
                f"plate {shop.say(thick)} and web {shop.say(site.member.stock.tw)} are both over half a bolt "
                f"and 1/16, {shop.say(limit)}",
                "use a thinner plate or larger bolts",
                "AISC Manual Part 10, Table 10-9 (from memory)",
            ),
        )
    closed = tongue_reasons(choice, tongue, shop) if tongue else ()
    return replace(
        made,
        side=foot.side,
        reasons=(*joint.reasons, reason, *foot.reasons, *closed),
        findings=(*joint.findings, *foot.findings, *extra),
    )


def _end_plate(joint: Joint, shop: Shop) -> Joint:
    site = joint.site
    stock = site.member.stock
    # the plate is centred on the section, which in a channel is not the web
    room = _face_room(site) - ((stock.bf - stock.tw).inches / 2 if stock.profile is Profile.CHANNEL else 0.0)
    usual = shop.frame.end_gage
    if site.kind is FaceKind.COLUMN_FLANGE and site.support.stock.gage is not None:
        usual = site.support.stock.gage
        why = f"that is the workable gage of {site.support.stock.designation}"
    else:
        why = "that is the shop's practice"
    least = _least_gage(joint, shop)
    if least > usual:
        usual, why = least, "at less the wrench does not pass beside the weld of the beam"
    edge = minimum_edge_distance(joint.choice.size)
    if site.kind is FaceKind.COLUMN_WEB:
        edge = shop.practice.end_distance  # the plate itself must lie between the column's fillets
    if (usual / 2 + edge).inches > room:
        fits = round_down(Length.from_inches(max(room - edge.inches, 0.0) * 2), shop.pick(0.5, 10))
        if fits >= least:
            usual, why = (
                fits,
                f"the face has {shop.say(room)} to each side, less {shop.say(edge)} at the edge",
            )
    extra: tuple[Finding, ...] = ()
    if (usual / 2 + edge).inches > room + 1e-6:
        extra = (
            Finding(
                _NARROW,
                Severity.ERROR,
                f"{site.member.name} {site.word}",
                f"an end plate with its bolts {shop.say(usual)} apart wants {shop.say(usual / 2 + edge)} "
                f"to each side, the face has {shop.say(room)}: no connection is detailed",
                "use a narrower beam or a wider support"
                if least >= usual
                else "use a narrower gage or a wider support",
                "ANSI/AISC 360-22 Table J3.4",
            ),
        )
    reason = Reason(f"bolts {shop.say(usual)} apart", why, "AISC Manual Table 1-1, workable gage", site.word)
    return replace(
        joint,
        spread=usual,
        thickness=joint.choice.setback - joint.choice.play,
        reasons=(*joint.reasons, reason),
        findings=(*joint.findings, *extra),
    )


def _least_gage(joint: Joint, shop: Shop) -> Length:
    """Between the columns of an end plate's bolts, so that a wrench passes beside the beam's web or wall.

    Source: AISC Manual, LRFD 2nd ed., Table 8-4, C1, from the toe of the weld.
    """
    stock, wrench = joint.site.member.stock, wrench_of(joint.choice.size)
    beside = shop.practice.weld + (wrench.tighten if wrench else ZERO)
    # in a channel the plate is centred on the section, so that its web is half of the flange off the middle
    wide = stock.tw if stock.profile is Profile.I_SHAPE else stock.bf
    return up_to((wide + beside * 2).inches, shop.pick(0.5, 10))


def _seat(joint: Joint, shop: Shop) -> Joint:
    site = joint.site
    angle = _angle(site.joint.angle or shop.frame.seat_angle, shop)
    gage, wider = flange_gage(site.member.stock, joint.choice.size, shop)
    room = Length.from_inches(_face_room(site))
    least = gage + shop.practice.end_distance * 2
    if least > room * 2:
        found = Finding(
            _NARROW,
            Severity.ERROR,
            f"{site.member.name} {site.word}",
            f"a seat for bolts {shop.say(gage)} apart is {shop.say(least)} long, the face has "
            f"{shop.say(room * 2)}: no connection is detailed",
            "use a single plate, or a wider column",
        )
        return without(replace(joint, findings=(*joint.findings, found)))
    wanted = up_to(site.member.stock.bf.inches, shop.pick(0.5, 10))
    length = max(min(wanted, round_down(room * 2, shop.pick(0.125, 1))), least)
    reason = Reason(
        f"seat {angle.designation}, {shop.say(length)} long, bolts {shop.say(gage)} apart",
        f"the beam's bottom flange, {shop.say(site.member.stock.bf)} wide, lies on its shorter leg; with "
        f"{shop.say(shop.practice.end_distance)} past the bolts it is at least {shop.say(least)} long, "
        f"and the face is {shop.say(room * 2)} wide; a clip holds the top"
        f"{'; the bolts are as far apart as the wrench wants beside the web' * wider}",
        PRACTICE,
        site.word,
    )
    under = gage_of(angle.bf, shop)
    return replace(
        joint, angle=angle, spread=gage, length=length, gage=under, reasons=(*joint.reasons, reason)
    )
