"""Laws of the odds and of judgements."""

from dataclasses import replace

from hypothesis import given, settings
from hypothesis import strategies as st

from gageline.quality import BoltPlace, Joint, Judgement, Limit, Lot, Trust, exact, pair, sample
from gageline.units import Length

small = st.floats(0.001, 0.1)
lengths = st.integers(-10_000, 10_000).map(Length)


@st.composite
def joints(draw: st.DrawFn) -> Joint:
    bolts = tuple(
        BoltPlace(
            draw(st.floats(-6, 6)), draw(st.floats(-12, 12)), 1 / 16, draw(st.sampled_from([0.0, 3 / 32]))
        )
        for _ in range(draw(st.integers(1, 6)))
    )
    return Joint(
        "j", bolts, (Lot(draw(small), draw(small), draw(st.floats(0, 0.005))),), draw(small), free=False
    )


@settings(deadline=None, max_examples=40)
@given(joints())
def test_what_can_be_shifted_enters_whenever_what_cannot_does(joint: Joint) -> None:
    fixed = sample(joint, 2000, 5)
    free = sample(replace(joint, free=True), 2000, 5)
    assert free.hits >= fixed.hits - 150  # other random numbers: three deviations at the most


@settings(deadline=None, max_examples=40)
@given(joints(), st.floats(0.0, 0.05))
def test_more_play_is_never_worse(joint: Joint, more: float) -> None:
    wider = replace(joint, bolts=tuple(replace(bolt, clear=bolt.clear + more) for bolt in joint.bolts))
    assert sample(wider, 2000, 5).hits >= sample(joint, 2000, 5).hits
    loose, tight = (replace(one, free=True) for one in (wider, joint))
    assert sample(loose, 2000, 5).hits >= sample(tight, 2000, 5).hits


@settings(deadline=None, max_examples=40)
@given(joints(), st.floats(-50, 50), st.floats(-50, 50))
def test_it_does_not_matter_where_a_joint_lies(joint: Joint, across: float, up: float) -> None:
    moved = replace(
        joint, bolts=tuple(replace(b, across=b.across + across, up=b.up + up) for b in joint.bolts)
    )
    assert abs(sample(moved, 2000, 5).hits - sample(joint, 2000, 5).hits) <= 2


@given(small, small, st.floats(0, 0.1))
def test_a_wider_spread_is_never_better(clear: float, sigma: float, more: float) -> None:
    assert pair(clear, sigma + more) <= pair(clear, sigma) + 1e-12
    assert 0 <= pair(clear, sigma, more) <= pair(clear, sigma) + 1e-12


@settings(deadline=None)
@given(small, st.integers(1, 8))
def test_common_and_own_errors_bracket_the_mixture(sigma: float, count: int) -> None:
    """Split the same error between what is common and what is each bolt's own: more in common is better."""
    bolts = tuple(BoltPlace(0, n, 1 / 16) for n in range(count))
    chances = []
    for share in (0.0, 0.5, 0.9):
        common, own = sigma * share**0.5, sigma * (1 - share) ** 0.5
        value = exact(Joint("j", bolts, (Lot(common, common),), own, free=False))
        assert value is not None
        chances.append(value)
    assert chances[0] <= chances[1] + 1e-6
    assert chances[1] <= chances[2] + 1e-6


@given(lengths, lengths, st.integers(0, 5000).map(Length), st.integers(0, 5000).map(Length))
def test_a_reading_is_out_by_just_what_brings_it_back_to_its_limit(
    wanted: Length, read: Length, over: Length, under: Length
) -> None:
    limit = Limit("x", over, under, "", "", Trust.READ)
    by = Judgement("x", wanted, read, limit, "").by
    nearer = read - by if read > wanted else read + by
    assert Judgement("x", wanted, nearer, limit, "").by == Length(0)
    assert wanted - under <= nearer <= wanted + over
