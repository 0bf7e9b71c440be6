from gageline.sheets import Column, Group, Heading, Table, bind, paragraph
from gageline.sheets.flow import Part, flow, room_of
from jobs import job_of
from pages import page_texts

JOB = job_of('mark = "B1"\nstock = "W16x26"\nlength = "10\'"')
HEADING = Heading("Test")
WIDTH, HEIGHT = room_of(JOB)


def rows(count: int) -> Table:
    return Table((Column("Head"),), tuple((f"row {number}",) for number in range(count)))


def pages(*parts: Part) -> list[list[str]]:
    return page_texts(bind(JOB, "test", list(flow(JOB, HEADING, parts))))


def test_a_long_table_goes_on_under_its_head() -> None:
    first, second = pages(Part("Title", rows(60)))[:2]
    assert (first.count("Head"), second.count("Head")) == (1, 1)
    assert (first.count("Title"), second.count("Title")) == (1, 0)
    assert (first.count("Title, continued"), second.count("Title, continued")) == (0, 1)
    assert "row 59" in second


def test_a_title_stays_with_the_first_row_of_its_table() -> None:
    for count in range(38, 50):
        found = pages(Part("", rows(count)), Part("Second", rows(3)))
        (page,) = [page for page in found if "Second" in page]
        assert page.index("Second") < len(page) - 1 - page[::-1].index("row 0")


def test_a_block_is_not_split() -> None:
    block = paragraph("", "word " * 400, WIDTH)
    count = int(HEIGHT // block.height)
    found = list(flow(JOB, HEADING, [Part("", block)] * (count + 2)))
    assert len(found) == 2
    assert all(isinstance(item, Group) for draft in found for item in draft.items)


def test_nothing_makes_one_empty_page() -> None:
    assert [draft.items for draft in flow(JOB, HEADING, [])] == [()]


def test_notes_at_the_end_never_stand_alone_on_a_page() -> None:
    notes = Part("", paragraph("Notes", "word " * 60, WIDTH))
    for count in range(34, 54):
        last = pages(Part("Title", rows(count)), notes)[-1]
        assert "Notes" in last
        assert f"row {count - 1}" in last


def test_notes_at_the_end_take_rows_of_the_last_page_only() -> None:
    notes = Part("", paragraph("Notes", "word " * 60, WIDTH))
    for count in range(80, 130):
        plain, noted = pages(Part("Title", rows(count))), pages(Part("Title", rows(count)), notes)
        assert [len(page) for page in noted[: len(plain) - 1]] == [len(page) for page in plain[:-1]]
        assert len(noted) <= len(plain) + 1


def test_a_row_too_high_to_share_its_page_with_notes_leaves_them_the_next_page() -> None:
    table = Table((Column("Head"),), (("word " * 700,),))
    assert len(pages(Part("", table), Part("", paragraph("Notes", "word " * 800, WIDTH)))) == 2


def test_a_table_to_be_kept_together_goes_to_the_next_page_where_one_can_hold_it() -> None:
    notes = Part("", paragraph("Notes", "word " * 60, WIDTH))
    for count in range(30, 46):
        found = pages(Part("", rows(count)), Part("To order", rows(6), together=True), notes)
        (page,) = [page for page in found if "To order" in page]
        assert page[page.index("To order") + 2 :][:6] == [f"row {n}" for n in range(6)]
        assert not any("To order, continued" in page for page in found)
    assert (
        sum("To order, continued" in page for page in pages(Part("To order", rows(90), together=True))) == 2
    )
