"""A law of the marks of fittings: they follow from the fitting, whatever else is in the job."""

from __future__ import annotations

from importlib.resources import files

from hypothesis import assume, given
from hypothesis import strategies as st

from gageline.detail import FullJob, read_full
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
