"""The unfolded stick: every face of a part laid open along the same x, with every mark and its reading."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from gageline.errors import ValueProblem
from gageline.layout import Datum, Mark, MarkKind, PartLayout
from gageline.layout import Reading as TapeReading
from gageline.part import End, Face
from gageline.sheets.boxes import line_height, text_box
from gageline.sheets.dimensions import running
from gageline.sheets.fonts import text_width
from gageline.sheets.furniture import Block
from gageline.sheets.labels import Reading, Side, arrange, draw_rows, once, rows_depth
from gageline.sheets.scene import Arc, Box, Group, Item, Level, Line, Text
from gageline.sheets.strip import is_square_end, strip_items
from gageline.sheets.style import BODY, Role, Weight
from gageline.sheets.view import DOWNWARD, View, view_of
from gageline.steel import Profile

__all__ = ["balloon", "face_name", "unfolded_blocks", "unfolded_stick"]

_LEAST = 11.0
_SLIM = 5.0
_GAP = 3.0
_LABEL = 4.4
_PAD = 0.9
_BUDGET = 0.38
_UP = frozenset({Face.NEAR, Face.LEG_A, Face.FACE})  # how a piece is laid to be checked
_CROWDED = 0.7
_NAMES = {
    Face.TOP: "Top flange", Face.NEAR: "Near web", Face.BOTTOM: "Bottom flange", Face.FAR: "Far web",
    Face.LEG_A: "Leg A", Face.LEG_B: "Leg B", Face.FACE: "Marked face",
}  # fmt: skip
_HOLLOW = frozenset({Profile.BOX, Profile.TUBE})


@dataclass(frozen=True, slots=True)
class _Label:
    """A reading at its place on the part: x and the face's own y in mm."""

    x: float
    y: float
    text: str


@dataclass(frozen=True, slots=True)
class _Readings:
    """What stands beside one face.

    Args:
        along: readings along the part.
        left: readings across it, beside the left end.
        right: the same beside the right end.
        numbers: of the steps.
        crowded: there are more readings across than a page is high; the steps alone have them.
    """

    along: tuple[_Label, ...]
    left: tuple[_Label, ...]
    right: tuple[_Label, ...]
    numbers: tuple[_Label, ...]
    crowded: bool = False


def face_name(part_profile: Profile, face: Face) -> str:
    """What a face is called on cards; the faces of hollow sections are walls."""
    return f"{face.capitalize()} wall" if part_profile in _HOLLOW else _NAMES[face]


def unfolded_stick(laid: PartLayout, box: Box) -> tuple[Item, ...]:
    """The unfolded stick inside a box, for a card or for the screen.

    Args:
        laid: the part with its marks and steps.
        box: where to draw, paper mm.

    Returns:
        The items.

    Raises:
        ValueProblem: a box too small for the readings.
    """
    blocks = unfolded_blocks(laid, box.width, box.height)
    need = sum(block.height for block in blocks)
    if need > box.height + 1e-6:
        raise ValueProblem(
            f"the unfolded {laid.part.mark} needs {need:.0f} mm and has {box.height:.0f} mm: "
            f"give it a taller box or draw it face by face"
        )
    items, top = [], box.top
    for block in blocks:
        items.append(Group(block.items, box.left, top))
        top += block.height
    return tuple(items)


