from __future__ import annotations

import pytest
from pydantic import TypeAdapter, ValidationError

from gageline.job import AreaLoad, JobProblems, read_job
from gageline.job.forces import AreaLoadText
from gageline.units import parse_length


def job(entry: str) -> str:
    return f'[job]\nname = "x"\n[[piece]]\nmark = "B"\nstock = "W16x26"\nlength = "9\'-0"\n{entry}\n'


@pytest.mark.parametrize(
    ("text", "kips"), [("60 kip", 60.0), ("60kips", 60.0), ("1200 lb", 1.2), ("267 kN", 60.024)]
)
def test_forces_in_their_units(text: str, kips: float) -> None:
    (loads,) = read_job(job(f'left = {{ reaction = "{text}" }}')).loads
    assert loads.left.reaction is not None
    assert loads.left.reaction.kips == pytest.approx(kips, rel=1e-5)


@pytest.mark.parametrize(
    ("text", "per_foot"), [("1.2 kip/ft", 1.2), ("1.2klf", 1.2), ("450 plf", 0.45), ("17.5 kN/m", 1.19914)]
)
def test_line_loads_in_their_units(text: str, per_foot: float) -> None:
    (loads,) = read_job(job(f'loads = [{{ uniform = "{text}" }}]')).loads
    assert loads.loads[0].uniform is not None
    assert loads.loads[0].uniform.kips_per_inch * 12 == pytest.approx(per_foot, rel=1e-5)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ('"60"', '"60" is no force: write a number and its unit, "12.5 kip"'),
        ("60", "60 is no force: write a number and its unit"),
        ('"60 t"', '"60 t" has a unit that is no force: use kip, kips, lb, kN'),
        ('"0 kip"', '"0 kip" must be above 0 and at most 100000 kip'),
    ],
)
def test_what_is_no_force_is_refused(text: str, message: str) -> None:
    with pytest.raises(JobProblems) as refused:
        read_job(job(f"left = {{ reaction = {text} }}"))
    assert message in str(refused.value)


def area(text: object) -> AreaLoad:
    return TypeAdapter(AreaLoadText).validate_python(text)


@pytest.mark.parametrize(
    ("text", "width", "per_foot"),
    [("100 psf", "7'-6", 0.75), ("0.1 ksf", "7'-6", 0.75), ("60lb/ft2", "10'-0", 0.6)],
)
def test_area_loads_over_a_width(text: str, width: str, per_foot: float) -> None:
    load = area(text).over(parse_length(width))
    assert load.kips_per_inch * 12 == pytest.approx(per_foot, rel=1e-12)


def test_metric_area_loads_over_a_width() -> None:
    assert area("4.8 kPa").over(parse_length("2500mm")).text == "12 kN/m"
    assert area("4.8 kN/m2").text == "4.8 kN/m2"
    # 4.788 kPa is 100 psf (1 psf = 47.88 Pa)
    over = parse_length("7'-6")
    assert area("4.788 kPa").over(over).kips_per_inch == pytest.approx(
        area("100 psf").over(over).kips_per_inch, rel=1e-4
    )


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("100", '"100" is no load on an area: write a number and its unit, "12.5 psf"'),
        ("100 plf", '"100 plf" has a unit that is no load on an area: use psf, lb/ft2, ksf, kPa, kN/m2'),
        (True, "true is no load on an area"),
    ],
)
def test_what_is_no_area_load_is_refused(text: object, message: str) -> None:
    with pytest.raises(ValidationError) as refused:
        area(text)
    assert message in str(refused.value)
