import pytest

from gageline.job import Inspected, Job
from gageline.layout import lay_out
from gageline.quality import Report, Rules, blank_report, inspect
from gageline.sheets import Page, inspection_sheets
from gageline.units import Length, System
from jobs import inches, job_of
from pages import crowded, in_title_block, outside, page_texts
from sticks import ANGLES

FT_IN = job_of(f'mark = "B1"\nstock = "W16x26"\nlength = "18\'-7 1/4"\n{ANGLES}')
METRIC = job_of('mark = "M1"\nstock = "IPE 300"\nlength = 5000\n', units="mm")


def blank(job: Job) -> Report:
    layout = lay_out(job.assemblies[0], job.practice, job.system)
    return blank_report(layout, Rules(metric=job.system is System.MM))


def filled(job: Job, **readings: Length) -> Report:
    layout = lay_out(job.assemblies[0], job.practice, job.system)
    found = tuple((name.replace("_", " "), value) for name, value in readings.items())
    read = Inspected(job.assemblies[0].mark, 3, "second shift", "2026-11-25", found)
    return inspect(layout, read, Rules(metric=job.system is System.MM))


OFF = inches("18'-7")


@pytest.mark.parametrize("job", [FT_IN, METRIC], ids=["ft-in", "mm"])
def test_nothing_touches_and_nothing_leaves_the_page(job: Job) -> None:
    reports = [blank(job), filled(job, overall=OFF, left_end_square=inches("1"))]
    for page in inspection_sheets(job, reports).pages:
        assert isinstance(page, Page)
        assert not crowded(page)
        assert not outside(page)
        assert not in_title_block(page)


def test_a_blank_sheet_has_a_line_to_write_on_for_each_reading() -> None:
    report = blank(FT_IN)
    (page,) = page_texts(inspection_sheets(FT_IN, [report]))
    assert page.count("____________") == len(report.rows)
    assert "Inspection sheet" in page
    assert "Walk around the piece in this order" in page
    assert page.index("overall") < page.index("left end square") < page.index("out to out")


def test_a_filled_report_has_its_outcome_and_what_to_do() -> None:
    text = " ".join(
        text for page in page_texts(inspection_sheets(FT_IN, [filled(FT_IN, overall=OFF)])) for text in page
    )
    for said in (
        "Inspection report",
        "Outcome: ask the engineer, as far as it was read",
        "Piece no. 3, measured by second shift, 2026-11-25.",
        "ASK THE ENGINEER",
        '-1/4"',
        "What to do",
        "shim it at the support",
        "AISC 303, 6.4",
        "(common practice, no source)",
    ):
        assert said in text


def test_metric_sheets_say_that_their_limits_are_from_memory() -> None:
    text = " ".join(text for page in page_texts(inspection_sheets(METRIC, [blank(METRIC)])) for text in page)
    assert "EN 1090-2, annex D (from memory)" in text


def test_a_piece_that_was_read_all_over_and_is_good_has_nothing_to_do() -> None:
    names = {row.item.name.replace(" ", "_"): row.item.wanted for row in blank(METRIC).rows}
    text = " ".join(
        text for page in page_texts(inspection_sheets(METRIC, [filled(METRIC, **names)])) for text in page
    )
    assert "Outcome: good" in text
    assert "as far as it was read" not in text
    assert "What to do" not in text
