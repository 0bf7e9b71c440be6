"""Which connection an end gets, and how far its steel stays off the face."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop, up_to
from gageline.detail.site import FaceKind, Site
from gageline.detail.values import sizes_under
from gageline.part import End, Finding, Join, Severity
from gageline.steel import Bolt, Profile
from gageline.units import ZERO, Length, System

__all__ = ["Asked", "Choice", "Named", "choose", "others"]

_ANGLES = frozenset({"double angles", "single angle"})
_PLATES = frozenset({"single plate", "extended plate"})
_MOST_SKEW = 45.0  # degrees that a single plate is welded at
_MOST_SLOPE = 0.5  # 6 in 12
_LEVEL = 1e-9
_PLATE_BESIDE = 0.5  # inches of a plate beside a beam's web, with some room
_CLOSE = 3  # diameters between rows where they are set closer, what AISC 360-22 J3.4 calls preferred
Way = tuple[str, Join]
"""A connection, and how its material is joined to the beam."""
_TONGUED = "use a single plate, which is bolted to a tongue at the beam's closed end"
_END_PLATE = "use an end plate, or a single plate, which is bolted to a tongue at the beam's closed end"
_WAYS: tuple[Way, ...] = (
    ("double angles", Join.BOLTED),
    ("single plate", Join.BOLTED),
    ("end plate", Join.WELDED),
    ("extended plate", Join.BOLTED),
    ("double angles", Join.WELDED),
    ("seat", Join.BOLTED),
)
Limit = tuple[bool, str, str, str]
"""Whether it is passed, what is detailed then, why, and the remedy."""


@dataclass(frozen=True, slots=True)
class Asked:
    """Rows of bolts that the strength of a connection asks for.

    Args:
        rows: how many.
        why: what falls short with fewer.
        source: the clause that says so.
    """

    rows: int
    why: str
    source: str


Named = tuple[str, End, str, Join, str, Length]
"""One connection of one end: the member, its end, the kind, how it is joined to it, the bolt, the pitch."""


@dataclass(frozen=True, slots=True)
class Choice:
    """The connection of an end.

    Args:
        site: where the end meets its support.
        kind: double angles, single angle, single plate, extended plate, end plate, seat, or free for none.
        to_beam: how its material is joined to the beam.
        to_support: how it is joined to the support.
        setback: from the face to the end of the steel, square to the face.
        play: from the face to the angles or the end plate on the beam.
        size: the bolt.
        pitch: between rows.
        reasons: why.
        findings: what is wrong with it.
        in_vain: connections that were tried for it and do not go either; empty where none was tried.
        asked: the rows that its strength asks for, where that was found.
    """

    site: Site
    kind: str
    to_beam: Join
    to_support: Join
    setback: Length
    play: Length
    size: Bolt
    pitch: Length
    reasons: tuple[Reason, ...] = ()
    findings: tuple[Finding, ...] = ()
    in_vain: tuple[str, ...] = ()
    asked: Asked | None = None

    @property
    def named(self) -> Named:
        """What tells it from the other connections that its end could have."""
        return self.site.member.name, self.site.end, self.kind, self.to_beam, self.size.size, self.pitch

    @property
    def on_beam(self) -> bool:
        """Whether its material comes to the site on the beam."""
        return _on_the_beam(self.kind, self.to_beam, self.to_support)

    @property
    def bolts_in_beam(self) -> int:
        """Bolts of one row that hold the beam: the two legs of welded angles and an end plate have two."""
        two_legs = self.kind == "double angles" and self.to_beam is Join.WELDED
        return 2 if two_legs or self.kind == "end plate" else 1

    @property
    def tongued(self) -> bool:
        """Whether the beam is hollow and a plate is bolted to a tongue at its closed end."""
        return _tongued(self.site, self.kind)

    @property
    def planes(self) -> int:
        """Shear planes of one row of bolts: double angles and end plates have two bolts or two planes."""
        return 2 if self.kind in {"double angles", "end plate"} else 1


def choose(site: Site, shop: Shop, *, stiffened: bool = False) -> Choice:
    """The connection that the document gives for an end, or the one that follows by rule.

    Args:
        site: where the end meets its support.
        shop: the practice.
        stiffened: whether the support bears on a column there and has stiffeners.
    """
    kind, why = _kind(site, stiffened=stiffened)
    usable, wrong = _usable(site, kind)
    if wrong is None:
        return _choice(site, kind, why, shop)
    made = _choice(site, usable, f"{kind} cannot be made here, see the finding", shop)
    return replace(made, findings=(wrong,))


def others(usual: Choice, shop: Shop) -> Iterator[Choice]:
    """What else an end can get, in the order in which a shop would take it.

    First the same with its rows closer and with smaller bolts, then other connections. What the document
    gives stays: a bolt that it gives, and the connection where it says anything about it.

    Args:
        usual: the connection given or by rule.
        shop: the practice.
    """
    if usual.kind == "free" or usual.findings:
        return
    site = usual.site
    smaller = () if site.joint.bolt else sizes_under(usual.size)[:1]
    for kind, to_beam in (_way(usual), *_other_ways(usual)):
        made = _choice(site, kind, "", shop, to_beam)
        for size in (usual.size, *smaller):
            close = up_to(size.diameter.inches * _CLOSE, shop.pick(0.25, 5))
            for pitch in sorted({shop.practice.pitch, close}, reverse=True):
                if (_way(made), size, pitch) != (_way(usual), usual.size, usual.pitch):
                    yield replace(made, size=size, pitch=pitch)


def _way(choice: Choice) -> Way:
    return choice.kind, choice.to_beam


def _other_ways(usual: Choice) -> Iterator[Way]:
    """Connections that can be made at an end besides the usual one."""
    site, joint = usual.site, usual.site.joint
    said = (joint.connection, joint.angle, joint.thickness, joint.side, joint.to_beam, joint.to_support)
    over_column = usual.kind == "extended plate" and site.kind is FaceKind.GIRDER_WEB
    if over_column or any(one is not None for one in said):
        return
    for way in _WAYS:
        useless = way[0] == "extended plate" and not site.reach
        rowless = way[0] == "seat" and (joint.rows or joint.drop)
        if way != _way(usual) and not useless and not rowless and _usable(site, way[0])[1] is None:
            yield way


def _choice(site: Site, kind: str, why: str, shop: Shop, to_beam: Join | None = None) -> Choice:
    """A connection of an end with its reasons."""
    usual, to_support = _joins(site, kind)
    joined = to_beam or usual
    play = shop.frame.play if _on_the_beam(kind, joined, to_support) else ZERO
    setback, rule = _setback(site, kind, play, shop)
    word = site.word
    meets = f"{site.kind} of {site.support.name} {site.support.stock.designation}"
    angle = "square" if site.square else f"at a skew of {abs(site.skew):.2f} degrees"
    lean = "" if abs(site.slope) < _LEVEL else f", sloping {abs(site.slope) * 12:.4g} in 12"
    face = Reason(
        f"meets the {meets}", f"its line meets that face {angle}{lean}", "geometry of the frame", word
    )
    off = Reason(f"setback {shop.say(setback)}", rule, PRACTICE, word)
    taken = Reason(kind, why, PRACTICE, word)
    return Choice(
        site,
        kind,
        joined,
        to_support,
        setback,
        play,
        shop.bolt(site.joint.bolt),
        shop.practice.pitch,
        (face, off) if kind == "free" else (face, taken, off),
    )


def _kind(site: Site, *, stiffened: bool) -> tuple[str, str]:
    """The connection and why it is that one."""
    given = site.joint.connection
    if given is not None:
        return given, "given in the frame"
    if site.member.stock.profile is Profile.BOX:
        return _of_hollow(site, stiffened=stiffened)
    if site.kind is FaceKind.COLUMN_WEB:
        return "extended plate", "the beam stays outside the column's flanges and swings in freely"
    if stiffened:
        return "extended plate", "over a column the girder has stiffeners: the beam stays outside of them"
    if not site.square:
        return (
            "single plate",
            "the end is skewed: a plate in the plane of the web is welded at the skew angle",
        )
    if site.kind is FaceKind.WALL:
        return "single plate", "a hollow wall takes no bolts from behind: a plate is welded to it"
    return "double angles", "the end is square to a web or flange that takes bolts"


def _of_hollow(site: Site, *, stiffened: bool) -> tuple[str, str]:
    """The connection of a hollow beam: an end plate where it can be bolted, else a plate on a tongue."""
    if site.square and site.kind is not FaceKind.WALL:
        return "end plate", "a hollow section has no web to bolt to: it gets an end plate"
    tongue = "the beam is hollow: the plate is bolted to a tongue at its closed end"
    if site.square:
        return "single plate", f"a hollow wall takes no bolts from behind: a plate is welded to it; {tongue}"
    if site.kind is FaceKind.COLUMN_WEB or stiffened:
        return (
            "extended plate",
            f"an end plate would have to be bent to the skew; {tongue}, which stays outside",
        )
    return (
        "single plate",
        f"the end is skewed: a plate in the middle of the beam is welded at the skew; {tongue}",
    )


def _usable(site: Site, kind: str) -> tuple[str, Finding | None]:
    """What is detailed instead of a connection that cannot be made at this end, with the finding."""
    for wrong, instead, why, remedy in (*_limits_of_place(site), *_limits_of_kind(site, kind)):
        if wrong:
            return _refused(site, kind, instead, why, remedy)
    return kind, None


def _limits_of_place(site: Site) -> Iterator[Limit]:
    """What no connection is detailed for."""
    skew, slope = abs(site.skew), abs(site.slope)
    web = "tongue" if site.member.stock.profile is Profile.BOX else "web"
    yield (
        slope > _MOST_SLOPE + _LEVEL, "free", f"a slope of {slope * 12:.3g} in 12 is over 6 in 12",
        "enter this piece as drawn",
    )  # fmt: skip
    yield (
        skew > _MOST_SKEW + 1e-6, "free", f"a skew of {skew:.1f} degrees is over 45",
        "frame it into another member, or enter this piece as drawn",
    )  # fmt: skip
    yield (
        site.kind is FaceKind.COLUMN_WEB and _past_the_flanges(site) < 0.0, "free",
        f"at a skew of {skew:.1f} degrees its {web} runs into a flange of the column",
        "turn the column, or frame into its flange",
    )  # fmt: skip


def _past_the_flanges(site: Site) -> float:
    """What is left between a beam's web with a plate on it and the flanges that it passes, inches."""
    column, skew = site.support.stock, math.radians(abs(site.skew))
    half = site.member.stock.tw.inches / 2 + _PLATE_BESIDE
    aside = site.off_centre + site.reach * math.tan(skew) + half / math.cos(skew)
    return (column.d / 2 - column.tf).inches - aside


