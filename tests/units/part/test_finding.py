from gageline.part import Finding, Severity, grouped


def test_a_finding_in_one_line() -> None:
    finding = Finding("edge", Severity.WARNING, "B1 web", "edge distance 1/2 is short", "move it")
    assert finding.text() == "warning: B1 web: edge distance 1/2 is short: move it"
    assert finding.source == "common practice, no source"


def found(subject: str, message: str, code: str = "edge") -> Finding:
    return Finding(code, Severity.WARNING, subject, message, "move it")


def test_findings_alike_but_for_their_numbers_are_one_with_the_other_pieces_named() -> None:
    one, other = grouped(
        [
            found('B1 web, row 1, hole at 3"', 'its edge distance 15/16" is less than 1"'),
            found("B2 web", 'its edge distance 7/8" is less than 1 1/4"'),
            found("B1 web", "has no radius", "sharp"),
            found("B3 web", 'its edge distance 1\'-0 1/2" is less than 1"'),
            found('B3 web, hole at 9"', 'its edge distance 1/2" is less than 1"'),
        ]
    )
    assert one.subject == 'B1 web, row 1, hole at 3" (and 3 alike on B2, B3)'
    assert one.message == 'its edge distance 15/16" is less than 1"'
    assert other == found("B1 web", "has no radius", "sharp")


def test_findings_of_another_kind_or_weight_stay_apart() -> None:
    error = Finding("edge", Severity.ERROR, "B2 web", "edge distance 1/2 is short", "move it")
    apart = (found("B1 web", "edge distance 1/2 is short"), error, found("B3 web", "is short"))
    assert grouped(apart) == apart


def test_of_very_many_pieces_the_first_are_named() -> None:
    (one,) = grouped(found(f"B{n} web", f"edge distance {n} is short") for n in range(1, 12))
    assert one.subject == "B1 web (and 10 alike on B2, B3, B4, B5, B6, B7 and 4 more pieces)"
