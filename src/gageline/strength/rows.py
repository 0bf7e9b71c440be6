"""Rows of bolts by the strength of each connection: the frame is detailed again where too few were chosen."""

from __future__ import annotations

from collections.abc import Iterator

from gageline.detail import Asked, Detailed, FullJob, Named, Progress, with_rows
from gageline.job import Job, JobProblems
from gageline.strength.check import Method
from gageline.strength.checked_ends import checked_ends
from gageline.strength.demands import is_given
from gageline.strength.framed import subjects_of_frame
from gageline.strength.handed import hand_down
from gageline.strength.remedies import enough_rows
from gageline.strength.verdict import NotChecked, Verdict
from gageline.strength.wording import amount_text
from gageline.units import System

__all__ = ["strong_rows"]

_MOST_ROUNDS = 4  # a longer connection may share its holes with another one, whose rows follow


def strong_rows(full: FullJob, progress: Progress | None = None) -> FullJob:
    """A job whose framed ends have the rows of bolts that their strength asks for, where these have room.

    Detailing takes rows from half of the depth and from a table of bolts in shear; the web, the material
    between, an eccentric pattern or slip may ask for more. Only reactions that the job gives or its loads
    make count, and rows that the document gives stay. Where no rows are enough the strongest are taken;
    what is still not strong enough is for the checks to say.

    Args:
        full: the job, its frame detailed.
        progress: told how many members of how many are done, each time that the frame is detailed.
    """
    asked: dict[Named, Asked] = {}
    for _ in range(_MOST_ROUNDS):
        more = dict(_asked(full.job, full.detailed)) if full.detailed else {}
        if not more or all(name in asked and asked[name].rows >= one.rows for name, one in more.items()):
            break
        asked |= more
        try:
            full = with_rows(full, asked, progress)
        except JobProblems:  # a longer connection leaves nothing of a member: it stays as it was
            break
    return full


def _asked(job: Job, detailed: Detailed) -> Iterator[tuple[Named, Asked]]:
    """The connections that have too few rows for their reactions, with the number that is enough."""
    method = Method(job.strength.method)
    for subject in subjects_of_frame(detailed, hand_down(detailed, job.system), method):
        if not any(is_given(demand.load) for demand in subject.demands.values()):
            continue
        for end, verdict in checked_ends(job, subject, method):
            joint = detailed.joints.get((subject.given.mark, end)) if end else None
            if joint is None or joint.ladder is None or joint.site.joint.rows:
                continue
            if isinstance(verdict, NotChecked) or not is_given(verdict.connection.load):
                continue
            rows = enough_rows(verdict, job.system)
            if rows is not None:
                yield (
                    joint.choice.named,
                    Asked(rows, _why(verdict, joint.ladder.rows, job.system), _clause(verdict)),
                )


def _why(verdict: Verdict, rows: int, system: System) -> str:
    """What falls short, in words, forces in the units of the job."""
    short = verdict.governing
    needs, has = (amount_text(value, short.unit, system) for value in (short.demand, short.capacity))
    return f"since {rows} have {has} where {needs} is needed ({short.title})"


def _clause(verdict: Verdict) -> str:
    clause = verdict.governing.clause
    return f"{clause.standard} {clause.number}"
