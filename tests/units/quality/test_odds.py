"""The odds of a piece, by hand where all its joints have closed forms."""

from dataclasses import replace
from math import exp

import pytest
from scipy.stats import norm, truncnorm

from frames import demo_frame
from gageline.quality.odds import CHECKED, odds_of
from gageline.quality.spread import ASSUMED, Act, Spread
from jobs import job_of, piece_of
from sticks import example_piece

ONE_ANGLE = (
    '[[piece.angles]]\nend = "both"\nsides = "near"\nstock = "L4x3-1/2x5/16"\nrows = 2\nprojection = "1/2"\n'
)
SINGLE = piece_of(ONE_ANGLE, stock="W12x26")
TRUE_SQUARE = replace(ASSUMED, square=0.0)


def test_a_piece_of_two_bolt_joints_by_hand() -> None:
    """Each joint: 1 - exp(-9) (two holes a pair, 1/48 each way; two pairs; 1/8 of play from one to the
    other). Span: sigma 0.08839 within -1/4 and +1/8. Whole: the product."""
    odds = odds_of(SINGLE, TRUE_SQUARE)
    assert [joint.value for joint in odds.joints] == pytest.approx([1 - exp(-9)] * 4, abs=1e-12)
    span = float(norm.cdf(0.125 / 0.0883883) - norm.cdf(-0.25 / 0.0883883))
    assert odds.span is not None
    assert odds.span.value == pytest.approx(span, abs=1e-6)
    assert odds.whole.value == pytest.approx((1 - exp(-9)) ** 4 * span, abs=1e-6)
    assert {chance.how for chance in (*odds.joints, odds.span, odds.whole)} == {"exact"}
    assert odds.whole.low == odds.whole.high == odds.whole.value


def test_what_matters_most_is_the_supports_then_the_tape_and_the_setting() -> None:
    """Without the supports' error the span's sigma is 1/16: 0.97722 between; it gains the most."""
    odds = odds_of(SINGLE, TRUE_SQUARE)
    first, second, third, *_ = odds.worst
    assert first.act is Act.SUPPORTS
    assert first.value == pytest.approx((1 - exp(-9)) ** 4 * float(norm.cdf(2) - norm.cdf(-4)), abs=1e-6)
    assert {second.act, third.act} == {Act.TAPE, Act.SETTING}
    assert first.gain == pytest.approx(first.value - odds.whole.value)


def test_one_extra_check_leaves_what_a_normal_cut_off_at_one_leaves() -> None:
    assert pytest.approx(float(truncnorm.std(-1, 1)), abs=1e-9) == CHECKED
    odds = odds_of(SINGLE, TRUE_SQUARE)
    checked = next(gain for gain in odds.gains if gain.act is Act.SUPPORTS)
    sigma = (4 / 1024 + (CHECKED / 16) ** 2) ** 0.5
    span = float(norm.cdf(0.125 / sigma) - norm.cdf(-0.25 / sigma))
    assert checked.value == pytest.approx((1 - exp(-9)) ** 4 * span, abs=1e-6)


def test_slots_at_the_supports_gain_where_holes_are_what_is_wrong() -> None:
    rough = Spread(punch=1 / 64, drill=1 / 64, setting=0, supports=0, tape=0)
    odds = odds_of(example_piece(), rough, count=20_000)
    slots = next(gain for gain in odds.gains if gain.act is None)
    assert slots.gain > 0.02
    assert slots.change == "horizontal short slots at the supports"


def test_a_known_error_of_length_moves_the_span() -> None:
    off = odds_of(SINGLE, TRUE_SQUARE, off=0.125)
    assert off.span is not None
    sigma = (8 / 1024) ** 0.5
    assert off.span.value == pytest.approx(float(norm.cdf(0) - norm.cdf(-0.375 / sigma)), abs=1e-9)


def test_sampled_odds_have_an_interval_and_are_the_same_each_time() -> None:
    one, two = (odds_of(example_piece(), count=5_000, seed=3) for _ in range(2))
    assert one == two
    assert one.whole.low < one.whole.value < one.whole.high
    assert one.joints[0].how == "5,000 samples"
    # Left and right joints are alike, and told alike.
    assert one.joints[4].value == one.joints[5].value


def test_a_piece_held_elsewhere_is_worse_off() -> None:
    free, held = (odds_of(example_piece(), count=5_000, free=free) for free in (True, False))
    assert held.whole.value < free.whole.value
    true = odds_of(example_piece(), count=5_000, free=False, web_off=0.0)
    assert true.whole.value > held.whole.value


@pytest.mark.parametrize(
    ("stock", "length", "chance"),
    [
        ("W16x26", "18'-7 1/4", 1.0),  # 3/8 over at the most, 1/2 clear
        ("W36x150", "60'", (1 / 2 + 1 / 2) / (7 / 8 + 1 / 2)),  # 1/2 + 6/16 over, 1/2 under
        ("C12x20.7", "18'", (1 / 2) / (3 / 2)),  # 1 1/2 over, nothing under
    ],
)
def test_steel_of_any_permitted_length_used_uncut(stock: str, length: str, chance: float) -> None:
    """Uniform between the limits of ASTM A6, all of it at the right end."""
    piece = job_of(f'mark = "B1"\nstock = "{stock}"\nlength = "{length}"\n{ONE_ANGLE}').assemblies[0]
    odds = odds_of(piece, count=100)
    assert odds.steel is not None
    assert odds.steel.value == pytest.approx(chance, abs=1e-9)


def test_alike_joints_of_unlike_pieces_are_told_alike() -> None:
    """Seen from the other side, or further along, a pattern is the same joint."""
    web = '[[piece.holes]]\nname = "a"\nx = "{}"\nrows = 3\ncolumns = 2\nspacing = "3"\n'
    one, two = (odds_of(piece_of(web.format(x)), count=5_000).joints[0] for x in ("3'", "7'-1/16"))
    assert one.how == "5,000 samples"
    assert one == two


def test_an_act_that_a_joint_does_not_feel_changes_nothing() -> None:
    """One fitting can be shifted: tape and gage are not felt, from the same samples to the digit."""
    web = piece_of('[[piece.holes]]\nname = "a"\nx = "3\'"\nrows = 3\n')
    odds = odds_of(web, Spread(punch=1 / 32, drill=1 / 32), count=5_000)
    gains = {one.act: one.gain for one in odds.worst}
    assert gains[Act.TAPE] == gains[Act.GAGE] == 0
    assert gains[Act.PUNCH] == gains[Act.DRILL] > 0


def test_holes_that_no_odds_are_told_of_are_named() -> None:
    post = demo_frame().job.piece("P1")
    odds = odds_of(post, met={("right cap plate", "bolt holes"): "3/4"}, count=5_000)
    assert [joint.name for joint in odds.joints] == ["right cap plate, bolt holes"]
    assert odds.left_out == ("left base plate, bolt holes: over anchor rods",)


def test_a_piece_without_bolts_goes_together() -> None:
    odds = odds_of(piece_of())
    assert (odds.joints, odds.span, odds.steel, odds.whole.value) == ((), None, None, 1)
    assert all(gain.gain == 0 for gain in (*odds.worst, *odds.gains))
