"""Connections built into the pieces: angles, plates, holes on both sides."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from gageline.detail.carrier import Carrier
from gageline.detail.closed_end import close_end
from gageline.detail.foot import back_of
from gageline.detail.joint import Joint
from gageline.detail.plating import plate_weld
from gageline.detail.points import field_points, maker_of
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.rows import Ladder
from gageline.detail.seat import build_seat
from gageline.detail.shop import Shop
from gageline.detail.space import UP, Vec, along, cross, dot, placement_of, vec_of
from gageline.detail.stick import Stick
from gageline.job import (
    AnglesEntry,
    EndPlateEntry,
    Joined,
    grade_of,
    join_angles,
    join_end_plates,
    plate_stock,
    rows_down,
)
from gageline.part import (
    SQUARE_CUT,
    End,
    EndCut,
    Face,
    Finding,
    Fitting,
    FittingKind,
    FlangeTrim,
    Hole,
    HoleGroup,
    Join,
    Part,
    Placement,
    Severity,
    Side,
    Weld,
    in_order,
)
from gageline.steel import Profile
from gageline.units import SQUARE, ZERO, Length, Slope, counted, round_up

__all__ = ["build_joint"]

_PLATE_WELD = "AISC Design Examples v16, II.A-17A"
_LONG = Length.from_inches(120)  # of the square beam that fittings are built on before they are turned


def build_joint(joint: Joint, stick: Stick, own: Carrier, other: Carrier, shop: Shop) -> None:
    """Add a connection to the beam and to what supports it.

    Args:
        joint: the connection, agreed with what is on the other side.
        stick: the beam cut to length.
        own: the beam.
        other: the supporting piece.
        shop: the practice.
    """
    own.copes.extend(joint.notches.copes)
    own.trims.extend(joint.notches.trims)
    if joint.kind in {"double angles", "single angle"}:
        _angles(joint, stick, own, other, shop)
    elif joint.kind == "end plate":
        _end_plate(joint, stick, own, other, shop)
    elif joint.kind in {"single plate", "extended plate"}:
        _plate(joint, own, other, shop)
    elif joint.kind == "seat":
        build_seat(joint, own, other, shop)


def _square_beam(stick: Stick) -> Part:
    """The beam as if it were square and level at this end, for the tables of fittings."""
    return Part(stick.part.mark, stick.line.stock, stick.part.grade, _LONG)


def _turn(joint: Joint, stick: Stick) -> Placement:
    """From the square beam's space to the space of the beam as it lies: plumb stays plumb."""
    end = joint.site.end
    up = UP
    level = stick.line.plan
    ex = (dot(level, stick.line.ex), dot(level, stick.line.ey), 0.0)
    ey = (dot(up, stick.line.ex), dot(up, stick.line.ey), 0.0)
    x, y, _ = stick.web_end(end)
    corner = along((x, y, 0.0), ey, -stick.line.depth)
    return placement_of(along(corner, ex, 0.0 if end is End.LEFT else -_LONG.inches), ex, ey)


def _drop(joint: Joint, ladder: Ladder) -> Length:
    """From the top of steel at the end of the beam down to the first row."""
    level = joint.choice.setback.inches
    return Length.from_inches(joint.site.point[2] + joint.site.slope * level - ladder.first_in_web)


def _evened(joined: Joined, web: Length) -> Joined:
    """Angles that both lie the larger half of the web off its middle, so that their bolts spread as said.

    Where the web's thickness is an odd number of ticks, the angle at the near side is half a tick off it.
    """
    odd = Length(web.ticks % 2)

    def moved(fitting: Fitting) -> Fitting:
        x, y, z = fitting.placement.origin
        return replace(fitting, placement=replace(fitting.placement, origin=(x, y, z + odd)))

    fittings = tuple(moved(fit) if fit.on is Face.NEAR else fit for fit in joined.fittings)
    return replace(joined, fittings=fittings)


