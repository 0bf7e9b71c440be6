"""How many rows of bolts, and where the first of them lies."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from gageline.detail.choice import Choice
from gageline.detail.copes import Notches
from gageline.detail.reason import PRACTICE, Reason
from gageline.detail.shop import Shop, up_to
from gageline.detail.site import Site, largest_fillet
from gageline.detail.space import UP, dot
from gageline.detail.values import SLIP, bolt_value, row_value, slip_value
from gageline.part import Face, Finding, Severity
from gageline.steel import Profile
from gageline.units import ZERO, Length, System, round_down

__all__ = ["Ladder", "clear_height", "ladder_of"]

_MOST_ROWS = 20
_ECCENTRIC = frozenset({"single plate", "extended plate"})
_KIP = 4.4482216152605  # kN
_HALF = "AISC Manual Part 10: connection length at least half of T (Design Examples v16, II.A-17A)"


@dataclass(frozen=True, slots=True)
class Ladder:
    """Rows of bolts, one over the other.

    Args:
        rows: how many.
        first: elevation of the first, the uppermost, in the support, inches.
        pitch: between rows.
        edge: from the end of the connection material to its first row.
        room: elevations between which the material must stay, lower and upper, inches.
        stagger: how much higher the rows in the beam's web are.
    """

    rows: int
    first: float
    pitch: Length
    edge: Length
    room: tuple[float, float]
    stagger: Length = ZERO

    @property
    def length(self) -> Length:
        """Of the connection material."""
        return self.pitch * (self.rows - 1) + self.edge * 2 + self.stagger

    @property
    def first_in_web(self) -> float:
        """Elevation of the first row in the beam's web, inches."""
        return self.first + self.stagger.inches

    @property
    def elevations(self) -> tuple[float, ...]:
        """Of the rows from the top down, inches."""
        return tuple(self.first - (self.pitch * number).inches for number in range(self.rows))

    def fits(self, first: float, rows: int | None = None) -> bool:
        """Whether the rows fit in the room with the first one at an elevation."""
        last = first - (self.pitch * ((rows or self.rows) - 1)).inches
        low, high = self.room
        top = first + (self.stagger + self.edge).inches
        return top <= high + 1e-6 and last - self.edge.inches >= low - 1e-6


def clear_height(site: Site, notches: Notches, span: tuple[float, float]) -> tuple[float, float]:
    """Between which elevations material on the beam's web and on the support is clear of fillets and copes.

    Args:
        site: where the end meets its support.
        notches: of the end.
        span: where along the plan, from the face, the material lies on the web, inches.
    """
    beam = site.member
    steep = dot(beam.ey, UP)
    fillet = largest_fillet(beam.stock)
    top = notches.depth(Face.TOP).inches or fillet
    bottom = notches.depth(Face.BOTTOM).inches or fillet
    highs = [site.point[2] + site.slope * x - top / steep for x in span]
    lows = [site.point[2] + site.slope * x - (beam.depth - bottom) / steep for x in span]
    low, high = site.flat
    return max(*lows, low), min(*highs, high)


