"""How exactly a shop marks, drills and sets: standard deviations, assumed or from its own records."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from math import hypot, sqrt

from scipy.special import chdtri

from gageline.errors import ValueProblem

__all__ = ["ASSUMED", "Act", "Estimate", "Spread", "estimated", "spread_from"]

_LEAST = 5  # readings: from fewer no spread is told
_CONFIDENCE = 0.95


class Act(StrEnum):
    """What a fitter does that comes out a little different each time."""

    TAPE = "tape"
    GAGE = "gage"
    SQUARE = "square"
    PUNCH = "punch"
    DRILL = "drill"
    SETTING = "setting"
    SUPPORTS = "supports"


@dataclass(frozen=True, slots=True)
class Spread:
    """Standard deviations of the acts, in inches; of the square in inches for each inch.

    Args:
        tape: of a running reading along the part.
        gage: of a reading across.
        square: of a line struck with the square.
        punch: of a centre punch, each way.
        drill: of a drill's wander from the punch, each way.
        setting: of a fitting set to its lines, each way.
        supports: of the distance between the supports at the site.
        source: where the numbers come from.
    """

    tape: float = 1 / 32
    gage: float = 1 / 64
    square: float = 1 / 64 / 12
    punch: float = 1 / 96
    drill: float = 1 / 96
    setting: float = 1 / 32
    supports: float = 1 / 16
    source: str = "an assumption of Gageline, not measured in any shop"

    def __post_init__(self) -> None:
        for act in Act:
            if not 0 <= self.of(act) < 12:
                raise ValueProblem(
                    f"standard deviation {self.of(act):g} in of {act} is not from 0 to 12: give it in inches"
                )

    def of(self, act: Act) -> float:
        """The standard deviation of one act."""
        return float(getattr(self, act.value))

    def scaled(self, act: Act, factor: float) -> Spread:
        """The same shop with one act done better or worse."""
        return replace(self, **{act.value: self.of(act) * factor})  # type: ignore[arg-type] # names of fields

    @property
    def hole(self) -> float:
        """Of a hole about its struck place, each way: punch and drill together."""
        return hypot(self.punch, self.drill)


ASSUMED = Spread()


@dataclass(frozen=True, slots=True)
class Estimate:
    """A standard deviation told from readings.

    Args:
        value: about what was wanted, in.
        low: of the interval that holds it 95 times in 100, in.
        high: likewise.
        count: of readings.
    """

    value: float
    low: float
    high: float
    count: int


def estimated(errors: Sequence[float]) -> Estimate:
    """The spread of errors about what was wanted, with its interval of 95 %.

    Errors are taken about zero and not about their own mean: a shop that is always 1/32 long is 1/32
    wrong. Source: the chi-square interval of a variance whose mean is known; any book of statistics.

    Args:
        errors: read less wanted, in.

    Raises:
        ValueProblem: when there are fewer than five.
    """
    count = len(errors)
    if count < _LEAST:
        raise ValueProblem(f"{count} readings are too few to tell a spread: give {_LEAST} or more")
    squares = sum(error * error for error in errors)
    tail = (1 - _CONFIDENCE) / 2
    return Estimate(
        sqrt(squares / count),
        sqrt(squares / float(chdtri(count, tail))),
        sqrt(squares / float(chdtri(count, 1 - tail))),
        count,
    )


def spread_from(
    records: Mapping[Act, Iterable[float]], start: Spread = ASSUMED
) -> tuple[Spread, dict[Act, Estimate]]:
    """The spread of a shop from its own inspection records.

    Distances between holes of one pattern show punch and drill together, twice over: give those
    errors divided by the square root of 2 under `Act.DRILL`, and the punch is then taken as nothing.

    Args:
        records: errors of each act, in; acts with fewer than five readings keep the value they had.
        start: what is taken for acts without records.

    Returns:
        The spread, and the estimate of every act that had records enough.
    """
    found = {
        act: estimated(errors) for act, every in records.items() if len(errors := tuple(every)) >= _LEAST
    }
    values: dict[str, float] = {act.value: estimate.value for act, estimate in found.items()}
    if Act.DRILL in found and Act.PUNCH not in found:
        values[Act.PUNCH.value] = 0.0
    if not found:
        return start, {}
    told = ", ".join(f"{act} from {found[act].count} readings" for act in Act if act in found)
    source = f"the shop's own records: {told}; the rest: {start.source}"
    return replace(start, **values, source=source), found
