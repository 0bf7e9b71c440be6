"""Bolts: how long they must be, and whether they can be put in and tightened."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.detail.joint import Joint
from gageline.detail.reason import Reason
from gageline.detail.shop import Shop
from gageline.detail.site import FaceKind
from gageline.part import Finding, Severity
from gageline.steel import Bolt, Measure
from gageline.units import ZERO, Length, round_up

__all__ = ["FieldBolts", "bolt_length", "clearances", "field_bolts_of", "length_reason"]

_STEP = {Measure.US: Length.from_inches(1) / 4, Measure.EU: Length.from_mm(5)}
_LENGTHS = (
    "RCSC Specification, commentary to 2.3 and Table C-2.2: grip, washers and allowance, next 1/4 in or 5 mm"
)
_ROOM = "AISC Manual, LRFD 2nd ed., Table 8-4 (later Tables 7-15 and 7-16)"


@dataclass(frozen=True, slots=True)
class FieldBolts:
    """Bolts that are put in at the site, of one connection and one grip.

    Args:
        connection: the end they belong to, or what is joined.
        piece: own name of the piece that is put in, its assembly's mark where it is placed.
        support: own name of the piece that carries it.
        bolt: size.
        count: how many.
        grip: through which thickness of steel.
        length: to order.
        washers: flat washers to each bolt.
    """

    connection: str
    piece: str
    support: str
    bolt: str
    count: int
    grip: Length
    length: Length
    washers: int = 1


def bolt_length(size: Bolt, grip: Length, washers: int = 1) -> Length:
    """The length of a bolt to order.

    Args:
        size: the bolt.
        grip: thickness of all plies.
        washers: flat washers under head and nut.

    Source: RCSC Specification, Table C-2.2; for metric bolts nut, washers and two threads, next 5 mm.
    """
    add = size.grip_add
    if add is None:
        add = size.nut_height + (size.pitch or size.diameter / 8) * 2
    return round_up(grip + size.washer * washers + add, _STEP[size.system])


def length_reason(size: Bolt, grip: Length, word: str, shop: Shop) -> Reason:
    """Why a bolt is as long as it is."""
    add = size.grip_add or size.nut_height + (size.pitch or size.diameter / 8) * 2
    return Reason(
        f"field bolts {size.size} x {shop.say(bolt_length(size, grip))}",
        f"grip {shop.exact(grip)}, one washer {shop.exact(size.washer)} and {shop.exact(add)} for the nut "
        f"make {shop.exact(grip + size.washer + add)}, rounded up",
        _LENGTHS,
        word,
    )


def _one(size: Bolt) -> str:
    """A size with its article: `an M20`, `a 3/4`."""
    return f"an {size.size}" if size.size.startswith("M") else f"a {size.size}"


def clearances(joint: Joint, shop: Shop) -> tuple[tuple[Reason, ...], tuple[Finding, ...]]:
    """Whether the bolts of a connection can be entered and tightened.

    Args:
        joint: the connection.
        shop: the practice.
    """
    size = joint.choice.size
    if joint.ladder is None:
        return (), ()
    if size.clear_tighten is None or size.socket is None:
        return (_not_checked(joint, size),), ()
    reasons: list[Reason] = []
    findings: list[Finding] = []
    checks = [*_under_flange(joint, size), *_between_flanges(joint, size), *_beside_web(joint)]
    for what, have, want in checks:
        reasons.append(
            Reason(
                f"{what}: {shop.say(max(have, 0.0))} for the wrench",
                f"{_one(size)} bolt wants {shop.say(want)}",
                _ROOM,
                joint.site.word,
            )
        )
        if have < want - 1e-6:
            findings.append(
                Finding(
                    "bolt-clearance",
                    Severity.ERROR,
                    f"{joint.site.member.name} {joint.site.word}",
                    f"{what}: {shop.say(max(have, 0.0))} is less than the {shop.say(want)} that {_one(size)} "
                    "bolt wants to be tightened",
                    _remedy(joint),
                    _ROOM,
                )
            )
    return tuple(reasons), tuple(findings)


def _remedy(joint: Joint) -> str:
    """What helps: a stagger only where the pitch is wide enough for it."""
    legs, ladder = joint.legs, joint.ladder
    usual = "lower the first row, widen the gage, or use smaller bolts"
    if legs is None or ladder is None or legs.clear >= legs.wanted:
        return usual
    pitch = Length.from_inches(legs.stagger * 2)
    if pitch > ladder.pitch:
        return (
            "use an angle with a longer or thinner leg, weld one of the legs, use smaller bolts, or a plate"
        )
    return f"{usual}; there is no room to stagger the legs"


def _not_checked(joint: Joint, size: Bolt) -> Reason:
    return Reason(
        "room for the wrench is not checked",
        f"the table gives no clearances for {_one(size)} bolt: check it by hand",
        _ROOM,
        joint.site.word,
    )


def _between_flanges(joint: Joint, size: Bolt) -> list[tuple[str, float, float]]:
    """From the bolts in a column's web to its flanges."""
    site = joint.site
    if site.kind is not FaceKind.COLUMN_WEB or not joint.drills_support or size.clear_tighten is None:
        return []
    aside = (joint.spread or ZERO).inches / 2
    column = site.support.stock
    have = (column.d / 2 - column.tf).inches - site.off_centre - aside
    return [("bolts to the nearer flange of the column", have, size.clear_tighten.inches)]


def _under_flange(joint: Joint, size: Bolt) -> list[tuple[str, float, float]]:
    """From the upper and lower row to the support's flanges, where these stand over the bolts."""
    site = joint.site
    if site.support.is_column or not site.reach or joint.ladder is None or size.clear_tighten is None:
        return []
    flange = site.support.stock.tf.inches
    rows, want = joint.ladder.elevations, size.clear_tighten.inches
    return [
        ("first row to the support's top flange", site.support_top - flange - rows[0], want),
        ("last row to the support's bottom flange", rows[-1] - site.support_bottom - flange, want),
    ]


def _beside_web(joint: Joint) -> list[tuple[str, float, float]]:
    """From the bolts in the outstanding legs to the ends of those in the web legs, beside them or between."""
    legs, ladder = joint.legs, joint.ladder
    if legs is None or ladder is None:
        return []
    if ladder.stagger:
        return [("stagger of the two legs' bolts", ladder.stagger.inches, legs.stagger)]
    return [("bolts of the outstanding leg to those of the web leg", legs.clear, legs.wanted)]


def field_bolts_of(
    connection: str, pieces: tuple[str, str], size: Bolt, count: int, grip: Length
) -> FieldBolts:
    """Bolts of a connection with their length.

    Args:
        connection: the end they belong to, or what is joined.
        pieces: own names of the piece that is put in and of the one that carries it.
        size: the bolt.
        count: how many.
        grip: through which thickness of steel.
    """
    return FieldBolts(connection, *pieces, size.size, count, grip, bolt_length(size, grip))
