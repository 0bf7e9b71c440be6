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


def test_the_opposite_hand_carries_the_same_the_other_way_round() -> None:
    one = loads('left = { reaction = "30 kip" }\nright = { reaction = "20 kip" }')
    assert swapped(one, "B2", turned=False) == PieceLoads("B2", one.left, one.right)
    two = swapped(one, "B2", turned=True)
    assert (two.left, two.right) == (one.right, one.left)
