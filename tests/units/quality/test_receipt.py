"""Sticks judged as they came, the example stick by hand."""

from dataclasses import replace

import pytest

from gageline.job import EndReadings, Stick
from gageline.layout import Choice, decide
from gageline.part import Severity
from gageline.quality.limits import Trust, Verdict
from gageline.quality.receipt import Receipt, receive, usable
from gageline.units import Length, System
from jobs import inches, piece_of
from sticks import corners, example_piece, example_stick

PIECE = example_piece()


def verdicts(receipt: Receipt, verdict: Verdict) -> list[str]:
    return [one.name for one in receipt.judgements if one.verdict is verdict]


def test_the_example_stick() -> None:
    """3/8 short is within ±3/8; 1/4 out of square is over 15.7/64 = 0.245; 1/8 deep is within; 1/2 of
    camber is over 1/8 x 18.604/10 = 0.233."""
    receipt = receive(PIECE.main, example_stick())
    assert verdicts(receipt, Verdict.OUT) == ["left end out of square", "camber"]
    by = {one.name: one.by.inches for one in receipt.judgements}
    assert by["left end out of square"] == pytest.approx(0.25 - 15.7 / 64, abs=1e-5)
    assert by["camber"] == pytest.approx(0.5 - 223.25 / 120 / 8, abs=1e-5)
    assert {"length", "left end depth", "right end out of square"} <= set(verdicts(receipt, Verdict.WITHIN))
    assert {"sweep", "web off centre", "left end top width"} <= set(verdicts(receipt, Verdict.NOT_READ))
    assert not receipt.accepted


def test_a_64th_shorter_is_out_by_a_64th() -> None:
    receipt = receive(PIECE.main, example_stick("18'-6 55/64"))
    (length,) = [one for one in receipt.judgements if one.name == "length"]
    assert (length.verdict, length.by) == (Verdict.OUT, inches("1/64"))


def test_a_stick_ordered_longer_is_judged_by_what_was_ordered() -> None:
    receipt = receive(PIECE.main, Stick("B1", length=inches("20'-0 1/4"), ordered=inches("20'")))
    assert receipt.accepted
    assert receipt.ordered == inches("20'")


def test_tilts_of_both_flanges_count_together_whichever_way_they_lean() -> None:
    """W16: T + T' of 5/16 at most."""
    left = EndReadings(top_tilt=inches("3/16"), bottom_tilt=-inches("1/8"))
    assert "left end flange tilt" in verdicts(receive(PIECE.main, Stick("B1", left=left)), Verdict.WITHIN)
    more = replace(left, bottom_tilt=-inches("9/64"))
    assert "left end flange tilt" in verdicts(receive(PIECE.main, Stick("B1", left=more)), Verdict.OUT)


def test_the_shops_own_limits_count() -> None:
    receipt = receive(PIECE.main, example_stick(), tolerances={"a6-camber": inches("1/2")})
    assert verdicts(receipt, Verdict.OUT) == ["left end out of square"]
    (camber,) = [one for one in receipt.judgements if one.name == "camber"]
    assert camber.limit is not None
    assert camber.limit.trust is Trust.SHOP


@pytest.mark.parametrize(
    ("camber", "verdict"), [("3/4", Verdict.WITHIN), ("47/64", Verdict.OUT), ("2", Verdict.WITHIN)]
)
def test_a_stick_cambered_by_the_mill_needs_three_quarters_of_it(camber: str, verdict: Verdict) -> None:
    """AISC 303, 6.4.4 (read): of 1 in asked for, 3/4 is enough."""
    receipt = receive(PIECE.main, Stick("B1", camber=inches(camber), ordered_camber=inches("1")))
    assert next(one for one in receipt.judgements if one.name == "camber").verdict is verdict


def test_findings_name_piece_section_heat_and_reading() -> None:
    findings = receive(PIECE.main, example_stick()).findings(System.FT_IN)
    (camber,) = [finding for finding in findings if finding.code == "a6-camber"]
    assert camber.subject == "B1 W16X26, heat 7K2214: camber"
    assert camber.severity is Severity.WARNING


