"""The frame of a job: why its pieces are as they are, and its sheets."""

from __future__ import annotations

from gageline.cli.screen import AsJson, JobFile, Mark, Out, opened, say, show_findings, write_sheet
from gageline.exchange import json_text
from gageline.sheets import frame_packet


def frame(job_file: JobFile, out: Out = None) -> None:
    """The sheets of a frame: plans, elevations, column schedule, field bolts, reasons, as one PDF."""
    full = opened(job_file)
    show_findings(full.findings)
    write_sheet(frame_packet(full), out, job_file, "frame")


def why(job_file: JobFile, piece: Mark = None, as_json: AsJson = False) -> None:
    """Why each dimension of a piece of the frame is what it is: the rule, the numbers, the source."""
    full = opened(job_file)
    reasons = full.detailed.reasons if full.detailed else {}
    marks = [full.job.piece(piece).mark] if piece else list(reasons)
    if as_json:
        print(json_text({mark: reasons.get(mark, ()) for mark in marks}, full.job.system))
        return
    for mark in marks:
        say.print(mark, style="bold", markup=False)
        for reason in reasons.get(mark, ()):
            say.print(f"  {reason.text()}", markup=False, soft_wrap=True)
        if mark not in reasons:
            say.print("  as drawn: its dimensions come from the job document", markup=False)
    if not marks:
        say.print("every piece of this job is as drawn: its dimensions come from the job document")
