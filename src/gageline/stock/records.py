"""What goes into a cutting plan and what comes out of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from fractions import Fraction
from math import isqrt
from typing import Literal

from gageline.units import ZERO, Length


@dataclass(frozen=True, slots=True, order=True)
class Steel:
    """What a stick is: pieces are cut only from sticks of the same steel."""

    section: str
    grade: str = ""
    finish: str = ""

    def __str__(self) -> str:
        return " ".join(word for word in (self.section, self.grade, self.finish) if word)


@dataclass(frozen=True, slots=True)
class End:
    """How the saw cuts one end of a piece; a square cut has no run.

    Args:
        run: how far the long point stands beyond the short point, along the piece.
        across: the depth or width that the cut crosses.
        plane: the face on which the slope is seen.
        long_side: where the long point is: at the high (top, near) or low (bottom, far) side.
    """

    run: Length = ZERO
    across: Length = ZERO
    plane: Literal["web", "flange"] = "web"
    long_side: Literal["high", "low"] = "high"

    @property
    def angled(self) -> bool:
        """Whether the cut is off square."""
        return self.run > ZERO

    def kerf(self, kerf: Length) -> Length:
        """Length of stick that the blade takes along the piece, rounded up to a tick."""
        if not self.angled:
            return kerf
        run, across = self.run.ticks, self.across.ticks
        # the blade's width over the cosine of the angle; the square root is rounded up
        square = kerf.ticks**2 * (run**2 + across**2)
        return Length(-(-(isqrt(max(square - 1, 0)) + (square > 0)) // across))


SQUARE_END = End()


@dataclass(frozen=True, slots=True)
class Piece:
    """Pieces to cut that are alike.

    Args:
        mark: the piece mark.
        steel: section, grade and finish.
        length: overall length, long point to long point.
        quantity: how many.
        left: cut of the left end.
        right: cut of the right end.
        turnable: whether the piece may be turned end for end and over in the stick.
        heat: the heat it must come from, if one is asked for.
        one_heat: name of a group of pieces that must all come from one heat.
        certificate: whether it must come from stock with a certificate.
        needed: the day it is needed, if stock that comes later will not do.
    """

    mark: str
    steel: Steel
    length: Length
    quantity: int = 1
    left: End = SQUARE_END
    right: End = SQUARE_END
    turnable: bool = True
    heat: str | None = None
    one_heat: str | None = None
    certificate: bool = False
    needed: date | None = None


@dataclass(frozen=True, slots=True)
class Offer:
    """Sticks that can be bought.

    Args:
        steel: section, grade and finish.
        length: length of one stick.
        cents: price of one stick.
        limit: the most that can be had, or None.
        certificate: whether they come with a certificate.
        arrives: the day they come, or None for in time.
        heat: the heat, where the supplier promises one.
    """

    steel: Steel
    length: Length
    cents: int
    limit: int | None = None
    certificate: bool = False
    arrives: date | None = None
    heat: str | None = None


def by_weight(steel: Steel, length: Length, pounds_per_foot: Fraction, cents_per_pound: Fraction) -> Offer:
    """Sticks sold by weight: the price of one, rounded to a cent.

    Args:
        steel: section, grade and finish.
        length: length of one stick.
        pounds_per_foot: nominal weight, lb/ft.
        cents_per_pound: price, cents/lb.

    Returns:
        The offer, without limit.
    """
    feet = Fraction(length.ticks, Length.from_inches(12).ticks)
    return Offer(steel, length, round(feet * pounds_per_foot * cents_per_pound))


@dataclass(frozen=True, slots=True)
class Held:
    """One stick or drop on the rack.

    Args:
        mark: what is written on it.
        steel: section, grade and finish.
        length: its length.
        cents: what using it costs (its value on the rack).
        heat: its heat number, if known.
        certificate: whether its certificate is on file.
    """

    mark: str
    steel: Steel
    length: Length
    cents: int = 0
    heat: str | None = None
    certificate: bool = False


@dataclass(frozen=True, slots=True)
class Saw:
    """The shop's saw and what it does with drops.

    Args:
        kerf: width of the cut, square to the blade; zero for a shear.
        start_trim: cut off the first end of each stick, kerf included.
        end_trim: cut off the other end, kerf included.
        grip: length at the other end that the saw cannot use.
        keep: shortest drop worth keeping.
        drop_percent: what a kept drop is credited with, in percent of its stick's own price a length.
        most_setups: the most different set-ups a section may have, or None.
    """

    kerf: Length
    start_trim: Length = ZERO
    end_trim: Length = ZERO
    grip: Length = ZERO
    keep: Length = ZERO
    drop_percent: int = 0
    most_setups: int | None = None


@dataclass(frozen=True, slots=True)
class Placed:
    """One piece in a stick.

    Args:
        mark: the piece mark.
        start: running dimension of its first long point, from the stick's first end.
        stop: running dimension of its last long point.
        turned: whether its right end comes first.
        shares: whether its first cut is the last cut of the piece before it.
    """

    mark: str
    start: Length
    stop: Length
    turned: bool = False
    shares: bool = False

    @property
    def length(self) -> Length:
        """Length of the piece, long point to long point."""
        return self.stop - self.start


@dataclass(frozen=True, slots=True)
class StickPlan:
    """One stick and how it is cut.

    Args:
        number: its place in the plan, from 1.
        stock: what it is cut from.
        pieces: the pieces in order of cutting.
        drop: length of the end that is left.
        kept: whether the drop is long enough to keep.
        credit: what the kept drop earns, cents.
        done: whether it was already cut when the plan was made.
    """

    number: int
    stock: Offer | Held
    pieces: tuple[Placed, ...]
    drop: Length
    kept: bool
    credit: int
    done: bool = False

    @property
    def heat(self) -> str | None:
        """Heat to write on each piece; None is filled in when the stick arrives."""
        return self.stock.heat

    @property
    def cents(self) -> int:
        """Cost of the stick less what its drop earns."""
        return self.stock.cents - self.credit

    @property
    def covered(self) -> Length:
        """Length of the stick under pieces; where two nest in one angled cut it counts once."""
        befores = (None, *self.pieces)
        nested = [max(ZERO, b.stop - p.start) for b, p in zip(befores, self.pieces, strict=False) if b]
        return sum((p.length for p in self.pieces), ZERO) - sum(nested, ZERO)

    @property
    def setup(self) -> tuple[Length, tuple[Length, ...]]:
        """What the saw man sets: the stick's length and the lengths cut from it in order."""
        return self.stock.length, tuple(p.length for p in self.pieces)


