"""Laws of designations: however one is typed, the same section is found."""

from __future__ import annotations

import re
from fractions import Fraction

from hypothesis import example, given
from hypothesis import strategies as st

from gageline.errors import ValueProblem
from gageline.steel import Plate, Section, Stock, all_sections, find
from gageline.units import Length, Unit

SECTIONS = st.sampled_from(all_sections())


@st.composite
def typed(draw: st.DrawFn, designation: str) -> str:
    """A designation in random case, with random blanks and signs, sizes as fractions or decimals."""
    text = designation.replace(" ", "")
    word = re.match(r"[A-Za-z]+", text)
    assert word is not None
    tail = re.search(r"(STD|XS|XXS)$", text)
    sizes = text[word.end() : tail.start() if tail else len(text)]
    blank = st.sampled_from(["", " "])
    parts = [_size(draw, part) for part in re.split("[xX]", sizes)]
    times = draw(st.sampled_from(["x", "X", "×", " x ", " X", "× "]))
    written = draw(blank).join([word.group(), times.join(parts), *([tail.group()] if tail else [])])
    return draw(blank) + "".join(draw(st.sampled_from([c.lower(), c.upper()])) for c in written) + draw(blank)


def _size(draw: st.DrawFn, part: str) -> str:
    if "/" not in part:
        return part
    whole, _, fraction = part.rpartition("-")
    exact = Fraction(fraction) + int(whole or 0)
    rounded = f"{float(exact):.3f}"
    return draw(
        st.sampled_from(
            [
                part,
                part.replace("-", " "),
                f"{float(exact)}",
                rounded,
                rounded.removeprefix("0"),
            ]
        )
    )


@given(st.data(), SECTIONS)
def test_a_designation_is_found_however_it_is_typed(data: st.DataObject, section: Section) -> None:
    text = data.draw(typed(section.designation))
    assert find(text) == section


@given(SECTIONS)
def test_a_printed_designation_finds_its_own_line_in_its_own_tables(section: Section) -> None:
    assert find(section.designation, section.system) is find(section.designation)
    assert find(section.designation) == section


@given(st.text(max_size=60))
@example("PL")
@example("PL1/0x3")
@example("L4x3x1/0")
@example("W16X26X" + "9" * 40)
@example("w" + "1" * 400)
@example("FL 3/8 x")
@example("½")
def test_any_text_is_stock_or_a_problem_that_says_so(text: str) -> None:
    found = _found_or_told(text)
    if isinstance(found, str):
        assert re.search("is not in the tables|is not a plate|is not a length|plate thickness", found)
        assert len(found) < 400
    else:
        assert found.weight > 0


def _found_or_told(text: str) -> Stock | str:
    try:
        return find(text)
    except ValueProblem as problem:
        return str(problem)


@given(st.integers(1, 512), st.integers(1, 6144), st.sampled_from(["PL", "fl", "Bar ", "plate "]))
def test_a_plate_is_named_as_it_is_found(thick: int, wide: int, word: str) -> None:
    small, large = sorted((Fraction(thick, 64), Fraction(wide, 64)))
    plate = find(f"{word}{_mixed(small)} x {_mixed(large)}")
    assert plate == Plate(Length.from_inches(small), Length.from_inches(large))
    assert find(plate.designation) == plate


@given(st.integers(1, 200), st.integers(200, 3000))
def test_a_metric_plate_is_named_as_it_is_found(thick: int, wide: int) -> None:
    plate = find(f"PL{thick}x{wide}", units=Unit.MM)
    assert plate == find(f"pl {thick}mm × {wide}mm")
    assert find(plate.designation, units=Unit.MM) == plate


def _mixed(value: Fraction) -> str:
    whole, rest = divmod(value, 1)
    return f"{whole} {rest}" if whole and rest else str(whole or rest)