def unfolded_blocks(laid: PartLayout, width: float, height: float) -> tuple[Block, ...]:
    """The unfolded stick face by face, to be set one under another.

    Args:
        laid: the part with its marks and steps.
        width: of the drawing, mm.
        height: of the page, mm, which the size of the drawing is chosen for.

    Returns:
        One block a face, in the order they unfold from the top.

    Raises:
        ValueProblem: a width or a height too small for the readings.
    """
    found = {face: _kept(_readings(laid, face), height) for face in laid.faces}
    busy = tuple(face for face in laid.faces if _is_busy(laid, face))
    whole = not busy  # nothing is struck on it: the piece from end to end, as it is laid for its first check
    busy = busy or (next((face for face in laid.faces if face in _UP), laid.faces[0]),)
    left = _margin(found[face].left for face in busy)
    right = _margin(found[face].right for face in busy)
    view = view_of(laid, busy, (left, width - right), height * _BUDGET, whole=whole)
    blocks = tuple(
        _full(view, face, found[face], width) if face in busy else _slim(view, face) for face in laid.faces
    )
    tallest = max(block.height for block in blocks)
    if tallest > height:
        raise ValueProblem(
            f"a face of {laid.part.mark} needs {tallest:.0f} mm for its readings and the page has "
            f"{height:.0f} mm: give it fewer different cross lines"
        )
    return blocks


def _is_busy(laid: PartLayout, face: Face) -> bool:
    """Whether something is struck on a face, other than the lines of its ends carried round."""
    ends = {f"{end} end" for end in End}
    return any(not (mark.kind is MarkKind.CUT_LINE and mark.for_ in ends) for mark in laid.on(face)) or any(
        step.face is face and step.for_ in ends for step in laid.steps
    )


def _margin(stacks: Iterator[tuple[_Label, ...]]) -> float:
    """Room beside the strips: the widest reading, its line, and as much bend as that line may need."""
    margin = _LABEL
    for labels in stacks:
        # Lines to readings that are spread apart rise by 0.35 of their shift, by 8 mm at the most.
        bend = min(8.0, 0.35 * _stack(labels))
        widest = max((text_width(label.text, BODY) for label in labels), default=0.0)
        margin = max(margin, _LABEL + bend + widest)
    return margin


def _feature(name: str) -> str:
    # The far wall's step of an opening says so; its marks carry the opening's own name.
    return name.removesuffix(", other wall")


def _readings(laid: PartLayout, face: Face) -> _Readings:
    """The readings of the steps, each at the mark that it places on this face."""
    said: dict[str, set[tuple[int, Datum]]] = {}
    for step in laid.steps:
        said.setdefault(_feature(step.for_), set()).update((r.tape.ticks, r.from_) for r in step.readings)
    marks = [mark for mark in laid.on(face) if not is_square_end(laid.part, mark)]
    along: list[_Label] = []
    sides: tuple[list[_Label], list[_Label]] = [], []
    half = laid.part.length.mm / 2
    spans = _spans(marks)
    for mark in marks:
        wanted = said.get(_feature(mark.for_), set())
        beside = sides[sum(spans[mark.for_]) / 2 > half]
        for spot in mark.spots:
            x, y = spot.at[0].mm, spot.at[1].mm
            if (spot.x.tape.ticks, spot.x.from_) in wanted:
                along.append(_Label(x, y, spot.x.text))
            for reading in (spot.y, spot.y_back):
                if (reading.tape.ticks, reading.from_) in wanted:
                    beside.append(_Label(x, y, _across_text(reading)))
                    break
    return _Readings(tuple(along), tuple(sides[0]), tuple(sides[1]), tuple(_numbers(laid, face, marks)))


def _kept(found: _Readings, height: float) -> _Readings:
    """The readings without those across where no page is high enough for them."""
    if max(_stack(found.left), _stack(found.right)) <= height * _CROWDED:
        return found
    return replace(found, left=(), right=(), crowded=True)


def _across_text(reading: TapeReading) -> str:
    return f"{reading.text} up" if reading.from_ is Datum.BOTTOM_EDGE else reading.text


def _spans(marks: list[Mark]) -> dict[str, tuple[float, float]]:
    """From where to where along the part (mm) each feature has marks."""
    found: dict[str, tuple[float, float]] = {}
    for mark in marks:
        for spot in mark.spots:
            low, high = found.get(mark.for_, (spot.at[0].mm, spot.at[0].mm))
            found[mark.for_] = min(low, spot.at[0].mm), max(high, spot.at[0].mm)
    return found