@dataclass(frozen=True, slots=True)
class SectionPlan:
    """The plan of one steel.

    Args:
        steel: section, grade and finish.
        sticks: every stick with its cuts; those done already come first.
        bound: no plan costs less, cents.
        seconds: time the planning took.
    """

    steel: Steel
    sticks: tuple[StickPlan, ...]
    bound: int
    seconds: float

    @property
    def cents(self) -> int:
        """Cost of the sticks less what the drops earn."""
        return sum(s.cents for s in self.sticks)

    @property
    def gap(self) -> int:
        """The most that a better plan could save, cents."""
        return self.cents - self.bound

    @property
    def proven(self) -> bool:
        """Whether no plan costs less."""
        return self.gap == 0

    @property
    def setups(self) -> int:
        """Number of different set-ups."""
        return len({s.setup for s in self.sticks})

    @property
    def yield_(self) -> float:
        """Part of the stick length that ends up in pieces, 0 to 1; kept drops count as not yet used."""
        cut = sum(s.covered.ticks for s in self.sticks)
        used = sum(s.stock.length.ticks - (s.drop.ticks if s.kept else 0) for s in self.sticks)
        return cut / used if used else 0.0


@dataclass(frozen=True, slots=True)
class CutPlan:
    """The cutting plan of all steels."""

    sections: tuple[SectionPlan, ...]

    @property
    def cents(self) -> int:
        """Cost of all sticks less what the drops earn."""
        return sum(s.cents for s in self.sections)

    @property
    def bound(self) -> int:
        """No plan costs less, cents."""
        return sum(s.bound for s in self.sections)

    @property
    def proven(self) -> bool:
        """Whether no plan costs less."""
        return all(s.proven for s in self.sections)

    def order(self) -> tuple[tuple[Offer, int], ...]:
        """What to buy: each offer with the number of sticks, by steel and length."""
        count: dict[Offer, int] = {}
        for section in self.sections:
            for stick in section.sticks:
                if isinstance(stick.stock, Offer):
                    count[stick.stock] = count.get(stick.stock, 0) + 1
        return tuple(sorted(count.items(), key=lambda item: (item[0].steel, item[0].length, item[0].cents)))
