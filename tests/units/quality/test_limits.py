import pytest

from gageline.part import Severity
from gageline.quality.limits import Judgement, Limit, Trust, Verdict, overridden
from gageline.units import Length, System
from jobs import inches

ZERO, EIGHTH, QUARTER = inches("0"), inches("1/8"), inches("1/4")


def limit(over: Length | None, under: Length | None, trust: Trust = Trust.READ) -> Limit:
    return Limit("depth", over, under, "a rule", "a standard", trust)


@pytest.mark.parametrize(
    ("read", "verdict", "by"),
    [
        ("16 1/4", Verdict.WITHIN, "0"),
        ("16 17/64", Verdict.OUT, "1/64"),
        ("15 7/8", Verdict.WITHIN, "0"),
        ("15 55/64", Verdict.OUT, "1/64"),
        ("16", Verdict.WITHIN, "0"),
    ],
)
def test_a_reading_on_its_limit_is_within_and_a_64th_more_is_out(
    read: str, verdict: Verdict, by: str
) -> None:
    found = Judgement("depth", inches("16"), inches(read), limit(QUARTER, EIGHTH), "claim it")
    assert (found.verdict, found.by) == (verdict, inches(by))


def test_a_limit_may_be_open_on_one_side() -> None:
    assert Judgement("gap", ZERO, -inches("5"), limit(EIGHTH, None), "").verdict is Verdict.WITHIN
    assert Judgement("leg", QUARTER, inches("5"), limit(None, ZERO), "").verdict is Verdict.WITHIN
    assert Judgement("leg", QUARTER, EIGHTH, limit(None, ZERO), "").by == EIGHTH


def test_what_was_not_read_or_has_no_limit_is_said() -> None:
    unread = Judgement("depth", ZERO, None, limit(EIGHTH, EIGHTH), "")
    assert (unread.verdict, unread.off, unread.by) == (Verdict.NOT_READ, None, ZERO)
    assert "was not read: taken as nominal" in unread.finding("B1", System.FT_IN).text()
    free = Judgement("depth", ZERO, EIGHTH, None, "")
    assert (free.verdict, free.by) == (Verdict.NO_LIMIT, ZERO)
    assert '1/8": not checked' in free.finding("B1", System.FT_IN).text()


def test_a_finding_has_value_limit_remedy_and_source() -> None:
    out = Judgement("depth", inches("16"), inches("16 3/8"), limit(QUARTER, EIGHTH, Trust.MEMORY), "claim it")
    finding = out.finding("B1", System.FT_IN)
    assert finding.severity is Severity.WARNING
    assert finding.text() == (
        'warning: B1 depth: 1\'-4 3/8", 3/8" over: out by 0.125", limit +1/4", -1/8": claim it'
    )
    assert finding.source == "a standard (from memory)"
    within = Judgement("depth", inches("16"), inches("15 15/16"), limit(QUARTER, EIGHTH), "claim it")
    assert within.finding("B1", System.FT_IN).text() == (
        'note: B1 depth: 1\'-3 15/16", 1/16" under: within, limit +1/4", -1/8": none needed'
    )
    assert within.finding("B1", System.FT_IN).source == "a standard"
    metric = Judgement(
        "depth", Length.from_mm(300), Length.from_mm(306), limit(Length.from_mm(4), ZERO), "claim it"
    )
    assert "306 mm, 6 mm over: out by 2.00 mm, limit +4, -0" in metric.finding("M1", System.MM).text()


@pytest.mark.parametrize(
    ("over", "under", "text"),
    [
        (EIGHTH, EIGHTH, '±1/8"'), (QUARTER, EIGHTH, '+1/4", -1/8"'), (EIGHTH, None, 'at most +1/8"'),
        (ZERO, None, "not more"), (None, ZERO, "not less"), (None, EIGHTH, 'not below -1/8"'),
        (None, None, "none"),
        (inches("0.2453in"), None, 'at most +0.245"'),
    ],
)  # fmt: skip
def test_limits_are_written_in_fractions_where_those_say_them(
    over: Length | None, under: Length | None, text: str
) -> None:
    assert limit(over, under).text(System.FT_IN) == text


def test_the_shop_sets_its_own_limits_by_their_code() -> None:
    own = overridden(limit(QUARTER, EIGHTH), {"depth": inches("1/16")})
    assert (own.over, own.under, own.trust) == (inches("1/16"), inches("1/16"), Trust.SHOP)
    assert overridden(limit(QUARTER, None), {"depth": EIGHTH}).under is None
    same = limit(QUARTER, EIGHTH)
    assert overridden(same, {"width": EIGHTH}) is same
