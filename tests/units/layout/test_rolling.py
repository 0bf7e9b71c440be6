from itertools import pairwise, permutations, product

import pytest

from gageline.layout.rolling import face_up, face_walk, quarter_turns, roll_step
from gageline.part import Face

TOP, NEAR, BOTTOM, FAR = Face.TOP, Face.NEAR, Face.BOTTOM, Face.FAR


@pytest.mark.parametrize(
    ("phases", "walk"),
    [
        (((TOP, NEAR, BOTTOM, FAR),), ((TOP, NEAR, BOTTOM, FAR),)),
        (((NEAR,), (TOP, NEAR)), ((NEAR,), (NEAR, TOP))),  # holes go on where the copes left off
        (((), (TOP, FAR, NEAR)), ((), (FAR, TOP, NEAR))),  # two quarter turns, not three
        (((NEAR,), (), (FAR, NEAR)), ((NEAR,), (), (NEAR, FAR))),
        ((), ()),
    ],
)
def test_faces_are_taken_in_the_order_of_fewest_turns(
    phases: tuple[tuple[Face, ...], ...], walk: tuple[tuple[Face, ...], ...]
) -> None:
    found = face_walk(phases)
    assert [set(order) for order in found] == [set(order) for order in walk]
    assert turns(found) == turns(walk)


def turns(walk: tuple[tuple[Face, ...], ...]) -> int:
    faces = [face for order in walk for face in order]
    return sum(quarter_turns(one, two) for one, two in pairwise(faces))


def test_quarter_turns_go_the_shorter_way_round() -> None:
    assert quarter_turns(TOP, FAR) == quarter_turns(FAR, TOP) == 1
    assert quarter_turns(NEAR, FAR) == 2
    assert quarter_turns(TOP, TOP) == 0
    assert quarter_turns(Face.LEG_A, Face.LEG_B) == 1


def test_a_roll_says_which_face_comes_up_and_what_comes_toward_you() -> None:
    step = roll_step(NEAR, TOP)
    assert (step.title, step.face) == ("Roll", TOP)
    assert step.text == "Roll it a quarter turn: top flange up."
    assert step.check == "Left end still at your left, near side toward you."
    assert roll_step(NEAR, FAR).text == "Roll it half over: far web up."


def test_faces_of_hollow_sections_are_walls() -> None:
    assert face_up(TOP, hollow=True) == "top wall"
    assert face_up(Face.LEG_B) == "leg B"


@pytest.mark.parametrize("first", range(16))
@pytest.mark.parametrize("second", range(16))
def test_no_other_order_takes_fewer_turns(first: int, second: int) -> None:
    faces = (TOP, NEAR, BOTTOM, FAR)
    phases = tuple(
        tuple(face for bit, face in enumerate(faces) if chosen >> bit & 1) for chosen in (first, second)
    )
    every = product(*(permutations(phase) for phase in phases))
    assert turns(face_walk(phases)) == min(turns(walk) for walk in every)
