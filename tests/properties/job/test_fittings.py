"""Fittings stand against their main part and never in it, by the bodies of both."""

from __future__ import annotations

from pathlib import Path

import pytest

from gageline.job import open_job
from gageline.solid import clashes
from jobs import job_of

DEMO = Path(__file__).parents[3] / "src/gageline/demo"
FITTINGS = {
    "bolted angles": '[[piece.angles]]\nend = "both"\nstock = "L4x3-1/2x5/16"\nrows = 2\nlength = "6 1/2"',
    "welded angles": "[[piece.angles]]\n"
    'end = "both"\nstock = "L4x3-1/2x5/16"\nrows = 2\nto_web = "welded"\nweb_leg = "long"',
    "end plates": "[[piece.end_plates]]\n"
    'end = "both"\nthickness = "3/8"\nwidth = 12\nlength = 14\nrows = 2\ngage = 3\ndrop = -1',
    "stiffeners": '[[piece.stiffeners]]\nx = 20\nthickness = "3/8"',
    "top plate along": '[[piece.plates]]\non = "top"\nx = 30\nthickness = "3/8"\nwidth = 4\nrows = 2',
    "top plate across": "[[piece.plates]]\n"
    'on = "top"\nruns = "across"\nx = 30\nthickness = "3/8"\nwidth = 4\nrows = 2',
    "near plate along": '[[piece.plates]]\nruns = "along"\nx = 30\nthickness = "3/8"\nwidth = 4\nrows = 2',
    "near plate across": '[[piece.plates]]\nx = 30\nthickness = "3/8"\nwidth = 4\nrows = 2',
    "far plate along": "[[piece.plates]]\n"
    'on = "far"\nruns = "along"\nx = 30\nthickness = "3/8"\nwidth = 4\nrows = 2',
    "bottom plate along": '[[piece.plates]]\non = "bottom"\nx = 30\nthickness = "3/8"\nwidth = 4\nrows = 2',
}
ALL = frozenset(FITTINGS)
HOLLOW = ALL - {"bolted angles", "stiffeners"}
FITS = {
    "W16x26": ALL,
    "S12x31.8": ALL,
    "C12x20.7": ALL,
    "HSS8x8x3/8": HOLLOW,
    "Pipe8STD": HOLLOW - {"welded angles", "top plate across", "near plate across"},
    "WT9x25": ALL - {"stiffeners", "bottom plate along"},
}
CASES = [(stock, name) for stock, names in FITS.items() for name in sorted(names)]


@pytest.mark.parametrize(("stock", "name"), CASES)
def test_no_fitting_runs_into_its_main_part_nor_does_its_opposite_hand(stock: str, name: str) -> None:
    piece = f'mark = "X1"\nstock = "{stock}"\nlength = 120\n{FITTINGS[name]}\n'
    job = job_of(piece, 'mark = "X2"\nas_hand_of = "X1"\n')
    for assembly in job.assemblies:
        assert assembly.fittings
        assert not clashes(assembly)


@pytest.mark.parametrize("demo", ["mezzanine.toml", "metric.toml"])
def test_nothing_clashes_in_the_demo_jobs(demo: str) -> None:
    job = open_job(DEMO / demo)
    assert not [finding.text() for assembly in job.assemblies for finding in clashes(assembly)]


def test_a_stiffener_without_clips_does_run_into_the_fillets() -> None:
    lines = FITTINGS["stiffeners"] + "\nclip = 0\n"
    assert clashes(job_of(f'mark = "X1"\nstock = "W16x26"\nlength = 120\n{lines}').assemblies[0])
