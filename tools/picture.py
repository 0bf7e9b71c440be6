"""Draw the picture of the README: the first page of a bench card of the demo job.

python tools/picture.py        writes docs/card.png
"""

from __future__ import annotations

from dataclasses import replace
from importlib.resources import files
from pathlib import Path

import pypdfium2

from gageline.job import read_job
from gageline.layout import lay_out
from gageline.sheets import bench_cards, to_pdf

ROOT = Path(__file__).resolve().parent.parent
PIECE = "B2"
DOTS = 1.4  # pixels to a point


def main() -> None:
    """Write the picture."""
    job = read_job((files("gageline") / "demo" / "mezzanine.toml").read_text("utf8"))
    job = replace(job, assemblies=(job.piece(PIECE),))
    cards = bench_cards(job, [lay_out(piece, job.practice, job.system) for piece in job.assemblies])
    page = pypdfium2.PdfDocument(to_pdf(cards))[0]
    page.render(scale=DOTS).to_pil().quantize(32).save(ROOT / "docs" / "card.png", optimize=True)


if __name__ == "__main__":
    main()