def ladder_of(
    choice: Choice, notches: Notches, room: tuple[float, float], shop: Shop, *, web: Length
) -> tuple[Ladder | None, tuple[Reason, ...], tuple[Finding, ...]]:
    """The rows of an end.

    Args:
        choice: the connection of the end.
        notches: of the end.
        room: elevations that the material must stay between, inches.
        shop: the practice.
        web: thickness of what its bolts go through in the beam.

    Returns:
        The rows, None when not one fits; why; and what is wrong with them.
    """
    site, size = choice.site, choice.size
    pitch, edge = choice.pitch, shop.practice.end_distance
    low, high = room
    half, half_of = _half(site, notches)
    by_depth = max(1, math.ceil((half - (edge * 2).inches) / pitch.inches - 1e-6) + 1)
    each, unit = row_value(size, choice.planes, web, pitch), bolt_value(size).unit
    grip, held = slip_value(size, shop.practice.bolt_grade, shop.practice.hole), ""
    slips = grip is not None and grip * choice.planes < each
    if grip is not None and slips:
        each, held = grip * choice.planes, f" before {shop.practice.bolt_grade} bolts slip"
    if choice.kind in _ECCENTRIC:
        held += ", how far they stand off the face left to the strength check"
    wanted = _in_unit(site.joint.reaction or 0.0, unit, shop.system)
    by_force = max(1, math.ceil(wanted / each - 1e-9))
    asks = (
        f"the reaction of {wanted:g} {unit} asks for {by_force} at {each:.1f} {unit} a row{held}"
        if wanted
        else f"no reaction is typed at this end, a row carries {each:.1f} {unit}{held}"
    )
    by_strength = choice.asked.rows if choice.asked else 0
    asked_by = (choice.asked.source,) if choice.asked else ()
    if choice.asked:
        asks += f"; strength asks for {by_strength}, {choice.asked.why}"
    rows = site.joint.rows or max(by_depth, by_force, by_strength, 2)
    first, raised = _first_row(choice, room, rows, shop)
    most = math.floor((first - low - edge.inches + 1e-6) / pitch.inches) + 1
    subject = f"{site.member.name} {site.word}"
    if most < 1:
        given = site.joint.drop is not None and high - low >= (edge * 2).inches
        return None, (), ((_too_low if given else _no_room)(site, subject, room, shop),)
    ladder = Ladder(min(rows, most, _MOST_ROWS), first, pitch, edge, room)
    reason = Reason(
        f"{ladder.rows} row{'s' if ladder.rows > 1 else ''} at {shop.say(pitch)}, the first "
        f"{shop.say(site.point[2] - first)} down, material {shop.say(ladder.length)} long",
        f"{'as given; ' if site.joint.rows else ''}{asks}; half of {half_of}, {shop.say(half)}, asks for "
        f"{by_depth}; {_rows(most)} in the clear {shop.say(high - low)}"
        f"{', the first one raised for that' if raised else _lowered(site, first, shop)}",
        "; ".join((_HALF, SLIP if slips else bolt_value(size).source, *asked_by)),
        site.word,
    )
    found = _shortage(choice, (rows, most, by_force, by_depth), shop, high - low)
    return ladder, (reason,), (*_not_as_given(site, ladder, shop), *found)


def _first_row(choice: Choice, room: tuple[float, float], rows: int, shop: Shop) -> tuple[float, bool]:
    """The elevation of the first row, inches, and whether it is raised so that more rows fit.

    It lies as far down as the document or the practice says, lower where a cope or a fillet forbids that,
    and higher where only then as many rows fit as are wanted.
    """
    site, (low, high) = choice.site, room
    top = site.point[2]
    pitch, edge, step = choice.pitch.inches, shop.practice.end_distance.inches, shop.pick(0.25, 5)
    usual = top - (site.joint.drop or shop.practice.drop).inches
    first = min(usual, high - edge)
    if first < usual - 1e-6:
        first = top - up_to(top - first, step).inches
    count = min(rows, math.floor((high - low - 2 * edge + 1e-6) / pitch) + 1)
    least = low + edge + pitch * (count - 1)
    if site.joint.drop is not None or count < 1 or least <= first + 1e-6:
        return first, False
    even = top - round_down(Length.from_inches(top - least), step).inches
    return (even if even <= high - edge + 1e-6 else least), True


def _lowered(site: Site, first: float, shop: Shop) -> str:
    """Why the first row is lower than the document or the practice says."""
    usual = (site.joint.drop or shop.practice.drop).inches
    if site.point[2] - first <= usual + 1e-6:
        return ""
    return f", the first one lowered from {shop.say(usual)} to clear what is cut or curved over it"


def _in_unit(reaction: float, unit: str, system: System) -> float:
    """A reaction, which is in kip or in kN by the job's units, in the unit of the bolt's value."""
    own = "kip" if system is System.FT_IN else "kN"
    if own == unit:
        return reaction
    return round(reaction * _KIP if unit == "kN" else reaction / _KIP, 3)


