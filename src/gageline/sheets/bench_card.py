"""The bench card: the unfolded stick, the numbered steps, where fittings sit, and how exact it is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from gageline.job import Job
from gageline.layout import Layout, PartLayout, Seat, bench_of
from gageline.sheets.boxes import line_height
from gageline.sheets.furniture import Block, Draft, Heading, bind, paragraph, practice_block, space
from gageline.sheets.scene import Group, Item, Level, Sheet, Text
from gageline.sheets.step_rows import step_block, steps_head
from gageline.sheets.style import BODY, HEADING, Weight
from gageline.sheets.table import Column, Table, table_blocks
from gageline.sheets.unfolded import face_name, unfolded_blocks
from gageline.units import Length, System, counted, round_to

__all__ = ["bench_cards"]

_INSET = 2.5


@dataclass(frozen=True, slots=True)
class _Card:
    """What one card is made of.

    Args:
        heading: for its title blocks.
        laid: the part on the bench.
        layout: of the piece that it is, or that it belongs to.
        whole: it is the piece itself and not one of its fittings.
    """

    heading: Heading
    laid: PartLayout
    layout: Layout
    whole: bool


def bench_cards(job: Job, layouts: Sequence[Layout]) -> Sheet:
    """The cards of a job: one a piece, then one for each fitting that has something to mark.

    Args:
        job: whose pieces they are.
        layouts: of the pieces to print, in their order.

    Returns:
        The pages, as many as each card needs.

    Raises:
        ValueProblem: a text with a character that the font lacks, or a view too small for its readings.
    """
    cards = [_piece_card(layout) for layout in layouts] + list(_fitting_cards(layouts))
    return bind(job, "bench cards", [draft for card in cards for draft in _drafts(job, card)])


def _piece_card(layout: Layout) -> _Card:
    assembly = layout.assembly
    heading = Heading(
        "Bench card", assembly.mark, assembly.quantity, assembly.hand_of, _detail(layout.main, layout),
        "Picture not to scale", system=_system(layout.main, layout),
    )  # fmt: skip
    return _Card(heading, layout.main, layout, whole=True)


def _fitting_cards(layouts: Sequence[Layout]) -> Iterator[_Card]:
    """Each fitting mark once, with how many are wanted over all the pieces."""
    first: dict[str, tuple[PartLayout, Layout]] = {}
    counts: dict[str, int] = {}
    for layout in layouts:
        for laid in layout.fittings:
            mark = laid.part.mark
            first.setdefault(mark, (laid, layout))
            counts[mark] = counts.get(mark, 0) + laid.quantity * layout.assembly.quantity
    for mark, (laid, layout) in first.items():
        heading = Heading(
            "Bench card, fitting", mark, counts[mark], None, _detail(laid, layout),
            "Picture not to scale", system=_system(laid, layout),
        )  # fmt: skip
        yield _Card(heading, laid, layout, whole=False)


def _system(laid: PartLayout, layout: Layout) -> System:
    """The units that a part is marked in."""
    return bench_of(laid.part, layout.tape, layout.system).read_in


def _detail(laid: PartLayout, layout: Layout) -> str:
    part = laid.part
    unit = " mm" if layout.system is System.MM else ""
    length = bench_of(part, layout.tape, layout.system).say(part.length)
    return f"{part.stock.designation} {part.grade}, {length}{unit}"


def _drafts(job: Job, card: _Card) -> Iterator[Draft]:
    room = space(job)
    width = room.width - 2 * _INSET
    high = room.height - 2 * _INSET
    for blocks in _pages(_blocks(job, card, width, high), steps_head(width), high):
        items: list[Item] = []
        top = room.top + _INSET
        for block in blocks:
            items.append(Group(block.items, room.left + _INSET, top))
            top += block.height
        yield Draft(card.heading, tuple(items))


@dataclass(frozen=True, slots=True)
class _Piece:
    """A block, and whether it is a step, which stands under the heads of the columns."""

    block: Block
    step: bool = False


def _blocks(job: Job, card: _Card, width: float, height: float) -> Iterator[_Piece]:
    laid, layout = card.laid, card.layout
    for block in unfolded_blocks(laid, width, height):
        yield _Piece(block)
    yield _Piece(_facts(laid, layout, width))
    yield _Piece(_spaced(practice_block(job, width, BODY)))
    for step in laid.steps:
        yield _Piece(step_block(step, laid.part.profile, width), step=True)
    if card.whole and layout.seats:
        for block in _seats(layout, width, height):
            yield _Piece(block)


def _pages(pieces: Iterable[_Piece], head: Block, height: float) -> Iterator[list[Block]]:
    """Blocks set on pages without splitting one, the heads of the columns over the first step of a page.

    What follows the steps never opens a page alone: the last step goes there with it.
    """
    page: list[Block] = []
    free = height
    headed = False
    last: Block | None = None  # the step that the page ends with
    for piece in pieces:
        need = piece.block.height + (head.height if piece.step and not headed else 0.0)
        if page and need > free + 1e-9:
            used = head.height + last.height if last and not piece.step and page[-2] is not head else height
            if last and used + need <= height:
                yield page[:-1]
                page, free, headed = [head, last], height - used, True
            else:
                yield page
                page, free, headed = [], height, False
        if piece.step and not headed:
            page.append(head)
            free -= head.height
            headed = True
        page.append(piece.block)
        free -= piece.block.height
        last = piece.block if piece.step else None
    if page:
        yield page


def _spaced(block: Block, above: float = 3.0) -> Block:
    return Block((Group(block.items, 0.0, above),), block.height + above)


def _facts(laid: PartLayout, layout: Layout, width: float) -> Block:
    """The accuracy line and the count of set-ups, in two paragraphs."""
    blocks = [paragraph("How exact", _exactness(laid, layout), width, BODY)]
    if laid.by_hand:
        saved = f"saves {laid.saving}" if laid.saving >= 0 else f"costs {-laid.saving} more"
        words = (
            f"Holes with tape and square: {counted(laid.by_hand, 'placing')}. With the hole template: "
            f"{laid.with_template}, which {saved}."
        )
        blocks.append(paragraph("", words, width, BODY))
    top, items = 0.0, []
    for block in blocks:
        items.append(Group(block.items, 0.0, top))
        top += block.height
    return Block(tuple(items), top + 2.0)


def _exactness(laid: PartLayout, layout: Layout) -> str:
    bench = bench_of(laid.part, layout.tape, layout.system)
    tape = bench.say(bench.tape)
    unit = " mm" if layout.system is System.MM else ""
    system = bench.read_in
    exact = laid.accuracy
    return (
        f"Rounding to the {tape}{unit} tape moves no mark more than {_fine(exact.mark, system)} and "
        f"no hole-to-hole distance more than {_fine(exact.hole_to_hole, system)}; inside a pattern "
        f"that mates with another piece {_fine(exact.in_pattern, system)}."
    )


def _fine(length: Length, system: System) -> str:
    """A small length in decimals: thousandths of an inch or hundredths of a millimetre."""
    if not length:
        return "0"
    if system is System.MM:
        return f"{round_to(length, Length(64)).mm:.2f} mm"
    return f'{length.inches:.3f}"'


_COLUMNS = (
    Column("Mark", weight=Weight.BOLD, wraps=False), Column("Fitting"), Column("Stock"), Column("On"),
    Column("Past the end"), Column("Top edge down"), Column("First row down"), Column("Joined"),
)  # fmt: skip


def _seats(layout: Layout, width: float, height: float) -> Iterator[Block]:
    """Where the fittings sit."""
    title = Text(0.0, 3.0, "Fittings and where they sit", HEADING, Weight.BOLD, level=Level.TOP)
    top = 3.0 + line_height(HEADING) + 1.5
    table = Table(_COLUMNS, tuple(_seat_row(layout, seat) for seat in layout.seats))
    room = height - top
    for number, (group, deep) in enumerate(table_blocks(table, width, room, room)):
        if number:
            yield Block((group,), deep)
        else:
            yield Block((title, Group((group,), 0.0, top)), top + deep)


def _seat_row(layout: Layout, seat: Seat) -> tuple[str, ...]:
    fitting, main = seat.fitting, layout.main.part
    face = face_name(main.profile, fitting.on).lower() if fitting.on else f"{fitting.end} end"
    past, drop, row = seat.projection, seat.drop, seat.first_row
    if (stand := seat.stand) is not None:
        face, past, drop, row = stand.cap.part.mark, stand.out, stand.drop, stand.first_row
    bench = bench_of(main, layout.tape, layout.system)

    def say(length: Length | None, behind: str, more: str = "") -> str:
        if length is None:
            return "-"
        text = bench.say(length)
        over = f"{text.removeprefix('-')} {behind}"
        return (over if text.startswith("-") else text) + more

    cut = " along the cut" if seat.along_cut else ""
    return (
        fitting.part.mark, fitting.name, fitting.part.stock.designation, face,
        say(past, "short"), *(say(level, "above", cut) for level in (drop, row)), fitting.join,
    )  # fmt: skip
