from hypothesis import given
from hypothesis import strategies as st

from gageline.units import (
    Length,
    System,
    Unit,
    exact_text,
    feet_inches,
    inches_text,
    millimetres,
    parse_length,
    round_down,
    round_to,
    round_up,
)

lengths = st.integers(-(10**12), 10**12).map(Length)
sixty_fourths = st.integers(-(10**6), 10**6).map(lambda n: Length(n * 2540))
tenths_of_mm = st.integers(-(10**7), 10**7).map(lambda n: Length(n * 640))
steps = st.sampled_from(
    [Length(162560 // n) for n in (1, 2, 4, 8, 16, 32, 64)] + [Length(6400), Length(3200)]
)


@given(lengths, st.sampled_from(System))
def test_exact_text_reads_back(length: Length, system: System) -> None:
    assert parse_length(exact_text(length, system)) == length


@given(sixty_fourths)
def test_feet_inches_read_back(length: Length) -> None:
    assert parse_length(feet_inches(length, 64)) == length
    assert parse_length(inches_text(length, 64)) == length


@given(tenths_of_mm)
def test_millimetres_read_back(length: Length) -> None:
    assert parse_length(millimetres(length), Unit.MM) == length


@given(lengths, st.sampled_from([1, 2, 4, 8, 16, 32, 64]))
def test_writing_is_within_half_the_fraction(length: Length, denominator: int) -> None:
    assert 2 * abs(parse_length(feet_inches(length, denominator)) - length) <= Length(162560 // denominator)


@given(lengths, steps)
def test_rounding(length: Length, step: Length) -> None:
    assert 2 * abs(round_to(length, step) - length) <= step
    assert round_down(length, step) <= length <= round_up(length, step)
    assert round_up(length, step) - round_down(length, step) in {Length(0), step}
    assert round_to(-length, step) == -round_to(length, step)
    assert round_to(round_to(length, step), step) == round_to(length, step)


@given(lengths, st.integers(1, 97))
def test_parts_sum_to_the_whole(length: Length, count: int) -> None:
    parts = length.parts(count)
    assert len(parts) == count
    assert sum(part.ticks for part in parts) == length.ticks
    assert max(parts) - min(parts) <= Length(1)


@given(lengths, lengths, lengths)
def test_addition_is_a_group(a: Length, b: Length, c: Length) -> None:
    assert (a + b) + c == a + (b + c)
    assert a + b == b + a
    assert a - b == a + (-b)


@given(st.text(max_size=80))
def test_any_text_is_a_length_or_a_clear_refusal(text: str) -> None:
    try:
        message = exact_text(parse_length(text))
    except ValueError as refusal:
        message = str(refusal)
    assert message.endswith(('"', "mm"))
