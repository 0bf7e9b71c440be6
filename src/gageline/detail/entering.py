"""Can it be put in? The finished beam between what it hangs between."""

from __future__ import annotations

import math
from dataclasses import dataclass

from gageline.detail.joint import Joint
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop
from gageline.detail.site import FaceKind
from gageline.detail.space import dot, minus
from gageline.part import Finding, Severity

__all__ = ["entering"]

_SHOP_FITTED = frozenset({"double angles", "single angle", "end plate"})


@dataclass(frozen=True, slots=True)
class _Body:
    """What has to pass between the supports.

    Args:
        long: along the beam in the plan, inches.
        wide: inches.
        high: inches.
        beside: what flanges of the supports take of the gap, inches; for what stands behind tongues.
    """

    long: float
    wide: float
    high: float
    beside: float | None = None

    def needs(self, size: float) -> float:
        """The gap that it needs, inches, by its width when turned in the plan, by its height when tilted."""
        return math.hypot(self.long, size) + (self.beside or 0.0)

    def text(self, shop: Shop, gap: float) -> str:
        """Its sizes and those of the gap, in words."""
        sizes = f"{shop.say(self.long)} long, {shop.say(self.wide)} wide and {shop.say(self.high)} high"
        if self.beside is None:
            return f"the gap is {shop.say(gap)}, the finished beam {sizes} at its ends"
        return (
            f"the gap is {shop.say(gap)}, flanges take {shop.say(self.beside)} of it, the beam is {sizes} "
            "between its tongues"
        )


def entering(one: Joint, two: Joint, shop: Shop) -> tuple[tuple[Reason, ...], tuple[Finding, ...]]:
    """Whether a beam can be swung or dropped between its two supports, both ends together.

    Args:
        one: the connection of its start.
        two: that of its end.
        shop: the practice.
    """
    beam = one.site.member
    gap = abs(dot(minus(two.site.point, one.site.point), beam.plan))
    bodies = _bodies(one, two, gap)
    slack = shop.frame.entering.inches * 2
    texts = [body.text(shop, gap) for body in bodies]
    turned = max(zip((body.needs(body.wide) for body in bodies), texts, strict=True))
    tilted = max(zip((body.needs(body.high) for body in bodies), texts, strict=True))
    ways = [
        (needed, way)
        for needed, way, barred in ((turned, "turned in the plan", _walled), (tilted, "tilted", _roofed))
        if not any(barred(joint) for joint in (one, two))
    ]
    if not ways:
        why = "flanges above one end leave no room to tilt it, those beside the other none to turn it"
        short = f"the finished beam can be neither turned in the plan nor tilted: {why}"
        return (Reason("cannot be swung in", f"{texts[0]}; {why}", PRACTICE),), (_stuck((one, two), short),)
    (least, size), way = min(ways)
    because = (
        f"{size}; {way} it needs {shop.say(least)}, and {shop.say(slack)} of spring in the legs and play in "
        "the supports is counted on"
    )
    if least <= gap + slack:
        return (Reason(f"goes in {way}", because, PRACTICE),), ()
    short = f"the finished beam needs {shop.say(least)} {way} in a gap of {shop.say(gap)}"
    return (Reason("cannot be swung in", because, PRACTICE),), (_stuck((one, two), short),)


def _stuck(joints: tuple[Joint, Joint], short: str) -> Finding:
    beam = joints[0].site.member
    plated = any(joint.kind == "end plate" for joint in joints)
    how = (
        "cut the beam short and shim one end plate"
        if plated
        else "ship the angles of one end loose or bolt them so that they slip, use a shorter projection"
    )
    other = "use a single plate at one end"
    if any(joint.tongue is not None for joint in joints):
        how = "use an extended plate, whose tongue and cap stay outside the flanges"
        other = "use a narrower beam"
    return Finding("cannot-be-put-in", Severity.WARNING, beam.name, short, f"{how}, or {other}", PRACTICE)


def _inside(joint: Joint) -> bool:
    """Whether an end reaches in between the flanges of its support."""
    return joint.choice.setback.inches < joint.site.reach


def _walled(joint: Joint) -> bool:
    """Whether flanges stand beside an end, so that it cannot come in from the side."""
    return joint.site.kind is FaceKind.COLUMN_WEB and _inside(joint)


def _roofed(joint: Joint) -> bool:
    """Whether flanges stand over and under an end, so that it cannot come in from above or below."""
    return joint.site.kind is FaceKind.GIRDER_WEB and _inside(joint)


def _taken(joint: Joint) -> float:
    """What stays free between the finished end and the face, along the beam in the plan, inches."""
    if joint.tongue is not None:
        return joint.tongue.tip
    if joint.choice.on_beam:
        return joint.choice.play.inches
    return joint.choice.setback.inches / math.cos(math.radians(joint.site.skew))


def _bodies(one: Joint, two: Joint, gap: float) -> tuple[_Body, ...]:
    """What has to pass: the finished ends, and behind tongues the closed ends, beside the flanges there."""
    ends = one, two
    wide, high = _body(one, two)
    finished = _Body(gap - sum(_taken(joint) for joint in ends), wide, high)
    tongues = [(joint.tongue, joint.site) for joint in ends if joint.tongue is not None]
    if not tongues:
        return (finished,)
    behind = gap - sum(
        joint.tongue.reach.inches if joint.tongue is not None else _taken(joint) for joint in ends
    )
    return finished, _Body(
        behind,
        max(tongue.wide.inches for tongue, _ in tongues),
        max(site.member.depth for _, site in tongues),
        sum(site.reach / math.cos(math.radians(site.skew)) for _, site in tongues),
    )


def _body(one: Joint, two: Joint) -> tuple[float, float]:
    """How wide and how high the finished ends are where they have to pass, inches."""
    wide: list[float] = []
    high: list[float] = []
    for joint in (one, two):
        stock = joint.site.member.stock
        width, height = stock.bf.inches, stock.d.inches
        if joint.tongue is not None and joint.ladder is not None:
            width, height = joint.tongue.thickness.inches, joint.ladder.length.inches
        if joint.kind in _SHOP_FITTED and joint.ladder is not None:
            height = joint.ladder.length.inches
            if joint.angle is not None:
                legs = 2 if joint.kind == "double angles" else 1
                width = joint.angle.d.inches * legs + stock.tw.inches
            elif joint.spread is not None:
                width = joint.spread.inches + 2 * joint.ladder.edge.inches
        wide.append(width)
        high.append(height)
    return max(wide), max(high)
