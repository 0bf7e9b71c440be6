"""What of a job is not checked: ends without material, forces not given, members under their loads."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from gageline.detail import Detailed
from gageline.job import Job
from gageline.part import Assembly, End, FittingKind
from gageline.steel import Profile
from gageline.strength.beams import SimpleBeam
from gageline.strength.verdict import NotChecked

__all__ = ["left_out_of_beams", "left_out_of_bearings", "left_out_of_job"]

_BEAMS = frozenset({Profile.I_SHAPE, Profile.CHANNEL})
_OTHER_FITTINGS = frozenset({FittingKind.BASE_PLATE, FittingKind.CAP_PLATE, FittingKind.STIFFENER})
_WEIGHT = NotChecked(
    "the weight of the members themselves", "it counts only where the loads given have it in them"
)
_OVER_COLUMNS = NotChecked(
    "web sidesway buckling of beams over columns (J10.4)",
    "whether both flanges are held sideways there is not known",
)
_MOST_NAMES = 12


def left_out_of_job(job: Job, detailed: Detailed | None) -> Iterator[NotChecked]:
    """What of the pieces of a job is not checked.

    Args:
        job: the job.
        detailed: its frame, if it has one.
    """
    served = {(one.member, one.end) for one in detailed.served} if detailed else set()
    free = set(_without_material(detailed)) if detailed else set()
    bare = [
        f"{assembly.mark} {end}"
        for assembly in job.assemblies
        if assembly.main.profile in _BEAMS and not _is_column(assembly)
        for end in End
        if (assembly.mark, end) not in served | free
        and not any(fitting.end is end for fitting in assembly.fittings)
    ]
    if bare:
        yield NotChecked(f"ends without connection material: {', '.join(bare)}", "it is not in the job")
    others = sorted(
        {f.kind.value for assembly in job.assemblies for f in assembly.fittings if f.kind in _OTHER_FITTINGS}
        - ({FittingKind.BASE_PLATE.value} if detailed else set())
    )
    if others:
        yield NotChecked(", ".join(f"{name}s" for name in others), "their forces are not in the job")
    if detailed is None and not all(loads.loads for loads in job.loads):
        yield NotChecked("bending and deflection of members", "their loads are not in the job")


def left_out_of_beams(
    beams: Sequence[tuple[str, SimpleBeam]], pressed: Iterable[str]
) -> Iterator[NotChecked]:
    """What of the beams that are checked under their loads is not.

    Args:
        beams: each with its name.
        pressed: those with point loads of their own, not handed to them by what frames into them.
    """
    if not beams:
        return
    yield _WEIGHT
    limitless = [name for name, beam in beams if beam.live_limit is None and beam.total_limit is None]
    if limitless:
        yield NotChecked(
            f"deflection of {_names(limitless)}", "no limit is given: give live or total in span"
        )
    channels = [name for name, beam in beams if beam.section.profile is Profile.CHANNEL]
    if channels:
        why = "the loads are taken through the shear centre, which lies outside a channel"
        yield NotChecked(f"torsion of {_names(channels)}", why)
    found = set(pressed)
    under = [name for name, _ in beams if name in found]
    if under:
        why = "how far a load bears on the flange is not in the job"
        yield NotChecked(f"the webs of {_names(under)} under their point loads (J10)", why)


def left_out_of_bearings(count: int) -> Iterator[NotChecked]:
    """What of the beams over columns is not checked.

    Args:
        count: of the places where one bears on a column.
    """
    if count:
        yield _OVER_COLUMNS


def _names(names: Iterable[str]) -> str:
    """Names in a row, the first of many."""
    found = list(dict.fromkeys(names))
    more = f" and {len(found) - _MOST_NAMES} more" if len(found) > _MOST_NAMES else ""
    return ", ".join(found[:_MOST_NAMES]) + more


def _without_material(detailed: Detailed) -> Iterator[tuple[str, End]]:
    """Ends that need no connection material: free ones, and those on top of a column."""
    yield from ((line.name, end) for line, end in detailed.supports.free)
    yield from ((one.member.name, one.end) for one in detailed.supports.bearings if one.end is not None)


def _is_column(assembly: Assembly) -> bool:
    return any(f.kind in {FittingKind.BASE_PLATE, FittingKind.CAP_PLATE} for f in assembly.fittings)
