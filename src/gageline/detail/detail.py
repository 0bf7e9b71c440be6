"""From a frame to its pieces: every end worked out, built, checked and marked."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import replace
from functools import partial
from itertools import pairwise
from types import MappingProxyType

from gageline.detail.agree import Disagreed, Key, Shared, agreed
from gageline.detail.bearing import bear, cap_for, end_plane_on_column, stiffens
from gageline.detail.bolting import length_reason
from gageline.detail.build import build_joint
from gageline.detail.carrier import Carrier, Served
from gageline.detail.choice import Asked, Choice, Named, choose
from gageline.detail.clearances import clearances
from gageline.detail.columns import shafts_of
from gageline.detail.crowding import in_the_way
from gageline.detail.detailed import Detailed, Placed
from gageline.detail.entering import entering
from gageline.detail.framing import frame_of
from gageline.detail.grounding import hung, rings
from gageline.detail.joint import Joint, joint_at
from gageline.detail.line import Frame, Line
from gageline.detail.loads import MemberLoads, carried_by, unused_area_loads, wrong_loads
from gageline.detail.mating import met_by, piles_of
from gageline.detail.meeting import met
from gageline.detail.openings import crossed
from gageline.detail.pieces import mark_pieces
from gageline.detail.reason import Reason
from gageline.detail.shop import Shop
from gageline.detail.site import joint_of
from gageline.detail.site_bolts import Meeting, site_bolts, unmet_holes
from gageline.detail.space import along, vec_of
from gageline.detail.splice import splice_plates
from gageline.detail.stick import EndPlane, Stick, stick_of
from gageline.detail.supports import Bearing, Supports, find_supports
from gageline.detail.tongue import end_plane
from gageline.detail.trying import Pair, broken, in_vain, let_in, settled
from gageline.errors import ValueProblem
from gageline.job import (
    ColumnEntry,
    ColumnPlateEntry,
    FittingMarks,
    FrameEntry,
    Note,
    Practice,
    frame_practice,
)
from gageline.part import Assembly, End, Finding, Severity
from gageline.steel import Profile
from gageline.units import ZERO, Length, System

__all__ = ["Progress", "detail_frame"]

_LEAST = Length.from_inches(6)
Progress = Callable[[int, int], None]
NOTHING_ASKED: Mapping[Named, Asked] = MappingProxyType({})


def detail_frame(
    entry: FrameEntry,
    practice: Practice,
    system: System,
    drawn: tuple[Assembly, ...] = (),
    progress: Progress | None = None,
    asked: Mapping[Named, Asked] = NOTHING_ASKED,
) -> tuple[Detailed, list[Note]]:
    """The pieces of a frame.

    Args:
        entry: the frame's tables.
        practice: the shop's.
        system: the job's units.
        drawn: pieces of the job that are drawn, whose marks are taken.
        progress: told how many members of how many are done.
        asked: rows of bolts that the strength of connections asks for, where that was found.

    Returns:
        The frame detailed as far as it can be, and notes of what is wrong in the document.
    """
    shop = Shop(practice, frame_practice(entry.practice, system), system)
    frame, notes = frame_of(entry, system)
    entered = frame
    supports, unsupported = find_supports(frame, system)
    frame, moved = met(frame, supports, shop)
    if frame is not entered:
        supports, unsupported = find_supports(frame, system)
    work = _Work(shop, frame, supports, asked, progress)
    work.choose(notes)
    work.work_out(notes)
    work.build(notes)
    more = (*moved, *hung(frame, supports), *unused_area_loads(entered, entry), *crossed(frame, shop))
    told = (*unsupported, *rings(frame, supports, system), *wrong_loads(entered, system))
    notes = [*_too_much_play(shop), *notes, *told]
    return work.result(drawn, carried_by(entered, entry), more), notes


def _too_much_play(shop: Shop) -> Iterator[Note]:
    """A note of a practice whose angles would stop short of the end of the steel that they are on."""
    play, setback = shop.frame.play, shop.frame.setback
    if play >= setback:
        said = f"play of {shop.say(play)} is not less than the setback of {shop.say(setback)}"
        remedy = "angles would not reach past the end of the steel; give less play or more setback"
        yield ("practice", "play"), f"{said}: {remedy}"


class _Work:
    """A frame on its way to pieces."""

    def __init__(
        self,
        shop: Shop,
        frame: Frame,
        supports: Supports,
        asked: Mapping[Named, Asked],
        progress: Progress | None,
    ) -> None:
        self.shop, self.frame, self.supports = shop, frame, supports
        self.asked, self.progress = asked, progress
        self.choices: dict[Key, Choice] = {}
        self.planes: dict[str, tuple[EndPlane, EndPlane]] = {}
        self.sticks: dict[str, Stick] = {}
        self.joints: dict[Key, Joint] = {}
        self.shared: dict[Key, Shared] = {}
        self.carriers: dict[str, Carrier] = {}
        self.shafts: dict[str, tuple[tuple[float, Carrier], ...]] = {}
        self.meetings: list[Meeting] = []
        self.served: list[Served] = []
        self.bearings: dict[str, list[Bearing]] = defaultdict(list)
        self.over: dict[str, list[Bearing]] = defaultdict(list)
        for bearing in supports.bearings:
            self.bearings[bearing.member.name].append(bearing)
            self.over[bearing.column.name].append(bearing)

    def choose(self, notes: list[Note]) -> None:
        """Which connection each end gets."""
        for site in self.supports.sites:
            try:
                stiffened = any(stiffens(b, site.station) for b in self.bearings[site.support.name])
                self.choices[site.member.name, site.end] = choose(site, self.shop, stiffened=stiffened)
            except ValueProblem as wrong:
                notes.append(((*site.member.path, site.word), str(wrong)))

    def work_out(self, notes: list[Note]) -> None:
        """Where each beam is cut, and the connection of each end: the usual one, or another that goes."""
        for line in self.frame.beams:
            if self._work_out(line, notes) and self._settle(line, {}):
                self._work_out(line, notes)
            if self._let_in(line):
                self._work_out(line, notes)
        over = {name: tuple(b.run for b in bearings) for name, bearings in self.bearings.items()}
        joints, shared, apart = agreed(self.joints, over, self.shop)
        if self._part(apart, notes):
            joints, shared, _ = agreed(self.joints, over, self.shop)
        self.joints = joints
        self.shared = {key: one for one in shared for key in (one.one, one.two)}

    def _work_out(self, line: Line, notes: list[Note]) -> bool:
        """Where a beam is cut and its connections, whether anything is left of it."""
        left, right = (self._plane(line, end, self.choices.get((line.name, end))) for end in End)
        if left is None or right is None:
            return False
        stick = stick_of(line, left, right)
        if stick.part.length < _LEAST:
            notes.append((line.path, _nothing_left(line, left, right, self.shop)))
            return False
        self.planes[line.name], self.sticks[line.name] = (left, right), stick
        for end in End:
            choice = self.choices.get((line.name, end))
            if choice is not None:
                try:
                    self.joints[line.name, end] = self._joint(choice, stick)
                except ValueProblem as wrong:
                    notes.append(((*line.path, choice.site.word), str(wrong)))
        return True

    def _settle(self, line: Line, apart: dict[Key, Finding]) -> bool:
        """Another connection for the ends of a beam that break a rule, whether there is one."""
        changed = False
        for end in End:
            key = (line.name, end)
            joint, clash = self.joints.get(key), apart.get(key)
            if joint is None:
                continue
            wrong = (clash,) if clash else broken(joint, self.shop)
            if wrong:
                usual, work = self.choices[key], partial(self._tried, line, end)
                self.choices[key] = settled(usual, wrong, work, self.shop, through=clash is None)
                changed |= self.choices[key] != usual
        return changed

    def _let_in(self, line: Line) -> bool:
        """Other connections for a beam that cannot be put in between its supports, whether there are any."""
        keys = [(line.name, end) for end in End]
        if not all(key in self.joints for key in keys):
            return False
        usual = (self.choices[keys[0]], self.choices[keys[1]])
        made = (self.joints[keys[0]], self.joints[keys[1]])
        changed = let_in(usual, made, partial(self._tried_both, line), self.shop)
        self.choices |= dict(zip(keys, changed, strict=True))
        return changed != usual

    def _tried_both(self, line: Line, pair: Pair) -> tuple[Joint, Joint] | None:
        """The connections of both ends if they were those."""
        left, right = (self._plane(line, end, choice) for end, choice in zip(End, pair, strict=True))
        if left is None or right is None:
            return None
        stick = stick_of(line, left, right)
        if stick.part.length < _LEAST:
            return None
        return self._joint(pair[0], stick), self._joint(pair[1], stick)

    def _tried(self, line: Line, end: End, choice: Choice) -> Joint | None:
        """The connection of an end if it were that one."""
        chosen = {one: self.choices.get((line.name, one)) for one in End} | {end: choice}
        left, right = (self._plane(line, one, chosen[one]) for one in End)
        if left is None or right is None:
            return None
        stick = stick_of(line, left, right)
        return self._joint(choice, stick) if stick.part.length >= _LEAST else None

    def _joint(self, choice: Choice, stick: Stick) -> Joint:
        """A connection worked out, with the rows that its strength asks for where that is known."""
        return joint_at(replace(choice, asked=self.asked.get(choice.named)), stick, self.shop)

    def _part(self, apart: Iterable[Disagreed], notes: list[Note]) -> bool:
        """Another connection where two patterns of one web disagree, for one of the two; whether one did."""
        changed = False
        for pair in apart:
            for key in (pair.one, pair.two):
                line = self.frame.lines[key[0]]
                if self._settle(line, {key: pair.finding}):
                    changed = self._work_out(line, notes)
                    break
        return changed

    def _plane(self, line: Line, end: End, choice: Choice | None) -> EndPlane | None:
        """Where an end is cut and why; None where nothing carries it."""
        work, word = (line.start, "start") if end is End.LEFT else (line.finish, "end")
        say = self.shop.say
        if choice is not None:
            off = say(math.dist(choice.site.point[:2], work[:2]))
            return end_plane(choice, off, self.shop)
        inward = line.ex if end is End.LEFT else (-line.ex[0], -line.ex[1], -line.ex[2])
        joint = joint_of(line, end)
        if joint.overhang or joint.connection == "free":
            over = joint.overhang or ZERO
            why = f"the {word} goes on {say(over)} past its work point" if over else f"the {word} is free"
            return EndPlane(along(work, inward, -over.inches), inward, why)
        for bearing in self.bearings[line.name]:
            if bearing.end is end:
                alone = len(self.over[bearing.column.name]) == 1
                return end_plane_on_column(bearing, inward, word, self.shop, alone=alone)
        return None

    def build(self, notes: list[Note]) -> None:
        """The pieces, with everything that is joined to them and cut into them."""
        for column in self.frame.columns:
            entry = column.entry
            cap = entry.cap_plate if isinstance(entry, ColumnEntry) else None
            over = [bearing for bearing in self.over[column.name] if bearing.member.name in self.sticks]
            try:
                self._stack(column, cap_for(column, cap, over, self.shop))
            except ValueProblem as wrong:
                notes.append((column.path, str(wrong)))
        for name, stick in self.sticks.items():
            self.carriers[name] = Carrier(name, stick.part, stick.placement)
        total = len(self.sticks)
        for number, (name, stick) in enumerate(self.sticks.items(), 1):
            try:
                self._build_beam(name, stick)
            except ValueProblem as wrong:
                notes.append((stick.line.path, str(wrong)))
            if self.progress is not None:
                self.progress(number, total)
        for bearing in self.supports.bearings:
            if bearing.member.name not in self.sticks:
                continue
            post = self._carrier(bearing.column.name, bearing.column.finish[2])
            if post is not None:
                beam = self.carriers[bearing.member.name]
                bear(bearing, beam, post, self.shop)
                name = f"{bearing.member.name} on {bearing.column.name}"
                self.meetings.append(Meeting(name, beam.part.mark, post.part.mark, bearing.column.finish))

    def _stack(self, column: Line, cap: ColumnPlateEntry | None) -> None:
        """The shafts of a column, spliced where the document says."""
        splices = self.frame.splices.get(column.name, ())
        plated = column.stock.profile is Profile.I_SHAPE
        shafts = shafts_of(column, cap, splices if plated else (), self.shop)
        if splices and not plated:
            shafts[0][1].findings.append(_no_splice(column))
        self.shafts[column.name] = shafts
        self.carriers |= {shaft.part.mark: shaft for _, shaft in shafts}
        for (_, lower), (_, upper) in pairwise(shafts):
            splice_plates(column, lower, upper, self.shop)
            place = vec_of(upper.placement.origin)
            self.meetings.append(Meeting(f"{column.name} splice", upper.part.mark, lower.part.mark, place))

    def _carrier(self, name: str, elevation: float) -> Carrier | None:
        """The piece of a member at an elevation."""
        for top, shaft in self.shafts.get(name, ()):
            if elevation <= top + 1e-6:
                return self.carriers[shaft.part.mark]
        return self.carriers.get(name)

    def _build_beam(self, name: str, stick: Stick) -> None:
        own = self.carriers[name]
        joints = [joint for end in End if (joint := self.joints.get((name, end))) is not None]
        for joint in joints:
            other = self._carrier(joint.site.support.name, joint.site.point[2])
            own.reasons.extend(joint.reasons)
            own.findings.extend((*joint.findings, *in_vain(joint)))
            if other is None:
                continue
            known = len(other.fittings)
            build_joint(joint, stick, own, other, self.shop)
            self.served.extend(
                Served(other.part.mark, fitting.name, name, joint.site.end)
                for fitting in other.fittings[known:]
            )
            reasons, findings = clearances(joint, self.shop)
            own.reasons.extend(reasons)
            own.findings.extend(findings)
            own.reasons.extend(self._bolt_lengths(joint))
            site = joint.site
            first = self.shared.get((name, site.end))
            second = first is not None and first.two == (name, site.end)
            self.meetings.append(Meeting(site.name, own.part.mark, other.part.mark, site.point, second))
        own.reasons.insert(0, _length_reason(stick, self.planes[name], self.shop))
        if len(joints) == 2:
            reasons, findings = entering(joints[0], joints[1], self.shop)
            own.reasons.extend(reasons)
            own.findings.extend(findings)

    def _bolt_lengths(self, joint: Joint) -> Iterable[Reason]:
        """Why the bolts of a connection are so long; shared ones stand with the end that keeps the holes."""
        size, word, key = joint.choice.size, joint.site.word, (joint.site.member.name, joint.site.end)
        if joint.kind == "seat":
            yield length_reason(size, joint.material + joint.site.member.stock.tf, word, self.shop)
        if joint.ladder is None:
            return
        first = self.shared.get(key)
        if joint.ladder.rows > (first.rows if first else 0):
            yield length_reason(size, joint.grip, word, self.shop)
        if first is not None and key == first.one and first.rows:
            yield length_reason(size, joint.grip + self.joints[first.two].material, word, self.shop)

    def result(
        self, drawn: tuple[Assembly, ...], loads: tuple[MemberLoads, ...], more: tuple[Finding, ...]
    ) -> Detailed:
        """Everything together, with piece marks."""
        lines = self.frame.lines
        names = sorted(self.carriers, key=lambda name: _in_document(lines[self.carriers[name].member], name))
        pieces = {}
        given = {}
        for name in names:
            entry = lines[self.carriers[name].member].entry
            pieces[name] = self.carriers[name].assembly(entry.finish or self.shop.practice.finish)
            if entry.mark:
                given[name] = entry.mark + name.removeprefix(entry.name)
        marked, assemblies, taken = mark_pieces(pieces, given, {one.mark.casefold() for one in drawn})
        marks = {name: mark for name, (mark, _) in marked.items()}
        every = {name.casefold() for name in (*marks, *marks.values(), *(one.mark for one in drawn))}
        fittings = FittingMarks.beside(every, drawn)
        carriers = tuple(self.carriers.values())
        placed = tuple(
            Placed(carrier.member, marks[name], pieces[name], carrier.placement, marked[name][1])
            for name, carrier in ((name, self.carriers[name]) for name in pieces)
        )
        piles = piles_of(placed, self.shop.frame.play)
        more = (*more, *unmet_holes(piles))
        own = [found for one in carriers for found in one.findings]
        crowded = list(in_the_way(placed, self.supports))
        said: dict[str, list[Finding]] = defaultdict(list)
        for name in pieces:
            said[marks[name]].extend(self.carriers[name].findings)
        for found in (*taken, *more):
            if found.subject in marks:
                said[marks[found.subject]].append(found)
        for both, found in crowded:
            for mark in {marks[name] for name in both}:
                said[mark].append(found)
        return Detailed(
            self.frame,
            self.supports,
            self.joints,
            tuple(dict.fromkeys(self.shared.values())),
            tuple(fittings.of(one) for one in assemblies),
            placed,
            _reasons(self.carriers, marks, pieces),
            site_bolts(piles, self.meetings),
            tuple(dict.fromkeys([*taken, *more, *own, *(found for _, found in crowded)])),
            {mark: tuple(dict.fromkeys(found)) for mark, found in said.items()},
            loads,
            tuple(self.served),
            tuple(one.rods for one in carriers if one.rods is not None),
            met_by(piles, marks),
        )


def _nothing_left(line: Line, left: EndPlane, right: EndPlane, shop: Shop) -> str:
    return (
        f"nothing is left of it: it is {shop.say(line.run)} between work points, {left.why}, {right.why}: "
        "move what carries it apart, or give smaller setbacks"
    )


def _in_document(line: Line, name: str) -> tuple[str, int, str]:
    """The order of the document: columns, then beams."""
    return str(line.path[1]), int(line.path[2]), name


def _no_splice(column: Line) -> Finding:
    return Finding(
        "splice-not-detailed",
        Severity.ERROR,
        column.name,
        f"the splice of {column.stock.designation} is not detailed: only W columns are spliced with plates",
        "take the splice out, or enter the shafts as drawn",
    )


def _reasons(
    carriers: dict[str, Carrier], marks: dict[str, str], pieces: dict[str, Assembly]
) -> dict[str, tuple[Reason, ...]]:
    """The reasons of the first member of each mark."""
    found: dict[str, tuple[Reason, ...]] = {}
    for name in pieces:
        found.setdefault(marks[name], tuple(carriers[name].reasons))
    return found


def _length_reason(stick: Stick, planes: tuple[EndPlane, EndPlane], shop: Shop) -> Reason:
    """How the cut length follows from the work points."""
    ends = [plane.why + _corner(stick, end, shop) for end, plane in zip(End, planes, strict=True)]
    return Reason(
        f"cut {shop.say(stick.part.length)} long between the furthest points",
        ", ".join([f"{shop.say(stick.line.run)} between work points", *ends]),
        "geometry of the frame",
    )


def _corner(stick: Stick, end: End, shop: Shop) -> str:
    """Where the furthest point of an end is that is not cut square, seen from its work point."""
    if stick.part.cut(end).square:
        return ""
    inside = stick.inside(end)
    return (
        f", so that its furthest corner is {shop.say(abs(inside))} {'inside' if inside > 0 else 'past'} the "
        "work point along the piece"
    )
