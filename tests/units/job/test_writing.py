from __future__ import annotations

from pathlib import Path

import pytest

from gageline.job import read_document, read_job, write_document

DEMO = Path(__file__).parents[3] / "src/gageline/demo"


@pytest.mark.parametrize("name", ["mezzanine.toml", "metric.toml"])
def test_the_demo_jobs_are_the_same_written_and_read_again(name: str) -> None:
    text = (DEMO / name).read_text(encoding="utf-8")
    written = write_document(read_document(text))
    assert read_document(written) == read_document(text)
    assert read_job(written) == read_job(text)


def test_only_what_was_given_is_written_in_the_words_of_the_document() -> None:
    piece = 'mark = "B1"\nlength = 1200\nholes = [{ from = "right", x = [3, 6.5] }]\n'
    text = f'[job]\nname = "t"\nunits = "mm"\n[[piece]]\n{piece}'
    assert write_document(read_document(text)) == (
        '[job]\nname = "t"\nunits = "mm"\n\n[[piece]]\nmark = "B1"\nlength = "1200 mm"\n\n'
        '[[piece.holes]]\nfrom = "right"\nx = ["3 mm", "6.5 mm"]\n'
    )