def _turned(joined: Joined, turn: Placement) -> Joined:
    """Fittings and holes of the square beam, on the beam as it lies."""

    def moved(hole: Hole) -> Hole:
        x, y, _ = turn.point((hole.x, hole.y, ZERO))
        return replace(hole, x=x, y=y)

    groups = tuple(
        replace(group, holes=in_order(tuple(moved(hole) for hole in group.holes))) for group in joined.groups
    )
    fittings = tuple(replace(fit, placement=_clean(fit.placement, turn)) for fit in joined.fittings)
    return replace(
        joined, fittings=fittings, groups=groups, bolts=tuple(b for b in joined.bolts if not b.field)
    )


def _clean(inner: Placement, turn: Placement) -> Placement:
    placed = inner.then(turn)
    return placement_of(vec_of(placed.origin), placed.ex, placed.ey)


def _angles(joint: Joint, stick: Stick, own: Carrier, other: Carrier, shop: Shop) -> None:
    angle, ladder, choice = joint.angle, joint.ladder, joint.choice
    if angle is None or ladder is None:
        return
    bolted = choice.to_beam is Join.BOLTED
    out = choice.to_support is Join.BOLTED
    half_web = stick.line.stock.tw.parts(2)[1]
    spread = joint.spread or ZERO
    entry = AnglesEntry.model_construct(
        end=joint.site.end.value,
        sides="both" if joint.kind == "double angles" else joint.site.joint.side or "near",
        stock=angle.designation,
        to_web="bolted" if bolted else "welded",
        out="bolted" if out else "welded",
        rows=ladder.rows if bolted or out else None,
        length=ladder.length,
        drop=_drop(joint, ladder),
        pitch=ladder.pitch,
        end_distance=ladder.edge,
        projection=choice.setback - choice.play,
        stagger=ladder.stagger or None,
        bolt=choice.size.size,
        web_gage=joint.gage if bolted else None,
        out_gage=spread / 2 - half_web if out else None,
        out_hole=joint.site.joint.hole,
    )
    square = join_angles(entry, _square_beam(stick), shop.practice, shop.system)
    flat = _evened(square, stick.line.stock.tw)
    joined = _turned(flat, _turn(joint, stick))
    if not bolted:
        own.reasons.append(
            _weld_reason("angles", shop.practice.weld, "that is the shop's practice", joint.site.word, shop)
        )
    if out:
        own.join(joined)
        _drill_support(joint, own, joined.fittings, other, shop)
        return
    _knifed(joint, joined, own, other, shop)


def _knifed(joint: Joint, joined: Joined, own: Carrier, other: Carrier, shop: Shop) -> None:
    """Angles that go with the support; the beam's bottom flange is stripped so that its web enters."""
    own.groups.extend(joined.groups)
    if joint.choice.to_beam is Join.WELDED or joint.angle is None:
        own.join(replace(joined, groups=()))
        own.findings.append(_no_erection_bolts(joint))
        return
    for fitting in joined.fittings:
        placement = other.seen(fitting.placement.then(own.placement))
        name = other.free_fitting(f"{joint.site.face} {fitting.name.split(' ')[1]} angle")
        other.fittings.append(
            replace(fitting, name=name, placement=placement, on=joint.site.face, end=None, join=Join.WELDED)
        )
        run = fitting.part.length + joint.angle.d * 2
        other.welds.append(
            Weld(name, shop.practice.weld, run, 1, "toe, top and bottom of the outstanding leg")
        )
    other.reasons.append(_carried(joint, f"{len(joined.fittings)} angles", shop))
    own.reasons.append(
        _weld_reason("angles", shop.practice.weld, "that is the shop's practice", joint.site.word, shop)
    )
    if joint.kind == "double angles":
        _strip(joint, joint.angle.bf, own, shop)


def _strip(joint: Joint, leg: Length, own: Carrier, shop: Shop) -> None:
    """The bottom flange stripped from the web, so that the beam is lowered between a pair of angles."""
    length = round_up(leg + shop.frame.entering, shop.pick(0.5, 10))
    own.trims.extend(FlangeTrim(joint.site.end, Face.BOTTOM, side, length) for side in Side)
    own.reasons.append(
        Reason(
            f"bottom flange stripped over {shop.say(length)} on both sides",
            "one angle stands on each side of the web, and the flange comes past both: the web is lowered "
            f"between their legs, which lie {shop.say(leg)} along it, with "
            f"{shop.say(shop.frame.entering)} clearance, rounded up",
            PRACTICE,
            joint.site.word,
        )
    )


