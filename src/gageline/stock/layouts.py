"""The search for the cheapest way to lay rectangles out on sheets.

Fillings of one sheet are made from blocks and by placing pieces one after another; an integer program
chooses among all fillings met. Then the worst sheets and some others are taken apart and laid out again.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from gageline.stock.blocks import build_blocks
from gageline.stock.program import INFINITE, add_columns, add_rows, new_model, whole
from gageline.stock.rectangles import Box, Room, fill_sheet, split_room
from gageline.stock.watch import Progress, Watch

_WASTES = (0.0, 0.01, 0.03, 0.1)  # of a sheet, that a block may waste, in turn
_STEPS = 0.003  # the same, where sheet after sheet is filled
_FULLEST = 500  # blocks of one turn that may fill a sheet
_COMPLETED = 60  # blocks of one turn whose sheet is filled up piece by piece
_ORDERS = 40  # orders of pieces tried at the start for each sheet, and in a turn
_IDLE = 8  # turns without a better plan before the search gives up
_APART = 4  # sheets taken apart at most
_NODES = 200  # of the integer program; unlike a time it gives the same plan on every machine
_SECONDS = 1.5  # but no longer than that
_ROOMY = 0.1  # of the largest sheet; where more is left over it is kept together
_SEED = 6  # the same turns in every run

Placed = tuple[int, Room]


@dataclass(frozen=True, slots=True)
class Kind:
    """One kind of sheet: its room with a kerf added, its price, and how many there are, or None."""

    room: Room
    cents: int
    limit: int | None


@dataclass(frozen=True, slots=True)
class Filling:
    """One sheet filled: the kind of sheet, and each piece's kind and place."""

    sheet: int
    placed: tuple[Placed, ...]


@dataclass(frozen=True, slots=True)
class Task:
    """What is to be laid out on what.

    Args:
        boxes: the kinds of pieces, kerf added.
        demand: how many of each.
        sheets: the kinds of sheets.
        shear: whether every cut must go from edge to edge.
    """

    boxes: tuple[Box, ...]
    demand: tuple[int, ...]
    sheets: tuple[Kind, ...]
    shear: bool

    def area(self, filling: Filling) -> int:
        """Area of the pieces of a filling."""
        return sum(self.boxes[i].along * self.boxes[i].across for i, _ in filling.placed)

    def cents(self, plan: Sequence[Filling]) -> int:
        """Price of the sheets of a plan."""
        return sum(self.sheets[f.sheet].cents for f in plan)

    def spread(self, plan: Sequence[Filling]) -> float:
        """The smaller the more of what is left over lies on few sheets."""
        return -sum(self.left(f) ** 2 for f in plan)

    def left(self, filling: Filling) -> float:
        """Part of the largest sheet that a filling leaves over."""
        most = max(s.room.along * s.room.across for s in self.sheets)
        room = self.sheets[filling.sheet].room
        return (room.along * room.across - self.area(filling)) / most


def lay_out(task: Task, bound: int, watch: Watch) -> tuple[Filling, ...] | None:
    """Lay everything out, as cheaply as is found before the watch ends.

    Args:
        task: what on what; every piece fits some sheet.
        bound: no plan costs less.
        watch: when to stop, and whom to tell.

    Returns:
        The sheets filled, the fullest first, or None where pieces found no place.
    """
    best = _one_by_one(task, None, np.random.default_rng(_SEED), watch)
    idle, turn = 0, 0
    while idle < _IDLE and not watch.over():
        cost = None if best is None else task.cents(best)
        watch.tell(Progress("sheets", cost, bound, watch.seconds()))
        if cost is not None and cost <= bound:
            break
        found = _again(task, best, turn, watch)
        idle += 1
        if found is not None and (best is None or _worth(task, found) < _worth(task, best)):
            idle = 0 if best is None or task.cents(found) < task.cents(best) else idle
            best = found
        turn += 1
    if best is None:
        return None
    return tuple(_compact(task, f) for f in sorted(best, key=lambda f: (f.sheet, task.left(f))))


def _compact(task: Task, filling: Filling) -> Filling:
    """The same pieces on the sheet so that what is left of it in one strip is as large as is found."""
    if task.left(filling) < _ROOMY:
        return filling
    counts = Counter(i for i, _ in filling.placed)
    alone = replace(task, demand=tuple(counts[i] for i in range(len(task.boxes))))
    room = task.sheets[filling.sheet].room
    made = _made(alone, room, _WASTES[-1], np.random.default_rng(_SEED))
    whole = [Filling(filling.sheet, placed) for placed in made if len(placed) == len(filling.placed)]
    return max([filling, *whole], key=lambda f: _strip(f, room))


