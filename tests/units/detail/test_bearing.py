from __future__ import annotations

import pytest

from assembling import detailed, overlaps
from gageline.detail import Detailed
from gageline.part import Face, FittingKind
from gageline.units import parse_length


def over_posts(
    post: str = "HSS6X6X3/8",
    turn: int = 0,
    beam: str = "W18X50",
    cap: dict[str, object] | None = None,
    **end: object,
) -> Detailed:
    more = {"cap_plate": cap} if cap else {}
    posts = [
        {"name": f"P{n}", "at": f"{n}/A", "stock": post, "base": "0", "under": "G", "turn": turn} | more
        for n in (1, 2)
    ]
    girder = {"name": "G", "stock": beam, "from": "1/A", "to": "2/A", "top": "12'-0"}
    bears = {"connection": "bearing"}
    return detailed(
        {
            "grid": {"x": {"names": ["1", "2"], "spacing": [240]}, "y": {"names": ["A"]}},
            "column": posts,
            "member": [girder | {"start": bears, "end": end or bears}],
        }
    )


def test_a_post_ends_under_the_girder_less_its_plates() -> None:
    post = over_posts().member("P1").assembly
    # 12 ft less 18 in, base plate 3/4 and cap plate 1/2
    assert post.main.length == parse_length("10'-6") - parse_length("1 1/4")
    assert [fitting.kind for fitting in post.fittings] == [FittingKind.BASE_PLATE, FittingKind.CAP_PLATE]


def test_the_girder_is_drilled_where_the_cap_plate_is() -> None:
    result = over_posts()
    girder, post = result.member("G"), result.member("P1")
    cap = post.assembly.fittings[1]
    there = cap.placement.then(post.placement)
    plate = {tuple(round(v.inches, 4) for v in there.point((h.x, h.y, parse_length("0")))[:2])
             for h in cap.part.groups[0].holes}  # fmt: skip
    beam = set()
    for group in girder.assembly.main.groups:
        assert group.face is Face.BOTTOM
        for hole in group.holes:
            place = girder.placement.point((hole.x, parse_length("0"), hole.y))
            beam.add(tuple(round(v.inches, 4) for v in place[:2]))
    assert plate <= beam
    assert len(beam) == 8


@pytest.mark.parametrize("turn", [0, 90])
def test_holes_that_are_given_for_a_cap_plate_are_those_of_the_beam_too(turn: int) -> None:
    result = over_posts(
        "W8X31", turn, cap={"pitch": "10" if turn == 0 else "4", "gage": "4" if turn == 0 else "10"}
    )
    assert [(one.connection, one.count) for one in result.field_bolts] == [("G on P1", 4), ("G on P2", 4)]
    assert not [one for one in result.findings if one.code == "holes-meet-nothing"]


def test_stiffeners_stand_over_the_walls_of_the_post() -> None:
    names = [fit for fit in over_posts().member("G").assembly.fittings if fit.kind is FittingKind.STIFFENER]
    assert len(names) == 8


def test_a_post_across_the_girder_gets_one_pair() -> None:
    across = over_posts("W8X31", turn=90)
    assert len(across.member("G").assembly.fittings) == 4
    assert not overlaps(across)


def test_an_overhang_runs_on_past_the_post() -> None:
    girder = over_posts(overhang="3'-0").member("G").assembly.main
    # 5 3/4 past the middle of the first post: pitch 9, half, and 1 1/4
    assert girder.length == parse_length("20'-0") + parse_length("3'-0") + parse_length("5 3/4")


def test_a_post_askew_is_a_finding() -> None:
    found = over_posts("W8X31", turn=30).findings
    assert {one.code for one in found} == {"bearing-not-detailed"}


def test_bolts_over_a_column_have_room_for_the_wrench() -> None:
    result = over_posts("W8X31")
    (one, _) = [reason for reason in result.reasons["G"] if reason.decision.startswith("bolts can")]
    # W8X31 8 in deep, flange 0.435: pitch 8 + 2 x 1 1/4; stiffener 3/8; W18X50 web 0.355, gage 3 1/2
    assert 'to the column under the plate 1 1/4"' in one.because
    assert 'to the stiffener 1 9/32"' in one.because
    assert "to the beam's web 1 37/64\"" in one.because


def test_holes_given_too_near_the_web_are_warned_of() -> None:
    found = over_posts("W8X31", cap={"pitch": "10 1/2", "gage": "2"}).findings
    assert (
        'warning: G: bolts over P1 to the beam\'s web: 53/64" is less than the 1 1/4" that a 3/4 bolt '
        "wants to be tightened: give the cap plate a wider pitch or gage, or use smaller bolts"
    ) in [one.text() for one in found]


def test_a_channel_on_a_post_is_a_finding() -> None:
    """Its flange lies to one side of its line: two of four holes would be in the air."""
    (found, *_) = [one for one in over_posts("W8X31", beam="C12X20.7").findings if one.subject == "G"]
    assert found.code == "bearing-not-detailed"
    assert found.text() == (
        "error: G: on column P1 it is a C12X20.7, no I-section: the holes in its cap plate and its "
        "stiffeners are not detailed: use an I-section, or enter them as drawn"
    )
