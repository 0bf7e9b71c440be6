"""Readings that cannot be of the section they were written down for."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from functools import partial
from typing import NamedTuple

from gageline.errors import ValueProblem
from gageline.job import Corner, Stick, say
from gageline.part import End, Part, extent_y, extent_z
from gageline.steel import Plate
from gageline.units import ZERO, Length, System

__all__ = ["Slip", "check_readings", "slips_of"]

# What no mill delivers and no fitter means; common practice, no source.
_OFF = Fraction(1, 4)  # of a depth or a width; an end that is open by more is cut before it is measured
_BOW = Fraction(1, 20)  # of the length
_LENGTH = Fraction(1, 2)  # of the length that was ordered
_LONGEST = Length.from_inches(120 * 12)  # that comes to a shop
_BLADE = Length.from_inches(48)  # of a square
_SIDE = "check the reading, and which side was read"
_CUT = "check the reading, or cut the end first"


@dataclass(frozen=True, slots=True)
class Slip:
    """A reading that cannot be.

    Args:
        path: of its field in a table of measurements: `("left", "web_gap")`.
        text: the reading in words, its value, the limit and the remedy.
    """

    path: tuple[str, ...]
    text: str


def check_readings(part: Part, stick: Stick, system: System) -> None:
    """Refuse readings that are a slip of the pen, see `slips_of`.

    Args:
        part: the piece that is to be made of it.
        stick: as measured.
        system: the units of the messages.

    Raises:
        ValueProblem: with every reading that cannot be of the piece's section.
    """
    if wrong := slips_of(part, stick, system):
        raise ValueProblem("\n".join(f"{stick.piece} {one.text}" for one in wrong))


def slips_of(part: Part, stick: Stick, system: System) -> tuple[Slip, ...]:
    """Readings that are a slip of the pen: another side, another unit, another stick.

    Args:
        part: the piece that is to be made of it.
        stick: as measured.
        system: the units of the messages.
    """
    told = partial(say, system=system)
    name = part.stock.designation
    found = []
    for one in (*_overall(part, stick), *_of_ends(part, stick), *_of_the_stick(part, stick)):
        if abs(one.read - one.wanted) > one.most:
            off = (
                f"off the {told(one.wanted)} {one.of or f'of {name}'}"
                if one.wanted
                else f"and no {name} comes so"
            )
            words = (
                " ".join(one.path)
                .replace("_", " ")
                .replace("left ", "left end ")
                .replace("right ", "right end ")
            )
            words = words.replace("web off", "web off centre")
            found.append(
                Slip(one.path, f"{words} {told(one.read)} is more than {told(one.most)} {off}: {one.remedy}")
            )
    for end in End:
        found.extend(_open_ends(part, stick, end, told))
    return tuple(found)


class _Compared(NamedTuple):
    """A reading beside what it should be about.

    Attributes:
        path: of its field.
        read: its value.
        wanted: what it should be about.
        most: how far off it may be.
        remedy: what to do.
        of: whose the wanted value is; empty for the section's.
    """

    path: tuple[str, ...]
    read: Length
    wanted: Length
    most: Length
    remedy: str = _SIDE
    of: str = ""


def _sizes(part: Part) -> tuple[Length, Length]:
    """Depth and width of the section; of a plate both are its width."""
    (low, high), (far, near) = extent_y(part.stock), extent_z(part.stock)
    deep = high - low
    return deep, deep if isinstance(part.stock, Plate) else near - far


def _overall(part: Part, stick: Stick) -> Iterator[_Compared]:
    if stick.length is not None:
        wanted = stick.ordered or part.length
        of = "that was ordered" if stick.ordered else "of the piece"
        remedy = "check the reading, or give what it was ordered at"
        most = wanted * _LENGTH
        if not stick.ordered and stick.length > wanted:  # a piece is cut from whatever is long enough
            most = max(most, _LONGEST - wanted)
        yield _Compared(("length",), stick.length, wanted, most, remedy, of)


def _of_ends(part: Part, stick: Stick) -> Iterator[_Compared]:
    deep, wide = _sizes(part)
    for end in End:
        read = stick.at(end)
        for name, value, wanted, size in (
            ("depth", read.depth, deep, deep),
            ("top_width", read.top_width, wide, wide),
            ("bottom_width", read.bottom_width, wide, wide),
            ("top_tilt", read.top_tilt, ZERO, wide),
            ("bottom_tilt", read.bottom_tilt, ZERO, wide),
        ):
            if value is not None:
                yield _Compared((str(end), name), value, wanted, size * _OFF)


def _of_the_stick(part: Part, stick: Stick) -> Iterator[_Compared]:
    _, wide = _sizes(part)
    long = stick.length or part.length
    for name, value, most in (
        ("web_off", stick.web_off, wide * _OFF),
        ("camber", stick.camber, long * _BOW),
        ("sweep", stick.sweep, long * _BOW),
    ):
        if value is not None:
            yield _Compared((name,), value, ZERO, most)


def _open_ends(part: Part, stick: Stick, end: End, told: Callable[[Length], str]) -> Iterator[Slip]:
    """Ends that would be too far out of square, by the square's gap or from corner to corner."""
    deep, wide = _sizes(part)
    read = stick.at(end)
    for name, gap in (("web", read.web_gap), ("flange", read.flange_gap)):
        if gap is not None and gap.blade > _BLADE:
            yield Slip(
                (str(end), f"{name}_blade"),
                f"{end} end {name} blade {told(gap.blade)} is longer than any square's, {told(_BLADE)} at "
                "the most: check the reading",
            )
        if gap is not None and gap.gap > gap.blade * _OFF:
            yield Slip(
                (str(end), f"{name}_gap"),
                f"{end} end {name} gap {told(gap.gap)} is more than 1 in {1 / _OFF} of its blade of "
                f"{told(gap.blade)}: {_CUT}",
            )
    for corner, across in _ACROSS:
        one, other = read.corner(corner), read.corner(across)
        most = (deep if corner.is_near == across.is_near else wide) * _OFF
        if one is not None and other is not None and abs(one - other) > most:
            worse, value = max(((corner, one), (across, other)), key=lambda read: abs(read[1]))
            yield Slip(
                (str(end), worse.replace(" ", "_")),
                f"{end} end {worse} {told(value)} is {told(abs(one - other))} off the corner across, more "
                f"than {told(most)}: {_CUT}",
            )


_ACROSS = (
    (Corner.TOP_NEAR, Corner.BOTTOM_NEAR),
    (Corner.TOP_FAR, Corner.BOTTOM_FAR),
    (Corner.TOP_NEAR, Corner.TOP_FAR),
    (Corner.BOTTOM_NEAR, Corner.BOTTOM_FAR),
)