def _half(site: Site, notches: Notches) -> tuple[float, str]:
    """The least length of the connection, inches, and what it is half of."""
    stock = site.member.stock
    if notches.copes:
        left = stock.d - notches.depth(Face.TOP) - notches.depth(Face.BOTTOM)
        return left.inches / 2, "the coped depth"
    if stock.T is not None:
        return stock.T.inches / 2, "T"
    flat = stock.d.inches - 2 * largest_fillet(stock)
    return flat / 2, f"the flat of the {'wall' if stock.profile is Profile.BOX else 'web'}"


def _no_room(site: Site, subject: str, room: tuple[float, float], shop: Shop) -> Finding:
    height = max(0.0, room[1] - room[0])
    return Finding(
        "no-room-for-bolts",
        Severity.ERROR,
        subject,
        f"only {shop.say(height)} of web is clear between fillets and copes at {site.support.name} "
        f"{site.support.stock.designation}: not one row fits",
        "lower or raise the beam, use a deeper support, or enter the connection as drawn",
        PRACTICE,
    )


def _too_low(site: Site, subject: str, room: tuple[float, float], shop: Shop) -> Finding:
    edge, top = shop.practice.end_distance.inches, site.point[2]
    least, most = (shop.say(top - z) for z in (room[1] - edge, room[0] + edge))
    return Finding(
        "drop-as-given",
        Severity.ERROR,
        subject,
        f"drop {shop.say(site.joint.drop or ZERO)} puts the first row where no web is clear",
        f"give a drop of {least} to {most}, or leave it out",
        PRACTICE,
    )


def _not_as_given(site: Site, ladder: Ladder, shop: Shop) -> Iterator[Finding]:
    """Rows or a drop that the document gives and fillets or copes do not allow."""
    joint, subject = site.joint, f"{site.member.name} {site.word}"
    if joint.rows and joint.rows > ladder.rows:
        yield Finding(
            "rows-as-given",
            Severity.ERROR,
            subject,
            f"{joint.rows} rows are given, {_rows(ladder.rows)} in the clear height",
            "give fewer rows, a smaller drop, or a deeper support",
            PRACTICE,
        )
    down = site.point[2] - ladder.first
    if joint.drop and abs(down - joint.drop.inches) > 1e-6:
        yield Finding(
            "drop-as-given",
            Severity.ERROR,
            subject,
            f"drop {shop.say(joint.drop)} puts the material in the fillet or the cope: the first row is "
            f"{shop.say(down)} down",
            f"give a drop of {shop.say(down)} or more, or leave it out",
            PRACTICE,
        )


def _rows(count: int) -> str:
    return f"{count} rows fit" if count != 1 else "1 row fits"


def _shortage(choice: Choice, counts: tuple[int, int, int, int], shop: Shop, height: float) -> list[Finding]:
    rows, most, by_force, by_depth = counts
    subject = f"{choice.site.member.name} {choice.site.word}"
    made = min(rows, most)
    found: list[Finding] = []
    room = f"{_rows(most)} in the clear {shop.say(height)}"
    named = "1 row is" if made == 1 else f"{made} rows are"
    if made < by_force:
        found.append(
            Finding(
                "rows-for-reaction",
                Severity.ERROR,
                subject,
                f"{named} not enough for the reaction, which asks for {by_force}: {room}",
                "use larger bolts, a deeper beam, or another connection",
                _HALF,
            )
        )
    asked = choice.asked
    if asked and made < asked.rows:
        found.append(
            Finding(
                "rows-for-strength",
                Severity.WARNING,
                subject,
                f"{named} fewer than the {asked.rows} that strength asks for, {asked.why}: {room}",
                "use what the strength check suggests, larger bolts, a deeper beam, or another connection",
                asked.source,
            )
        )
    if made < by_depth:
        found.append(
            Finding(
                "rows-for-depth",
                Severity.WARNING,
                subject,
                f"{named} fewer than the {by_depth} that half of the depth asks for: {room}",
                "lower the beam or use a deeper support, and have the end's stability checked",
                _HALF,
            )
        )
    if made * choice.bolts_in_beam < 2:
        found.append(
            Finding(
                "two-bolts",
                Severity.ERROR,
                subject,
                "one row leaves fewer than two bolts in the beam",
                "make room for two rows, or use another connection",
                "29 CFR 1926.756(a)(1)",
            )
        )
    return found
