"""Frames too crowded to go together: what the solids show to clash is said, and nothing else is."""

from __future__ import annotations

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assembling import detailed, overlaps
from gageline.detail import Detailed

GIRDERS = ("W16X31", "W21X62", "W24X76", "C15X33.9")
BEAMS = ("W10X22", "W12X26", "W16X26", "W18X35", "C10X15.3")
POSTS = ("W10X49", "W12X65", "HSS6X6X3/8", "HSS8X8X3/8")
KINDS = ("double angles", "single plate", "end plate", "extended plate", None)
CORNER = 0.25  # in3: less is a corner or a fillet, which the blocks of `crowding` leave out
FREE = {"connection": "free"}


@st.composite
def crowds(draw: st.DrawFn) -> dict[str, object]:
    """A girder over a post, with beams to both of its sides near each other and the post."""
    girder = draw(st.sampled_from(GIRDERS))
    members: list[dict[str, object]] = [
        {"name": "G", "stock": girder, "from": "1/B", "to": "3/B", "top": "Floor", "ends": FREE}
    ]
    places = st.lists(st.integers(90, 150), min_size=1, max_size=3, unique=True)
    for number, at in enumerate(draw(places)):
        row = draw(st.sampled_from("AC"))
        kind = draw(st.sampled_from(KINDS))
        members.append(
            {
                "name": f"B{number}",
                "stock": draw(st.sampled_from(BEAMS)),
                "from": {"on": "G", "at": at},
                "to": {"point": f"1/{row}", "x": at + draw(st.sampled_from([0, 0, -40, 25]))},
                "top": "Floor",
                "drop": str(draw(st.integers(0, 8)) / 2),
                "start": {"connection": kind} if kind else {},
                "end": FREE,
            }
        )
    post = {"name": "P", "at": "2/B", "stock": draw(st.sampled_from(POSTS)), "base": "0", "under": "G"}
    return {
        "grid": {
            "x": {"names": ["1", "2", "3"], "spacing": [120, 120]},
            "y": {"names": ["A", "B", "C"], "spacing": [96, 96]},
        },
        "level": [{"name": "Floor", "elevation": 144}],
        "column": [post | {"turn": draw(st.sampled_from([0, 90]))}],
        "member": members,
    }


def said(result: Detailed) -> set[frozenset[str]]:
    """The names of the two pieces of steel of every finding."""
    messages = [one.message for one in result.findings if one.code == "in-the-way"]
    pairs = [message.partition(" would stand in one place")[0].split(" and ") for message in messages]
    return {frozenset(pair) for pair in pairs}


@given(crowds())
@settings(max_examples=80, deadline=None, suppress_health_check=list(HealthCheck))
def test_what_clashes_is_said_and_nothing_else(frame: dict[str, object]) -> None:
    result = detailed(frame)
    solids = [
        (frozenset((one.split(" ")[0], two.split(" ")[0])), most) for one, two, most in overlaps(result, 0)
    ]
    found = {frozenset(name.split(" ")[0] for name in pair) for pair in said(result)}
    assert {pair for pair, volume in solids if volume > CORNER} <= found
    assert found <= {pair for pair, _ in solids}
