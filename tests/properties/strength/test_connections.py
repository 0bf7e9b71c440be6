"""Laws of whole connections: the units do not matter, and more steel never carries less."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from connections import EXAMPLES
from gageline.job import read_job
from gageline.strength import (
    Beam,
    Bolted,
    Connection,
    Fillet,
    Material,
    Method,
    Verdict,
    check_connection,
    check_strength,
    lighter,
    remedy,
)

METHODS = st.sampled_from(Method)
BOLTED = st.sampled_from(["II.A-1A", "II.A-2A", "II.A-4", "II.A-5", "II.A-11A", "II.A-18", "II.A-28A"])
ANY = st.sampled_from(sorted(set(EXAMPLES) - {"II.A-2B", "II.A-11B"}))
COPED = st.sampled_from(["II.A-4", "II.A-5", "II.A-6", "II.A-11A", "II.A-18", "II.A-28A"])
CAN_BE_PULLED = st.sampled_from(["II.A-1A", "II.A-2A", "II.A-4", "II.A-18", "II.A-2B", "II.A-11B"])
PULLED = st.sampled_from(["II.A-2B", "II.A-11B"])
SLACK = 1e-9


def utilisation(connection: Connection, method: Method) -> float:
    return check_connection(connection, method).utilisation


def beam_of(connection: Connection) -> Beam:
    assert connection.beam is not None
    return connection.beam


def rows_of(connection: Connection) -> int:
    joints = (connection.to_beam, connection.to_support)
    return next(joint.rows for joint in joints if isinstance(joint, Bolted))


def with_rows(connection: Connection, rows: int) -> Connection:
    def joint(old: Bolted | Fillet) -> Bolted | Fillet:
        return replace(old, rows=rows) if isinstance(old, Bolted) else old

    length = connection.fitting.length + 3.0 * (rows - rows_of(connection))
    return replace(
        connection,
        fitting=replace(connection.fitting, length=length),
        to_beam=joint(connection.to_beam),
        to_support=joint(connection.to_support),
    )


@given(BOLTED, st.integers(2, 11), METHODS)
@settings(max_examples=60, deadline=None)
def test_more_rows_are_never_weaker(name: str, rows: int, method: Method) -> None:
    deep = replace(beam_of(EXAMPLES[name]), d=44.0)
    if deep.top is not None:
        deep = replace(deep, top=replace(deep.top, d_c=4.0))
    connection = replace(EXAMPLES[name], beam=deep)
    fewer, more = (with_rows(connection, count) for count in (rows, rows + 1))
    assert utilisation(more, method) <= utilisation(fewer, method) + SLACK


@given(ANY, st.floats(0.25, 0.9), st.floats(1.0, 1.5), METHODS)
@settings(max_examples=80, deadline=None)
def test_a_thicker_fitting_is_never_weaker(name: str, t: float, factor: float, method: Method) -> None:
    thin, thick = (
        replace(EXAMPLES[name], fitting=replace(EXAMPLES[name].fitting, t=each)) for each in (t, t * factor)
    )
    assert utilisation(thick, method) <= utilisation(thin, method) + SLACK


@given(PULLED, st.floats(0.25, 0.7), st.floats(1.0, 1.3), METHODS)
@settings(max_examples=40, deadline=None)
def test_a_thicker_plate_of_its_own_shape_pries_no_more(
    name: str, t: float, factor: float, method: Method
) -> None:
    thin, thick = (
        replace(EXAMPLES[name], fitting=replace(EXAMPLES[name].fitting, t=each)) for each in (t, t * factor)
    )
    assert utilisation(thick, method) <= utilisation(thin, method) + SLACK


@given(ANY, st.floats(0.25, 0.9), st.floats(1.0, 1.5), METHODS)
@settings(max_examples=80, deadline=None)
def test_a_thicker_web_is_never_weaker(name: str, t_w: float, factor: float, method: Method) -> None:
    """The single angle is apart: half of the web adds to the eccentricity of its outstanding leg."""
    if name == "II.A-28A":
        return
    connection = EXAMPLES[name]
    thin, thick = (
        replace(connection, beam=replace(beam_of(connection), t_w=each)) for each in (t_w, t_w * factor)
    )
    assert utilisation(thick, method) <= utilisation(thin, method) + SLACK


@given(COPED, st.floats(0.0, 4.0), METHODS)
@settings(max_examples=80, deadline=None)
def test_a_deeper_cope_is_never_stronger(name: str, deeper: float, method: Method) -> None:
    """The cope goes down, bolts and fitting stay; the connection hangs far enough down for it."""
    beam = replace(beam_of(EXAMPLES[name]), d=24.0)
    assert beam.top is not None
    shallow = replace(beam, top=replace(beam.top, d_c=3.0))
    deep = replace(beam, top=replace(beam.top, d_c=3.0 + deeper))
    before = replace(EXAMPLES[name], beam=shallow, drop=5.0)
    after = replace(EXAMPLES[name], beam=deep, drop=5.0 - deeper)
    assert utilisation(after, method) >= utilisation(before, method) - SLACK


@given(ANY, st.floats(1.0, 1.4), st.floats(1.0, 1.4), METHODS)
@settings(max_examples=80, deadline=None)
def test_a_higher_grade_is_never_weaker(name: str, y: float, u: float, method: Method) -> None:
    connection = EXAMPLES[name]
    better = Material("better", 50.0 * y, max(65.0 * u, 50.0 * y))
    stronger = replace(
        connection,
        fitting=replace(connection.fitting, steel=better),
        beam=replace(beam_of(connection), steel=better),
        support=None if connection.support is None else replace(connection.support, steel=better),
    )
    assert utilisation(stronger, method) <= utilisation(connection, method) + SLACK


@given(CAN_BE_PULLED, st.floats(0.5, 40.0), st.floats(1.0, 2.0), METHODS)
@settings(max_examples=60, deadline=None)
def test_a_larger_axial_force_is_never_easier(name: str, N: float, factor: float, method: Method) -> None:
    less, more = (replace(EXAMPLES[name], N=each) for each in (N, N * factor))
    assert utilisation(more, method) >= utilisation(less, method) - SLACK


@given(BOLTED, METHODS)
@settings(max_examples=20, deadline=None)
def test_equal_pitches_given_one_by_one_are_the_pitch(name: str, method: Method) -> None:
    def spelt(joint: Bolted | Fillet) -> Bolted | Fillet:
        return replace(joint, uneven=joint.steps) if isinstance(joint, Bolted) else joint

    example = EXAMPLES[name]
    same = replace(example, to_beam=spelt(example.to_beam), to_support=spelt(example.to_support))
    assert utilisation(same, method) == pytest.approx(utilisation(example, method), rel=1e-12)


@given(ANY, st.floats(1.0, 300.0), METHODS)
@settings(max_examples=60, deadline=None)
def test_the_capacity_does_not_hang_on_the_reaction(name: str, V: float, method: Method) -> None:
    """Seats are apart: the longer bearing of a larger reaction bends their leg more."""
    if name == "II.A-16":
        return
    one, other = (check_connection(replace(EXAMPLES[name], V=each), method) for each in (V, 2 * V))
    assert one.capacity == pytest.approx(other.capacity, rel=1e-12)


def job_text(unit: str, scale: float, force: str) -> str:
    """One job with a beam, written in inches or in millimetres."""

    def size(inches: float) -> str:
        return f'"{inches * scale:.6f}{unit}"'

    units = "ft-in" if unit == "in" else "mm"
    return f"""
