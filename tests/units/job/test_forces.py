from __future__ import annotations

import pytest

from gageline.job import JobProblems, read_job


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
