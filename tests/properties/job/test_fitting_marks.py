"""A law of the marks of fittings: they follow from the fitting, whatever else is in the job."""

from __future__ import annotations

from dataclasses import replace
from importlib.resources import files

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from frames import one_bay
from gageline.detail import FullJob, read_full
from gageline.job.marking import FittingMarks
from gageline.part import Fitting, Part
from jobs import job_of

ANGLES = st.builds(
    '[[piece.angles]]\nend = "{}"\nstock = "{}"\nrows = {}\nlength = "{}"\n'.format,
    st.sampled_from(["left", "right", "both"]),
    st.sampled_from(["L4x3-1/2x5/16", "L4x4x3/8", "L5x3-1/2x5/16"]),
    st.integers(2, 4),
    st.sampled_from(["1'-0", "11 1/2", "12 1/4"]),
)
PLATES = st.builds(
    '[[piece.plates]]\nx = {}\nthickness = "{}"\nwidth = {}\nrows = {}\nlength = 10\n'.format,
    st.sampled_from([36, 60]),
    st.sampled_from(["3/8", "1/2"]),
    st.integers(4, 6),
    st.integers(2, 3),
)
STIFFENERS = st.builds(
    '[[piece.stiffeners]]\nx = {}\nthickness = "{}"\n'.format, st.sampled_from([80, 90]), st.just("3/8")
)
PIECES = st.tuples(st.sampled_from(["W16x26", "W18x50"]), ANGLES, st.one_of(st.just(""), PLATES, STIFFENERS))


def table(number: int, piece: tuple[str, str, str]) -> str:
    stock, *fittings = piece
    return f'mark = "B{number}"\nstock = "{stock}"\nlength = 120\n{"".join(fittings)}'


def fittings(*pieces: str) -> dict[str, tuple[Fitting, ...]]:
    return {piece.mark: piece.fittings for piece in job_of(*pieces).assemblies}


def marks(given: tuple[Fitting, ...]) -> list[str]:
    return [fitting.part.mark for fitting in given]


@given(st.lists(PIECES, min_size=2, max_size=5))
def test_a_fitting_has_the_mark_that_it_has_in_a_job_of_its_piece_alone(
    drawn: list[tuple[str, str, str]],
) -> None:
    """So no other piece that comes, goes or changes moves it.

    Only where the numbers of two fittings that differ fall together, once in thousands of pairs, one of them
    takes another number.
    """
    pieces = [table(number, piece) for number, piece in enumerate(drawn)]
    together = fittings(*pieces)
    alone = {mark: own for piece in pieces for mark, own in fittings(piece).items()}
    steel: dict[str, Part] = {}
    for one in (fitting.part for own in alone.values() for fitting in own):
        assume(steel.setdefault(one.mark, one) == one)
    assert {mark: marks(own) for mark, own in together.items()} == {
        mark: marks(own) for mark, own in alone.items()
    }


def _steel(full: FullJob) -> dict[str, str]:
    """The marks of the fittings of a job, by their steel."""
    parts = {fitting.part for piece in full.job.assemblies for fitting in piece.fittings}
    return {repr(part).replace(f"'{part.mark}'", "''", 1): part.mark for part in parts}


def test_the_fittings_of_a_frame_keep_their_marks_when_a_beam_goes() -> None:
    """B5 of the demo, the skewed beam, carries nothing: most of the other steel stays, with its marks."""
    before = files("gageline.demo").joinpath("mezzanine-frame.toml").read_text("utf-8")
    head, _, rest = before.partition("[[frame.member]] # skewed, to clear the press\n")
    _, _, tail = rest.partition("[[frame.member]]")
    whole, less = _steel(read_full(before)), _steel(read_full(f"{head}[[frame.member]]{tail}"))
    kept = whole.keys() & less.keys()
    assert len(kept) > len(whole) / 2
    assert len(less) < len(whole)
    assert {steel: whole[steel] for steel in kept} == {steel: less[steel] for steel in kept}


@pytest.mark.parametrize(("own", "there"), [("", "a5644"), ('mark = "clip"', "clip")])
def test_the_fittings_of_a_frame_keep_their_marks_when_equal_steel_is_drawn(own: str, there: str) -> None:
    """X1 is drawn with the angle that the frame's beam gets by rule, with a mark that is given or not."""
    alone = one_bay("", beam="W16x26")
    drawn = f"""
[[piece]]
mark = "X1"
stock = "W16x26"
length = "10'-0"
[[piece.angles]]
end = "left"
stock = "L4x3-1/2x5/16"
rows = 3
{own}
"""
    (angle, *_) = {fit.part.mark for one in read_full(alone).job.assemblies for fit in one.fittings}
    both = {one.mark: one.fittings for one in read_full(alone + drawn).job.assemblies}
    assert angle == "a5644"
    assert {fit.part.mark for fit in both["B1"]} == {angle}
    assert {fit.part.mark for fit in both["X1"]} == {there}
    if not own:
        assert both["X1"][0].part == both["B1"][0].part


def test_when_all_numbers_of_four_digits_are_taken_there_are_more() -> None:
    taken = {f"a{number}" for number in range(1000, 10_000)}
    made = FittingMarks(taken, set())
    angle = '[[piece.angles]]\nend = "left"\nstock = "L4x4x3/8"\nrows = 3\n'
    (piece,) = job_of(table(1, ("W16x26", angle, ""))).assemblies
    bare = replace(
        piece, fittings=tuple(replace(one, part=replace(one.part, mark="")) for one in piece.fittings)
    )
    assert {len(one.part.mark) for one in made.of(bare).fittings} == {7}
