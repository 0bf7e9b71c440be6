"""Frames as nobody should write them: each is said in words, with its place, and none ends in a traceback."""

from __future__ import annotations

import pytest

from gageline.detail import read_full
from gageline.job import JobProblems

HEAD = """[job]
name = "x"
[frame.grid]
x = { names = ["1", "2"], spacing = ["20'-0"] }
y = { names = ["A", "B"], spacing = ["15'-0"] }
[[frame.level]]
name = "F"
elevation = 144
"""
FREE = 'ends = { connection = "free" }'


def member(
    name: str = "B1", stock: str = "W16x26", to: str = '"2/A"', top: str = '"F"', more: str = FREE
) -> str:
    table = f'[[frame.member]]\nname = "{name}"\nstock = "{stock}"\nfrom = "1/A"\nto = {to}\n'
    return f"{table}top = {top}\n{more}\n"


def column(
    name: str = "P", at: str = '"1/A"', stock: str = "W10x49", top: str = 'top = "F"', more: str = ""
) -> str:
    table = f'[[frame.column]]\nname = "{name}"\nat = {at}\nstock = "{stock}"\nbase = 0\n'
    return f"{table}{top}\n{more}\n"


OFF = 'end = { connection = "free" }'
ON_G1 = ('from = "1/A"', 'from = { on = "G1", at = 100 }')
BETWEEN = column() + column("P2", at='"2/A"')
REFUSED = {
    "a frame that is a number": ('frame = 3\n[job]\nname = "x"\n', "frame"),
    "no grid": ('[job]\nname = "x"\n' + member(), '"1/A" is no point and no crossing of the grid'),
    "names that are numbers": (
        HEAD.replace('"1", "2"', "1, 2") + member(),
        "1 is no text: write it in quotes",
    ),
    "a spacing below zero": (HEAD.replace('"20\'-0"', "-20"), "-20 is not above zero"),
    "a spacing below zero across": (HEAD.replace("15'-0", "-15'-0") + member(), "is not above zero"),
    "no lines": (
        HEAD.replace('["1", "2"]', "[]").replace('["20\'-0"]', "[]") + member(),
        "is empty: give at least one",
    ),
    "a beam inside its columns": (
        HEAD.replace("20'-0", "10") + BETWEEN + member(more=""),
        'nothing is left of it: it is 10" between work points',
    ),
    "a base over its top": (
        HEAD + column().replace("base = 0", "base = 400"),
        "is not above its base, 33'-4",
    ),
    "a spacing too many": (HEAD.replace('["20\'-0"]', '["20", "1"]'), "2 names want 1 spacings, not 2"),
    "ends in one place": (HEAD + member(to='"1/A"'), 'from and to are 0" apart'),
    "an unknown point": (HEAD + member(to='"9/Z"'), '"9/Z" is no point and no crossing of the grid'),
    "an unknown member": (HEAD + member(to='{ on = "G9", at = 3 }'), '"G9" names no member or column'),
    "on itself": (HEAD + member(to='{ on = "B1", at = 3 }'), "in a circle, B1 → B1: place one by a point"),
    "both top and below": (HEAD + member(more='below = "B1"'), "its top of steel is needed once"),
    "an unknown level": (HEAD + member(top='"Roof"'), '"Roof" is neither a level nor an elevation'),
    "an endless level": (HEAD + member(top="inf"), '"inf" is neither a level nor an elevation'),
    "rise and fall": (
        HEAD + member(more='rise = "1 in 12"\nfall = "1 in 12"'),
        "rise and fall are both given",
    ),
    "a plate as a beam": (HEAD + member(stock="PL1/2x8"), "PL1/2X8 is no section for a beam of a frame"),
    "a pipe as a column": (HEAD + column(stock="HSS6.000x0.250"), "no section for a column of a frame"),
    "a column upside down": (HEAD + column(top="top = -40"), "is not above its base"),
    "a column without a top": (HEAD + column(top=""), "its top is needed once"),
    "splices in one place": (
        HEAD + column(top="top = 400", more='splices = [{ at = "F" }, { at = "F" }]'),
        'two splices are 0" apart',
    ),
    "half a pattern in a cap plate": (
        HEAD + column(more="cap_plate = { pitch = 6 }"),
        "give both or neither",
    ),
    "columns in one place": (HEAD + column() + column("P2"), '"P2" and "P" stand in one place'),
    "a name twice": (HEAD + member() + member(), '"B1" is used twice'),
    "names that differ in capitals": (
        HEAD + member() + member("b1"),
        '"b1" and "B1" are alike when painted in capitals: give each a name of its own',
    ),
    "a column beside the beam that it is under": (
        HEAD + member() + column(at='{ point = "1/A", x = 60, y = 48 }', top='under = "B1"'),
        '"B1" does not pass over it: its middle is 4\'-0" beside it: move the column under it, or give top',
    ),
    "a column past the beam that it is under": (
        HEAD + member() + column(at='{ point = "1/A", x = -60 }', top='under = "B1"'),
        '"B1" does not reach over it: it ends 5\'-0" before it: move the column under it, lengthen the beam',
    ),
    "an overhang below zero": (HEAD + member(more='start = { overhang = "-3" }'), '-3" is below zero'),
    "a bolt that is none": (HEAD + BETWEEN + member(more='ends = { bolt = "13/16" }'), "is not in the table"),
    "a bolt without a value": (
        HEAD + BETWEEN + member(more='ends = { bolt = "1/2" }'),
        "has no value in the table",
    ),
    "a beam as an angle": (HEAD + BETWEEN + member(more='ends = { angle = "W16x26" }'), "W16X26 is no angle"),
    "a place by two": (
        HEAD + member(to='{ point = "2/A", on = "B1" }'),
        "by one of point, on and between: give one",
    ),
    "a place by nothing": (HEAD + member(to="{ }"), "by one of point, on and between: give one"),
    "one corner": (
        HEAD + '[[frame.opening]]\nname = "o"\nlevel = "F"\ncorners = ["1/A"]\n',
        "give two opposite corners, or all of them",
    ),
    "a load of a wrong unit": (
        HEAD + member(more='loads = [{ uniform = "1 kip" }]'),
        "is no load along a member",
    ),
    "a load that is none": (
        HEAD.replace("elevation = 144", 'elevation = 144\nloads = [{ area = "heavy" }]'),
        "is no load on an area",
    ),
    "bearing on nothing": (
        HEAD + member(more='ends = { connection = "bearing" }'),
        'nothing supports it; connection = "bearing" wants a column to end under it, at 10\'-8 19/64": put',
    ),
    "bearing on the side of a girder": (
        HEAD
        + member("G1", "W21x62")
        + member(to='"1/B"', more=f'start = {{ connection = "bearing" }}\n{OFF}').replace(*ON_G1),
        ', but only the side of "G1" is there: put one there with under = "B1", or leave connection out',
    ),
    "ends near one another": (
        HEAD + member(to='{ point = "1/A", x = 5 }'),
        'from and to are 5" apart: give places 6" apart or more',
    ),
    "a decimal comma": (
        HEAD.replace("20'-0", "240,5"),
        '"240,5" is not a length: write a decimal point, 240.5',
    ),
    "a point by itself": (
        HEAD + '[[frame.point]]\nname = "a"\nat = "a"\n' + member(to='"a"'),
        'point "a" is placed by itself',
    ),
}
FOUND = {
    "a slope over a column": (
        member(more='rise = "1 in 12"\nends = { connection = "bearing" }')
        + column(top='under = "B1"')
        + column("P2", '"2/A"', top='under = "B1"'),
        "the holes in its cap plate and its stiffeners are not detailed",
    ),
    "a girder too shallow for any connection": (
        member("G1", "W6x9") + member(stock="W24x55", to='"1/B"', more=OFF).replace(*ON_G1),
        "were tried here and break a rule too",
    ),
    "a cantilever at both ends": (
        member(more="ends = { overhang = 24 }"),
        "nothing of the frame carries it: both of its ends are free",
    ),
    "a skew over 45 degrees": (
        member("G1", "W21x62") + member(to='{ point = "1/A", x = 200, y = 60 }', more=OFF).replace(*ON_G1),
        "a skew of 59.0 degrees is over 45",
    ),
    "levels without members": ("", "it has no columns and no members: there is nothing to detail"),
    "rows that do not fit": (BETWEEN + member(more="ends = { rows = 20 }"), "20 rows are given, 4 rows fit"),
    "a drop of the whole depth": (
        BETWEEN + member(more='ends = { drop = "8\'-0" }'),
        "puts the first row where no web is clear",
    ),
    "an angle too large": (BETWEEN + member(more='ends = { angle = "L8x8x1" }'), "no connection is detailed"),
    "an angle too small": (BETWEEN + member(more='ends = { angle = "L2x2x1/8" }'), "wants to be tightened"),
    "a plate too small": (column(more="base_plate = { width = 2, length = 2 }"), "does not cover W10X49"),
    "a mark taken": (
        member(more=f'mark = "X"\n{FREE}') + member("B2", "W12x26", '"1/B"', more=f'mark = "X"\n{FREE}'),
        'mark "X" is the mark of a piece that differs',
    ),
    "a column in a beam": (
        column(at='{ point = "1/A", x = 100 }', top="top = 300") + member(),
        "in one place",
    ),
    "an overhang through a column": (
        BETWEEN + member(more="start = { overhang = 24 }"),
        'B1: its overhang goes on past P and through it: let P end under it with under = "B1", or take the ',
    ),
}