def _no_erection_bolts(joint: Joint) -> Finding:
    return Finding(
        "no-erection-bolts",
        Severity.WARNING,
        f"{joint.site.member.name} {joint.site.word}",
        "its angles are welded to the beam and to the support: no bolt holds the beam while it is welded "
        "at the site",
        "bolt one of the legs, or give erection bolts and enter the end as drawn",
        "29 CFR 1926.756(a)(1): two bolts at each connection before the load is released",
    )


def _weld_reason(what: str, size: Length, why: str, word: str, shop: Shop) -> Reason:
    return Reason(f"{what} welded with {shop.say(size)} fillets", why, PRACTICE, word)


def _drill_support(
    joint: Joint, own: Carrier, fittings: tuple[Fitting, ...], other: Carrier, shop: Shop
) -> None:
    """The holes of a connection in the steel that supports it, where those of its material come to lie."""
    face = Face.NEAR if joint.site.face is Face.FAR else joint.site.face
    points = tuple(point for fitting in fittings for point in field_points(own, fitting))
    across = Fraction(90 if joint.site.support.is_column else 0)  # slots lie across the reaction
    maker = replace(maker_of(joint, shop), angle=across)
    other.drill(f"{face}, for a beam", face, points, maker, shop.division)
    other.reasons.append(_carried(joint, f"{len(points)} holes", shop))


def _carried(joint: Joint, what: str, shop: Shop) -> Reason:
    """Why a support has what it has for a beam."""
    site, ladder = joint.site, joint.ladder
    rows = ladder.rows if ladder else 0
    first = site.support_top - ladder.first if ladder else 0.0
    where = f"{shop.say(site.station)} from the work point of its start"
    if site.support.is_column:
        up = site.station if ladder is None else ladder.first - site.support.start[2]
        which = "the first row " if ladder else ""
        where = f"{which}{shop.say(up)} above the underside of its base plate"
    return Reason(
        f"{what} for the {site.word} of {site.member.name}, {where}",
        f"{counted(rows, 'row')} of its {joint.kind}, "
        f"the first {shop.say(first)} under the top of {site.support.name}"
        + (f", spread {shop.say(joint.spread)}" if joint.spread else ""),
        "geometry of the frame",
    )


def _end_plate(joint: Joint, stick: Stick, own: Carrier, other: Carrier, shop: Shop) -> None:
    ladder, spread = joint.ladder, joint.spread
    if ladder is None or spread is None:
        return
    edge = shop.practice.end_distance
    entry = EndPlateEntry.model_construct(
        end=joint.site.end.value,
        thickness=joint.thickness,
        width=max(spread + edge * 2, stick.line.stock.tw + edge * 2),
        length=ladder.length,
        drop=_drop(joint, ladder) - ladder.edge,
        rows=ladder.rows,
        pitch=ladder.pitch,
        columns=2,
        gage=spread,
        end_distance=ladder.edge,
        bolt=joint.choice.size.size,
        hole=joint.site.joint.hole,
        _fields_set={"rows"},
    )
    joined = join_end_plates(FittingKind.END_PLATE, entry, _square_beam(stick), shop.practice, shop.system)
    hollow = stick.line.stock.profile is Profile.BOX
    run = Weld(
        joined.fittings[0].name,
        shop.practice.weld,
        ladder.length - shop.practice.weld * 2,
        2,
        "outside of both walls" if hollow else "both sides of the web",
        both_sides=not hollow,
    )
    turned = replace(_turned(joined, _turn(joint, stick)), welds=(run,))
    own.join(turned)
    own.reasons.append(
        _weld_reason(
            "end plate",
            shop.practice.weld,
            f"that is the shop's practice; {shop.say(run.length)} of each run, "
            "its length less a leg at each end",
            joint.site.word,
            shop,
        )
    )
    _drill_support(joint, own, turned.fittings, other, shop)


