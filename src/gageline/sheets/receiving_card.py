"""The receiving card: the stick as it came, what to do about it, and its readings beside the nominal ones."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from gageline.job import Corner, Job, say_finely
from gageline.layout import Decision, EndFit, Placed, StickLayout, StickReading
from gageline.part import End, Face
from gageline.quality import Judgement, Odds, Receipt, Verdict
from gageline.sheets.end_picture import end_pictures
from gageline.sheets.flow import Part, flow, room_of
from gageline.sheets.furniture import Block, Draft, Heading, bind, paragraph
from gageline.sheets.notation import Scribe
from gageline.sheets.odds_table import odds_parts
from gageline.sheets.scene import Group, Item, Sheet
from gageline.sheets.style import BODY, FINE, Weight
from gageline.sheets.table import Column, Table
from gageline.steel import Profile
from gageline.units import ZERO, Length, round_to

__all__ = ["ReceivingCard", "receiving_cards"]

_FACES = {Face.LEG_A: "leg A", Face.LEG_B: "leg B", Face.FACE: "marked face"}


@dataclass(frozen=True, slots=True)
class ReceivingCard:
    """What one card is made of.

    Args:
        on: the piece laid out on the stick.
        receipt: the stick judged.
        decision: the ways it can be laid, and the one advised.
        odds: of fit-up; None to leave them out.
    """

    on: StickLayout
    receipt: Receipt
    decision: Decision
    odds: Odds | None = None


def receiving_cards(job: Job, cards: Sequence[ReceivingCard]) -> Sheet:
    """The receiving cards of a job, one a stick.

    Args:
        job: whose pieces they are.
        cards: in the order they are printed.

    Raises:
        ValueProblem: a text with a character that the font lacks.
    """
    drafts: list[Draft] = []
    for card in cards:
        drafts.extend(flow(job, _heading(job, card), _parts(job, card)))
    return bind(job, "receiving cards", drafts)


def _heading(job: Job, card: ReceivingCard) -> Heading:
    assembly = card.on.layout.assembly
    heat = f", heat {card.receipt.stick.heat}" if card.receipt.stick.heat else ""
    length = Scribe.of(job).tell(assembly.main.length)
    detail = f"{assembly.main.stock.designation} {assembly.main.grade}, {length}{heat}"
    return Heading(
        "Receiving card", assembly.mark, assembly.quantity, assembly.hand_of, detail, "Not to scale"
    )


def _parts(job: Job, card: ReceivingCard) -> list[Part]:
    width, _ = room_of(job)
    scribe = Scribe.of(job)
    possible = card.on.placed.possible
    parts = [
        Part(_title(card), _advice(card, scribe, width)),
        Part("The ends as they came: how far each corner stands back", _ends(card, scribe, width)),
        Part("The ways it can be laid", _ways(card, scribe)),
    ]
    if possible:
        parts.append(Part("Readings for this stick", _readings(card)))
        if any(one.actual.outside or one.nominal.outside for one in card.on.readings):
            parts.append(Part("", paragraph("", _OUTSIDE, width, BODY)))
    if possible and card.on.seats:
        parts.append(Part("Fittings on this stick", _seats(card, scribe)))
    parts.append(Part("The stick against its standard", _receipt(card, scribe)))
    if card.odds is not None:
        parts.extend(odds_parts(card.odds, job.system, width))
    return parts


def _title(card: ReceivingCard) -> str:
    placed = card.on.placed
    if not placed.possible:
        return "Do not lay it out: the piece cannot be made of this stick so"
    how = f"ay it out so: {placed.way.words}"
    return f"L{how}" if placed.within_design else f"Ask the engineer first, then l{how}"


def _advice(card: ReceivingCard, scribe: Scribe, width: float) -> Block:
    """Why, and everything that is done otherwise than on steel as drawn, in sentences."""
    on, decision = card.on, card.decision
    lines = [decision.because]
    if (
        on.placed.way.choice is not decision.chosen.way.choice
        or on.placed.way.held is not decision.chosen.way.held
    ):
        lines.append(f"The advice was: {decision.chosen.way.words}. It was laid otherwise by choice.")
    if on.laid.note:
        lines.append(on.laid.note)
    hook = on.datum if on.placed.left.trim else on.datum.replace("left end, ", "left end, at the ")
    lines.append(
        f"Hook the tape at the {hook}; strike a square line round it there and pull every reading from it."
    )
    lines.append(_rows_note(on, scribe))
    if _shows(on.lean, scribe):
        way = "top" if on.lean > ZERO else "bottom"
        lean = f"Camber leans each end by {scribe.tell(abs(on.lean))}, the {way} edge further out"
        lines.append(f"{lean}, until load takes it out.")
    if on.tape.why:
        lines.append(f"Long readings are corrected: {on.tape.why}.")
    warps = [(end, on.placed.fit(end).plane.warp) for end in End]
    lines += [
        f"The {end} end is twisted {scribe.tell(warp)} off one plane."
        for end, warp in warps
        if _shows(warp, scribe)
    ]
    blocks = [paragraph("", line, width, BODY) for line in lines if line]
    return _stacked(blocks, 0.8)


def _rows_note(on: StickLayout, scribe: Scribe) -> str:
    left, right = on.depth_over
    if not _shows(left, scribe) and not _shows(right, scribe):
        return ""
    profile = on.layout.main.part.profile
    if profile is Profile.ANGLE:
        held, other = "the heel", "toe"
    else:
        edge = "flange" if profile in _FLANGED else "edge"
        top = on.held is Face.TOP
        held, other = f"the {'top' if top else 'bottom'} of steel", f"{'bottom' if top else 'top'} {edge}"
    return f"Rows are held from {held}. The stick is {_over(left, right, scribe)}: that shows at the {other}."


_FLANGED = frozenset({Profile.I_SHAPE, Profile.CHANNEL})


def _over(left: Length, right: Length, scribe: Scribe) -> str:
    """How much deeper or shallower a stick is at its two ends."""
    first, second = scribe.tell(abs(left)), scribe.tell(abs(right))
    words = ["deeper" if over > ZERO else "shallower" for over in (left, right)]
    if first == second and words[0] == words[1]:
        return f"{first} {words[0]}"
    if words[0] == words[1]:
        return f"{first} and {second} {words[0]}"
    return f"{first} {words[0]} at the left end and {second} {words[1]} at the right"


def _stacked(blocks: list[Block], between: float) -> Block:
    top, items = 0.0, list[Item]()
    for block in blocks:
        items.append(Group(block.items, 0.0, top))
        top += block.height + between
    return Block(tuple(items), top)


def _ends(card: ReceivingCard, scribe: Scribe, width: float) -> Block:
    planes = {end: card.on.placed.fit(end).plane for end in End}

    def told(end: End) -> tuple[str, str, str, str]:
        tn, tf, bn, bf = (scribe.tell(planes[end].back(corner)) for corner in Corner)
        return tn, tf, bn, bf

    return end_pictures(planes, {end: told(end) for end in End}, width)


def _span(low: Length, high: Length, scribe: Scribe) -> str:
    least, most = scribe.tell(low), scribe.tell(high)
    return least if least == most else f"{least} to {most}"


def _gap(fit: EndFit, scribe: Scribe) -> str:
    if fit.gap_least is None or fit.gap_most is None:
        return "-"
    return _span(fit.gap_least, fit.gap_most, scribe)


def _ways(card: ReceivingCard, scribe: Scribe) -> Table:
    columns = (
        Column("Way", weight=Weight.BOLD), Column("Left end short"), Column("Right end short"),
        Column("Gap at left support"), Column("Gap at right support"), Column("End distance lost"),
        Column("Can be done"),
    )  # fmt: skip
    return Table(columns, tuple(_way(option, scribe) for option in card.decision.options))


def _way(option: Placed, scribe: Scribe) -> tuple[str, ...]:
    able = "yes" if option.within_design else "ask first" if option.possible else "no"
    if option.spare < ZERO and option.way.choice == "trim square":
        able = f"no, {scribe.tell(-option.spare)} lacking"
    return (
        option.way.words,
        _span(option.left.least, option.left.most, scribe),
        _span(option.right.least, option.right.most, scribe),
        _gap(option.left, scribe),
        _gap(option.right, scribe),
        scribe.tell(max(option.worst, ZERO)),
        able,
    )


def _readings(card: ReceivingCard) -> Table:
    columns = (
        Column("Feature"), Column("Face"), Column("From"), Column("As drawn"),
        Column("This stick", weight=Weight.BOLD), Column("What changed it"),
    )  # fmt: skip
    lots: dict[tuple[str, str, str, str], list[StickReading]] = {}
    for one in card.on.readings:
        key = (
            one.for_,
            _FACES.get(one.face, str(one.face)),
            one.nominal.from_.hook,
            one.why or "same",
        )
        lots.setdefault(key, []).append(one)
    rows: dict[tuple[str, ...], list[str]] = {}
    for (feature, face, from_, why), found in lots.items():
        texts = dict.fromkeys((one.nominal.plain, one.actual.plain) for one in found)
        drawn, actual = (", ".join(column) for column in zip(*texts, strict=True))
        rows.setdefault((feature, from_, drawn, actual, why), []).append(face)
    return Table(
        columns,
        tuple(
            (feature, ", ".join(faces), from_, drawn, actual, why)
            for (feature, from_, drawn, actual, why), faces in rows.items()
        ),
    )


_OUTSIDE = (
    "Outside: on the other side of the end or edge that the tape is hooked at, where this stick has no "
    "steel. A fitting may stand out there; a hole or a cut line may not."
)


def _seats(card: ReceivingCard, scribe: Scribe) -> Table:
    columns = (
        Column("Fitting", weight=Weight.BOLD), Column("Past the end as drawn"), Column("Past this steel"),
        Column("Bottom edge up"), Column("Web off centre"),
        Column("Upper end off a square on the top flange"),
    )  # fmt: skip
    rows = []
    for one in card.on.seats:
        drawn = one.seat.projection
        rows.append(
            (
                one.seat.fitting.name,
                scribe.tell(drawn) if drawn is not None else "-",
                _span(*one.projection, scribe) if one.projection else "-",
                f"{scribe.tell(one.rise)}{' along the cut' if one.seat.along_cut else ''}",
                _toward(one.web_off, scribe),
                _toward(one.plumb, scribe),
            )
        )
    return Table(columns, tuple(rows))


def _shows(length: Length, scribe: Scribe) -> bool:
    """Whether a length is anything that the tape shows."""
    return bool(round_to(length, scribe.tape))


def _toward(length: Length, scribe: Scribe) -> str:
    """A length and the side it is to."""
    if not _shows(length, scribe):
        return "none that the tape shows" if length else "none read"
    return f"{scribe.tell(abs(length))} {'near' if length > ZERO else 'far'}"


def _receipt(card: ReceivingCard, scribe: Scribe) -> Table:
    columns = (
        Column("Reading"), Column("Wanted", wraps=False), Column("Read", wraps=False), Column("Allowed"),
        Column("Verdict", weight=Weight.BOLD), Column("Source of the limit"),
    )  # fmt: skip
    return Table(columns, tuple(_judgement(one, scribe) for one in card.receipt.judgements), FINE)


def _judgement(one: Judgement, scribe: Scribe) -> tuple[str, ...]:
    read = "nominal" if one.read is None else scribe.tell(one.read)
    verdict = str(one.verdict)
    if one.verdict is Verdict.OUT:
        verdict = f"out by {say_finely(one.by, scribe.system)}"
    allowed = one.limit.text(scribe.system) if one.limit else "-"
    return (
        one.name,
        scribe.tell(one.wanted),
        read,
        allowed,
        verdict,
        one.limit.cited if one.limit else "no limit held",
    )
