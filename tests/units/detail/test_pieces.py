from __future__ import annotations

from typing import Any

from assembling import bay, detailed
from gageline.detail import Detailed
from gageline.detail.likeness import Lie


def beams(*more: dict[str, Any], **first: object) -> Detailed:
    """B1 as it is, and others like it 1 ft apart."""
    table = bay(**first)  # type: ignore[arg-type] # keys of the beam
    base = {"stock": "W18X50", "top": "Floor"}
    for number, keys in enumerate(more, 2):
        at = 120 + 24 * (number - 1)
        places = {"from": {"on": "G1", "at": at}, "to": {"on": "G2", "at": at}}
        table["member"] = [*table["member"], base | places | {"name": f"B{number}"} | keys]  # type: ignore[misc]
    return detailed(table)


def marks(result: Detailed) -> dict[str, str]:
    return {one.member: one.mark for one in result.placed if one.member.startswith("B")}


def test_equal_pieces_get_one_mark_and_a_quantity() -> None:
    result = beams({}, {})
    assert marks(result) == {"B1": "B1", "B2": "B1", "B3": "B1"}
    (piece,) = [one for one in result.assemblies if one.mark == "B1"]
    assert piece.quantity == 3


def test_a_piece_the_other_way_round_is_the_same_piece() -> None:
    way_back = {"from": {"on": "G2", "at": 144}, "to": {"on": "G1", "at": 144}}
    unequal = {"start": {"rows": 4}}
    result = beams(way_back | {"end": {"rows": 4}}, **unequal)
    assert marks(result) == {"B1": "B1", "B2": "B1"}
    one, two = (next(each for each in result.placed if each.member == name) for name in ("B1", "B2"))
    assert (one.lie, two.lie) == (Lie(), Lie(end_for_end=True))
    assert [round(at.left[1].inches / 12) for at in (one, two)] == [
        0,
        0,
    ]  # both at G1, where the card has four rows


def test_a_column_that_is_an_equal_one_turned_round_says_so() -> None:
    column = {"stock": "W10X49", "base": 0, "top": "Floor"}
    table = bay()
    table["column"] = [column | {"name": "P1", "at": "1/A"}, column | {"name": "P2", "at": "2/A"}]
    table["member"] = [{"name": "G1", "stock": "W18X50", "from": "1/A", "to": "2/A", "top": "Floor"}]
    placed = {one.member: one for one in detailed(table).placed}
    assert placed["P1"].mark == placed["P2"].mark == "P1"
    assert (placed["P1"].lie, placed["P2"].lie) == (Lie(), Lie(half_turn=True))


def test_a_fitting_takes_no_name_of_a_member() -> None:
    def plates(*names: str) -> set[str]:
        table = bay()
        column = {"stock": "W10X49", "base": 0, "top": "Floor"}
        table["column"] = [
            column | {"name": name, "at": f"{number}/A"} for number, name in enumerate(names, 1)
        ]
        table["member"] = [{"name": "G1", "stock": "W18X50", "from": "1/A", "to": "2/A", "top": "Floor"}]
        pieces = detailed(table).assemblies
        return {fit.part.mark for one in pieces for fit in one.fittings if fit.part.mark[0] == "b"}

    (usual,) = plates("P1", "P2")
    (other,) = plates(usual.upper(), "P2")
    assert other != usual


def test_marks_given_by_people_stay() -> None:
    result = beams({"mark": "J7"}, {})
    assert marks(result) == {"B1": "J7", "B2": "J7", "B3": "J7"}


def test_one_mark_given_to_pieces_that_differ_is_a_finding() -> None:
    result = beams({"mark": "J7"}, {"mark": "J7", "ends": {"rows": 4}})
    assert marks(result) == {"B1": "J7", "B2": "J7", "B3": "J7-2"}
    (found,) = [one for one in result.findings if one.code == "mark-taken"]
    assert 'this one is marked "J7-2"' in found.message


def test_equal_pieces_with_marks_of_their_own_are_no_opposite_hands() -> None:
    result = beams({"mark": "K8"}, mark="K7")
    assert marks(result) == {"B1": "K7", "B2": "K8"}
    assert [one.hand_of for one in result.assemblies if one.mark in {"K7", "K8"}] == [None, None]


def test_marks_stay_when_an_unrelated_piece_changes() -> None:
    before = beams({}, {"drop": "2"}, {"stock": "W16X26"}, {"stock": "W16X26"})
    after = beams({}, {"drop": "2"}, {"stock": "W16X31"}, {"stock": "W16X26"})
    assert marks(before) == {"B1": "B1", "B2": "B1", "B3": "B3", "B4": "B4", "B5": "B4"}
    assert marks(after) == {"B1": "B1", "B2": "B1", "B3": "B3", "B4": "B4", "B5": "B5"}


def test_opposite_hands_are_recognised() -> None:
    left = {"ends": {"connection": "single angle", "side": "near"}, "start": {"rows": 4}}
    right = {"ends": {"connection": "single angle", "side": "far"}, "start": {"rows": 4}}
    result = beams(right, **left)
    assert marks(result) == {"B1": "B1", "B2": "B2"}
    (hand,) = [one for one in result.assemblies if one.mark == "B2"]
    assert hand.hand_of == "B1"


def test_the_lengths_of_a_frame_are_worked_out() -> None:
    pieces = detailed(bay()).assemblies
    parts = [part for one in pieces for part in (one.main, *(fit.part for fit in one.fittings))]
    assert len(parts) > len(pieces)
    assert all(part.derived for part in parts)
