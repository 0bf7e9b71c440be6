"""Whether the bolts of a connection can be put in and tightened, with what stands around them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from gageline.detail.bolting import bolt_length, size_named
from gageline.detail.joint import Joint
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.rows import Ladder
from gageline.detail.shop import Shop
from gageline.detail.site import FaceKind, fillet_of
from gageline.detail.space import UP, dot, minus
from gageline.detail.stagger import Legs
from gageline.detail.wrench import ROOM, Wrench, wrench_of
from gageline.part import Face, Finding, Join, Severity, Side
from gageline.steel import Bolt, Profile
from gageline.units import ZERO, Length

__all__ = ["clearances"]

_ENTER, _TIGHTEN = "to be put in", "to be tightened"
_ROWS = "lower the first row, widen the gage, or use smaller bolts"
_GAGE = "widen the gage, or use smaller bolts or another connection"
_THREADS = 0.25  # inches that a bolt stands out of its nut


@dataclass(frozen=True, slots=True)
class _Gap:
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
    size, word = joint.choice.size, joint.site.word
    if joint.ladder is None:
        return (), ()
    wrench = wrench_of(size)
    if wrench is None:
        why = f"the table gives no clearances for {_one(size)} bolt or a larger one: check it by hand"
        return (Reason("room for the bolts is not checked", why, ROOM, word),), ()
    gaps = [*_at_the_support(joint, wrench), *_at_the_beam(joint, joint.ladder, wrench, shop)]
    findings = tuple(found for gap in gaps for found in _short(gap, joint, shop))
    beside = "; ".join(_said(gap, wrench, shop) for gap in gaps)
    decision = "bolts have too little room" if findings else "bolts can be put in and tightened"
    source = ROOM if wrench.size == size else f"{ROOM}; {PRACTICE}"
    return (Reason(decision, f"{_wanted(size, wrench, shop)}; {beside}", source, word),), findings


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


def _said(gap: _Gap, wrench: Wrench, shop: Shop) -> str:
    """A gap with what it has, and what it wants where that is not what bolts usually want."""
    usual = {wrench.enter.inches, wrench.tighten.inches, wrench.fillet.inches}
    own = [f"{shop.say(want)} {why}" for want, why in gap.wants if want not in usual]
    more = f", wanted {' and '.join(own)}" if own else ""
    return f"{gap.what} {shop.say(max(gap.have, 0.0))}{more}"


def _short(gap: _Gap, joint: Joint, shop: Shop) -> Iterator[Finding]:
    for want, why in gap.wants:
        if gap.have < want - 1e-6:
            have, wanted = shop.apart(max(gap.have, 0.0), want)
            yield Finding(
                "bolt-entering" if why == _ENTER else "bolt-clearance",
                Severity.ERROR,
                f"{joint.site.member.name} {joint.site.word}",
                f"{gap.what}: {have} is less than the {wanted} that "
                f"{_one(joint.choice.size)} bolt wants {why}",
                gap.remedy,
                ROOM,
            )


def _beside(what: str, have: float, wrench: Wrench, remedy: str) -> _Gap:
    """From bolts to what stands beside them."""
    wants = ((wrench.enter.inches, _ENTER), (wrench.tighten.inches, _TIGHTEN))
    return _Gap(what, have, wants, remedy)


def _to_fillet(what: str, have: float, wrench: Wrench, remedy: str) -> _Gap:
    """From bolts to where a fillet begins, on which no washer lies flat."""
    return _Gap(what, have, ((wrench.fillet.inches, "for a washer that lies flat"),), remedy)


def _at_the_support(joint: Joint, wrench: Wrench) -> Iterator[_Gap]:
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


def _between_rows(joint: Joint, wrench: Wrench) -> Iterator[_Gap]:
    """From the upper and lower row to the flanges of a girder, where these stand over the bolts."""
    site, ladder = joint.site, joint.ladder
    if ladder is None or not site.reach or _off_the_face(joint) - wrench.tighten.inches >= site.reach:
        return
    first, last = ladder.elevations[0], ladder.elevations[-1]
    flange = site.support.stock.tf.inches / dot(site.support.ey, UP)
    yield _beside("first row to the support's top flange", site.support_top - flange - first, wrench, _ROWS)
    yield _beside(
        "last row to the support's bottom flange", last - site.support_bottom - flange, wrench, _ROWS
    )
    if joint.drills_support:
        low, high = site.flat
        yield _to_fillet("rows to the support's fillets", min(high - first, last - low), wrench, _ROWS)


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


def _between_flanges(joint: Joint, wrench: Wrench) -> Iterator[_Gap]:
    """From the bolts in a column's web to the nearer of its flanges."""
    column = joint.site.support.stock
    off = column.d.inches / 2 - max(abs(line) for line in _lines(joint))
    remedy = "use a smaller angle or gage, smaller bolts, or a plate that reaches past the flanges"
    yield _beside("bolts to the nearer flange of the column", off - column.tf.inches, wrench, remedy)
    yield _to_fillet("bolts to the nearer fillet of the column", off - fillet_of(column), wrench, remedy)


