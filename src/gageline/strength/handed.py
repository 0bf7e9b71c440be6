"""Loads handed down through a frame: from beams to what carries them, and from all of it to the column bases.

Statics of members on two supports, overhangs with them; it is no analysis of a frame. The weight of the
members themselves is a load like any other and is counted where the document gives it.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from gageline.detail import Bearing, Detailed, Line, MemberLoads, Site, joint_of
from gageline.part import End
from gageline.strength.check import Method
from gageline.strength.demands import BelowLoads, below_loads, loads_on
from gageline.strength.loads import Case, Load, combined
from gageline.units import System, counted

__all__ = ["Amounts", "Handed", "Rest", "hand_down"]

_KN = 1 / 4.4482216152605
Amounts = Mapping[Case, float]
Key = tuple[str, End]


@dataclass(frozen=True, slots=True)
class Rest:
    """Where a beam rests on something.

    Args:
        at: from its start work point, in.
        on: name of the member under it.
        end: the end that rests there; None where it passes over.
    """

    at: float
    on: str
    end: End | None


@dataclass(frozen=True, slots=True)
class Handed:
    """What every member hands to what carries it.

    Args:
        rests: of each beam, from its start on.
        reactions: of each beam at its rests, by kind of load, kips; None where one is not known.
        loads: on each beam whose loads are known, its own and what stands on it.
        why: of each beam with a reaction that is not known, the reason.
        by_loads: of each beam at its rests, what its loads come to, whatever is given.
    """

    rests: Mapping[str, tuple[Rest, ...]]
    reactions: Mapping[str, tuple[Amounts | None, ...]]
    loads: Mapping[str, tuple[Load, ...]]
    why: Mapping[str, str]
    by_loads: Mapping[str, tuple[Amounts | None, ...]] = field(default_factory=dict)

    def at(self, member: str, end: End) -> Amounts | None:
        """The reaction of an end; None where it is not known."""
        pairs = zip(self.rests.get(member, ()), self.reactions.get(member, ()), strict=True)
        return next((amounts for rest, amounts in pairs if rest.end is end), None)

    def below_loads(self, method: Method) -> Iterator[BelowLoads]:
        """The ends whose given reactions are less than their loads ask for."""
        for member, rests in self.rests.items():
            for rest, given, asked in zip(rests, self.reactions[member], self.by_loads[member], strict=True):
                if given and asked and set(given) == {Case.GIVEN} and rest.end:
                    most, load = combined(asked, method)
                    below = below_loads(f"{member} {rest.end}", given[Case.GIVEN], most, load)
                    yield from [below] if below else []

    def by_support(self) -> dict[str, list[tuple[str, Amounts | None]]]:
        """What each member is handed, by the names of the beams that hand it."""
        found: dict[str, list[tuple[str, Amounts | None]]] = defaultdict(list)
        for member, rests in self.rests.items():
            for rest, amounts in zip(rests, self.reactions[member], strict=True):
                found[rest.on].append((member, amounts))
        return found


def hand_down(detailed: Detailed, system: System) -> Handed:
    """Hand the loads of a frame down to its columns.

    Args:
        detailed: the frame.
        system: units of the job; given reactions are in kips or kilonewtons by it.

    Returns:
        The reactions of every beam, by kind of load.

    Source: statics. A reaction that the document gives goes before one that follows from loads, and is handed
        on with the factors that it has.
    """
    work = _Work(detailed, system)
    for line in detailed.frame.beams:
        work.settle(line)
    return Handed(work.rests, work.reactions, work.loads, work.why, work.by_loads)


@dataclass(slots=True)
class _Work:
    """A frame on its way to its reactions."""

    detailed: Detailed
    system: System
    rests: dict[str, tuple[Rest, ...]] = field(default_factory=dict)
    reactions: dict[str, tuple[Amounts | None, ...]] = field(default_factory=dict)
    loads: dict[str, tuple[Load, ...]] = field(default_factory=dict)
    why: dict[str, str] = field(default_factory=dict)
    by_loads: dict[str, tuple[Amounts | None, ...]] = field(default_factory=dict)
    own: dict[str, MemberLoads] = field(init=False)
    standing: dict[str, list[Site]] = field(init=False)
    ends: dict[str, list[Site]] = field(init=False)
    bearings: dict[str, list[Bearing]] = field(init=False)
    waiting: set[str] = field(default_factory=set)

    def __post_init__(self) -> None:
        self.own = {one.member: one for one in self.detailed.loads}
        self.standing, self.ends, self.bearings = defaultdict(list), defaultdict(list), defaultdict(list)
        for site in self.detailed.supports.sites:
            self.standing[site.support.name].append(site)
            self.ends[site.member.name].append(site)
        for bearing in self.detailed.supports.bearings:
            self.bearings[bearing.member.name].append(bearing)

    def settle(self, line: Line) -> None:
        """The reactions of a beam, those of what stands on it first."""
        if line.name in self.reactions or line.name in self.waiting:
            return
        self.waiting.add(line.name)
        for site in self.standing[line.name]:
            self.settle(site.member)
        self.waiting.discard(line.name)
        rests = self.rests[line.name] = tuple(self._rests(line))
        given = tuple(self._given(line, rest) for rest in rests)
        found: tuple[Amounts | None, ...] = (None,) * len(rests)
        missing = self._missing(line, rests)
        if missing:
            self.why[line.name] = missing
        else:
            self.loads[line.name] = tuple(self._loads(line))
            found = _on_two(self.loads[line.name], rests)
        self.by_loads[line.name] = found
        self.reactions[line.name] = tuple(
            one if one is not None else other for one, other in zip(given, found, strict=True)
        )

    def _rests(self, line: Line) -> Iterator[Rest]:
        rests = [
            Rest(0.0 if site.end is End.LEFT else line.run, site.support.name, site.end)
            for site in self.ends[line.name]
        ]
        rests.extend(Rest(one.run, one.column.name, one.end) for one in self.bearings[line.name])
        yield from sorted(rests, key=lambda rest: rest.at)

    def _given(self, line: Line, rest: Rest) -> Amounts | None:
        reaction = joint_of(line, rest.end).reaction if rest.end else None
        if not reaction:
            return None
        scale = 1.0 if self.system is System.FT_IN else _KN
        return {Case.GIVEN: reaction * scale}

    def _missing(self, line: Line, rests: tuple[Rest, ...]) -> str:
        """Why the reactions of a beam do not follow from loads; empty where they do."""
        if len(rests) != 2:
            return f"it rests on {counted(len(rests), 'support')}: only beams on two are worked out"
        for site in self.standing[line.name]:
            amounts, name = self._of(site), site.member.name
            if amounts is None:
                return f"{name} stands on it, whose reaction is not known"
            if min(amounts.values(), default=0.0) < 0 or site.station < 0:
                return f"{name} lifts it, or stands before its start, which is not followed"
        own = self.own.get(line.name)
        if not self.standing[line.name] and not (own and own.loads):
            return "it has no loads"
        return ""

    def _of(self, site: Site) -> Amounts | None:
        """The reaction of an end that stands on something; None where it is not known yet."""
        name = site.member.name
        pairs = zip(self.rests.get(name, ()), self.reactions.get(name, ()), strict=True)
        return next((amounts for rest, amounts in pairs if rest.end is site.end), None)

    def _loads(self, line: Line) -> Iterator[Load]:
        own = self.own.get(line.name)
        if own is not None:
            yield from loads_on(own.loads, line.run)
        for site in self.standing[line.name]:
            for case, amount in (self._of(site) or {}).items():
                if amount:
                    yield Load(case, amount, site.station)


def _on_two(loads: tuple[Load, ...], rests: tuple[Rest, ...]) -> tuple[Amounts, ...]:
    """The reactions on two supports, each kind of load by itself."""
    low, high = (rest.at for rest in rests)
    far: dict[Case, float] = defaultdict(float)
    total: dict[Case, float] = defaultdict(float)
    for load in loads:
        far[load.case] += load.total * (load.middle - low) / (high - low)
        total[load.case] += load.total
    return {case: total[case] - far[case] for case in total}, dict(far)
