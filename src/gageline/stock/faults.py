"""What can be wrong in pieces, sticks and saw before any planning: all of it at once."""

from __future__ import annotations

from collections.abc import Sequence

from gageline.job import say
from gageline.stock.records import Held, Offer, Piece, Saw, Steel
from gageline.units import ZERO, Length, System


def usable(stock: Offer | Held, saw: Saw) -> Length:
    """Length of a stick that pieces can be cut from."""
    return stock.length - saw.start_trim - saw.end_trim - saw.grip


def may_use(piece: Piece, stock: Offer | Held) -> bool:
    """Whether heat, certificate and date let a piece come from a stick; the length is not looked at."""
    late = (
        isinstance(stock, Offer)
        and stock.arrives is not None
        and piece.needed is not None
        and stock.arrives > piece.needed
    )
    wrong_heat = piece.heat is not None and piece.heat != stock.heat
    no_paper = piece.certificate and not stock.certificate
    return not (late or wrong_heat or no_paper)


def find_faults(
    pieces: Sequence[Piece], stocks: Sequence[Offer | Held], saw: Saw, system: System = System.FT_IN
) -> list[str]:
    """Everything that stands against a plan.

    Args:
        pieces: what is to be cut.
        stocks: what it may be cut from.
        saw: the saw.
        system: the units that lengths are written in.

    Returns:
        One sentence each, with name, value, limit and remedy; empty where all is well.
    """
    return [
        *_saw(saw, system),
        *_stocks(stocks, saw, system),
        *_pieces(pieces, system),
        *_heats(pieces),
        *_places(pieces, stocks, saw, system),
    ]


def _saw(saw: Saw, system: System) -> list[str]:
    lengths = {
        "kerf": saw.kerf,
        "start trim": saw.start_trim,
        "end trim": saw.end_trim,
        "grip": saw.grip,
        "shortest drop kept": saw.keep,
    }
    faults = [
        f"saw: {name} {say(value, system)} is negative: give zero or more"
        for name, value in lengths.items()
        if value < ZERO
    ]
    if not 0 <= saw.drop_percent <= 100:
        faults.append(
            f"saw: a drop credited at {saw.drop_percent} percent of its stick's price: give 0 to 100, "
            "a drop is not worth more than the steel in it"
        )
    if saw.drop_percent and saw.keep <= saw.end_trim + saw.grip:
        faults.append(
            f"saw: shortest drop kept {say(saw.keep, system)} is not longer than end trim and grip "
            f"{say(saw.end_trim + saw.grip, system)}, which every stick leaves: give a longer one"
        )
    if saw.most_setups is not None and saw.most_setups < 1:
        faults.append(f"saw: at most {saw.most_setups} set-ups: give 1 or more, or leave it out")
    return faults


def _name(stock: Offer | Held, system: System) -> str:
    what = f'stick "{stock.mark}" on the rack' if isinstance(stock, Held) else "stick to buy"
    return f"{stock.steel}: {what}, {say(stock.length, system)}"


def _stocks(stocks: Sequence[Offer | Held], saw: Saw, system: System) -> list[str]:
    faults: list[str] = []
    seen: set[str] = set()
    for stock in stocks:
        if stock.length <= ZERO:
            faults.append(f"{_name(stock, system)}: the length must be more than zero")
        elif saw.grip >= stock.length:
            faults.append(
                f"{_name(stock, system)}: the grip {say(saw.grip, system)} is as long as the stick: "
                "take the stick off the list or cut it on another saw"
            )
        elif usable(stock, saw) <= ZERO:
            faults.append(
                f"{_name(stock, system)}: trims and grip leave nothing of it: take the stick off the list"
            )
        if stock.cents < 0:
            faults.append(
                f"{_name(stock, system)}: a price of {stock.cents} cents is negative: give zero or more"
            )
        if isinstance(stock, Offer) and stock.cents == 0:
            faults.append(
                f"{_name(stock, system)}: a stick to buy has no price: give its price, or list it as on hand"
            )
        if isinstance(stock, Offer) and stock.limit is not None and stock.limit < 0:
            faults.append(f"{_name(stock, system)}: a stock of {stock.limit} is negative: give zero or more")
        if isinstance(stock, Held):
            if stock.mark in seen:
                faults.append(f"{_name(stock, system)}: the mark stands on two sticks: give each its own")
            seen.add(stock.mark)
    return faults