def _limits_of_kind(site: Site, kind: str) -> Iterator[Limit]:
    """What a connection is not detailed for."""
    profile = site.member.stock.profile
    hollow, instead = profile is Profile.BOX, "single plate"
    if kind in _PLATES:
        return
    skewed = _TONGUED if hollow else "a single plate is welded at the skew angle"
    yield (
        not site.square, instead, f"at a skew of {abs(site.skew):.1f} degrees it would have to be bent",
        skewed,
    )  # fmt: skip
    bolted = kind == "end plate" or (kind in _ANGLES and site.joint.to_support != "welded")
    walled = _TONGUED if hollow else 'use a single plate, or angles with to_support = "welded"'
    yield (
        site.kind is FaceKind.WALL and bolted, instead, "a hollow wall cannot be bolted from behind", walled
    )  # fmt: skip
    yield (hollow and kind in _ANGLES, instead, "a hollow section has no web for angles", _END_PLATE)
    if kind != "seat":
        return
    yield (
        profile is not Profile.I_SHAPE, instead, "a seat wants a section with flanges to both sides",
        _END_PLATE if hollow else "use a single plate",
    )  # fmt: skip
    seated = site.kind in {FaceKind.COLUMN_FLANGE, FaceKind.WALL} and site.support.is_column
    yield (
        not seated or abs(site.slope) > _LEVEL, instead,
        "a seat wants a level beam at a column's flange or hollow wall", "use a single plate",
    )  # fmt: skip