@pytest.mark.parametrize("case", REFUSED)
def test_it_is_refused_in_words(case: str) -> None:
    text, message = REFUSED[case]
    with pytest.raises(JobProblems) as refused:
        read_full(text)
    assert message in str(refused.value)
    assert all(problem.path for problem in refused.value.problems)


@pytest.mark.parametrize("case", FOUND)
def test_it_is_a_finding(case: str) -> None:
    text, message = FOUND[case]
    assert any(message in finding.text() for finding in read_full(HEAD + text).findings)


def problems(text: str) -> list[str]:
    with pytest.raises(JobProblems) as raised:
        read_full(text)
    return [problem.text() for problem in raised.value.problems]


def test_what_follows_from_a_column_that_is_wrong_is_not_said_too() -> None:
    """The beam stands on nothing only because the columns could not be placed."""
    base = ("base = 0", "base = 400")
    wrong = column().replace(*base) + column("P2", at='"2/A"').replace(*base)
    said = problems(HEAD + wrong + member(more=""))
    assert len(said) == 2
    assert all("is not above its base" in one for one in said)


def test_what_has_nothing_to_do_with_a_wrong_column_is_said_beside_it() -> None:
    wrong = column().replace("base = 0", "base = 400")
    said = problems(HEAD + wrong + member(more=""))
    assert len(said) == 2
    assert "is not above its base" in said[0]
    assert '"B1" → end: nothing supports it' in said[1]


def test_a_bolt_of_the_practice_that_has_no_value_is_said_once() -> None:
    text = (
        HEAD.replace("[frame.grid]", '[practice]\nbolt = "1-1/2"\n[frame.grid]') + BETWEEN + member(more="")
    )
    (said,) = problems(text)
    assert said.startswith(
        'line 4: practice → bolt: bolt "1-1/2" has no value in the table: use one of 5/8, '
    )


def test_a_base_plate_that_covers_nothing_has_no_holes_that_are_wrong_too() -> None:
    full = read_full(HEAD + column(more="base_plate = { width = 3, length = 3 }"))
    (plate,) = full.job.assemblies[0].fittings
    assert not plate.part.groups
    assert full.detailed is not None
    assert not full.detailed.anchor_rods
    assert [one.code for one in full.findings] == ["plate-too-small"]
