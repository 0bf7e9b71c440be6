"""An independent check of cutting plans: it shares no code with the planner and adds everything up again."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import ceil, hypot

from gageline.stock.records import CutPlan, End, Held, Offer, Piece, Placed, Saw, SectionPlan, StickPlan


def check_counts(
    stocks: Sequence[tuple[int, int, int | None]],
    items: Sequence[tuple[int, int]],
    used: Iterable[tuple[int, dict[int, int], int]],
    cost: int,
) -> list[str]:
    """Check a plan in whole numbers, as benchmark instances have it.

    Args:
        stocks: (length, cost, number on hand or None) of each kind of stick.
        items: (length, demand) of each kind of piece.
        used: (kind of stick, {kind of piece: count}, number of sticks cut so).
        cost: what the plan says it costs.

    Returns:
        What is wrong, one sentence each; empty where the plan is right.
    """
    wrong = []
    made: Counter[int] = Counter()
    taken: Counter[int] = Counter()
    spent = 0
    for kind, counts, times in used:
        length, price, _ = stocks[kind]
        fill = sum(items[i][0] * n for i, n in counts.items())
        if times < 1 or min(counts.values(), default=0) < 1:
            wrong.append(f"stick of {length} cut {times} times to {counts}: counts start at 1")
        if fill > length:
            wrong.append(f"stick of {length} is filled to {fill}")
        taken[kind] += times
        spent += price * times
        for i, n in counts.items():
            made[i] += n * times
    for i, (length, demand) in enumerate(items):
        if made[i] != demand:
            wrong.append(f"piece of {length}: {made[i]} cut, {demand} wanted")
    for kind, (length, _, limit) in enumerate(stocks):
        if limit is not None and taken[kind] > limit:
            wrong.append(f"stick of {length}: {taken[kind]} used, {limit} on hand")
    if spent != cost:
        wrong.append(f"the plan says it costs {cost}, the sticks cost {spent}")
    return wrong


def check_plan(plan: CutPlan, pieces: Sequence[Piece], stocks: Sequence[Offer | Held], saw: Saw) -> list[str]:
    """Check a whole plan: demand, lengths, cuts, limits, heats, certificates, dates, drops and cost.

    Args:
        plan: the plan.
        pieces: all pieces that were asked for.
        stocks: all sticks there were.
        saw: the saw.

    Returns:
        What is wrong, one sentence each; empty where the plan is right.
    """
    of_mark = {p.mark: p for p in pieces}
    sticks = [s for section in plan.sections for s in section.sticks]
    made = Counter(p.mark for s in sticks for p in s.pieces)
    wrong = [f"{m}: {made[m]} cut, {p.quantity} wanted" for m, p in of_mark.items() if made[m] != p.quantity]
    wrong += [f"{m}: not asked for" for m in made if m not in of_mark]
    if wrong:
        return wrong
    for section in plan.sections:
        wrong += _check_section(section, saw)
        for stick in section.sticks:
            wrong += [f"{section.steel} stick {stick.number}: {w}" for w in _check_stick(stick, of_mark, saw)]
    return wrong + _check_stock(sticks, stocks) + _check_heats(sticks, of_mark)


def _check_section(section: SectionPlan, saw: Saw) -> list[str]:
    wrong = []
    ways = {
        (s.stock.length.ticks, *(p.stop.ticks - p.start.ticks for p in s.pieces))
        for s in section.sticks
        if not s.done
    }
    if saw.most_setups is not None and len(ways) > saw.most_setups:
        wrong.append(f"{section.steel}: {len(ways)} set-ups, at most {saw.most_setups} are allowed")
    if section.bound > sum(s.stock.cents - s.credit for s in section.sticks):
        wrong.append(f"{section.steel}: the bound {section.bound} is above the cost")
    if [s.number for s in section.sticks] != list(range(1, len(section.sticks) + 1)):
        wrong.append(f"{section.steel}: sticks are not numbered 1, 2, 3, ...")
    wrong += [
        f"{section.steel}: a stick of {s.stock.steel}"
        for s in section.sticks
        if s.stock.steel != section.steel
    ]
    return wrong


def _check_stick(stick: StickPlan, of_mark: dict[str, Piece], saw: Saw) -> list[str]:
    """Running dimensions, cuts between pieces, and the drop, in ticks."""
    wrong = []
    if not stick.pieces:
        return ["nothing is cut from it"]
    for placed in stick.pieces:
        piece = of_mark[placed.mark]
        if placed.stop.ticks - placed.start.ticks != piece.length.ticks:
            wrong.append(f"{placed.mark} is cut to {placed.stop.ticks - placed.start.ticks} ticks")
        if piece.steel != stick.stock.steel:
            wrong.append(f"{placed.mark} is of another steel")
        if placed.turned and not piece.turnable:
            wrong.append(f"{placed.mark} may not be turned")
    first, last = stick.pieces[0], stick.pieces[-1]
    opening = _blade(_ends(first, of_mark)[0], saw) if _ends(first, of_mark)[0].run.ticks else 0
    if first.start.ticks < saw.start_trim.ticks + opening or first.shares:
        wrong.append(f"{first.mark} starts inside the trim")
    for before, after in pairwise(stick.pieces):
        wrong += _check_joint(before, after, of_mark, saw)
    end = stick.stock.length.ticks - saw.end_trim.ticks - saw.grip.ticks
    if last.stop.ticks > end:
        wrong.append(f"{last.mark} ends beyond what the saw can use")
    drop = max(0, stick.stock.length.ticks - last.stop.ticks - _blade(_ends(last, of_mark)[1], saw))
    if stick.drop.ticks != drop:
        wrong.append(f"the drop is {drop} ticks, not {stick.drop.ticks}")
    kept = drop > 0 and drop >= saw.keep.ticks
    credit = drop * saw.drop_percent * stick.stock.cents // (100 * stick.stock.length.ticks) if kept else 0
    if (stick.kept, stick.credit) != (kept, credit):
        wrong.append(f"the drop earns {credit}, not {stick.credit}")
    return wrong


def _ends(placed: Placed, of_mark: dict[str, Piece]) -> tuple[End, End]:
    piece = of_mark[placed.mark]
    return (piece.right, piece.left) if placed.turned else (piece.left, piece.right)


def _blade(end: End, saw: Saw) -> int:
    """Ticks of stick that the blade takes at an end: kerf over the cosine of the angle."""
    if end.run.ticks == 0:
        return saw.kerf.ticks
    return ceil(round(saw.kerf.ticks * hypot(end.run.ticks, end.across.ticks) / end.across.ticks, 6))


def _check_joint(before: Placed, after: Placed, of_mark: dict[str, Piece], saw: Saw) -> list[str]:
    last, first = _ends(before, of_mark)[1], _ends(after, of_mark)[0]
    gap = after.start.ticks - before.stop.ticks
    name = f"{before.mark} and {after.mark}"
    if not after.shares:
        square = 0 if last.run.ticks and first.run.ticks else saw.kerf.ticks
        need = square + sum(_blade(e, saw) for e in (last, first) if e.run.ticks)
        return [] if gap >= need else [f"{name} stand {gap} ticks apart, the cuts need {need}"]
    one, other = of_mark[before.mark], of_mark[after.mark]
    alike = (last.run, last.across, last.plane) == (
        first.run,
        first.across,
        first.plane,
    ) and last.run.ticks > 0
    parallel = (one.turnable and other.turnable) or (
        not one.turnable and not other.turnable and last.long_side != first.long_side
    )
    if not (alike and parallel):
        return [f"{name} cannot share a cut"]
    return [] if gap >= _blade(last, saw) - last.run.ticks else [f"{name} overlap at their shared cut"]


def _check_stock(sticks: Sequence[StickPlan], stocks: Sequence[Offer | Held]) -> list[str]:
    wrong = []
    used = Counter(s.stock for s in sticks)
    there: dict[Offer | Held, float] = defaultdict(float)
    for stock in stocks:
        many = float("inf") if isinstance(stock, Offer) and stock.limit is None else 0.0
        there[stock] += 1.0 if isinstance(stock, Held) else many or float(stock.limit or 0)
    # a plan made after some sticks were cut has offers with what was left of their limit
    for stock, count in used.items():
        have = there.get(stock)
        if have is None:
            wrong.append(f"{stock.steel}: a stick of {stock.length.ticks} ticks that there is none of")
        elif count > have:
            wrong.append(
                f"{stock.steel}: {count} sticks of {stock.length.ticks} ticks used, {have:.0f} there"
            )
    return wrong


def _check_heats(sticks: Sequence[StickPlan], of_mark: dict[str, Piece]) -> list[str]:
    wrong = []
    heats: dict[str, set[str | None]] = defaultdict(set)
    for stick in sticks:
        stock = stick.stock
        for placed in stick.pieces:
            piece = of_mark[placed.mark]
            if piece.heat is not None and stock.heat != piece.heat:
                wrong.append(f"{piece.mark} is from heat {stock.heat}, wanted {piece.heat}")
            if piece.certificate and not stock.certificate:
                wrong.append(f"{piece.mark} is from a stick without a certificate")
            if isinstance(stock, Offer) and stock.arrives and piece.needed and stock.arrives > piece.needed:
                wrong.append(f"{piece.mark} is from a stick that comes too late")
            if piece.one_heat is not None:
                heats[piece.one_heat].add(stock.heat)
    for group, found in heats.items():
        if len(found) > 1 or None in found:
            wrong.append(f"group {group} comes from heats {sorted(map(str, found))}")
    return wrong
