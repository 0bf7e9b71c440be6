"""The cutting question of a shop: the blanks of its jobs against its rack, and the plan that answers it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from gageline.errors import ValueProblem
from gageline.job import Job
from gageline.stock.blanks import Blank, blanks_of
from gageline.stock.check import check_plan
from gageline.stock.check_plates import check_plates
from gageline.stock.effort import Effort
from gageline.stock.faults import may_use
from gageline.stock.plan import lay_stick, plan_cuts
from gageline.stock.plates import Plate, PlatePlan, Sheet, plan_plates
from gageline.stock.rack import Rack, sheet_steel
from gageline.stock.records import CutPlan, Held, Offer, Piece, Steel, StickPlan
from gageline.units import Length


@dataclass(frozen=True, slots=True)
class PlateQuestion:
    """Plates of one thickness and grade, and the sheets that they can be cut from."""

    steel: Steel
    thickness: Length
    plates: tuple[Plate, ...]
    sheets: tuple[Sheet, ...]


@dataclass(frozen=True, slots=True)
class Question:
    """What is to be cut, and from what.

    Args:
        rack: saw, sticks and sheets.
        blanks: of the jobs, by mark.
        pieces: what comes from sticks.
        plates: what comes from sheets, by thickness and grade.
        done: sticks cut already.
    """

    rack: Rack
    blanks: tuple[Blank, ...]
    pieces: tuple[Piece, ...]
    plates: tuple[PlateQuestion, ...]
    done: tuple[StickPlan, ...]


@dataclass(frozen=True, slots=True)
class ShopPlan:
    """The whole cutting plan of a shop.

    Args:
        question: that it answers.
        cuts: of sticks.
        plates: of sheets, by thickness and grade.
    """

    question: Question
    cuts: CutPlan
    plates: tuple[PlatePlan, ...]

    @property
    def cents(self) -> int:
        """Cost of all sticks and sheets less what the drops earn."""
        return self.cuts.cents + sum(p.cents for p in self.plates)

    @property
    def bound(self) -> int:
        """No plan costs less, cents."""
        return self.cuts.bound + sum(p.bound for p in self.plates)


@dataclass(frozen=True, slots=True)
class Trace:
    """Where one piece comes from.

    Args:
        piece: its mark.
        steel: section, grade and finish.
        stick: number of the stick or sheet in the plan of that steel.
        stock: the mark of a stick on the rack, or "bought".
        heat: the heat number; None is filled in when the steel arrives.
        certificate: whether its certificate is on file or promised.
    """

    piece: str
    steel: str
    stick: int
    stock: str
    heat: str | None
    certificate: bool


def ask(jobs: Sequence[Job], rack: Rack) -> Question:
    """The cutting question of jobs against a rack.

    A plate is cut from bar where the rack has bar of its thickness and width, else from a sheet of its
    thickness and grade. A finish is put on after cutting, unless the rack has sticks of that finish.

    Args:
        jobs: frames detailed.
        rack: what there is to cut from.

    Raises:
        ValueProblem: no piece to cut, or a wish or a stick cut that names no piece.
    """
    blanks = blanks_of(jobs)
    _check_marks(rack, {blank.mark for blank in blanks})
    of_bar = {stick.steel for stick in rack.sticks}
    pieces, plates, thick = [], dict[Steel, list[Plate]](), dict[Steel, Length]()
    for blank in blanks:
        steel = Steel(blank.stock.designation, blank.grade, blank.finish)
        steel = steel if steel in of_bar else replace(steel, finish="")
        sheet = _sheet_for(blank, rack) if steel not in of_bar else None
        if sheet is None or blank.plate is None:
            pieces.append(_wished(blank, steel, rack))
        else:
            thick[sheet] = blank.plate.thickness
            plates.setdefault(sheet, []).append(_plate(blank, blank.plate.width, sheet, rack))
    questions = tuple(
        PlateQuestion(
            steel, thick[steel], tuple(plates[steel]), tuple(s for s in rack.sheets if s.steel == steel)
        )
        for steel in sorted(plates)
    )
    return Question(rack, blanks, tuple(pieces), questions, _done(rack, pieces))


def _check_marks(rack: Rack, marks: set[str]) -> None:
    named = [("wish", mark) for wish in rack.wishes for mark in wish.pieces]
    named += [(f"stick {done.stick} cut already", mark) for done in rack.done for mark in done.pieces]
    wrong = dict.fromkeys((what, mark) for what, mark in named if mark not in marks)
    if wrong:
        known = ", ".join(sorted(marks)[:20])
        raise ValueProblem("\n".join(f'{what}: no piece "{m}": the jobs have {known}' for what, m in wrong))


def _sheet_for(blank: Blank, rack: Rack) -> Steel | None:
    if blank.plate is None:
        return None
    steel = sheet_steel(blank.plate.thickness, blank.grade, rack.system)
    return steel if any(sheet.steel == steel for sheet in rack.sheets) else None


def _wished(blank: Blank, steel: Steel, rack: Rack) -> Piece:
    """The piece with all that is wished for it; of two wishes for one thing the later holds."""
    piece = Piece(blank.mark, steel, blank.length, blank.quantity, blank.left, blank.right, blank.turnable)
    for wish in rack.wishes:
        if blank.mark in wish.pieces:
            piece = replace(
                piece,
                heat=wish.heat or piece.heat,
                one_heat=wish.one_heat or piece.one_heat,
                certificate=wish.certificate or piece.certificate,
                needed=wish.needed or piece.needed,
            )
    return piece


def _plate(blank: Blank, width: Length, steel: Steel, rack: Rack) -> Plate:
    if any(blank.mark in wish.pieces for wish in rack.wishes):
        raise ValueProblem(
            f'"{blank.mark}" is cut from a sheet, and a wish for it cannot be kept: list bar of '
            f"{blank.stock.designation} on the rack, or take it out of the wish"
        )
    return Plate(blank.mark, steel, blank.length, width, blank.quantity, rack.grain)


def _done(rack: Rack, pieces: Sequence[Piece]) -> tuple[StickPlan, ...]:
    """The sticks cut already, laid out as the saw cut them."""
    held = {stick.mark: stick for stick in rack.sticks if isinstance(stick, Held)}
    of_mark = {piece.mark: piece for piece in pieces}
    numbers: Counter[Steel] = Counter()
    sticks = []
    for done in rack.done:
        stock = held[done.stick]
        for mark in done.pieces:
            if mark not in of_mark or of_mark[mark].steel != stock.steel:
                raise ValueProblem(
                    f'stick {stock.mark} cut already: "{mark}" is not cut from {stock.steel}: '
                    "correct the piece or the stick"
                )
            if not may_use(of_mark[mark], stock):
                raise ValueProblem(
                    f'stick {stock.mark} cut already: "{mark}" must not come from it, by its wish for a '
                    "heat, a certificate or a date: correct the stick, or take the piece out of the wish"
                )
        stick = lay_stick(stock, [of_mark[mark] for mark in done.pieces], rack.saw)
        if stick is None:
            raise ValueProblem(
                f"stick {stock.mark} cut already: its pieces are longer than the stick with kerfs, trims "
                "and grip: correct the pieces or the length"
            )
        numbers[stock.steel] += 1
        sticks.append(replace(stick, number=numbers[stock.steel], done=True))
    _check_one_heat(sticks, of_mark)
    return tuple(sticks)


def _check_one_heat(sticks: Sequence[StickPlan], of_mark: Mapping[str, Piece]) -> None:
    """Pieces that must come from one heat and are cut already must have come from one that is known."""
    begun: dict[str, tuple[str, str | None]] = {}
    for stick in sticks:
        for group in sorted({of_mark[p.mark].one_heat or "" for p in stick.pieces} - {""}):
            name = stick.stock.mark if isinstance(stick.stock, Held) else ""
            first, heat = begun.setdefault(group, (name, stick.heat))
            if stick.heat is None or stick.heat != heat:
                raise ValueProblem(
                    f'pieces of group "{group}" must come from one heat, but were cut from {first}, heat '
                    f"{heat or 'not known'}, and {name}, heat {stick.heat or 'not known'}: "
                    "correct the heats, or take the pieces out of the wish"
                )


def answer(question: Question, effort: Effort | None = None) -> ShopPlan:
    """Plan every stick and sheet, and have the plan checked by the checker that shares no code with it.

    Args:
        question: what is to be cut, and from what.
        effort: how long to search, and whom to tell.

    Raises:
        ValueProblem: everything that stands against a plan.
        ArithmeticError: the checker finds a fault in the plan (an error of the program).
    """
    effort = effort or Effort()
    rack = question.rack
    cuts = plan_cuts(question.pieces, rack.sticks, rack.saw, question.done, effort, rack.system)
    plates = tuple(plan_plates(q.plates, q.sheets, rack.burner, effort, rack.system) for q in question.plates)
    plan = ShopPlan(question, cuts, plates)
    if faults := check_answer(plan):
        raise ArithmeticError("; ".join(faults))
    return plan


def check_answer(plan: ShopPlan) -> list[str]:
    """What the independent checkers find wrong with a plan; empty where it is right."""
    question = plan.question
    wrong = check_plan(plan.cuts, question.pieces, question.rack.sticks, question.rack.saw)
    for plates, asked in zip(plan.plates, question.plates, strict=True):
        wrong += check_plates(plates, asked.plates, asked.sheets, question.rack.burner)
    return wrong


def traces(plan: ShopPlan) -> tuple[Trace, ...]:
    """Piece to stick to heat, one entry for every single piece."""
    return (*_from_sticks(plan.cuts), *_from_sheets(plan))


def _from_sticks(cuts: CutPlan) -> Iterator[Trace]:
    for section in cuts.sections:
        for stick in section.sticks:
            stock = stick.stock
            source = "bought" if isinstance(stock, Offer) else stock.mark
            for placed in stick.pieces:
                yield Trace(
                    placed.mark, str(section.steel), stick.number, source, stick.heat, stock.certificate
                )


def _from_sheets(plan: ShopPlan) -> Iterator[Trace]:
    for asked, plates in zip(plan.question.plates, plan.plates, strict=True):
        for sheet in plates.sheets:
            for laid in sheet.pieces:
                yield Trace(
                    laid.mark, str(asked.steel), sheet.number, "sheet", sheet.sheet.heat, certificate=False
                )