def _pieces(pieces: Sequence[Piece], system: System) -> list[str]:
    faults: list[str] = []
    seen: set[str] = set()
    for piece in pieces:
        name = f'{piece.steel}: piece "{piece.mark}"'
        if piece.mark in seen:
            faults.append(f"{name}: the mark stands twice: add up the quantities, or give each its own mark")
        seen.add(piece.mark)
        if piece.quantity < 0:
            faults.append(f"{name}: a quantity of {piece.quantity} is negative: give zero or more")
        if piece.length <= ZERO:
            faults.append(f"{name}: length {say(piece.length, system)} must be more than zero")
        for side, end in (("left", piece.left), ("right", piece.right)):
            if end.run < ZERO:
                faults.append(
                    f"{name}: run {say(end.run, system)} of the {side} end is negative: "
                    "turn the long side over"
                )
            elif end.angled and end.across <= ZERO:
                faults.append(f"{name}: the angled {side} end needs the depth or width that it crosses")
            elif end.run >= piece.length > ZERO:
                faults.append(
                    f"{name}: run {say(end.run, system)} of the {side} end is as long as the piece, "
                    f"{say(piece.length, system)}: lengthen the piece or shorten the run"
                )
    return faults


def _heats(pieces: Sequence[Piece]) -> list[str]:
    faults = []
    groups: dict[str, list[Piece]] = {}
    for piece in pieces:
        if piece.one_heat is not None:
            groups.setdefault(piece.one_heat, []).append(piece)
    for name, members in sorted(groups.items()):
        asked = {p.heat: p.mark for p in members if p.heat is not None}
        if len(asked) > 1:
            said = " and ".join(f'"{mark}" asks for heat {heat}' for heat, mark in sorted(asked.items()))
            faults.append(f'pieces of group "{name}" must come from one heat, but {said}: ask for one heat')
        if len({p.steel for p in members}) > 1:
            faults.append(
                f'pieces of group "{name}" must come from one heat, but are of different steels '
                f"({', '.join(sorted({str(p.steel) for p in members}))}): give each steel its own group"
            )
    return faults


def _places(pieces: Sequence[Piece], stocks: Sequence[Offer | Held], saw: Saw, system: System) -> list[str]:
    """Pieces that no stick can hold, for length or for heat, certificate and date."""
    faults = []
    without: dict[Steel, list[str]] = {}
    for piece in pieces:
        if piece.quantity <= 0 or piece.length <= ZERO:
            continue
        name = f'{piece.steel}: piece "{piece.mark}", {say(piece.length, system)}'
        same = [s for s in stocks if s.steel == piece.steel]
        if not same:
            without.setdefault(piece.steel, []).append(f'"{piece.mark}"')
            continue
        longest = max(usable(s, saw) for s in same)
        if piece.length > longest:
            faults.append(
                f"{name}, is longer than any stick: the longest gives {say(longest, system)} "
                "after trims and grip: order a longer stick, or splice the piece if the engineer allows"
            )
            continue
        allowed = [s for s in same if may_use(piece, s) and (s.heat is not None or piece.one_heat is None)]
        if not any(piece.length <= usable(s, saw) for s in allowed):
            wishes = [
                f"heat {piece.heat}" if piece.heat is not None else "",
                "one known heat" if piece.one_heat is not None and piece.heat is None else "",
                "a certificate" if piece.certificate else "",
                f"arrival by {piece.needed}" if piece.needed is not None else "",
            ]
            faults.append(
                f"{name}: no stick long enough has {' and '.join(w for w in wishes if w)}: "
                "order one that has, or change what the piece asks for"
            )
    faults += [
        f"{steel}: there is no stick of this steel for {', '.join(marks)}: "
        "order some, or add what is on the rack"
        for steel, marks in without.items()
    ]
    return faults