[job]
name = "units"
units = "{units}"
[practice]
bolt_grade = "A325-N"
bolt = "3/4"
[[piece]]
mark = "B1"
stock = "W18x50"
length = {size(240)}
copes = [{{ end = "left", length = {size(4)}, depth = {size(2)}, radius = {size(0.5)} }}]
left = {{ reaction = "{force}", support = "W21x62" }}
right = {{ reaction = "{force}", support = "W14x90", face = "column flange" }}
[[piece.angles]]
end = "left"
stock = "L4x3-1/2x5/16"
rows = 3
pitch = {size(3)}
drop = {size(3.5)}
end_distance = {size(1.25)}
projection = {size(0.5)}
[[piece.end_plates]]
end = "right"
grade = "A572-50"
thickness = {size(0.375)}
width = {size(6.5)}
length = {size(9)}
rows = 3
pitch = {size(3)}
gage = {size(3.5)}
end_distance = {size(1.5)}
weld = {size(0.25)}
drop = {size(3)}
"""


@given(st.integers(10, 100))
@settings(max_examples=15, deadline=None)
def test_inches_and_millimetres_give_the_same_utilisation(kips: int) -> None:
    in_inches = check_strength(read_job(job_text("in", 1.0, f"{kips} kip")))
    in_mm = check_strength(read_job(job_text("mm", 25.4, f"{kips * 4.4482216152605:.6f} kN")))
    assert len(in_inches.connections) == len(in_mm.connections) == 2
    for one, other in zip(in_inches.connections, in_mm.connections, strict=True):
        pairs = zip(one.verdict.checks, other.verdict.checks, strict=True)
        for check, same in pairs:
            assert check.title == same.title
            assert check.utilisation == pytest.approx(same.utilisation, rel=1e-6)


@given(BOLTED, st.floats(5.0, 400.0), METHODS)
@settings(max_examples=60, deadline=None)
def test_a_suggestion_passes_and_is_only_made_where_it_is_due(name: str, V: float, method: Method) -> None:
    verdict: Verdict = check_connection(replace(EXAMPLES[name], V=V), method)
    cure, less = remedy(verdict), lighter(verdict)
    assert cure is None or not verdict.passes
    assert less is None or verdict.utilisation < 0.6
    for suggestion in (cure, less):
        if suggestion is not None and suggestion.verdict is not None:
            assert suggestion.verdict.passes
            assert suggestion.verdict.connection.V == V
