from dataclasses import replace

from frames import demo_frame
from gageline.sheets import Page, texts
from gageline.sheets.parts_list import parts_list
from gageline.steel import find
from jobs import job_of
from pages import crowded, outside, page_texts

BEAM = 'mark = "{0}"\nquantity = {1}\nstock = "W16x26"\nlength = "10\'-0"\n'
PLATE = (
    '[[piece.plates]]\non = "near"\nx = "2\'-0"\nthickness = "3/8"\nwidth = "4"\nrows = 3\nweld = "5/16"\n'
)


def test_totals_of_the_job() -> None:
    (page,) = parts_list(job_of(BEAM.format("B1", 4) + PLATE)).pages
    assert isinstance(page, Page)
    said = [text.text for text in texts(page.items)]
    # 26 lb/ft by the tables; the body is within 0.5 % of that
    each = float(said[said.index("B1", said.index("Parts to cut")) + 5])
    assert abs(each - find("W16x26").weight * 10) < 2
    assert "12" in said  # 3 field bolts on each of 4 beams
    assert "5'-8\"" in said  # weld on both sides of 8 1/2 in, 4 times
    assert '5/16"' in said


def test_a_long_list_repeats_its_head_and_keeps_to_the_page() -> None:
    sheet = parts_list(job_of(*(BEAM.format(f"B{n}", n) for n in range(1, 90))))
    assert len(sheet.pages) > 3
    for said in page_texts(sheet)[:3]:
        assert "Mark" in said
    for page in sheet.pages:
        assert isinstance(page, Page)
        assert crowded(page) == []
        assert outside(page) == []


def test_metric_jobs_are_weighed_in_kilograms() -> None:
    job = job_of('mark = "B1"\nstock = "IPE 300"\nlength = 6000', units="mm")
    said = page_texts(parts_list(job))[0]
    assert {"Each bare, kg", "All bare, kg"} <= set(said)
    # EN 10365: IPE 300 weighs 42.2 kg/m
    assert abs(float(said[said.index("B1", said.index("Parts to cut")) + 5]) - 6 * 42.2) < 3


def test_no_page_has_the_notes_alone() -> None:
    for count in range(14, 24):
        last = page_texts(parts_list(job_of(*(BEAM.format(f"B{n}", n) for n in range(1, count)))))[-1]
        assert "Mark" in last
        assert any(text.startswith("Weights by volume") for text in last)


def test_heads_are_not_broken_inside_a_word() -> None:
    finish = "hot-dip galvanized after fabrication, touched up where it is welded at the site"
    beams = [f'{BEAM.format(f"LONG-MARK-{n}", 200)}finish = "{finish}"\n' for n in range(3)]
    hands = [f'mark = "OTHER-HAND-{n}"\nas_hand_of = "LONG-MARK-{n}"\nquantity = 3\n' for n in range(3)]
    said = page_texts(parts_list(job_of(*beams, *hands)))[0]
    assert {"Mark", "No.", "Section", "Length", "Grade", "Finish", "Hand"} <= set(said)


def test_a_piece_in_millimetres_is_listed_in_them_in_a_job_of_feet_and_inches() -> None:
    said = page_texts(parts_list(job_of('mark = "M1"\nstock = "IPE 300"\nlength = "4200 mm"\n')))[0]
    assert said.count("4200 mm") == 2


def test_shop_and_field_bolts_of_a_frame_are_listed_apart() -> None:
    full = demo_frame()
    assert full.detailed is not None
    said = [text for page in page_texts(parts_list(full.job, full.detailed)) for text in page]
    shop, field, weld = (
        said.index(title) for title in ("Shop bolts", "Field bolts", "Fillet weld in the shop")
    )
    assert shop < field < weld

    def counted(rows: list[str]) -> int:
        return sum(int(rows[n + 1]) for n, text in enumerate(rows) if text == "A325-N")

    assert counted(said[shop:field]) == sum(
        bolts.count * piece.quantity for piece in full.job.assemblies for bolts in piece.bolts
    )
    assert counted(said[field:weld]) == sum(site.count for site in full.detailed.field_bolts)


def test_a_list_of_some_pieces_does_not_say_that_it_is_of_the_whole_job() -> None:
    full = demo_frame()
    some = replace(full.job, assemblies=(full.job.piece("B1"),))
    said = page_texts(parts_list(some, full.detailed))[0]
    assert "of 2 pieces" in said
    assert "whole job" not in " ".join(said)
