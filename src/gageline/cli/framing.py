"""The frame of a job: why its pieces are as they are, and its sheets."""

from __future__ import annotations

from gageline.cli.opening import opened, sound, write_sheet
from gageline.cli.screen import AsJson, JobFile, Mark, Out, end_without, say
from gageline.exchange import json_text
from gageline.sheets import frame_packet, reasons_by_card

_SHOWN = "shown with their errors, not to be built yet"


def frame(job_file: JobFile, out: Out = None) -> None:
    """The sheets of a frame: plans, elevations, column schedule, field bolts, reasons, as one PDF.

    They show the whole frame; pieces with an error are said on every sheet, and the exit code is 1.
    """
    full = opened(job_file)
    result = sound(full)
    write_sheet(frame_packet(full), out, job_file, "frame")
    end_without(result.wrong, _SHOWN)


def why(job_file: JobFile, piece: Mark = None, as_json: AsJson = False) -> None:
    """Why each dimension of a piece of the frame is what it is: the rule, the numbers, the source.

    A piece with an error is shown too, since its reasons help to mend it; it is said, and the exit code is 1.
    """
    full = opened(job_file, piece)
    wrong = sound(full).wrong
    reasons = full.detailed.reasons if full.detailed else {}
    marks = [one.mark for one in full.job.assemblies if piece or one.mark in reasons]
    if as_json:
        print(json_text({mark: reasons.get(mark, ()) for mark in marks}, full.job.system))
        end_without(wrong, _SHOWN)
        return
    for mark in marks:
        say.print(mark, style="bold", markup=False)
        for reason in reasons_by_card(reasons.get(mark, ()), full.detailed):
            say.print(f"  {reason.text()}", markup=False, soft_wrap=True)
        if mark not in reasons:
            say.print("  as drawn: its dimensions come from the job document", markup=False)
    if not reasons:
        say.print("every piece of this job is as drawn: its dimensions come from the job document")
    end_without(wrong, _SHOWN)
