from gageline.quality import odds_of
from gageline.sheets import Block, Table
from gageline.sheets.odds_table import odds_parts
from jobs import piece_of
from sticks import example_piece


def test_each_joint_the_span_and_the_whole_have_a_row() -> None:
    odds = odds_of(example_piece(), count=2000)
    chances, changes, note = odds_parts(odds, 180)
    assert isinstance(chances.body, Table)
    assert [row[0] for row in chances.body.rows] == [
        *(joint.name for joint in odds.joints), "between its supports", "the whole piece",
    ]  # fmt: skip
    assert chances.body.total
    assert chances.body.rows[-1][1] == f"{odds.whole.value:.2%}"
    assert chances.body.rows[-2][2:] == ("-", "exact")
    assert " to " in chances.body.rows[0][2]
    assert isinstance(changes.body, Table)
    assert changes.body.rows[0][0] == odds.worst[0].change
    assert changes.body.rows[0][2].startswith("+")
    assert isinstance(note.body, Block)


def test_a_piece_without_joints_has_the_whole_alone() -> None:
    chances = odds_parts(odds_of(piece_of()), 180)[0].body
    assert isinstance(chances, Table)
    assert chances.rows == (("the whole piece", "100.00%", "-", "exact"),)
