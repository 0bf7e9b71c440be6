"""Whether the bolts of a connection can be put in and tightened, with what stands around them."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from gageline.detail.bolting import bolt_length, size_named
from gageline.detail.joint import Joint
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.rows import Ladder
from gageline.detail.shop import Shop
from gageline.detail.site import FaceKind, fillet_of
from gageline.detail.space import UP, dot, minus
from gageline.detail.stagger import Legs
from gageline.detail.wrench import ROOM, Wrench, bolt_end, wrench_of
from gageline.part import Face, Finding, Join, Severity, Side
from gageline.steel import Bolt, Profile
from gageline.units import ZERO, Length

__all__ = ["Gap", "beside", "clearances", "room_for", "to_fillet"]

_ENTER, _TIGHTEN = "to be put in", "to be tightened"
_ROWS = "lower the first row, widen the gage, or use smaller bolts"
_GAGE = "widen the gage, or use smaller bolts or another connection"
_LEG = "use a seat with a longer leg under the beam, or smaller bolts"


@dataclass(frozen=True, slots=True)
class Gap:
    """What is left beside the bolts of a connection.

    Args:
        what: from what to what.
        have: inches.
        wants: inches, and what for.
        remedy: what helps where it is too little.
    """

    what: str
    have: float
    wants: tuple[tuple[float, str], ...]
    remedy: str


def clearances(joint: Joint, shop: Shop) -> tuple[tuple[Reason, ...], tuple[Finding, ...]]:
    """Whether the bolts of a connection can be put in and tightened.

    Args:
        joint: the connection.
        shop: the practice.
    """
    word = joint.site.word
    if joint.ladder is None and joint.kind != "seat":
        return (), ()

    def gaps(wrench: Wrench) -> Iterator[Gap]:
        if joint.ladder is None:
            yield from _on_the_seat(joint, wrench)
            return
        yield from _at_the_support(joint, wrench)
        yield from _at_the_beam(joint, joint.ladder, wrench, shop)

    return room_for(joint.choice.size, gaps, f"{joint.site.member.name} {word}", word, shop)


def room_for(
    size: Bolt,
    gaps_of: Callable[[Wrench], Iterable[Gap]],
    subject: str,
    word: str,
    shop: Shop,
    severity: Severity = Severity.ERROR,
) -> tuple[tuple[Reason, ...], tuple[Finding, ...]]:
    """Whether bolts have room to be put in and tightened.

    Args:
        size: of the bolts.
        gaps_of: what is left beside them, with what a wrench wants.
        subject: of the findings.
        word: the end of the piece, empty for a place along it.
        shop: the practice.
        severity: of the findings; a warning where a spanner or a smaller bolt of the job's choice will do.
    """
    wrench = wrench_of(size)
    if wrench is None:
        why = f"the table gives no clearances for {_one(size)} bolt or a larger one: check it by hand"
        return (Reason("room for the bolts is not checked", why, ROOM, word),), ()
    gaps = tuple(gaps_of(wrench))
    findings = tuple(found for gap in gaps for found in _short(gap, size, subject, severity, shop))
    left = "; ".join(_said(gap, wrench, shop) for gap in gaps)
    decision = "bolts have too little room" if findings else "bolts can be put in and tightened"
    source = ROOM if wrench.size == size else f"{ROOM}; {PRACTICE}"
    return (Reason(decision, f"{_wanted(size, wrench, shop)}; {left}", source, word),), findings


def _one(size: Bolt) -> str:
    """A size with its article: `an M20`, `a 3/4`."""
    return f"{'an' if size.size.startswith('M') else 'a'} {size_named(size)}"


def _wanted(size: Bolt, wrench: Wrench, shop: Shop) -> str:
    """What a bolt wants, and which bolt of the table that is where the table has not its size."""
    wants = (
        f"{_one(wrench.size)} bolt wants {shop.say(wrench.enter)} {_ENTER} and "
        f"{shop.say(wrench.tighten)} {_TIGHTEN}, {shop.say(wrench.fillet)} to a fillet"
    )
    if wrench.size == size:
        return wants
    return f"the table has no {size_named(size)}, the next that is larger all round is taken: {wants}"


def _said(gap: Gap, wrench: Wrench, shop: Shop) -> str:
    """A gap with what it has, and what it wants where that is not what bolts usually want."""
    usual = {wrench.enter.inches, wrench.tighten.inches, wrench.fillet.inches}
    own = [f"{shop.say(want)} {why}" for want, why in gap.wants if want not in usual]
    more = f", wanted {' and '.join(own)}" if own else ""
    return f"{gap.what} {shop.say(max(gap.have, 0.0))}{more}"


def _short(gap: Gap, size: Bolt, subject: str, severity: Severity, shop: Shop) -> Iterator[Finding]:
    for want, why in gap.wants:
        if gap.have < want - 1e-6:
            have, wanted = shop.apart(max(gap.have, 0.0), want)
            yield Finding(
                "bolt-entering" if why == _ENTER else "bolt-clearance",
                severity,
                subject,
                f"{gap.what}: {have} is less than the {wanted} that {_one(size)} bolt wants {why}",
                gap.remedy,
                ROOM,
            )


def beside(what: str, have: float, wrench: Wrench, remedy: str) -> Gap:
    """From bolts to what stands beside them."""
    wants = ((wrench.enter.inches, _ENTER), (wrench.tighten.inches, _TIGHTEN))
    return Gap(what, have, wants, remedy)


def to_fillet(what: str, have: float, wrench: Wrench, remedy: str) -> Gap:
    """From bolts to where a fillet begins, on which no washer lies flat."""
    return Gap(what, have, ((wrench.fillet.inches, "for a washer that lies flat"),), remedy)


def _on_the_seat(joint: Joint, wrench: Wrench) -> Iterator[Gap]:
    """From the bolts of a seat to the beam's web over them and to the seat's upright leg."""
    stock, angle, half = joint.site.member.stock, joint.angle, (joint.spread or ZERO).inches / 2
    if angle is None:
        return
    yield beside("bolts of the seat to the beam's web", half - stock.tw.inches / 2, wrench, _GAGE)
    if stock.k1 is not None:
        yield to_fillet("bolts of the seat to the beam's fillet", half - stock.k1.inches, wrench, _GAGE)
    yield beside("bolts of the seat to its upright leg", (joint.gage - angle.tw).inches, wrench, _LEG)


def _at_the_support(joint: Joint, wrench: Wrench) -> Iterator[Gap]:
    """From the bolts at a support to its flanges, its web and its fillets."""
    kind = joint.site.kind
    if kind is FaceKind.GIRDER_WEB:
        yield from _between_rows(joint, wrench)
    elif kind is FaceKind.COLUMN_WEB and joint.drills_support:
        yield from _between_flanges(joint, wrench)
    elif kind is FaceKind.COLUMN_WEB and joint.choice.to_support is Join.WELDED:
        yield from _along_the_bolt(joint, wrench)
    elif kind is FaceKind.COLUMN_FLANGE and joint.drills_support:
        yield from _behind_the_flange(joint, wrench)


def _between_rows(joint: Joint, wrench: Wrench) -> Iterator[Gap]:
    """From the upper and lower row to the flanges of a girder, where these stand over the bolts."""
    site, ladder = joint.site, joint.ladder
    if ladder is None or not site.reach or _off_the_face(joint) - wrench.tighten.inches >= site.reach:
        return
    first, last = ladder.elevations[0], ladder.elevations[-1]
    flange = site.support.stock.tf.inches / dot(site.support.ey, UP)
    yield beside("first row to the support's top flange", site.support_top - flange - first, wrench, _ROWS)
    yield beside(
        "last row to the support's bottom flange", last - site.support_bottom - flange, wrench, _ROWS
    )
    if joint.drills_support:
        low, high = site.flat
        yield to_fillet("rows to the support's fillets", min(high - first, last - low), wrench, _ROWS)


def _off_the_face(joint: Joint) -> float:
    """How far off the face the bolts at the site are, nothing for those through the face; inches."""
    return 0.0 if joint.drills_support else joint.gage.inches * math.cos(math.radians(joint.site.skew))


def _lines(joint: Joint) -> tuple[float, ...]:
    """How far along a column's face the lines of bolts are from its middle, inches."""
    site, aside = joint.site, (joint.spread or ZERO).inches / 2
    middle = dot(minus(site.point, site.support.start), site.aside)
    if joint.kind != "single angle":
        return middle - aside, middle + aside
    near = 1.0 if (site.joint.side or Side.NEAR) == Side.NEAR else -1.0
    return (middle + aside * near * dot(site.member.ez, site.aside),)


