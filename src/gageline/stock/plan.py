"""The cutting plan: from pieces, sticks and saw to every stick with its cuts, its cost and its proof."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import replace
from functools import partial
from itertools import product

from gageline.errors import ValueProblem
from gageline.job import say
from gageline.stock.effort import Effort
from gageline.stock.faults import find_faults, may_use, usable
from gageline.stock.nesting import Turned, arrange
from gageline.stock.problem import Packing, Pattern, Problem, Stick
from gageline.stock.records import CutPlan, Held, Offer, Piece, Placed, Saw, SectionPlan, Steel, StickPlan
from gageline.stock.reduce import Reduced, drop_credit, reduced
from gageline.stock.search import search
from gageline.stock.setups import fewer_setups, least_setups, setups_refuted
from gageline.stock.watch import Watch, start_watch
from gageline.units import ZERO, Length, System

_TIDY_SECONDS = 3.0  # for choosing among plans of equal cost


def plan_cuts(
    pieces: Sequence[Piece],
    stocks: Sequence[Offer | Held],
    saw: Saw,
    done: Sequence[StickPlan] = (),
    effort: Effort | None = None,
    system: System = System.FT_IN,
) -> CutPlan:
    """Plan which stick every piece is cut from, at the least cost.

    The cost is the price or value of every stick used, less the credit of every drop that is kept. Among
    plans of that cost, fewer set-ups are looked for, then fewer stick lengths, then larger drops in fewer
    sticks. With angled ends the plan is proven when it costs no more than one in which every angled end
    that has a match shares its cut.

    Args:
        pieces: what is to be cut, all of it, pieces of sticks already cut included.
        stocks: what can be bought and what is on the rack, sticks already cut included.
        saw: the saw.
        done: sticks already cut; they stay as they are and the rest is planned anew.
        effort: how long to search, and whom to tell.
        system: the units that refusals are written in.

    Returns:
        The plan of every steel.

    Raises:
        ValueProblem: everything that stands against a plan, one fault a line.
    """
    effort = effort or Effort()
    left, free = _without(pieces, stocks, done)
    faults = find_faults(left, free, saw, system)
    if faults:
        raise ValueProblem("\n".join(faults))
    sections = []
    for steel in sorted({p.steel for p in left} | {s.stock.steel for s in done}):
        of_steel = [p for p in left if p.steel == steel]
        sticks = [s for s in free if s.steel == steel]
        finished = tuple(replace(s, done=True) for s in done if s.stock.steel == steel)
        watch = start_watch(effort.seconds, effort.stop, partial(effort.tell, steel))
        sections.append(_section(steel, of_steel, sticks, saw, finished, pieces, watch, system))
    return CutPlan(tuple(sections))


def _without(
    pieces: Sequence[Piece], stocks: Sequence[Offer | Held], done: Sequence[StickPlan]
) -> tuple[list[Piece], list[Offer | Held]]:
    """What is still to be cut, and what there still is to cut from."""
    cut = Counter(p.mark for s in done for p in s.pieces)
    wanted = {p.mark: p.quantity for p in pieces}
    faults = [
        f'piece "{mark}": {n} already cut, but {wanted.get(mark, 0)} wanted: add the piece, '
        "or take the stick off the list of sticks cut"
        for mark, n in sorted(cut.items())
        if n > wanted.get(mark, 0)
    ]
    if faults:
        raise ValueProblem("\n".join(faults))
    left = [replace(p, quantity=p.quantity - cut[p.mark]) for p in pieces]
    gone = Counter(s.stock for s in done)
    free: list[Offer | Held] = []
    for stock in stocks:
        if isinstance(stock, Held):
            if not gone[stock]:
                free.append(stock)
        elif stock.limit is not None:
            free.append(replace(stock, limit=max(0, stock.limit - gone[stock])))
        else:
            free.append(stock)
    return left, free


def _section(
    steel: Steel,
    pieces: list[Piece],
    stocks: list[Offer | Held],
    saw: Saw,
    done: tuple[StickPlan, ...],
    every: Sequence[Piece],
    watch: Watch,
    system: System,
) -> SectionPlan:
    """Plan one steel: the cheapest over the choices of heat for the groups that need one."""
    spent = sum(s.cents for s in done)
    if not any(p.quantity for p in pieces):
        return SectionPlan(steel, done, spent, watch.seconds())
    best: tuple[StickPlan, ...] | None = None
    bounds = []
    choices = list(_heat_choices(pieces, stocks, done, every))
    for number, heats in enumerate(choices):
        share = watch.within(watch.left() / (len(choices) - number))
        found, bound = _cheapest(reduced(pieces, stocks, saw, heats), saw, share)
        if bound is not None:
            bounds.append(bound)
        if found is not None and (best is None or _cents(found) < _cents(best)):
            best = found
    if best is None:
        raise ValueProblem(_shortage(steel, pieces, stocks, saw, watch, system))
    numbered = (*done, *(replace(s, number=k) for k, s in enumerate(best, start=len(done) + 1)))
    return SectionPlan(steel, numbered, spent + min([*bounds, _cents(best)]), watch.seconds())


def _cents(sticks: tuple[StickPlan, ...]) -> int:
    return sum(s.cents for s in sticks)


def _heat_choices(
    pieces: list[Piece], stocks: list[Offer | Held], done: tuple[StickPlan, ...], every: Sequence[Piece]
) -> Iterator[dict[str, str]]:
    """Every way to give each group that must come from one heat a heat that could serve it."""
    groups = sorted({p.one_heat for p in pieces if p.one_heat is not None and p.quantity})
    group_of = {p.mark: p.one_heat for p in every}
    begun = {
        group: stick.heat
        for stick in done
        for placed in stick.pieces
        if (group := group_of.get(placed.mark)) is not None and stick.heat is not None
    }
    options = []
    for group in groups:
        members = [p for p in pieces if p.one_heat == group and p.quantity]
        heats = {s.heat for s in stocks if s.heat is not None and all(may_use(p, s) for p in members)}
        wanted = {begun[group]} if group in begun else heats
        options.append(sorted(wanted))
    for chosen in product(*options):
        yield dict(zip(groups, chosen, strict=True))


def _shortage(
    steel: Steel, pieces: list[Piece], stocks: list[Offer | Held], saw: Saw, watch: Watch, system: System
) -> str:
    """Why no plan was found, and whether there is none."""
    if saw.most_setups is not None and (said := _too_few_setups(pieces, stocks, saw, saw.most_setups)):
        return f"{steel}: {said}"
    if watch.over():
        return f"{steel}: no plan was found in {watch.seconds():.0f} s: give more time, or raise a limit"
    if saw.most_setups is not None:
        return (
            f"{steel}: no plan with at most {saw.most_setups} set-ups was found, though it is not proven "
            "that there is none: allow more set-ups or more time, or order more sticks"
        )
    said = _scarce([p for p in pieces if p.quantity], stocks, saw, system)
    return (
        f"{steel}: {said or 'the pieces do not go up in the sticks there are: order more or longer sticks'}"
    )


def _scarce(pieces: list[Piece], stocks: list[Offer | Held], saw: Saw, system: System) -> str | None:
    """Which pieces are longer together than all the sticks that they may come from, or None."""
    for piece in pieces:
        allowed = [s for s in stocks if may_use(piece, s)]
        alike = [p for p in pieces if all(s in allowed for s in stocks if may_use(p, s))]
        room = _room(allowed, saw)
        need = sum((p.length * p.quantity for p in alike), ZERO)
        if room is not None and need > room:
            every = len(allowed) == len(stocks)
            of_these = "" if every else f" that {', '.join(p.mark for p in alike)} may come from"
            remedy = "" if every else " of that heat, certificate or date"
            return (
                f"the sticks{of_these} cannot hold the pieces: {say(need, system)} of pieces before kerfs, "
                f"{say(room, system)} of sticks after trims and grip: "
                f"raise a limit, or order more or longer sticks{remedy}"
            )
    return None


def _room(stocks: Sequence[Offer | Held], saw: Saw) -> Length | None:
    """All length that there is to cut from, or None where there is no limit to it."""
    room = ZERO
    for stock in stocks:
        if isinstance(stock, Offer) and stock.limit is None:
            return None
        room += usable(stock, saw) * (1 if isinstance(stock, Held) else stock.limit or 0)
    return room


def _too_few_setups(pieces: list[Piece], stocks: list[Offer | Held], saw: Saw, most: int) -> str | None:
    """Why so few set-ups can never do, or None where that is not proven."""
    question = _only_lengths(reduced([replace(p, heat=None, one_heat=None) for p in pieces], stocks, saw, {}))
    watch = start_watch(_TIDY_SECONDS)
    needed = least_setups(question, watch)
    if needed > most:
        return (
            f"no plan has at most {most} set-ups: its {len(question.lengths)} different lengths take at "
            f"least {needed}: allow {needed} or more"
        )
    if setups_refuted(question, most, watch):
        return f"no plan has at most {most} set-ups, every way to cut a stick being tried: allow more"
    return None


def _only_lengths(question: Reduced) -> Problem:
    """The loose question with pieces and sticks told apart by nothing but length, as a set-up tells them."""
    loose = question.loose
    lengths: dict[Length, int] = {}
    demand: Counter[Length] = Counter()
    for kind, length, wanted in zip(question.kinds, loose.lengths, loose.demand, strict=True):
        lengths[kind[0].length] = min(length, lengths.get(kind[0].length, length))
        demand[kind[0].length] += wanted
    limits: dict[int, int | None] = {}
    for stick in loose.sticks:
        before = limits.get(stick.length, 0)
        limits[stick.length] = None if before is None or stick.limit is None else before + stick.limit
    sticks = tuple(Stick(length, 1, limit) for length, limit in limits.items())
    return Problem(tuple(lengths.values()), tuple(demand[length] for length in lengths), sticks)


def _cheapest(question: Reduced, saw: Saw, watch: Watch) -> tuple[tuple[StickPlan, ...] | None, int | None]:
    """The cheapest plan for one choice of heats, and its bound (None where no plan exists)."""
    if question.safe == question.loose:
        found = search(question.safe, watch)
        if found.packing is None:
            return None, None if found.proven else found.bound
        return _tidied(question, question.safe, found.packing, found.patterns, saw, watch), found.bound
    loose = search(question.loose, watch.within(watch.left() / 3))
    bound = None if loose.packing is None and loose.proven else loose.bound
    plans = []
    if loose.packing is not None:
        plans.append(_lay(question, loose.packing, saw))
        plans.append(_tidied(question, question.loose, loose.packing, loose.patterns, saw, watch))
    if (cheap := _best(plans)) is not None and _cents(cheap) == bound:
        return cheap, bound
    for problem in (question.near, question.safe):
        found = search(problem, watch.within(watch.left() / 2))
        if found.packing is not None:
            plans.append(_tidied(question, problem, found.packing, found.patterns, saw, watch))
    return _best(plans), bound


def _best(plans: list[tuple[StickPlan, ...] | None]) -> tuple[StickPlan, ...] | None:
    """The cheapest plan, of those the one with the fewest set-ups."""
    return min((p for p in plans if p is not None), key=lambda p: (_cents(p), _setups(p)), default=None)


def _setups(sticks: tuple[StickPlan, ...]) -> int:
    return len({s.setup for s in sticks})


def _tidied(
    question: Reduced, problem: Problem, best: Packing, patterns: tuple[Pattern, ...], saw: Saw, watch: Watch
) -> tuple[StickPlan, ...] | None:
    """The plan with fewer set-ups, laid out; None where no plan has so few as the saw may have."""
    soon = watch.within(_TIDY_SECONDS)
    better = best if soon.over() else fewer_setups(problem, best, patterns, saw.most_setups, soon)
    # pieces that differ in nothing but their wishes count apart there, but share a set-up once laid out
    return _lay(question, better or best, saw)


def _lay(question: Reduced, best: Packing, saw: Saw) -> tuple[StickPlan, ...] | None:
    """Lay every pattern out in real sticks; None where one does not fit, or set-ups come out too many."""
    waiting = [[p for p in kind for _ in range(p.quantity)] for kind in question.kinds]
    racks = [_stick_supply(group) for group in question.stocks]
    sticks = []
    for pattern, times in sorted(best.patterns, key=lambda item: _long_first(question, item[0])):
        for _ in range(times):
            pieces = [waiting[i].pop(0) for i, n in pattern.counts for _ in range(n)]
            stick = lay_stick(next(racks[pattern.stick]), pieces, saw)
            if stick is None:
                return None
            sticks.append(stick)
    laid = tuple(sticks)
    return None if saw.most_setups is not None and _setups(laid) > saw.most_setups else laid


def _stick_supply(group: tuple[Offer | Held, ...]) -> Iterator[Offer | Held]:
    for stock in group:
        if isinstance(stock, Held):
            yield stock
        elif stock.limit is None:
            while True:
                yield stock
        else:
            yield from (stock for _ in range(stock.limit))


def _long_first(question: Reduced, pattern: Pattern) -> tuple[int, tuple[tuple[int, int], ...]]:
    """Order of the sticks in the sheet: longest stick first, then longest pieces, so stops repeat."""
    return -question.stocks[pattern.stick][0].length.ticks, pattern.counts


def lay_stick(stock: Offer | Held, pieces: list[Piece], saw: Saw) -> StickPlan | None:
    """One stick with the running dimension of every piece, or None where they do not fit.

    Args:
        stock: what it is cut from.
        pieces: one entry each, in any order; they are put in the order that the saw cuts them.
        saw: the saw.

    Returns:
        The stick, not yet numbered.
    """
    row = arrange(pieces)
    placed: list[Placed] = []
    at = saw.start_trim
    before: Turned | None = None
    for way in row:
        if before is None:
            at += way.first.kerf(saw.kerf) if way.first.angled else ZERO
        elif way.shares:
            at += way.first.kerf(saw.kerf) - way.first.run
        else:
            ends = (before.last, way.first)
            square = saw.kerf if not all(e.angled for e in ends) else ZERO
            at += sum((e.kerf(saw.kerf) for e in ends if e.angled), square)
        placed.append(Placed(way.piece.mark, at, at + way.piece.length, way.turned, way.shares))
        at += way.piece.length
        before = way
    if before is None or at > stock.length - saw.end_trim - saw.grip:
        return None
    rest = stock.length - at - before.last.kerf(saw.kerf)
    drop = max(rest, ZERO)
    credit = drop_credit(stock, drop, saw)
    return StickPlan(0, stock, tuple(placed), drop, _keeps(drop, saw), credit)


def _keeps(drop: Length, saw: Saw) -> bool:
    return drop > ZERO and drop >= saw.keep
