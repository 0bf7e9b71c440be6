from __future__ import annotations

import pytest

from gageline.job import JobProblems, PieceLoads, read_job
from gageline.job.loading import swapped

JOB = '[job]\nname = "x"\n[[piece]]\nmark = "B"\nstock = "W16x26"\nlength = "9\'-0"\n'
FRAME = '[job]\nname = "x"\n[[frame.level]]\nname = "Floor"\nelevation = 0\nloads = [{ area = "60 psf" }]\n'


def loads(more: str) -> PieceLoads:
    (found,) = read_job(JOB + more).loads
    return found


def test_a_load_is_dead_and_over_the_whole_beam_where_nothing_is_said() -> None:
    (one,) = loads('loads = [{ uniform = "1 klf" }]').loads
    assert one.case == "dead"
    assert not one.start
    assert one.end is None


def test_area_loads_stand_with_their_level() -> None:
    frame = read_job(FRAME).frame
    assert frame is not None
    (one,) = frame.levels[0].loads
    assert (one.case, one.area.text) == ("dead", "60 psf")


@pytest.mark.parametrize(
    ("entry", "message"),
    [
        (
            'loads = [{ case = "snow", uniform = "1 klf" }]',
            'case: "snow" is not one of "dead", "live", "roof"',
        ),
        ("span = { live = 20 }", "span → live"),
        ("span = { live = 3.5 }", "span → live"),
    ],
)
def test_what_is_no_load_is_refused(entry: str, message: str) -> None:
    with pytest.raises(JobProblems) as refused:
        read_job(JOB + entry)
    assert message in str(refused.value)


@pytest.mark.parametrize(
    ("load", "message"),
    [
        ('{ uniform = "1 kip/ft", point = "2 kip" }', "a load is either uniform or point: give one of them"),
        ('{ point = "2 kip" }', "a point load has no place: give at, from where the member starts"),
        (
            '{ point = "2 kip", at = "9\'-1" }',
            "its load is 9'-1\" along, the member is 9'-0\" overall: change at or end",
        ),
        (
            '{ uniform = "1 klf", end = "10\'-0" }',
            "its load is 10'-0\" along, the member is 9'-0\" overall: change at or end",
        ),
        (
            '{ uniform = "1 klf", start = "2\'-0", end = "1\'-0" }',
            "its load ends 1'-0\" along, where it has not begun: change start or end",
        ),
    ],
)
def test_a_load_beside_its_piece_is_an_error_with_its_line(load: str, message: str) -> None:
    with pytest.raises(JobProblems) as refused:
        read_job(f"{JOB}loads = [{load}]")
    (problem,) = refused.value.problems
    assert problem.text() == f'line 7: piece "B" → loads 1: {message}'


def test_a_load_beside_its_piece_is_told_in_the_units_of_the_job() -> None:
    metric = JOB.replace('name = "x"', 'name = "x"\nunits = "mm"').replace("9'-0", "3000")
    with pytest.raises(JobProblems, match="its load is 3100 mm along, the member is 3000 mm overall"):
        read_job(metric + 'loads = [{ point = "2 kN", at = 3100 }]')


@pytest.mark.parametrize(
    ("support", "face", "message"),
    [
        ("L4x4x1/4", "column flange", "L4X4X1/4 is no I-shape, it has no column flange"),
        ("W14x90", "wall", "W14X90 is no box or tube, it has no wall"),
        ("HSS6x6x3/8", "column web", "HSS6X6X3/8 is no I-shape or channel, it has no column web"),
        ("PL1/2x8", "girder web", "PL1/2X8 is no I-shape or channel, it has no girder web"),
    ],
)
def test_a_support_without_the_face_is_an_error_with_its_line(support: str, face: str, message: str) -> None:
    with pytest.raises(JobProblems) as refused:
        read_job(f'{JOB}left = {{ support = "{support}", face = "{face}" }}')
    (problem,) = refused.value.problems
    where = 'line 7: piece "B" → left → support'
    assert problem.text() == f"{where}: {message}: name another section or face"


def test_the_opposite_hand_carries_the_same_the_other_way_round() -> None:
    one = loads('left = { reaction = "30 kip" }\nright = { reaction = "20 kip" }')
    assert swapped(one, "B2", turned=False) == PieceLoads("B2", one.left, one.right)
    two = swapped(one, "B2", turned=True)
    assert (two.left, two.right) == (one.right, one.left)