def _numbers(laid: PartLayout, face: Face, marks: list[Mark]) -> Iterator[_Label]:
    """The numbers of the steps that make a feature's marks, at the mark nearest to its middle."""
    for name in dict.fromkeys(mark.for_ for mark in marks):
        own = [mark for mark in marks if mark.for_ == name]
        steps = [step for step in laid.steps if step.for_ and _feature(step.for_) == _feature(name)]
        numbers = [step.number for step in steps if step.face is face] or [step.number for step in steps]
        if numbers:
            spots = [(spot.at[0].mm, spot.at[1].mm) for mark in own for spot in mark.spots]
            middle = sum(x for x, _ in spots) / len(spots)
            x = min((x for x, _ in spots), key=lambda x: abs(x - middle))
            low = (max if face in DOWNWARD else min)(y for at, y in spots if at == x)
            yield _Label(x, low, _run_text(numbers))


def _run_text(numbers: list[int]) -> str:
    """Numbers as they are said: `4`, `4-6`, `4, 9`."""
    first, last = numbers[0], numbers[-1]
    if first == last:
        return str(first)
    return f"{first}-{last}" if numbers == list(range(first, last + 1)) else ", ".join(map(str, numbers))


def _slim(view: View, face: Face) -> Block:
    """A face without marks: name and outline only."""
    name = face_name(view.laid.part.profile, face)
    title = Text(view.left, 0.0, f"{name}: nothing to mark", BODY, level=Level.TOP)
    top = line_height(BODY) + 1.8
    strip = Group(tuple(strip_items(view, face, _SLIM, slim=True)), 0.0, top)
    return Block((title, strip), top + _SLIM + _GAP)


def _full(view: View, face: Face, found: _Readings, width: float) -> Block:
    """A face with its marks, running readings above, depths at both sides, step numbers below."""
    height = max(_LEAST, view.height(face))
    above = _along(view, found)
    below = _balloons(view, face, found.numbers, height)
    title_height = line_height(BODY) + 0.8
    need = max(_stack(found.left), _stack(found.right))
    spare = max(0.0, need - above[1] - height - below.height)
    top = title_height + above[1] + spare / 2
    block_bottom = top + height + below.height + spare / 2
    limits = (title_height - top, block_bottom - top)
    items: list[Item] = [
        *strip_items(view, face, height, slim=False),
        *above[0],
        *below.items,
        *_leads(view, face, found, height),
        *_depths(view, face, found.left, (Side.LEFT, view.left, view.left), limits, height),
        *_depths(view, face, found.right, (Side.RIGHT, view.right, width - view.right), limits, height),
    ]
    return Block((*_title(view, face, found), Group(tuple(items), 0.0, top)), block_bottom + _GAP)


def _stack(labels: tuple[_Label, ...]) -> float:
    return len({(label.text, label.y) for label in labels}) * (line_height(BODY) + 0.5)


def _title(view: View, face: Face, found: _Readings) -> tuple[Text, Text]:
    """The face's name, and from where its readings run."""
    name = face_name(view.laid.part.profile, face)
    words = "along from the left end, at the dot"
    if (found.left or found.right) and (source := _source(view.laid.on(face))):
        words += f"; across from the {source}"
        words += ", which lies below" if face is Face.FAR and source == "top edge" else ""
    if found.crowded:
        words += "; readings across in the steps"
    after = text_width(f"{name}  ", BODY, Weight.BOLD)
    return (
        Text(0.0, 0.0, name, BODY, Weight.BOLD, level=Level.TOP),
        Text(after, 0.0, words, BODY, level=Level.TOP),
    )


def _source(marks: tuple[Mark, ...]) -> str:
    """Where readings across a face start."""
    for mark in marks:
        words = mark.y.from_.split(",")[0]
        if not words.startswith(("past", "above", "below")):
            return words
    return ""


