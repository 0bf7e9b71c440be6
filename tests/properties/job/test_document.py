"""Laws of the job document: what is written reads back, and nothing typed ends in a traceback."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import Any

import tomlkit
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gageline.job import (
    Job,
    JobProblems,
    Problem,
    check_job,
    read_document,
    read_job,
    schema_text,
    write_document,
)
from gageline.part import Assembly

DEMO = Path(__file__).parents[3] / "src/gageline/demo"
MEZZANINE = (DEMO / "mezzanine.toml").read_text(encoding="utf-8")
METRIC = (DEMO / "metric.toml").read_text(encoding="utf-8")
SCHEMA = json.loads(schema_text())
AS_DRAWN = SCHEMA | {
    "properties": {name: SCHEMA["properties"][name] for name in ("job", "practice", "piece")},
    "required": ["job", "piece"],
}
MARKS = st.from_regex(r"[A-Za-z0-9][A-Za-z0-9._+-]{0,23}", fullmatch=True)
NAMES = st.text(st.characters(codec="utf-8", categories=["L", "N", "P", "S"]), min_size=1, max_size=40)


def slopes() -> st.SearchStrategy[str]:
    rises = st.builds("{} {}/16 in {}".format, st.integers(0, 12), st.integers(1, 15), st.integers(6, 40))
    angles = st.integers(0, 80_000).map(lambda thousandths: f"{thousandths / 1000:.3f}°")
    return st.one_of(rises, angles)


CHOICES: dict[str, st.SearchStrategy[Any]] = {
    "mark": MARKS,
    "as_hand_of": MARKS,
    "bolt": st.sampled_from(["3/4", '7/8"', "M20", "1 1/8"]),
    "grade": st.sampled_from(["A36", "A992", "S275"]),
    "stock": st.sampled_from(["W16x26", "HSS6x6x3/8", "L4x3-1/2x5/16", "IPE 300", "UPN200", "L 80x80x8"]),
    "bevel": slopes(),
    "mitre": slopes(),
    "date": st.dates().map(str),
    "reaction": st.sampled_from(["60 kip", "267.5 kN", "1200 lb"]),
    "axial": st.sampled_from(["12 kip", "0.5 kN"]),
    "point": st.sampled_from(["20 kips", "90 kN"]),
    "uniform": st.sampled_from(["1.2 kip/ft", "450 plf", "17.5 kN/m"]),
    "support": st.sampled_from(["W14x90", "HSS6x6x3/8", "IPE 300"]),
}


@st.composite
def lengths(draw: st.DrawFn) -> object:
    """A length from 1/2 in to 200 ft in one of the ways of writing it."""
    parts = draw(st.integers(128, 256 * 2400))
    whole, rest = divmod(parts, 256)
    hundredths = draw(st.integers(1270, 6_000_000))
    return draw(
        st.sampled_from(
            [
                f"{whole} {rest}/256in" if rest else f"{whole}in",
                f"{whole // 12}'-{whole % 12} {rest}/256\"",
                f"{hundredths // 100}.{hundredths % 100:02d} mm",
                max(whole, 12) if whole <= 2400 else 2400,
                whole % 2000 + 12.5,
            ]
        )
    )


def value_of(name: str, schema: dict[str, Any]) -> st.SearchStrategy[Any]:
    """Values that the schema of a key allows."""
    if name in CHOICES:
        return CHOICES[name]
    if "$ref" in schema:
        return value_at(schema["$ref"])
    if "anyOf" in schema:
        return st.one_of([value_of(name, one) for one in schema["anyOf"] if one.get("type") != "null"])
    if "enum" in schema:
        return st.sampled_from(schema["enum"])
    match schema["type"]:
        case "boolean":
            return st.booleans()
        case "integer":
            return st.integers(schema["minimum"], schema["maximum"])
        case "number":
            return st.integers(-900, 900).map(lambda tenths: tenths / 10)
        case "array":
            most = 2
            return st.lists(value_of("", schema["items"]), min_size=schema.get("minItems", 0), max_size=most)
        case "string":
            return NAMES
        case "object":
            return st.dictionaries(MARKS, value_of("", schema["additionalProperties"]), max_size=2)
        case _:
            return st.one_of(lengths(), running()) if "array" in schema["type"] else lengths()


def running() -> st.SearchStrategy[list[int]]:
    return st.lists(st.integers(0, 2000), min_size=1, max_size=4, unique=True).map(sorted)


def value_at(ref: str) -> st.SearchStrategy[Any]:
    definition = SCHEMA["$defs"][ref.rpartition("/")[2]]
    return (
        st.deferred(lambda: table_of(definition)) if "properties" in definition else value_of("", definition)
    )


def table_of(schema: dict[str, Any]) -> st.SearchStrategy[dict[str, Any]]:
    values = {name: value_of(name, one) for name, one in schema["properties"].items()}
    needed = set(schema.get("required", ()))
    return st.fixed_dictionaries(
        {name: value for name, value in values.items() if name in needed},
        optional={name: value for name, value in values.items() if name not in needed},
    )


@given(table_of(AS_DRAWN).filter(lambda table: table["piece"]))
@settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))
def test_a_written_document_reads_back_equal(table: dict[str, Any]) -> None:
    table.get("practice", {}).pop("tape", None)  # any length is generated, and few are a tape's division
    document = read_document(tomlkit.dumps(table))
    again = read_document(write_document(document))
    assert again == document
    assert write_document(again) == write_document(document)


def unmarked(assembly: Assembly) -> Assembly:
    fittings = tuple(replace(one, part=replace(one.part, mark="")) for one in assembly.fittings)
    return replace(assembly, fittings=fittings)


@given(st.randoms(use_true_random=False), st.sampled_from([MEZZANINE, METRIC]))
@settings(max_examples=20, deadline=None)
def test_the_order_of_pieces_changes_no_geometry(random: Any, text: str) -> None:
    head, *pieces = text.split("[[piece]]")
    random.shuffle(pieces)
    shuffled = read_job("[[piece]]".join([head, *pieces]))
    usual = read_job(text)
    assert {one.mark: unmarked(one) for one in shuffled.assemblies} == {
        one.mark: unmarked(one) for one in usual.assemblies
    }


def test_building_is_deterministic() -> None:
    for text in (MEZZANINE, METRIC):
        assert read_job(text) == read_job(text)


@st.composite
def mutations(draw: st.DrawFn) -> str:
    """A demo job with one line taken out, doubled, moved or altered, up to three times."""
    lines = draw(st.sampled_from([MEZZANINE, METRIC])).split("\n")
    for _ in range(draw(st.integers(1, 3))):
        at = draw(st.integers(0, len(lines) - 1))
        match draw(st.sampled_from(["out", "twice", "move", "value", "sign"])):
            case "out":
                del lines[at]
            case "twice":
                lines.insert(at, lines[at])
            case "move":
                lines.insert(draw(st.integers(0, len(lines) - 1)), lines[at])
            case "value":
                key = lines[at].partition("=")[0]
                odd = st.sampled_from(
                    [
                        "-1",
                        "0",
                        "1e300",
                        "nan",
                        "true",
                        '""',
                        "[]",
                        "{}",
                        '"0"',
                        '"1000\'"',
                        '"x"',
                        "2026-11-25",
                    ]
                )
                lines[at] = f"{key}= {draw(st.one_of(odd, st.integers(-9999, 9999).map(str)))}"
            case _:
                cut = draw(st.integers(0, len(lines[at])))
                lines[at] = lines[at][:cut] + draw(st.text(max_size=3)) + lines[at][cut + 1 :]
    return "\n".join(lines)


@given(mutations())
@settings(max_examples=100, deadline=None)
def test_whatever_is_typed_gives_a_job_or_its_problems(text: str) -> None:
    count = text.count("\n") + 1
    problems: tuple[Problem, ...] = ()
    try:
        job: Job | None = read_job(text)
    except JobProblems as refused:
        job, problems = None, refused.problems
    assert (job is None) == bool(problems)
    assert all(one.message and (one.line is None or 1 <= one.line <= count) for one in problems)
    findings = check_job(job) if job else ()
    assert all(finding.message for finding in findings)
