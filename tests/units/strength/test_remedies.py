from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from connections import EXAMPLES, bolts
from gageline.strength import (
    Bolted,
    Connection,
    Fillet,
    Fitting,
    Kind,
    Material,
    Method,
    Notch,
    Suggestion,
    SupportFace,
    Tongue,
    check_connection,
    lighter,
    remedy,
)
from gageline.strength.connection import Leeway
from gageline.strength.remedies import _SIZES, _more_rows, _thicker, _thinner, enough_rows
from gageline.units import System

LRFD = Method.LRFD


def cure(name: str, V: float, **changes: object) -> Suggestion | None:
    return remedy(check_connection(replace(EXAMPLES[name], V=V, **changes), LRFD))  # type: ignore[arg-type] # any field


def test_rows_come_first() -> None:
    found = cure("II.A-4", 75.0)
    assert found is not None
    assert found.verdict is not None
    assert found.change == "4 rows of bolts"
    joint = found.verdict.connection.to_beam
    assert isinstance(joint, Bolted)
    assert joint.rows == 4


def test_a_shallower_cope_where_rows_have_no_room() -> None:
    """Two rows fill the web that a deep cope leaves; the cope itself is what is too much."""
    example = EXAMPLES["II.A-4"]
    assert example.beam is not None
    beam = replace(example.beam, d=12.0, top=Notch(14.0, 5.0))
    fitting = replace(example.fitting, length=5.5)
    low = replace(
        example, beam=beam, fitting=fitting, to_beam=bolts(2, 2.125, 1.375), to_support=bolts(2, 3.0, 2.0)
    )
    verdict = check_connection(replace(low, V=25.0), LRFD)
    found = remedy(verdict)
    assert not verdict.passes
    assert found is not None
    assert found.change.startswith("a cope ")


def test_a_larger_weld_where_only_the_weld_is_short() -> None:
    example = EXAMPLES["II.A-2A"]
    short = replace(example, to_support=Fillet(3 / 16), V=226.0, drop=12.0)
    found = remedy(check_connection(short, LRFD))
    assert found is not None
    assert found.change == 'welds of 1/4"'


def test_nothing_is_suggested_for_what_passes_with_little_to_spare() -> None:
    verdict = check_connection(EXAMPLES["II.A-4"], LRFD)
    assert remedy(verdict) is None
    assert lighter(verdict) is None


def test_a_lighter_connection_where_there_is_much_to_spare() -> None:
    verdict = check_connection(replace(EXAMPLES["II.A-1A"], V=60.0), LRFD)
    found = lighter(verdict)
    assert found is not None
    assert found.verdict is not None
    assert found.change.endswith("rows of bolts")
    assert found.verdict.passes


def test_a_longer_fitting_where_everything_is_welded() -> None:
    """3/16 welds 24 in long carry 257 kips in II.A-3 (Table 10-3); more asks for more length."""
    example = replace(EXAMPLES["II.A-3"], drop=2.5, to_beam=Fillet(1 / 4), to_support=Fillet(1 / 4))
    found = remedy(check_connection(replace(example, V=270.0), LRFD))
    assert found is not None
    assert found.change == 'a fitting 25" long'


def test_more_than_one_remedy_together() -> None:
    """Nine rows, all that fit, of 35.8 kips carry some 320; with threads excluded 45.1 a row are enough."""
    found = cure("II.A-1A", 330.0)
    assert found is not None
    assert found.verdict is not None
    assert found.change == "9 rows of bolts, with threads excluded from the shear planes (X)"
    assert found.verdict.passes


def test_a_doubler_where_only_the_web_is_too_thin() -> None:
    example = EXAMPLES["II.A-11A"]
    assert example.beam is not None
    thin = replace(example, beam=replace(example.beam, t_w=0.2), V=60.0, drop=8.0)
    found = remedy(check_connection(thin, LRFD))
    assert found is not None
    assert found.verdict is None
    assert found.change.startswith("a doubler plate")


