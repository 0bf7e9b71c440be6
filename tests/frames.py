"""Frames for tests, all of them invented: bays of girders with infill beams between columns."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from importlib.resources import files

from gageline.detail import FullJob, read_full

__all__ = ["bays", "demo_frame", "one_bay"]


@cache
def demo_frame() -> FullJob:
    """The demo's frame, detailed once for all tests."""
    return read_full(files("gageline.demo").joinpath("mezzanine-frame.toml").read_text("utf-8"))


def one_bay(more: str, *, beam: str = "W18x50", units: str = "ft-in", span: str = "20'-0") -> str:
    """A job document with the beam B1 between two girders that nothing carries, its table the last.

    Args:
        more: further lines of the beam's table.
        beam: its section.
        units: of the job.
        span: between the girders, and as long as they are, in those units.
    """
    floor, at = ("4200", "2400") if units == "mm" else ("14'-0", "8'-0")
    return f"""
[job]
name = "One bay"
units = "{units}"

[frame.grid]
x = {{ names = ["1", "2"], spacing = ["{span}"] }}
y = {{ names = ["A", "B"], spacing = ["{span}"] }}

[[frame.level]]
name = "Floor"
elevation = "{floor}"

[[frame.member]]
name = "G1"
stock = "W21x62"
from = "1/A"
to = "2/A"
top = "Floor"
ends = {{ connection = "free" }}

[[frame.member]]
name = "G2"
stock = "W21x62"
from = "1/B"
to = "2/B"
top = "Floor"
ends = {{ connection = "free" }}

[[frame.member]]
name = "B1"
stock = "{beam}"
from = {{ on = "G1", at = "{at}" }}
to = {{ on = "G2", at = "{at}" }}
top = "Floor"
{more}
"""


def bays(
    xs: Sequence[float],
    ys: Sequence[float],
    infill: int,
    *,
    units: str = "ft-in",
    drops: Sequence[float] = (),
    skew: float = 0.0,
    levels: int = 1,
    sheet: str = "",
) -> str:
    """A job document with a frame.

    Args:
        xs: spacings of the grid lines across x, inches.
        ys: spacings of the grid lines across y, inches.
        infill: beams between girders in each bay.
        units: of the job.
        drops: of the infill beams under the level, inches, taken in turn.
        skew: how much further along the upper girder an infill beam ends, inches.
        levels: floors one over the other.
        sheet: paper of the job; empty for its usual one.
    """
    nx, ny = [str(n + 1) for n in range(len(xs) + 1)], [chr(65 + n) for n in range(len(ys) + 1)]
    out = [
        "[job]",
        'name = "bays"',
        f'units = "{units}"',
        f'sheet = "{sheet}"' if sheet else "",
        "[frame.grid]",
    ]
    for axis, names, spacing in (("x", nx, xs), ("y", ny, ys)):
        quoted = ", ".join(f'"{name}"' for name in names)
        out.append(f"{axis} = {{ names = [{quoted}], spacing = [{', '.join(map(_say, spacing))}] }}")
    for floor in range(levels + 1):
        out += ["[[frame.level]]", f'name = "L{floor}"', f"elevation = {_say(168 * floor)}"]
    for y in ny:
        for x in nx:
            place = f'at = "{x}/{y}"\nstock = "W10x49"\nbase = "L0"\ntop = "L{levels}"'
            out += ["[[frame.column]]", f'name = "C{x}{y}"', place]
    for floor in range(1, levels + 1):
        out += _floor(f"L{floor}", nx, ny, list(xs), infill, list(drops), skew)
    return "\n".join(out) + "\n"


def _say(inches: float) -> str:
    return f'"{inches} in"'


def _floor(
    level: str, nx: list[str], ny: list[str], xs: list[float], infill: int, drops: list[float], skew: float
) -> list[str]:
    out: list[str] = []

    def member(name: str, stock: str, one: str, two: str, more: str = "") -> None:
        ends = f"from = {one}\nto = {two}"
        out.append(f'[[frame.member]]\nname = "{name}"\nstock = "{stock}"\n{ends}\ntop = "{level}"\n{more}')

    for y in ny:
        for i, x in enumerate(nx[:-1]):
            member(f"G{level}{x}{y}", "W21x62", f'"{x}/{y}"', f'"{nx[i + 1]}/{y}"')
    for x in nx:
        for j, y in enumerate(ny[:-1]):
            member(f"E{level}{x}{y}", "W16x26", f'"{x}/{y}"', f'"{x}/{ny[j + 1]}"')
    count = 0
    for j, y in enumerate(ny[:-1]):
        for i, x in enumerate(nx[:-1]):
            for n in range(infill):
                at = xs[i] * (n + 1) / (infill + 1)
                drop = f"drop = {_say(drops[count % len(drops)])}" if drops else ""
                count += 1
                member(
                    f"B{level}{x}{y}{n + 1}", "W14x22",
                    f'{{ on = "G{level}{x}{y}", at = {_say(at)} }}',
                    f'{{ on = "G{level}{x}{ny[j + 1]}", at = {_say(at + skew)} }}', drop,
                )  # fmt: skip
    return out
