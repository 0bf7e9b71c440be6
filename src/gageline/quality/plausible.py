"""Readings that cannot be of the section they were written down for."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from gageline.errors import ValueProblem
from gageline.job import Stick
from gageline.part import End, Part, extent_y, extent_z
from gageline.steel import Plate
from gageline.units import ZERO, Length, System, write_length

__all__ = ["check_readings"]

# What no mill delivers and no fitter means; common practice, no source.
_OFF = Fraction(1, 4)  # of a depth or a width
_BOW = Fraction(1, 20)  # of the length


def check_readings(part: Part, stick: Stick, system: System) -> None:
    """Refuse readings that are a slip of the pen: another side, another unit, another stick.

    Args:
        part: the piece that is to be made of it.
        stick: as measured.
        system: the units of the messages.

    Raises:
        ValueProblem: with every reading that cannot be of the piece's section.
    """

    def say(length: Length) -> str:
        text = write_length(length, system, 64)
        return f"{text} mm" if system is System.MM else text

    name = part.stock.designation
    wrong = [
        f"{stick.piece} {what} {say(read)} is more than {say(most)} "
        + (f"off the {say(wanted)} of {name}" if wanted else f"and no {name} comes so")
        + ": check the reading, and which side was read"
        for what, read, wanted, most in _compared(part, stick)
        if abs(read - wanted) > most
    ]
    if wrong:
        raise ValueProblem("\n".join(wrong))


def _compared(part: Part, stick: Stick) -> Iterator[tuple[str, Length, Length, Length]]:
    """What was read, its value, what it should be about, and how far off it may be."""
    (low, high), (far, near) = extent_y(part.stock), extent_z(part.stock)
    deep = high - low
    wide = deep if isinstance(part.stock, Plate) else near - far
    long = stick.length or part.length
    found: list[tuple[str, Length | None, Length, Length]] = []
    for end in End:
        read = stick.at(end)
        found += [
            (f"{end} end depth", read.depth, deep, deep * _OFF),
            (f"{end} end top width", read.top_width, wide, wide * _OFF),
            (f"{end} end bottom width", read.bottom_width, wide, wide * _OFF),
            (f"{end} end top tilt", read.top_tilt, ZERO, wide * _OFF),
            (f"{end} end bottom tilt", read.bottom_tilt, ZERO, wide * _OFF),
        ]
    found += [
        ("web off centre", stick.web_off, ZERO, wide * _OFF),
        ("camber", stick.camber, ZERO, long * _BOW),
        ("sweep", stick.sweep, ZERO, long * _BOW),
    ]
    for what, value, wanted, most in found:
        if value is not None:
            yield what, value, wanted, most
