from gageline.part import Finding, Severity


def test_a_finding_in_one_line() -> None:
    finding = Finding("edge", Severity.WARNING, "B1 web", "edge distance 1/2 is short", "move it")
    assert finding.text() == "warning: B1 web: edge distance 1/2 is short: move it"
    assert finding.source == "common practice, no source"
