"""Laws of the full-size template: every hole at its true place, every text clear, every reading printed."""

from __future__ import annotations

import math
from dataclasses import replace
from itertools import pairwise
from typing import Literal
from unittest.mock import patch

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import Polygon as Shape
from shapely import STRtree

from gageline.job import Job, JobFacts, default_practice
from gageline.layout import Bench, patterns
from gageline.part import Assembly, Face, Hole, Part, extent_y
from gageline.sheets import (
    Circle,
    Page,
    Sheet,
    Text,
    extent,
    fitting_templates,
    leaves,
    template,
    text_box,
    texts,
)
from gageline.sheets.spread import spread_out
from gageline.steel import Profile
from gageline.units import Length, System
from strategies import parts

LONGEST = Length.from_inches(150)
SYSTEMS_AND_PARTS = st.tuples(
    st.sampled_from(System), st.sampled_from([Profile.ANGLE, Profile.PLATE])
).flatmap(lambda pair: st.tuples(st.just(pair[0]), parts(profile=pair[1], system=pair[0])))


def job_of(part: Part, system: System, paper: Literal["letter", "a4"]) -> Job:
    facts = JobFacts(name="Trial", units=system, sheet=paper)
    return Job(facts, default_practice(system), (Assembly(part, 2),))


def templates(job: Job) -> Sheet:
    """The templates of longer pieces too, so that more of the random parts go over several pages."""
    with patch.object(template, "_LONGEST", LONGEST):
        return fitting_templates(job)


def circles(page: Page) -> list[tuple[float, float, float]]:
    return [
        (item.x + dx, item.y + dy, item.radius)
        for item, dx, dy in leaves(page.items)
        if isinstance(item, Circle)
    ]


def apart_in_space(one: tuple[Face, Hole], two: tuple[Face, Hole], part: Part) -> float:
    """Distance of two holes on the flat, mm, from the record alone: legs open out at the heel."""

    def flat(face: Face, hole: Hole) -> tuple[float, float]:
        across = -hole.y.mm if face is Face.LEG_B else hole.y.mm
        return hole.x.mm, across

    assert extent_y(part.stock)[0] == Length(0)
    return math.dist(flat(*one), flat(*two))


@settings(max_examples=80, deadline=None)
@given(SYSTEMS_AND_PARTS, st.sampled_from(("letter", "a4")))
def test_holes_are_at_their_true_places_on_the_paper(
    drawn: tuple[System, Part], paper: Literal["letter", "a4"]
) -> None:
    system, part = drawn
    job = job_of(part, system, paper)
    for page in templates(job).pages:
        assert isinstance(page, Page)
        found = circles(page)
        numbers = [text for text in texts(page.items) if text.text.isdigit()]
        holes = [
            (g.face, h)
            for face in (Face.LEG_A, Face.LEG_B, Face.FACE)
            for g in part.groups
            if g.face is face
            for h in g.holes
        ]
        placed = []
        for x, y, radius in found:
            mine = [
                t for t in numbers if math.dist((t.x, t.y), (x + radius * 0.45, y - radius * 0.45)) < 1e-6
            ]
            assert len(mine) == 1
            number = int(mine[0].text)
            face, hole = holes[number - 1]
            assert radius == pytest.approx(hole.width.mm / 2, abs=0.01)
            placed.append(((x, y), (face, hole)))
        for (at, one), (other, two) in pairwise(placed):
            assert math.dist(at, other) == pytest.approx(apart_in_space(one, two, part), abs=0.01)


@settings(max_examples=80, deadline=None)
@given(SYSTEMS_AND_PARTS, st.sampled_from(("letter", "a4")))
def test_texts_are_clear_and_every_reading_is_printed(
    drawn: tuple[System, Part], paper: Literal["letter", "a4"]
) -> None:
    system, part = drawn
    job = job_of(part, system, paper)
    sheet = templates(job)
    said: list[Text] = []
    for page in sheet.pages:
        assert isinstance(page, Page)
        found = list(texts(page.items))
        boxes = [Shape(text_box(text)) for text in found]
        for a, b in STRtree(boxes).query(boxes, predicate="intersects").T:
            assert a == b or boxes[a].intersection(boxes[b]).area < 1e-6, (found[a], found[b])
        around, frame = extent(tuple(found)), page.frame
        assert frame.left <= around.left <= around.right <= frame.right
        assert frame.top <= around.top <= around.bottom <= frame.bottom
        said += found
    if part.groups and part.length <= LONGEST:
        words = " | ".join(text.text for text in said)
        for pattern in patterns(Bench(part, job.practice.tape, system)):
            for spot in pattern.spots:
                assert spot.x.text in words
                assert spot.y.text in words


@settings(max_examples=40, deadline=None)
@given(SYSTEMS_AND_PARTS)
def test_a_quarter_turn_never_turns_the_template_inside_out(drawn: tuple[System, Part]) -> None:
    _, part = drawn
    plain, turned = spread_out(part), spread_out(part, turned=True)
    for one, two in zip(plain.holes, turned.holes, strict=True):
        assert two.at == pytest.approx((plain.size[1] - one.at[1], one.at[0]))
    assert spread_out(replace(part, mark="other")).holes == plain.holes