def _between_flanges(joint: Joint, wrench: Wrench) -> Iterator[Gap]:
    """From the bolts in a column's web to the nearer of its flanges."""
    column = joint.site.support.stock
    off = column.d.inches / 2 - max(abs(line) for line in _lines(joint))
    remedy = "use a smaller angle or gage, smaller bolts, or a plate that reaches past the flanges"
    yield beside("bolts to the nearer flange of the column", off - column.tf.inches, wrench, remedy)
    yield to_fillet("bolts to the nearer fillet of the column", off - fillet_of(column), wrench, remedy)


def _behind_the_flange(joint: Joint, wrench: Wrench) -> Iterator[Gap]:
    """From the bolts through a column's flange to the web behind it."""
    column = joint.site.support.stock
    off = min(abs(line) for line in _lines(joint))
    yield beside("bolts to the column's web behind its flange", off - column.tw.inches / 2, wrench, _GAGE)
    if column.k1 is not None:
        yield to_fillet("bolts to the fillet behind the flange", off - column.k1.inches, wrench, _GAGE)


def _along_the_bolt(joint: Joint, wrench: Wrench) -> Iterator[Gap]:
    """Between a column's flanges, where a bolt through the beam's web has to come in along its own axis."""
    site, size = joint.site, joint.choice.size
    if _off_the_face(joint) - wrench.tighten.inches >= site.reach:
        return
    column = site.support.stock
    have = (column.d / 2 - column.tf - joint.web / 2).inches + site.off_centre
    what = "tongue" if joint.tongue else "web"
    yield Gap(
        f"bolts between the beam's {what} and the farther flange of the column",
        have,
        ((bolt_length(size, joint.grip).inches, _ENTER),),
        "use an extended plate, which takes the bolts outside the flanges",
    )


