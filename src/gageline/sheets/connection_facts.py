"""What a connection is made of, in words for its check sheet."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.strength import Beam, Bolted, Connection, Fillet, Kind, Notch, Support, Tongue, force_text
from gageline.units import Length, System, inches_text, millimetres

__all__ = ["facts_of"]


def facts_of(connection: Connection, system: System) -> tuple[tuple[str, str], ...]:
    """The data of a connection, name and text.

    Args:
        connection: the connection.
        system: units of the job.
    """
    return tuple(_facts(connection, system))


def _facts(connection: Connection, system: System) -> Iterator[tuple[str, str]]:
    fitting = connection.fitting
    if connection.tongue is not None:
        yield "Beam", f"{connection.tongue.section}, its end closed"
        yield "Tongue", _tongue(connection.tongue, system)
        setback, under = _size(connection.setback, system), _size(connection.under_run, system)
        yield "Setback", f"{setback} to the tongue, and {under} that the beam may be short"
    if connection.beam is not None:
        yield "Beam", _beam(connection.beam, system)
        off, under = _size(connection.setback + connection.play, system), _size(connection.under_run, system)
        play = f", the fitting {_size(connection.play, system)} off the face" if connection.play else ""
        yield "Setback", f"{off}{play}, and {under} that the beam may be short"
    length = _size(fitting.length, system)
    yield "Fitting", f"{fitting.name}, {length} long, {_steel(fitting.steel.grade, fitting.steel.F_y)}"
    if connection.kind is not Kind.SEAT:
        yield "To the beam", _joint(connection.to_beam, system)
    yield "To the support", _joint(connection.to_support, system)
    yield "Support", _support(connection.support, system)
    if connection.skew:
        yield "Skew", f"{connection.skew:.1f} degrees in the plan"


def _size(inches: float, system: System) -> str:
    length = Length.from_inches(inches)
    return inches_text(length, 64) if system is System.FT_IN else f"{millimetres(length)} mm"


def _steel(grade: str, F_y: float) -> str:
    return f"{grade} (Fy {F_y:.3g} ksi)"


def _beam(beam: Beam, system: System) -> str:
    copes = [
        f"{edge} cope {_size(notch.c, system)} long, {_size(notch.d_c, system)} deep"
        for edge, notch in (("top", beam.top), ("bottom", beam.bottom))
        if isinstance(notch, Notch)
    ]
    return ", ".join([f"{beam.section}, {_steel(beam.steel.grade, beam.steel.F_y)}", *(copes or ["no cope"])])


def _tongue(tongue: Tongue, system: System) -> str:
    plate, cap = tongue.plate, tongue.cap
    return (
        f"{plate.name}, {_size(plate.length, system)} long, {_steel(plate.steel.grade, plate.steel.F_y)}, "
        f"fillet weld {_size(tongue.weld.leg, system)} to {cap.name}, {_size(tongue.to_cap, system)} from "
        "the bolts"
    )


def _joint(joint: Bolted | Fillet, system: System) -> str:
    if isinstance(joint, Fillet):
        return f"fillet weld {_size(joint.leg, system)}, {joint.F_EXX:.0f} ksi"
    apart = _size(joint.between, system)
    columns = f" in {joint.columns} columns {apart} apart" if joint.columns > 1 else ""
    steps = joint.uneven or joint.steps[:1]
    pitch = f" at {', '.join(_size(step, system) for step in steps)}" if steps else ""
    holes = joint.holes.kind.value
    edges = f"end distance {_size(min(joint.edge_top, joint.edge_bottom), system)}"
    side = f"edge {_size(joint.edge_side, system)}"
    rows = f"{joint.rows} row{'s' if joint.rows > 1 else ''}{columns} of {joint.size} bolts{pitch}"
    held = f"slip-critical, faying surfaces of class {joint.surface}, " if joint.surface else ""
    return f"{rows}, group {joint.group}-{joint.threads}, {held}{holes} holes, {edges}, {side}"


def _support(support: Support | None, system: System) -> str:
    if support is None:
        return "not known"
    both = ""
    if support.opposite:
        other = force_text(support.opposite, system)
        rows = f" in {support.opposite_rows} rows" if support.opposite_rows else ""
        both = f", beams on both sides, the other one with {other}{rows}"
    t = f"{support.t:.3f} in" if system is System.FT_IN else _size(support.t, system)
    return f"{support.section}, {support.face.value} {t} thick, {support.steel.grade}{both}"