def _strip(filling: Filling, room: Room) -> int:
    """Area of the larger strip that one cut from edge to edge takes off beside or above all pieces."""
    along = max(at.x + at.along for _, at in filling.placed)
    across = max(at.y + at.across for _, at in filling.placed)
    return max((room.along - along) * room.across, (room.across - across) * room.along)


def _worth(task: Task, plan: Sequence[Filling]) -> tuple[int, float]:
    return task.cents(plan), round(task.spread(plan), 9)


def _again(task: Task, best: list[Filling] | None, turn: int, watch: Watch) -> list[Filling] | None:
    """Lay everything, or a few sheets of the best plan, out once more."""
    random = np.random.default_rng((_SEED, turn))
    waste = _WASTES[turn % len(_WASTES)]
    if best is None or turn == 0 or len(best) <= _APART:
        return _turn(task, best or [], waste, random, watch)
    if turn == 1:
        return _one_by_one(task, _STEPS, random, watch)
    count = int(random.integers(1, _APART + 1))
    chance = np.array([task.left(f) for f in best]) + 0.02
    chosen = set(random.choice(len(best), count, replace=False, p=chance / chance.sum()).tolist())
    kept = [f for k, f in enumerate(best) if k not in chosen]
    apart = [f for k, f in enumerate(best) if k in chosen]
    wanted = Counter(i for f in apart for i, _ in f.placed)
    used = Counter(f.sheet for f in kept)
    part = replace(
        task,
        demand=tuple(wanted[i] for i in range(len(task.boxes))),
        sheets=tuple(
            s if s.limit is None else replace(s, limit=s.limit - used[k]) for k, s in enumerate(task.sheets)
        ),
    )
    found = _turn(part, apart, waste, random, watch)
    return None if found is None else kept + found


def _turn(
    task: Task, known: list[Filling], waste: float, random: np.random.Generator, watch: Watch
) -> list[Filling] | None:
    """Make many fillings and choose among them and those known."""
    fillings = {_key(task, f): f for f in known}
    for room in dict.fromkeys(s.room for k, s in enumerate(task.sheets) if s.limit != 0):
        made = _made(task, room, waste, random)
        for k, sheet in enumerate(task.sheets):
            if sheet.room == room and sheet.limit != 0:
                for placed in made:
                    filling = Filling(k, placed)
                    fillings.setdefault(_key(task, filling), filling)
        if watch.over():
            break
    return _choose(task, list(fillings.values()), watch)


def _key(task: Task, filling: Filling) -> tuple[int, ...]:
    counts = Counter(i for i, _ in filling.placed)
    return (filling.sheet, *(counts[i] for i in range(len(task.boxes))))


def _from_blocks(
    task: Task, room: Room, waste: float, random: np.random.Generator
) -> list[tuple[Placed, ...]]:
    """The blocks of most area, some of them with what still goes on the sheet beside them."""
    blocks = build_blocks(room, task.boxes, np.array(task.demand), waste, random)
    order = np.argsort(-blocks.area, kind="stable")[:_FULLEST]
    made = []
    for place, number in enumerate(order):
        block = blocks.pieces(int(number))
        made.append(tuple(block))
        taken = Room(0, 0, int(blocks.along[number]), int(blocks.across[number]))
        full = taken.along * taken.across == room.along * room.across
        if place < _COMPLETED and not full:
            left = Counter(dict(enumerate(task.demand)))
            left.subtract(i for i, _ in block)
            waiting = _by_area(task, left)
            for upright in (False, True):
                rest = fill_sheet(
                    split_room(room, taken, upright=upright), task.boxes, waiting, shear=task.shear, rule=0
                )
                made.append((*block, *rest))
    return made


def _by_area(task: Task, left: Counter[int]) -> list[int]:
    kinds = sorted(left, key=lambda i: -task.boxes[i].along * task.boxes[i].across)
    return [i for i in kinds for _ in range(left[i])]


