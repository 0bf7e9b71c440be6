from gageline.quality.mill import astm_a53
from jobs import inches, piece_of, section_of


def test_pipe_steps_between_nps_1_1_2_and_2() -> None:
    """From memory."""
    small, next_up = (section_of(piece_of(stock=stock)) for stock in ("Pipe1-1/2STD", "Pipe2STD"))
    assert astm_a53.diameter(small).over == inches("1/64")
    assert astm_a53.diameter(small).rule == "1/64 to NPS 1 1/2"
    assert astm_a53.diameter(next_up).over == next_up.d / 100
    assert astm_a53.diameter(next_up).cited == "ASTM A53 (from memory)"