def test_nothing_is_promised_where_nothing_is_enough() -> None:
    assert cure("II.A-18", 5000.0) is None


def test_a_plate_that_would_punch_through_its_wall_is_to_be_thinner() -> None:
    """A wall of 0.233 in with F_u 62 ksi takes plates of 50 ksi up to 0.289 in."""
    example = EXAMPLES["II.A-18"]
    assert example.support is not None
    wall = replace(
        example.support, face=SupportFace.WALL, t=0.233, steel=replace(example.support.steel, F_u=62.0)
    )
    thick = replace(
        example, support=wall, fitting=replace(example.fitting, t=0.375), to_support=Fillet(1 / 4)
    )
    verdict = check_connection(thick, LRFD)
    assert [rule.title for rule in verdict.forbidden] == ["plate that would punch through the wall"]
    found = remedy(verdict)
    assert found is not None
    assert found.change == 'a fitting 1/4" thick'


def test_in_millimetres_the_sizes_are_those_of_a_metric_shop() -> None:
    """II.A-2A with 3/16 in of weld: the next whole millimetres over 4.76, as far as it needs."""
    example = EXAMPLES["II.A-2A"]
    short = replace(example, to_support=Fillet(3 / 16), V=226.0, drop=12.0)
    found = remedy(check_connection(short, LRFD), System.MM)
    assert found is not None
    assert found.change == "welds of 6 mm"


def test_a_plate_whose_beam_is_not_known_is_tried_with_no_more_rows_than_the_tables_have() -> None:
    """Without a beam nothing else bounds the rows; 4000 kips are beyond any number of them."""
    alone = replace(EXAMPLES["II.A-18"], beam=None)
    hopeless = check_connection(replace(alone, V=4000.0), LRFD)
    assert remedy(hopeless) is None
    assert isinstance(alone.to_beam, Bolted)
    (first, *_, last) = [
        one.to_beam.rows
        for _, one in _more_rows(alone, _SIZES[System.FT_IN])
        if isinstance(one.to_beam, Bolted)
    ]
    assert (first, last) == (alone.to_beam.rows + 1, 12)


def test_rows_that_a_frame_has_no_room_for_are_no_remedy_but_are_asked_of_detailing() -> None:
    """Detailing may raise the first row, or says that they do not fit."""
    tight = replace(EXAMPLES["II.A-4"], V=75.0, leeway=Leeway(9.0, 0.0, 0.0, 0.5, 0.5))
    verdict = check_connection(tight, LRFD)
    assert enough_rows(verdict, System.FT_IN) == 4
    found = remedy(verdict)
    assert found is None or "rows" not in found.change


def test_a_tongue_grows_with_its_plate_and_is_never_thicker() -> None:
    plate = Fitting("PL3/8X4-1/2", Material("A36", 36.0, 58.0), 0.375, 5.5, 4.5)
    tongue = Tongue("HSS10X4X1/4", plate, plate, Fillet(0.25), 1.25, 1.875)
    end = Connection(
        "B1 left",
        Kind.SINGLE_PLATE,
        None,
        plate,
        bolts(2, 3.0, 1.5),
        Fillet(0.25),
        0.5,
        0.0,
        9.0,
        tongue=tongue,
    )

    def plates(changes: Iterator[tuple[str, Connection]]) -> list[Fitting]:
        return [made.tongue.plate for _, made in changes if made.tongue is not None]

    sizes = _SIZES[System.FT_IN]
    assert next(iter(plates(_more_rows(end, sizes)))).length == 8.5
    assert {one.t for one in plates(_thicker(end, sizes))} == {0.375}
    assert [one.t for one in plates(_thinner(end, sizes))] == [0.3125, 0.25]
    near = replace(end, leeway=Leeway(8.0, 0.0, 0.0, 0.5, 0.5))
    assert not plates(_more_rows(near, sizes))