def _at_the_beam(joint: Joint, ladder: Ladder, wrench: Wrench, shop: Shop) -> Iterator[Gap]:
    """From the bolts of an end to the beam itself and to each other."""
    stock, legs = joint.site.member.stock, joint.legs
    if joint.angle is None and joint.spread is None:
        yield beside("bolts to the face", _to_the_face(joint), wrench, "use extended plates or less skew")
        if joint.tongue is not None:
            have = (joint.tongue.to_cap - joint.tongue.weld).inches
            yield beside("bolts to the weld at the end cap", have, wrench, "use smaller bolts")
    elif joint.angle is None:
        have = _to_the_weld(joint) - shop.practice.weld.inches
        yield beside("bolts to the weld of the beam", have, wrench, _GAGE)
    elif joint.choice.to_beam is Join.BOLTED:
        have = (joint.gage - joint.angle.tw).inches
        yield beside("bolts of the web leg to the outstanding leg", have, wrench, "use a longer web leg")
    elif joint.spread is not None:
        have = (joint.spread - stock.tw).inches / 2 - joint.angle.tw.inches
        yield beside("bolts of the outstanding leg to the web leg", have, wrench, "use a longer leg")
    if legs is not None and ladder.stagger:
        have, wants = ladder.stagger.inches, ((legs.stagger, _TIGHTEN),)
        yield Gap("stagger of the two legs' bolts", have, wants, _ROWS)
    elif legs is not None:
        what = "bolts of the outstanding leg to those of the web leg"
        both = ((wrench.enter.inches, _ENTER), (legs.wanted, _TIGHTEN))
        yield Gap(what, legs.clear, both, _apart(legs, ladder))
    if joint.tongue is None:
        yield from _under_own_flanges(joint, ladder, wrench)


def _to_the_weld(joint: Joint) -> float:
    """From the nearer line of an end plate's bolts to the beam's web or its hollow wall, inches."""
    stock, half = joint.site.member.stock, (joint.spread or ZERO).inches / 2
    if stock.profile is Profile.BOX:
        return half - stock.bf.inches / 2
    # the plate is centred on the section, which in a channel is not the web
    aside = (stock.bf - stock.tw).inches / 2 if stock.profile is Profile.CHANNEL else 0.0
    return abs(half - aside) - stock.tw.inches / 2


def _to_the_face(joint: Joint) -> float:
    """From the bolts of a plate to the face, at the end of the bolt that is nearest to it, inches."""
    site, size = joint.site, joint.choice.size
    skew = math.radians(abs(site.skew))
    out = (joint.web / 2 + joint.thickness).inches + bolt_end(size)
    return joint.gage.inches * math.cos(skew) - (0.0 if site.square else out * math.sin(skew))


def _apart(legs: Legs, ladder: Ladder) -> str:
    """What helps where the bolts of two legs are too near: a stagger only where the pitch is wide enough."""
    if Length.from_inches(legs.stagger * 2) > ladder.pitch:
        return (
            "use an angle with a longer or thinner leg, weld one of the legs, use smaller bolts, or a plate"
        )
    return f"{_ROWS}; there is no room to stagger the legs"


def _under_own_flanges(joint: Joint, ladder: Ladder, wrench: Wrench) -> Iterator[Gap]:
    """From the upper and lower row to the beam's own flanges, where they are not coped."""
    site, beam = joint.site, joint.site.member
    steep = dot(beam.ey, UP)
    runs = (0.0, joint.gage.inches * 2)
    level = [site.point[2] + site.slope * run for run in runs]
    if not joint.notches.depth(Face.TOP):
        have = min(level) - beam.stock.tf.inches / steep - ladder.first_in_web
        yield beside("first row to the beam's top flange", have, wrench, _ROWS)
    if not joint.notches.depth(Face.BOTTOM):
        last = ladder.elevations[-1]
        have = last - max(level) + (beam.stock.d - beam.stock.tf).inches / steep
        yield beside("last row to the beam's bottom flange", have, wrench, _ROWS)