def _plate(joint: Joint, own: Carrier, other: Carrier, shop: Shop) -> None:
    """A single plate in the plane of the web, square to the face or skewed."""
    ladder, site = joint.ladder, joint.site
    if ladder is None:
        return
    right = cross(site.inward, UP)
    start = along(site.point, right, back_of(site, joint.web, joint.thickness, joint.side))
    top = ladder.first + ladder.edge.inches
    part, placement = (
        _square_plate(joint, ladder, start, top, shop)
        if site.square
        else _skewed_plate(joint, ladder, start, top, right, shop)
    )
    name = other.free_fitting(f"{site.face} plate")
    fitting = Fitting(name, FittingKind.PLATE, part, other.seen(placement), site.face, None, Join.WELDED)
    other.fittings.append(fitting)
    size = plate_weld(joint.thickness, shop, site.skew)
    other.welds.append(Weld(name, size, ladder.length, 2, "both sides of the plate", both_sides=True))
    over = "" if site.square else ", over the cosine of half the skew"
    why = f"five eighths of the plate, {shop.say(joint.thickness)}{over}, rounded up"
    own.reasons.append(replace(_weld_reason("plate", size, why, site.word, shop), source=_PLATE_WELD))
    other.reasons.append(_carried(joint, f"plate {shop.say(joint.thickness)}", shop))
    if joint.tongue is not None:
        close_end(joint, joint.tongue, ladder, own, shop)
        return
    face = Face.NEAR if joint.side is Side.NEAR else Face.FAR
    points = field_points(other, fitting)
    own.drill(f"{site.end} end, for the plate", face, points, maker_of(joint, shop), shop.division)


def _square_plate(joint: Joint, ladder: Ladder, start: Vec, top: float, shop: Shop) -> tuple[Part, Placement]:
    """The plate with its length plumb: x runs down, y out from the face."""
    stock = plate_stock(joint.thickness, joint.gage + joint.edge, shop.system)
    maker = replace(maker_of(joint, shop, joint.site.joint.hole), angle=Fraction(90))  # across the reaction
    holes = maker.grid(rows_down(ladder.edge, ladder.rows, ladder.pitch), (joint.gage,))
    group = HoleGroup("bolt holes", Face.FACE, holes, maker.bolt, maker.kind)
    part = Part("", stock, grade_of(stock, None), ladder.length, groups=(group,))
    return part, placement_of((start[0], start[1], top), (0.0, 0.0, -1.0), joint.site.inward)


def _skewed_plate(
    joint: Joint, ladder: Ladder, start: Vec, top: float, right: Vec, shop: Shop
) -> tuple[Part, Placement]:
    """The plate with its length out from the face: x runs along the beam, y up; the root is mitred."""
    site = joint.site
    lean = dot(site.normal, right) / dot(site.normal, site.inward)
    mitre = Slope(Fraction(lean).limit_denominator(10**9))
    # along the beam, the face is met at -offset * lean; the nearer of the plate's two faces is longer
    offset = dot((start[0] - site.point[0], start[1] - site.point[1], 0.0), right)
    roots = [-(offset - depth) * lean for depth in (0.0, joint.thickness.inches)]
    first = Length.from_inches(min(roots))
    stock = plate_stock(joint.thickness, ladder.length, shop.system)
    maker = maker_of(joint, shop, site.joint.hole)
    ys = tuple(ladder.length - row for row in rows_down(ladder.edge, ladder.rows, ladder.pitch))
    holes = maker.grid((joint.gage - first,), ys)
    group = HoleGroup("bolt holes", Face.FACE, holes, maker.bolt, maker.kind)
    part = Part(
        "",
        stock,
        grade_of(stock, None),
        joint.gage + joint.edge - first,
        EndCut(SQUARE, mitre),
        SQUARE_CUT,
        groups=(group,),
    )
    x, y, _ = along(start, site.inward, first.inches)
    return part, placement_of((x, y, top - ladder.length.inches), site.inward, UP)