def _along(view: View, found: _Readings) -> tuple[list[Item], float]:
    """Running readings over the strip, the overall length at the right end."""
    overall = next(step.readings[0].text for step in view.laid.steps if step.for_ == "overall")
    labels = [Reading(view.scale.at(label.x), label.text) for label in found.along]
    labels.append(Reading(view.right, overall, Weight.BOLD))
    drawn = running(labels, Side.ABOVE, 0.0, (view.left, view.right), datum=view.left)
    return list(drawn.items), drawn.depth + 0.6


def _leads(view: View, face: Face, found: _Readings, height: float) -> Iterator[Item]:
    """Thin lines inside the strip, from its edges to what the readings belong to."""
    for x in {label.x for label in found.along}:
        y = min(view.down(face, label.y, height) for label in found.along if label.x == x)
        if y > 0.01:
            yield Line(view.scale.at(x), 0.0, view.scale.at(x), y, Role.DIMENSION)
    for labels, pick, edge in ((found.left, min, view.left), (found.right, max, view.right)):
        for y in {label.y for label in labels}:
            x = view.scale.at(pick(label.x for label in labels if label.y == y))
            down = view.down(face, y, height)
            for a, b in _pieces(view, min(edge, x), max(edge, x)):
                yield Line(a, down, b, down, Role.DIMENSION)


def _pieces(view: View, left: float, right: float) -> Iterator[tuple[float, float]]:
    """A level line on the paper without what lies in the gaps of breaks."""
    for gap_left, gap_right in view.scale.gaps:
        if gap_left >= right:
            break
        if left < gap_left:
            yield left, gap_left
        left = max(left, gap_right)
    if left < right:
        yield left, right


def _depths(
    view: View,
    face: Face,
    labels: tuple[_Label, ...],
    place: tuple[Side, float, float],
    limits: tuple[float, float],
    height: float,
) -> list[Item]:
    side, base, depth = place
    readings = once([Reading(view.down(face, label.y, height), label.text) for label in labels])
    return list(running(readings, side, base, limits, depth=depth).items)


def _balloons(view: View, face: Face, numbers: tuple[_Label, ...], height: float) -> Block:
    """The numbers of the steps below the strip, each with a line to its marks."""
    if not numbers:
        return Block((), 0.0)
    labels = [Reading(view.scale.at(label.x), f" {label.text} ", Weight.BOLD) for label in numbers]
    rows = arrange(labels, Side.BELOW, (view.left - 4, view.right + 4), float("inf"), BODY)
    items: list[Item] = []
    for item in draw_rows(rows, height, 1.2, 0.0):
        items += balloon(item) if isinstance(item, Text) else [item]
    for label in numbers:
        x, y = view.scale.at(label.x), view.down(face, label.y, height)
        if y < height:
            items.append(Line(x, y, x, height, Role.DIMENSION))
    return Block(tuple(items), 1.2 + rows_depth(rows) + _PAD)


def balloon(text: Text) -> list[Item]:
    """A step's number, with a space at both ends, in its ring."""
    corners = text_box(text)
    left, right = min(x for x, _ in corners), max(x for x, _ in corners)
    top, bottom = min(y for _, y in corners), max(y for _, y in corners)
    x, y = (left + right) / 2, (top + bottom) / 2
    upright = bottom - top > right - left
    short, long = sorted((right - left, bottom - top))
    r = short / 2 + 0.3
    half = max(0.0, long / 2 - _PAD - 0.6 * r)

    def at(along: float, across: float) -> tuple[float, float]:
        return (x + across, y + along) if upright else (x + along, y + across)

    start = 0.0 if upright else 90.0
    return [
        text,
        Arc(*at(-half, 0.0), r, start, start + 180.0, Role.FRAME),
        Arc(*at(half, 0.0), r, start + 180.0, start + 360.0, Role.FRAME),
        Line(*at(-half, -r), *at(half, -r), Role.FRAME),
        Line(*at(-half, r), *at(half, r), Role.FRAME),
    ]
