"""The connection of an end that keeps every rule: the usual one, or the first of the others that does."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

from gageline.detail.choice import Choice, others
from gageline.detail.clearances import clearances
from gageline.detail.entering import entering
from gageline.detail.joint import Joint
from gageline.detail.shop import Shop
from gageline.errors import ValueProblem
from gageline.part import Finding, Join, Severity

__all__ = ["Ends", "Pair", "Work", "broken", "in_vain", "let_in", "settled"]

_ASKED = frozenset({"rows-for-depth", "rows-for-strength"})
"""Warnings for which another connection is taken where one has room."""
Work = Callable[[Choice], Joint | None]
"""Works out the connection of an end; None where nothing is left of the member."""
Pair = tuple[Choice, Choice]
Ends = Callable[[Pair], tuple[Joint, Joint] | None]
"""Works out the connections of both ends of a beam together; None where nothing is left of it."""


@dataclass(frozen=True, slots=True)
class _Tried:
    """A connection that does not go, and what is wrong with it."""

    choice: Choice
    wrong: Finding


def broken(joint: Joint, shop: Shop) -> tuple[Finding, ...]:
    """What is wrong with a connection by itself: its errors, and rows that are short of half of the depth.

    Args:
        joint: the connection worked out.
        shop: the practice.
    """
    found = (*joint.findings, *clearances(joint, shop)[1])
    given = joint.site.joint.connection is not None
    return tuple(one for one in found if one.severity is Severity.ERROR or (one.code in _ASKED and not given))


def settled(
    usual: Choice, wrong: tuple[Finding, ...], work: Work, shop: Shop, *, through: bool = True
) -> Choice:
    """The first connection of an end that keeps every rule, the usual one where none does.

    Args:
        usual: the connection given or by rule.
        wrong: what is wrong with it.
        work: works out another one.
        shop: the practice.
        through: whether bolts may go through the support.
    """
    tried = [_Tried(usual, wrong[0])]
    second: Choice | None = None
    for choice in others(usual, shop):
        made = _worked(choice, work)
        if made is None or (made.drills_support and not through):
            continue
        found = broken(made, shop)
        if not found:
            return _instead(choice, tried, shop)
        if second is None and not _errors(found):
            second = _instead(choice, tried, shop)
        tried.append(_Tried(choice, found[0]))
    if not _errors(wrong) or len(tried) == 1:
        return usual
    return second or replace(usual, in_vain=tuple(dict.fromkeys(_one(one.choice) for one in tried)))


def let_in(usual: Pair, made: tuple[Joint, Joint], work: Ends, shop: Shop) -> Pair:
    """The connections of both ends of a beam, others where with the usual ones it cannot be put in.

    An end whose connection is given stays. The first connection of a shop's order that helps is taken, at
    one end where that is enough, else at both.

    Args:
        usual: of its start and its end.
        made: the same worked out.
        work: works out another pair.
        shop: the practice.
    """
    stuck = entering(*made, shop)[1]
    if not stuck:
        return usual
    starts, ends = ((choice, *_other_kinds(choice, stuck[0], shop)) for choice in usual)
    pairs = [(max(i, j), i and j, one, two) for i, one in enumerate(starts) for j, two in enumerate(ends)]
    for _, _, one, two in sorted(pairs[1:], key=lambda pair: pair[:2]):
        other = _both((one, two), work)
        if other and not any(broken(joint, shop) for joint in other) and not entering(*other, shop)[1]:
            return one, two
    return usual


def _both(pair: Pair, work: Ends) -> tuple[Joint, Joint] | None:
    try:
        return work(pair)
    except ValueProblem:  # of a size or an angle that the tables do not have
        return None


def _other_kinds(usual: Choice, stuck: Finding, shop: Shop) -> Iterator[Choice]:
    """What else an end can get that is no variant of the usual connection, with the usual rows and bolts."""
    for choice in others(usual, shop):
        same = _way_of(choice) == _way_of(usual)
        if not same and (choice.size, choice.pitch) == (usual.size, usual.pitch):
            yield _instead(choice, [_Tried(usual, stuck)], shop)


def in_vain(joint: Joint) -> tuple[Finding, ...]:
    """What was tried in vain where no connection of an end keeps every rule.

    Args:
        joint: the usual connection, which breaks one.
    """
    if not joint.choice.in_vain:
        return ()
    names = _listed(("closer rows", "smaller bolts", *joint.choice.in_vain[1:]), "and")
    return (
        Finding(
            "nothing-goes",
            Severity.NOTE,
            f"{joint.site.member.name} {joint.site.word}",
            f"{names} were tried here and break a rule too",
            "change a section or a top of steel, or enter the end as drawn",
        ),
    )


def _listed(names: Sequence[str], word: str) -> str:
    *most, last = names
    return f"{', '.join(most)} {word} {last}" if most else last


def _worked(choice: Choice, work: Work) -> Joint | None:
    try:
        return work(choice)
    except ValueProblem:  # of a size or an angle that the tables do not have: no choice for this end
        return None


def _errors(found: Iterable[Finding]) -> bool:
    return any(one.severity is Severity.ERROR for one in found)


def _name(choice: Choice) -> str:
    """A connection in words."""
    welded = choice.kind == "double angles" and choice.to_beam is Join.WELDED
    return f"{choice.kind} welded to the beam" if welded else choice.kind


def _one(choice: Choice) -> str:
    """The same with its article."""
    name = _name(choice)
    return name if "angles" in name else f"an {name}" if name.startswith("e") else f"a {name}"


def _bolts(choice: Choice, shop: Shop) -> str:
    return f"{choice.size.size} bolts at {shop.say(choice.pitch)}"


def _instead(choice: Choice, tried: Sequence[_Tried], shop: Shop) -> Choice:
    """A connection with the reason why it stands in the place of others."""
    names: dict[str, dict[str, None]] = {}
    for one in tried:
        same = _way_of(one.choice) == _way_of(choice)
        name = f"{_one(one.choice)} with {_bolts(one.choice, shop)}" if same else _one(one.choice)
        names.setdefault(one.wrong.message, {})[name] = None
    why = "; ".join(
        f"{_listed(list(those), 'and')} {_goes(those)}: {message}" for message, those in names.items()
    )
    usual = tried[0].choice
    decision = _name(choice)
    if (choice.size, choice.pitch) != (usual.size, usual.pitch):
        decision += f" with {_bolts(choice, shop)}"
    reasons = tuple(
        replace(reason, decision=decision, because=why) if reason.decision == choice.kind else reason
        for reason in choice.reasons
    )
    return replace(choice, reasons=reasons)


def _way_of(choice: Choice) -> tuple[str, Join]:
    return choice.kind, choice.to_beam


def _goes(names: Collection[str]) -> str:
    many = len(names) > 1 or any(name.startswith("double angles") for name in names)
    return "do not go" if many else "does not go"