def _behind_the_flange(joint: Joint, wrench: Wrench) -> Iterator[_Gap]:
    """From the bolts through a column's flange to the web behind it."""
    column = joint.site.support.stock
    off = min(abs(line) for line in _lines(joint))
    yield _beside("bolts to the column's web behind its flange", off - column.tw.inches / 2, wrench, _GAGE)
    if column.k1 is not None:
        yield _to_fillet("bolts to the fillet behind the flange", off - column.k1.inches, wrench, _GAGE)


def _along_the_bolt(joint: Joint, wrench: Wrench) -> Iterator[_Gap]:
    """Between a column's flanges, where a bolt through the beam's web has to come in along its own axis."""
    site, size = joint.site, joint.choice.size
    if _off_the_face(joint) - wrench.tighten.inches >= site.reach:
        return
    column = site.support.stock
    have = (column.d / 2 - column.tf - site.member.stock.tw / 2).inches + site.off_centre
    yield _Gap(
        "bolts between the beam's web and the farther flange of the column",
        have,
        ((bolt_length(size, joint.grip).inches, _ENTER),),
        "use an extended plate, which takes the bolts outside the flanges",
    )


def _at_the_beam(joint: Joint, ladder: Ladder, wrench: Wrench, shop: Shop) -> Iterator[_Gap]:
    """From the bolts of an end to the beam itself and to each other."""
    stock, legs = joint.site.member.stock, joint.legs
    if joint.angle is None and joint.spread is None:
        yield _beside("bolts to the face", _to_the_face(joint), wrench, "use extended plates or less skew")
    elif joint.angle is None:
        have = _to_the_weld(joint) - shop.practice.weld.inches
        yield _beside("bolts to the weld of the beam", have, wrench, _GAGE)
    elif joint.choice.to_beam is Join.BOLTED:
        have = (joint.gage - joint.angle.tw).inches
        yield _beside("bolts of the web leg to the outstanding leg", have, wrench, "use a longer web leg")
    elif joint.spread is not None:
        have = (joint.spread - stock.tw).inches / 2 - joint.angle.tw.inches
        yield _beside("bolts of the outstanding leg to the web leg", have, wrench, "use a longer leg")
    if legs is not None and ladder.stagger:
        have, wants = ladder.stagger.inches, ((legs.stagger, _TIGHTEN),)
        yield _Gap("stagger of the two legs' bolts", have, wants, _ROWS)
    elif legs is not None:
        what = "bolts of the outstanding leg to those of the web leg"
        both = ((wrench.enter.inches, _ENTER), (legs.wanted, _TIGHTEN))
        yield _Gap(what, legs.clear, both, _apart(legs, ladder))
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
    out = (site.member.stock.tw / 2 + joint.thickness + size.nut_height).inches + _THREADS
    return joint.gage.inches * math.cos(skew) - (0.0 if site.square else out * math.sin(skew))


def _apart(legs: Legs, ladder: Ladder) -> str:
    """What helps where the bolts of two legs are too near: a stagger only where the pitch is wide enough."""
    if Length.from_inches(legs.stagger * 2) > ladder.pitch:
        return (
            "use an angle with a longer or thinner leg, weld one of the legs, use smaller bolts, or a plate"
        )
    return f"{_ROWS}; there is no room to stagger the legs"


def _under_own_flanges(joint: Joint, ladder: Ladder, wrench: Wrench) -> Iterator[_Gap]:
    """From the upper and lower row to the beam's own flanges, where they are not coped."""
    site, beam = joint.site, joint.site.member
    steep = dot(beam.ey, UP)
    runs = (0.0, joint.gage.inches * 2)
    level = [site.point[2] + site.slope * run for run in runs]
    if not joint.notches.depth(Face.TOP):
        have = min(level) - beam.stock.tf.inches / steep - ladder.first_in_web
        yield _beside("first row to the beam's top flange", have, wrench, _ROWS)
    if not joint.notches.depth(Face.BOTTOM):
        last = ladder.elevations[-1]
        have = last - max(level) + (beam.stock.d - beam.stock.tf).inches / steep
        yield _beside("last row to the beam's bottom flange", have, wrench, _ROWS)