def _from_orders(task: Task, room: Room, random: np.random.Generator) -> list[tuple[Placed, ...]]:
    """Sheets filled piece by piece in many orders: by area, sides, and shuffles of these."""
    waiting = [i for i, n in enumerate(task.demand) for _ in range(n)]
    sizes = np.array([(b.along, b.across) for b in task.boxes], dtype=np.float64)[waiting]
    keys = (sizes.prod(axis=1), sizes.max(axis=1), sizes.min(axis=1), sizes[:, 0], sizes[:, 1])
    made = []
    for turn in range(_ORDERS):
        key = keys[turn % len(keys)]
        if turn >= 2 * len(keys):
            # a shuffle that mostly keeps the large pieces ahead
            key = key * random.uniform(0.2, 1.0, len(key))
        order = [waiting[k] for k in np.argsort(-key, kind="stable")]
        rule = turn // len(keys) % 2
        made.append(tuple(fill_sheet([room], task.boxes, order, shear=task.shear, rule=rule)))
    return made


def _one_by_one(
    task: Task, waste: float | None, random: np.random.Generator, watch: Watch
) -> list[Filling] | None:
    """Sheet after sheet, each time the filling of most area for its price; from blocks if they may waste."""
    left = list(task.demand)
    there = [len(left) * max(left) if s.limit is None else s.limit for s in task.sheets]
    plan: list[Filling] = []
    while any(left):
        if plan and waste is not None and watch.over():
            return None
        rest = replace(task, demand=tuple(left))
        made = [
            Filling(k, placed)
            for k, sheet in enumerate(task.sheets)
            if there[k] != 0
            for placed in _made(rest, sheet.room, waste, random)
            if placed
        ]
        if not made:
            return None
        best = max(made, key=lambda f: task.area(f) / task.sheets[f.sheet].cents)
        plan.append(best)
        there[best.sheet] -= 1
        for i, _ in best.placed:
            left[i] -= 1
    return plan


def _made(
    task: Task, room: Room, waste: float | None, random: np.random.Generator
) -> list[tuple[Placed, ...]]:
    """Fillings of one sheet, from blocks that may waste so much, and piece by piece."""
    return ([] if waste is None else _from_blocks(task, room, waste, random)) + _from_orders(
        task, room, random
    )


def _choose(task: Task, fillings: list[Filling], watch: Watch) -> list[Filling] | None:
    """The cheapest choice of fillings that holds everything, what is left over on few sheets."""
    kinds = [i for i, n in enumerate(task.demand) if n]
    row_of = {kind: row for row, kind in enumerate(kinds)}
    model = new_model()
    demand = np.array([task.demand[i] for i in kinds], dtype=float)
    pieces = sum(task.demand)
    limits = [float(pieces if s.limit is None else min(s.limit, pieces)) for s in task.sheets]
    add_rows(
        model,
        np.concatenate([demand, np.full(len(limits), -INFINITE)]),
        np.concatenate([np.full(len(kinds), INFINITE), limits]),
    )
    least = min(s.cents for s in task.sheets)
    entries, costs, most = [], [], []
    for filling in fillings:
        counts = Counter(i for i, _ in filling.placed)
        rows = [row_of[i] for i in counts] + [len(kinds) + filling.sheet]
        entries.append((rows, [float(n) for n in counts.values()] + [1.0]))
        costs.append(task.sheets[filling.sheet].cents / least - task.left(filling) ** 2 / (pieces + 1))
        most.append(min(limits[filling.sheet], max(-(-task.demand[i] // n) for i, n in counts.items())))
    add_columns(model, np.array(costs), np.array(most), entries)
    model.setOptionValue("mip_max_nodes", _NODES)
    outcome = whole(model, watch.within(_SECONDS), first=False)
    if outcome.values is None:
        return None
    return _without_spares(task, [f for f, n in zip(fillings, outcome.values, strict=True) for _ in range(n)])


def _without_spares(task: Task, plan: list[Filling]) -> list[Filling]:
    """The plan without pieces beyond the demand, from the emptiest sheets first; empty sheets fall away."""
    spare = Counter(i for f in plan for i, _ in f.placed)
    spare.subtract(dict(enumerate(task.demand)))
    kept = []
    for filling in sorted(plan, key=task.left, reverse=True):
        placed = []
        for kind, at in filling.placed:
            if spare[kind] > 0:
                spare[kind] -= 1
            else:
                placed.append((kind, at))
        if placed:
            kept.append(Filling(filling.sheet, tuple(placed)))
    return kept