def _refused(site: Site, kind: str, instead: str, why: str, remedy: str) -> tuple[str, Finding]:
    done = "no connection is detailed" if instead == "free" else f"a {instead} is detailed in its place"
    return instead, Finding(
        "connection-not-possible",
        Severity.ERROR,
        f"{site.member.name} {site.word}",
        f"{kind}: {why}; {done}",
        remedy,
        PRACTICE,
    )


def _joins(site: Site, kind: str) -> tuple[Join, Join]:
    """How the material is joined to the beam and to the support."""
    joint = site.joint
    if kind in _PLATES:
        return Join.BOLTED, Join.WELDED
    if kind == "end plate":
        return Join.WELDED, Join.BOLTED
    return Join(joint.to_beam or "bolted"), Join(joint.to_support or "bolted")


def _on_the_beam(kind: str, to_beam: Join, to_support: Join) -> bool:
    """Whether the material of a connection comes to the site on the beam, where it must go in between."""
    if kind not in _ANGLES:
        return kind in {"end plate", "seat"}  # of a seat its top clip
    return to_beam is Join.WELDED or to_support is Join.BOLTED


def _tongued(site: Site, kind: str) -> bool:
    """Whether a plate of the support is bolted to a tongue, the beam being hollow."""
    return kind in _PLATES and site.member.stock.profile is Profile.BOX


def _setback(site: Site, kind: str, play: Length, shop: Shop) -> tuple[Length, str]:
    usual = shop.frame.setback
    if kind == "end plate":
        thick = site.joint.thickness or shop.frame.end_plate
        lies = f"stays {shop.say(play)} off the face, for play" if play else "lies on the face"
        return thick + play, f"the end plate, {shop.say(thick)} thick, {lies}"
    outside = kind == "extended plate" or (kind == "free" and site.kind is FaceKind.COLUMN_WEB)
    if outside and site.reach:
        clear, step = shop.frame.cope_clearance, shop.pick(1 / 8, 1)
        off = up_to(site.reach + clear.inches, step)
        rule = (
            f"the steel stays {shop.say(clear)} outside the flanges, which stand {shop.say(site.reach)} out; "
            f"rounded up to {shop.say(step)}"
        )
        return max(off, usual), rule
    if _tongued(site, kind):
        return (
            usual,
            f"that is the shop's practice for {kind}, square to the face to the tongue's nearest corner",
        )
    skew = math.tan(math.radians(abs(site.skew)))
    lean = f"{skew * 12:.4g} in 12" if shop.system is System.FT_IN else f"{abs(site.skew):.4g} degrees"
    mitre = f", measured square to the face; the end is mitred {lean}" if skew > 1e-9 else ""
    they = {"double angles": "they stay", "seat": "its top clip stays"}.get(kind, "it stays")
    stays = f"; {they} {shop.say(play)} off the face, for play" if play else ""
    return usual, f"that is the shop's practice for {kind}{mitre}{stays}"