@pytest.mark.parametrize(
    ("stock", "codes"),
    [
        ("HSS6X6X3/8", {"a500-length", "a500-side", "a500-straight", "no-limit"}),
        ("L4X4X1/4", {"a6-length", "a6-leg", "a6-square", "a6-tilt", "a6-camber", "no-limit"}),
        ("C8X11.5", {"a6-length", "a6-depth", "a6-width", "a6-square", "a6-tilt", "a6-camber", "no-limit"}),
        ("IPE 300", {"en10034-length", "en10034-depth", "en10034-width", "en10034-tilt", "en10034-web-off",
                     "en10034-straight", "no-limit"}),
        ("L100x65x9", {"en10056-length", "en10056-leg", "en10056-tilt", "en10056-straight", "no-limit"}),
        ("UPN 200", {"en10279-length", "en10279-depth", "en10279-width", "en10279-tilt",
                     "en10279-straight", "no-limit"}),
        ("PL1/2X8", {"a6-flat-width", "a6-flat-straight", "no-limit"}),
        ("PL1/2X9", {"no-limit"}),
        ("Pipe6STD", {"a53-diameter", "no-limit"}),
        ("WT6X20", {"a6-tee-depth", "a6-tee-straight", "a6-width", "a6-square", "no-limit"}),
    ],
)  # fmt: skip
def test_each_shape_is_judged_by_its_own_standard(stock: str, codes: set[str]) -> None:
    part = piece_of(stock=stock).main
    full = EndReadings(
        (Length(0), Length(0), Length(0), Length(0)),
        depth=inches("1"),
        top_width=inches("1"),
        top_tilt=Length(0),
    )
    stick = Stick("B1", "", inches("10'"), None, full, full, Length(0), Length(0), Length(0))
    assert {finding.code for finding in receive(part, stick).findings(System.FT_IN)} == codes


@pytest.mark.parametrize(
    ("length", "severity", "message"),
    [
        ("18'-8", Severity.NOTE, 'can be made: trim square, trim 1/2" at the left end and 1/4" at the right'),
        ("18'-6 7/8", Severity.WARNING, "can be made: as it is, trim nothing"),
        ("18'-6", Severity.ERROR, "cannot be made of this stick as drawn"),
    ],
)
def test_whether_the_piece_can_still_be_made(length: str, severity: Severity, message: str) -> None:
    decision = decide(PIECE, example_stick(length), inches("1/16"), System.FT_IN)
    finding = usable(decision, PIECE.main, System.FT_IN)
    assert (finding.severity, finding.message) == (severity, message)
    assert finding.remedy == decision.because


def test_a_metric_trim_has_its_unit() -> None:
    stick = Stick("B1", length=inches("18'-9"), left=corners("0", "0", "-1", "-1"))
    finding = usable(decide(PIECE, stick, inches("1/16"), System.MM), PIECE.main, System.MM)
    assert (
        finding.message == "can be made: trim square, trim 31.8 mm at the left end and 12.7 mm at the right"
    )
    assert Choice.TRIM in finding.message


@pytest.mark.parametrize(
    ("stock", "names"),
    [
        ("W16x26", ["out of square", "depth", "top width", "bottom width", "flange tilt"]),
        ("C8x11.5", ["out of square", "depth", "top width", "bottom width", "flange tilt"]),
        ("L6x4x1/2", ["out of square", "depth", "bottom width", "flange tilt"]),
        ("HSS6x4x1/4", ["out of square", "depth", "top width", "bottom width"]),
        ("Pipe6STD", ["out of square", "depth", "top width"]),
        ("PL1/2x8", ["out of square", "depth"]),
    ],
)  # fmt: skip
def test_a_shape_has_no_rows_for_what_it_has_not(stock: str, names: list[str]) -> None:
    rows = [one.name for one in receive(piece_of(stock=stock).main, Stick("B1")).judgements]
    assert [row.removeprefix("left end ") for row in rows if row.startswith("left end")] == names
    assert ("web off centre" in rows) is (stock == "W16x26")


def test_an_end_is_held_to_its_limit_along_each_edge_and_not_from_corner_to_corner() -> None:
    """15.7/64 = 0.245: open 3/16 across the depth and 1/8 across the flange, 5/16 from corner to corner."""
    open_ = EndReadings((Length(0), -inches("1/8"), -inches("3/16"), -inches("5/16")))
    receipt = receive(PIECE.main, Stick("B1", left=open_))
    (square,) = [one for one in receipt.judgements if one.name == "left end out of square"]
    assert (square.read, square.verdict) == (inches("3/16"), Verdict.WITHIN)


@pytest.mark.parametrize(("bottom", "verdict"), [("1/8", Verdict.WITHIN), ("9/64", Verdict.OUT)])
def test_flanges_that_lean_apart_add_to_the_depth_at_their_edges(bottom: str, verdict: Verdict) -> None:
    """C: 1/4 over at most (read). 1/8 deep at the web, and half of 1/8 + 1/8 more at the edges."""
    left = EndReadings(depth=inches("15.825in"), top_tilt=inches("1/8"), bottom_tilt=-inches(bottom))
    receipt = receive(PIECE.main, Stick("B1", left=left))
    (edges,) = [one for one in receipt.judgements if one.name == "left end depth at the flange edges"]
    assert edges.verdict is verdict
