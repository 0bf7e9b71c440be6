# ruff: noqa: E501 - a message stands whole on its line, as it is printed
"""Job documents that cannot be used: each is refused with every problem, its place and its line."""

from __future__ import annotations

import pytest

from gageline.job import JobProblems, read_job

HEAD = '[job]\nname = "t"\n'
MM = '[job]\nname = "t"\nunits = "mm"\n'
BEAM = '[[piece]]\nmark = "B1"\nstock = "W16x26"\nlength = "10\'-0"\n'
IPE = '[[piece]]\nmark = "B1"\nstock = "IPE 300"\nlength = 4200\n'
ANGLES = '[[piece.angles]]\nend = "left"\nstock = "L4x3-1/2x5/16"\n'
PLATE = '[[piece.plates]]\nthickness = "3/8"\nwidth = "4"\n'


def beam(*lines: str, head: str = HEAD, piece: str = BEAM) -> str:
    """A job of one beam, with further lines in its table."""
    return head + piece + "".join(f"{line}\n" for line in lines)


class Broken:
    """A document and everything that is to be said of it."""

    def __init__(self, name: str, text: str, *problems: str) -> None:
        self.name, self.text, self.problems = name, text, problems


CASES = (
    Broken(
        "empty text",
        "",
        "job: is missing: write a [job] table with name",
        "piece: is missing: write a [[piece]] table for each",
    ),
    Broken(
        "only a comment",
        "# nothing\n",
        "job: is missing: write a [job] table with name",
        "piece: is missing: write a [[piece]] table for each",
    ),
    Broken(
        "no pieces",
        HEAD,
        "piece: is missing: write a [[piece]] table for each",
    ),
    Broken(
        "pieces but no job",
        BEAM,
        "job: is missing: write a [job] table with name",
    ),
    Broken(
        "an empty list of pieces",
        HEAD.replace("[job]", "piece = []\n[job]"),
        "line 1: piece: is missing: write a [[piece]] table for each",
    ),
    Broken(
        "piece with single brackets",
        HEAD + BEAM.replace("[[piece]]", "[piece]"),
        "line 3: piece: a table stands where a list is due: write [[piece]] in double brackets",
    ),
    Broken(
        "angles with single brackets",
        beam(ANGLES.replace("[[", "[").replace("]]", "]") + "rows = 3"),
        'line 7: piece "B1" → angles: a table stands where a list is due: write [[piece.angles]] in double brackets',
    ),
    Broken(
        "job is a list",
        '[[job]]\nname = "t"\n' + BEAM,
        "line 1: job: a list stands where a table is due: write its keys under it",
    ),
    Broken(
        "job is a text",
        'job = "mezzanine"\n' + BEAM,
        'line 1: job: "mezzanine" stands where a table is due: write its keys under it',
    ),
    Broken(
        "piece is a number",
        "piece = 3\n" + HEAD,
        "line 1: piece: 3 stands where a list is due: write [[piece]] in double brackets",
    ),
    Broken(
        "copes is a text",
        beam('copes = "4 x 1 1/2"'),
        'line 7: piece "B1" → copes: "4 x 1 1/2" stands where a list is due: write [[piece.copes]] in double brackets',
    ),
    Broken(
        "a list of lists",
        beam('copes = [["left", "4"]]'),
        'line 7: piece "B1" → copes 1: a list stands where a table is due: write its keys under it',
    ),
    Broken(
        "table where a length is due",
        beam("left = { bevel = { rise = 3 } }"),
        'line 7: piece "B1" → left → bevel: a table is not a bevel: write it like "3 in 12", "1:20" or "16.5°"',
    ),
    Broken(
        "not TOML",
        "Beam B1, W16x26, 18'-7\n",
        "line 1: is not TOML (expected '=' after a key in a key/value pair): correct this line or the one before",
    ),
    Broken(
        "unclosed quote",
        HEAD + '[[piece]]\nmark = "B1\nstock = "W16x26"\n',
        "line 4: is not TOML (illegal character '\\n'): correct this line or the one before",
    ),
    Broken(
        "key twice",
        beam('length = "9\'"'),
        "line 7: is not TOML (cannot overwrite a value): correct this line or the one before",
    ),
    Broken(
        "header unclosed",
        HEAD + "[[piece]\n",
        "line 3: is not TOML (expected ']]' at the end of an array declaration): correct this line or the one before",
    ),
    Broken(
        "fraction without quotes",
        beam("[[piece.holes]]", "x = 1/2"),
        "line 8: is not TOML (expected newline or end of document after a statement): correct this line or the one before",
    ),
    Broken(
        "inch mark unescaped",
        HEAD + '[[piece]]\nmark = "B1"\nlength = "18\'-7 1/4""\n',
        "line 5: is not TOML (expected newline or end of document after a statement): correct this line or the one before",
    ),
    Broken(
        "date of no calendar",
        '[job]\nname = "t"\ndate = 2026-02-30\n' + BEAM,
        "line 3: is not TOML (invalid date or datetime): correct this line or the one before",
    ),
    Broken(
        "deep nesting",
        HEAD + "x = " + "[" * 100_000,
        "line 3: is longer than 20000 characters: break the line",
    ),
    Broken(
        "deep tables",
        HEAD + "x = " + "{a=" * 100_000,
        "line 3: is longer than 20000 characters: break the line",
    ),
    Broken(
        "deep dotted key",
        HEAD + ".".join("a" * 5_000) + " = 1\n" + BEAM,
        "line 3: job → a: there is no such key: use one of name, number, place, made_by, date, units, sheet, notes",
    ),
    Broken(
        "deep nesting over many lines",
        HEAD + "x = " + "[\n" * 100_000,
        "is nested too deep: a job document is at most 4 tables deep",
    ),
    Broken(
        "one endless line",
        "x" * 30_000,
        "line 1: is longer than 20000 characters: break the line",
    ),
    Broken(
        "number of ten thousand digits",
        HEAD + BEAM + "quantity = " + "9" * 10_000 + "\n",
        "holds a number of thousands of digits: correct it",
    ),
    Broken(
        "unknown key with suggestion",
        beam('lenght = "10\'"'),
        'line 7: piece "B1" → lenght: there is no such key: did you mean "length"?',
    ),
    Broken(
        "unknown key at the top",
        beam() + "[practise]\n",
        'line 7: practise: there is no such key: did you mean "practice"?',
    ),
    Broken(
        "unknown key in a hole group",
        beam("[[piece.holes]]", "colums = 2"),
        'line 8: piece "B1" → holes 1 → colums: there is no such key: did you mean "columns"?',
    ),
    Broken(
        "unknown key that looks like none",
        beam("[[piece.trims]]", 'end = "left"', 'flange = "top"', 'length = "3"', "zzzz = 1"),
        'line 11: piece "B1" → trims 1 → zzzz: there is no such key: use one of end, flange, side, length, keep',
    ),
    Broken(
        "python name of a key",
        beam("[[piece.holes]]", 'from_ = "left"'),
        'line 8: piece "B1" → holes 1 → from_: there is no such key: did you mean "from"?',
    ),
    Broken(
        "mark missing",
        HEAD + '[[piece]]\nstock = "W16x26"\nlength = "10\'"\n',
        "line 3: piece 1 → mark: is missing: give it",
    ),
    Broken(
        "stock and length missing",
        HEAD + '[[piece]]\nmark = "B1"\n',
        'line 3: piece "B1" → stock: is missing: give it, or as_hand_of another piece',
        'line 3: piece "B1" → length: is missing: give it, or as_hand_of another piece',
    ),
    Broken(
        "cope without end, length and depth",
        beam("[[piece.copes]]", 'flange = "top"'),
        'line 7: piece "B1" → copes 1 → end: is missing: give it',
        'line 7: piece "B1" → copes 1 → length: is missing: give it',
        'line 7: piece "B1" → copes 1 → depth: is missing: give it',
    ),
    Broken(
        "angles without rows",
        beam(ANGLES),
        'line 7: piece "B1" → angles 1: rows is missing for the bolted leg: give it',
    ),
    Broken(
        "name missing",
        "[job]\n" + BEAM,
        "line 1: job → name: is missing: give it",
    ),
    Broken(
        "empty texts",
        '[job]\nname = ""\nplace = " "\n[[piece]]\nmark = ""\nstock = ""\nlength = ""\n',
        "line 2: job → name: is empty: write it, or leave the key out",
        "line 3: job → place: is empty: write it, or leave the key out",
        "line 5: piece 1 → mark: is empty: write it, or leave the key out",
        "line 6: piece 1 → stock: is empty: write it, or leave the key out",
        'line 7: piece 1 → length: "" is not a length: write it like 18\'-7 1/4", 18-7 1/4, 7/8, 223.25in or 5670mm',
    ),
    Broken(
        "control character",
        '[job]\nname = "a\\u001bb"\n' + BEAM,
        'line 2: job → name: "a\\u001bb" holds the control sign U+001B: type it anew',
    ),
    Broken(
        "line break in a note",
        '[job]\nname = "t"\nnotes = [\n  "fine",\n  "two\\nlines",\n]\n' + BEAM,
        'line 5: job → notes 2: "two\\u000alines" holds the control sign U+000A: type it anew',
    ),
    Broken(
        "bidi sign in a name",
        beam("[[piece.holes]]", 'name = "web\\u202Elortnoc"'),
        'line 8: piece "B1" → holes 1 → name: "web\\u202elortnoc" holds the control sign U+202E: type it anew',
    ),
    Broken(
        "very long name",
        '[job]\nname = "' + "x" * 81 + '"\n' + BEAM,
        'line 2: job → name: "xxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxxx..." is longer than 80 characters: shorten it',
    ),
    Broken(
        "mark of 25 signs",
        HEAD + BEAM.replace('"B1"', '"B' + "1" * 24 + '"'),
        'line 4: piece 1 → mark: "B111111111111111111111111" is longer than 24 characters: shorten it',
    ),
    Broken(
        "mark with a slash",
        HEAD + BEAM.replace('"B1"', '"../B1"'),
        'line 4: piece "../B1" → mark: "../B1" is not a mark: use letters, digits and . _ + -, a letter or digit first',
    ),
    Broken(
        "number for a text",
        '[job]\nname = "t"\nnumber = 2604\n' + BEAM,
        "line 3: job → number: 2604 is no text: write it in quotes",
    ),
    Broken(
        "41 notes",
        '[job]\nname = "t"\nnotes = [' + '"n", ' * 41 + "]\n" + BEAM,
        "line 3: job → notes: has more than 40 items: give fewer, or split the job",
    ),
    Broken(
        "unknown units",
        '[job]\nname = "t"\nunits = "inches"\n' + BEAM,
        'line 3: job → units: "inches" is not one of "ft-in", "mm": choose one',
    ),
    Broken(
        "wrong units of a length",
        HEAD + BEAM.replace("10'-0", "10 yards"),
        'line 6: piece "B1" → length: "10 yards" is not a length: write it like 18\'-7 1/4", 18-7 1/4, 7/8, 223.25in or 5670mm',
    ),
    Broken(
        "fraction in a metric job",
        beam("[[piece.holes]]", 'x = "1/2"', head=MM, piece=IPE),
        'line 9: piece "B1" → holes 1 → x: "1/2" is not a length: write it like 5670, 5670mm, 5.67m or 18\'-7 1/4"',
    ),
    Broken(
        "inches typed as mm",
        HEAD + BEAM.replace('"10\'-0"', "5670"),
        'line 6: piece "B1" → length: 5670 is longer than 200\'-0": check the units',
    ),
    Broken(
        "metres typed as mm",
        MM + IPE.replace("4200", "4.2"),
        'line 7: piece "B1" → length: 4.2 is less than 12 mm: check the units',
    ),
    Broken(
        "a beam of a thousandth",
        HEAD + BEAM.replace("10'-0", "0.001"),
        'line 6: piece "B1" → length: "0.001" is less than 1/2": check the units',
    ),
    Broken(
        "a beam of 200 feet and more",
        HEAD + BEAM.replace("10'-0", "200'-0 1/16"),
        'line 6: piece "B1" → length: "200\'-0 1/16" is longer than 200\'-0": check the units',
    ),
    Broken(
        "1e300",
        HEAD + BEAM.replace('"10\'-0"', "1e300"),
        'line 6: piece "B1" → length: 1e+300 is longer than 200\'-0": check the units',
    ),
    Broken(
        "negative zero",
        HEAD + BEAM.replace('"10\'-0"', "-0.0"),
        'line 6: piece "B1" → length: -0.0 is not above zero: give a length above zero',
    ),
    Broken(
        "negative length",
        HEAD + BEAM.replace("10'-0", "-10'"),
        'line 6: piece "B1" → length: "-10\'" is not above zero: give a length above zero',
    ),
    Broken(
        "nan, inf and true",
        beam("[[piece.holes]]", "x = nan", "pitch = inf", "gage = true"),
        'line 8: piece "B1" → holes 1 → x: nan is not a length: write it like "18\'-7 1/4\\"" or "5670mm"',
        'line 9: piece "B1" → holes 1 → pitch: inf is not a length: write it like "18\'-7 1/4\\"" or "5670mm"',
        'line 10: piece "B1" → holes 1 → gage: true is not a length: write it like "18\'-7 1/4\\"" or "5670mm"',
    ),
    Broken(
        "negative cope in mm",
        beam("[[piece.copes]]", 'end = "left"', "length = -80", "depth = 0", head=MM, piece=IPE),
        'line 10: piece "B1" → copes 1 → length: -80 is not above zero: give a length above zero',
        'line 11: piece "B1" → copes 1 → depth: 0 is not above zero: give a length above zero',
    ),
    Broken(
        "date as a length",
        beam("[[piece.holes]]", "x = 2026-11-25"),
        'line 8: piece "B1" → holes 1 → x: 2026-11-25 is not a length: write it like "18\'-7 1/4\\"" or "5670mm"',
    ),
    Broken(
        "rise that falls",
        beam("[[piece.holes]]", 'x = ["6", "3", "9"]'),
        'line 8: piece "B1" → holes 1 → x: running dimension 3" is not beyond 6": give all from one start, rising',
    ),
    Broken(
        "empty running dimensions",
        beam("[[piece.holes]]", "x = []"),
        'line 8: piece "B1" → holes 1 → x: is a list of 0 dimensions: give 1 to 500',
    ),
    Broken(
        "bevel of 85 degrees",
        beam('left = { bevel = "85°" }'),
        'line 7: piece "B1" → left → bevel: angle 85° from square is over 80°: measure it from the square line',
    ),
    Broken(
        "bevel as a number",
        beam('right = { bevel = 3, long = "both" }'),
        'line 7: piece "B1" → right → bevel: 3 is not a bevel: write it like "3 in 12", "1:20" or "16.5°"',
        'line 7: piece "B1" → right → long: "both" is not one of "top", "bottom": choose one',
    ),
    Broken(
        "quantity 0",
        beam("quantity = 0"),
        'line 7: piece "B1" → quantity: 0 is less than 1: give 1 or more',
    ),
    Broken(
        "quantity 10000",
        beam("quantity = 10000"),
        'line 7: piece "B1" → quantity: 10000 is more than 9999: give 9999 or less',
    ),
    Broken(
        "quantity 2.5",
        beam("quantity = 2.5"),
        'line 7: piece "B1" → quantity: 2.5 is not a whole number: write it like 4',
    ),
    Broken(
        "quantity in quotes",
        beam('quantity = "4"'),
        'line 7: piece "B1" → quantity: "4" is not a whole number: write it like 4',
    ),
    Broken(
        "quantity true",
        beam("quantity = true"),
        'line 7: piece "B1" → quantity: true is not a whole number: write it like 4',
    ),
    Broken(
        "no such end",
        beam("[[piece.copes]]", 'end = "north"', 'length = "4"', 'depth = "1"'),
        'line 8: piece "B1" → copes 1 → end: "north" is not one of "left", "right", "both": choose one',
    ),
    Broken(
        "no such hole",
        beam("[[piece.holes]]", 'hole = "std"'),
        'line 8: piece "B1" → holes 1 → hole: "std" is not one of "STD", "OVS", "SSL", "LSL": choose one',
    ),
    Broken(
        "no such bolt",
        beam("[[piece.holes]]", 'bolt = "M21"'),
        'line 8: piece "B1" → holes 1 → bolt: bolt "M21" is not in the table: choose from 1/2, 5/8, 3/4, 7/8, 1, 1-1/8, 1-1/4, 1-3/8, 1-1/2, M16, M20, M22, M24, M27, M30, M36',
    ),
    Broken(
        "no such grade",
        beam('grade = "A99"'),
        'line 7: piece "B1" → grade: grade "A99" is not in the table: did you mean A992?',
    ),
    Broken(
        "no such section",
        HEAD + BEAM.replace("W16x26", "W16x27"),
        'line 5: piece "B1" → stock: section "W16x27" is not in the tables: did you mean W16X26 or W16X31 or W16X36?',
    ),
    Broken(
        "mates in words",
        beam("[[piece.holes]]", 'mates = "no"'),
        'line 8: piece "B1" → holes 1 → mates: "no" is neither true nor false: write one of them, without quotes',
    ),
    Broken(
        "date as a number",
        '[job]\nname = "t"\ndate = 20261125\n' + BEAM,
        "line 3: job → date: 20261125 is no date: write it like 2026-11-25",
    ),
    Broken(
        "turn of 100 degrees",
        beam("[[piece.holes]]", 'diameter = "1"', 'slot = "2"', "turn = 100"),
        'line 10: piece "B1" → holes 1 → turn: 100 is no turn of a slot: write along, across or -90 to 90 degrees',
    ),
    Broken(
        "holes by the million",
        beam("[[piece.holes]]", "columns = 500", 'spacing = "3"', "rows = 400"),
        'line 7: piece "B1" → holes 1: 500 columns of 400 rows are 200000 holes: give at most 1000 in a group',
    ),
    Broken(
        "diameter and bolt",
        beam("[[piece.holes]]", 'diameter = "1"', 'bolt = "3/4"'),
        'line 7: piece "B1" → holes 1: diameter and a bolt\'s hole are both given: leave out one',
    ),
    Broken(
        "slot without diameter",
        beam("[[piece.holes]]", 'slot = "2"'),
        'line 7: piece "B1" → holes 1: slot is given without diameter: give diameter, or hole = SSL or LSL for a bolt',
    ),
    Broken(
        "slot shorter than wide",
        beam("[[piece.holes]]", 'diameter = "1"', 'slot = "3/4"'),
        'line 7: piece "B1" → holes 1: slot is shorter than diameter: give its overall length',
    ),
    Broken(
        "columns and running dimensions",
        beam("[[piece.holes]]", 'x = ["3", "6"]', "columns = 3"),
        'line 7: piece "B1" → holes 1: 3 columns but 2 running dimensions: leave out columns',
    ),
    Broken(
        "spacing and running dimensions",
        beam("[[piece.holes]]", 'x = ["3", "6"]', 'spacing = "3"'),
        'line 7: piece "B1" → holes 1: spacing and running dimensions are both given: leave out one',
    ),
    Broken(
        "columns without spacing",
        beam("[[piece.holes]]", "columns = 3"),
        'line 7: piece "B1" → holes 1: spacing is missing for 3 columns: give it',
    ),
    Broken(
        "spacing without columns",
        beam("[[piece.holes]]", 'spacing = "3"'),
        'line 7: piece "B1" → holes 1: spacing is given but not columns: give columns too',
    ),
    Broken(
        "pitch without rows",
        beam("[[piece.holes]]", 'pitch = "3"'),
        'line 7: piece "B1" → holes 1: pitch is given but not rows: give rows too',
    ),
    Broken(
        "down and up",
        beam("[[piece.holes]]", 'down = "3"', 'up = "3"'),
        'line 7: piece "B1" → holes 1: rows are placed by one of down, up, offset, heel and back, down and up given: give one',
    ),
    Broken(
        "gage and rows",
        beam("[[piece.holes]]", 'gage = "4"', "rows = 3"),
        'line 7: piece "B1" → holes 1: gage means two rows about the middle: leave out rows, or leave out gage',
    ),
    Broken(
        "heel of a beam",
        beam("[[piece.holes]]", 'heel = "2"'),
        'line 7: piece "B1" → holes 1: heel is for an angle\'s leg: give down, up or offset',
    ),
    Broken(
        "no usual gage",
        beam("[[piece.holes]]", 'face = "top"', piece=BEAM.replace("W16x26", "HSS6x6x3/8")),
        'line 7: piece "B1" → holes 1: HSS6X6X3/8 has no usual gage: give gage, or rows with offset',
    ),
    Broken(
        "no such face",
        beam("[[piece.holes]]", 'face = "leg_a"'),
        'line 7: piece "B1" → holes 1: W16X26 has no face leg_a: use one of top, near, bottom, far',
    ),
    Broken(
        "through a beam",
        beam("[[piece.holes]]", "through = true"),
        'line 7: piece "B1" → holes 1: through is for hollow sections: leave it out, a hole goes through its web or flange',
    ),
    Broken(
        "name taken",
        beam(
            "[[piece.holes]]",
            'name = "a"',
            "[[piece.holes]]",
            'name = "a"',
            "[[piece.holes]]",
            'name = "left"',
        ),
        'line 10: piece "B1" → holes 2 → name: "a" is taken: give each group a name of its own',
        'line 12: piece "B1" → holes 3 → name: "left" means the left end of the part wherever holes are '
        'measured: give the group a name of its own, like "left holes"',
    ),
    Broken(
        "from no group",
        beam("[[piece.holes]]", 'name = "a"', 'from = "b"', "[[piece.holes]]", 'name = "b"'),
        'line 7: piece "B1" → holes 1: "b" is no end and no group before this one: use one of left, right, centre',
    ),
    Broken(
        "radius more than the cope",
        beam("[[piece.copes]]", 'end = "left"', "length = 80", "depth = 10", head=MM, piece=IPE),
        'line 8: piece "B1" → copes 1: radius 12 mm is more than depth 10 mm: give a smaller radius',
    ),
    Broken(
        "opening round and square",
        beam("[[piece.openings]]", 'diameter = "4"', 'depth = "4"'),
        'line 7: piece "B1" → openings 1: an opening is round by diameter alone, or has length and depth: give one of the two',
    ),
    Broken(
        "trim of a tube, clip of a beam",
        beam(
            'trims = [{ end = "left", flange = "top", length = "3" }]',
            'clips = [{ end = "left", edge = "top", along = "1", across = "1" }]',
            piece=BEAM.replace("W16x26", "HSS6x6x3/8"),
        ),
        'line 7: piece "B1" → trims 1: HSS6X6X3/8 has no flange to trim: use copes',
        'line 8: piece "B1" → clips 1: HSS6X6X3/8 is no plate: clips are for plates; use copes',
    ),
    Broken(
        "angles of plate",
        beam(ANGLES.replace("L4x3-1/2x5/16", "PL1/2x8") + "rows = 3"),
        'line 7: piece "B1" → angles 1: stock PL1/2X8 is no angle: give one like L4x3-1/2x5/16',
    ),
    Broken(
        "angles on a skew end",
        beam('left = { mitre = "3 in 12" }', ANGLES + "rows = 3"),
        'line 8: piece "B1" → angles 1: the left end is not cut square: connection angles need a square end',
    ),
    Broken(
        "weld of bolted angles",
        beam(ANGLES + 'rows = 3\nweld = "1/4"'),
        'line 7: piece "B1" → angles 1: weld is given but the angles are bolted to the web: give to_web = "welded"',
    ),
    Broken(
        "angle too short for its rows",
        beam(ANGLES + 'rows = 3\nlength = "7"'),
        'line 7: piece "B1" → angles 1: length 7" ends above the last of 3 rows, 7 1/4" down: give a longer angle or leave length out',
    ),
    Broken(
        "angle without usual gage",
        beam("[[piece.angles]]", 'end = "left"', 'stock = "L 100x100x10"', "rows = 2", head=MM, piece=IPE),
        'line 8: piece "B1" → angles 1: web_gage is missing, for a leg of 100 mm has no usual gage: give it',
    ),
    Broken(
        "gage beyond the leg",
        beam(ANGLES + 'rows = 3\nout_gage = "5"'),
        'line 7: piece "B1" → angles 1: out_gage 5" is beyond the leg of 4": give the distance from the heel',
    ),
    Broken(
        "plate thicker than wide",
        beam(PLATE.replace("3/8", "5") + 'x = "2\'"\nrows = 3'),
        'line 7: piece "B1" → plates 1: plate thickness 5 is more than the width 4: write the thickness first, then the width',
    ),
    Broken(
        "plate with offset across",
        beam(PLATE + 'x = "2\'"\nrows = 3\noffset = "1"'),
        'line 7: piece "B1" → plates 1: offset does not place a plate that runs across the near face: give drop',
    ),
    Broken(
        "end plate on a bevel",
        beam(
            'right = { bevel = "3 in 12" }',
            "[[piece.end_plates]]",
            'end = "right"',
            'thickness = "1/2"',
            'width = "6"',
            'length = "12"',
        ),
        'line 8: piece "B1" → end_plates 1: the right end is not cut square: a plate across it needs a square end',
    ),
    Broken(
        "gage but no rows",
        beam(
            "[[piece.end_plates]]",
            'end = "right"',
            'thickness = "1/2"',
            'width = "6"',
            'length = "12"',
            'gage = "3"',
        ),
        'line 7: piece "B1" → end_plates 1: gage is given but no rows of holes: give rows, or leave it out',
    ),
    Broken(
        "two end plates on one end",
        beam(
            *(
                ["[[piece.end_plates]]", 'end = "right"', 'thickness = "1/2"', 'width = "6"', 'length = "12"']
                * 2
            )
        ),
        'line 12: piece "B1" → end_plates 2: puts a second right end plate in one place: keep one of them',
    ),
    Broken(
        "stiffener in a tube",
        beam(
            "[[piece.stiffeners]]",
            'x = "3\'"',
            'thickness = "3/8"',
            piece=BEAM.replace("W16x26", "HSS6x6x3/8"),
        ),
        'line 7: piece "B1" → stiffeners 1: HSS6X6X3/8 has no web between flanges: stiffeners need one',
    ),
    Broken(
        "stiffener too long",
        beam("[[piece.stiffeners]]", 'x = "3\'"', 'thickness = "3/8"', 'length = "16"'),
        'line 7: piece "B1" → stiffeners 1: length 1\'-4" is more than the clear depth 1\'-3 1/64" between the flanges: leave it out',
    ),
    Broken(
        "marks twice",
        beam() + BEAM + BEAM.replace("B1", "b1"),
        'line 8: piece "B1" → mark: "B1" is used twice: give each piece a mark of its own',
        'line 12: piece "b1" → mark: "b1" and "B1" are alike when painted in capitals: give each piece a mark of its own',
    ),
    Broken(
        "hand of nobody",
        beam() + '[[piece]]\nmark = "B2"\nas_hand_of = "B9"\n',
        'line 9: piece "B2" → as_hand_of: "B9" names no piece of the job: use one of B1',
    ),
    Broken(
        "hand of itself",
        beam() + '[[piece]]\nmark = "B2"\nas_hand_of = "B2"\n',
        'line 9: piece "B2" → as_hand_of: "B2" is this piece itself: name the piece it is the mirror image of',
    ),
    Broken(
        "cyclic hands",
        HEAD + '[[piece]]\nmark = "B2"\nas_hand_of = "B3"\n[[piece]]\nmark = "B3"\nas_hand_of = "B2"\n',
        'line 5: piece "B2" → as_hand_of: "B3" is itself an opposite hand: name a piece as drawn',
        'line 8: piece "B3" → as_hand_of: "B2" is itself an opposite hand: name a piece as drawn',
    ),
    Broken(
        "hand of a hand",
        beam() + '[[piece]]\nmark = "B2"\nas_hand_of = "B1"\n[[piece]]\nmark = "B3"\nas_hand_of = "B2"\n',
        'line 12: piece "B3" → as_hand_of: "B2" is itself an opposite hand: name a piece as drawn',
    ),
    Broken(
        "hand with a length",
        beam() + '[[piece]]\nmark = "B2"\nas_hand_of = "B1"\nlength = "9\'"\n',
        'line 10: piece "B2" → length: is taken from the other hand: leave it out beside as_hand_of',
    ),
    Broken(
        "fitting with a piece's mark",
        beam(ANGLES + 'rows = 3\nmark = "B1"'),
        'line 3: piece "B1": mark "B1" of a fitting is the mark of a piece: give it one of its own',
    ),
    Broken(
        "one mark for two fittings",
        beam(ANGLES + 'rows = 3\nmark = "a7"', ANGLES.replace("left", "right") + 'rows = 2\nmark = "a7"'),
        'line 3: piece "B1": mark "a7" is given to two fittings that differ: give each a mark of its own',
    ),
    Broken(
        "form and sense at once",
        '[job]\nnaem = "t"\nunits = "ft-in"\n[practice]\nbolt = "2"\n'
        + BEAM.replace("W16x26", "W16x27")
        + 'copes = [\n  { end = "left", flange = "top", length = "4", depth = "1/4" },\n  { end = "right", flange = "top", length = "4", deph = "1" },\n]\n'
        + BEAM.replace("B1", "B2")
        + '[[piece.holes]]\nname = "a"\nx = "3 bananas"\n[[piece.holes]]\nname = "b"\nfrom = "a"\nx = "3"\n[[piece.holes]]\nname = "c"\nface = "leg_b"\n'
        + BEAM.replace("B1", "B3")
        + '[[piece.copes]]\nend = "left"\nlength = "4"\ndepth = "1/4"\n[[piece]]\nmark = "B4"\nas_hand_of = "B3"\n',
        "line 1: job → name: is missing: give it",
        'line 2: job → naem: there is no such key: did you mean "name"?',
        'line 5: practice → bolt: bolt "2" is not in the table: choose from 1/2, 5/8, 3/4, 7/8, 1, 1-1/8, 1-1/4, 1-3/8, 1-1/2, M16, M20, M22, M24, M27, M30, M36',
        'line 8: piece "B1" → stock: section "W16x27" is not in the tables: did you mean W16X26 or W16X31 or W16X36?',
        'line 12: piece "B1" → copes 2 → depth: is missing: give it',
        'line 12: piece "B1" → copes 2 → deph: there is no such key: did you mean "depth"?',
        'line 20: piece "B2" → holes 1 → x: "3 bananas" is not a length: write it like 18\'-7 1/4", 18-7 1/4, 7/8, 223.25in or 5670mm',
        'line 25: piece "B2" → holes 3: W16X26 has no face leg_b: use one of top, near, bottom, far',
        'line 32: piece "B3" → copes 1: radius 1/2" is more than depth 1/4": give a smaller radius',
    ),
    Broken(
        "a list of many lines",
        beam(
            "[[piece.holes]]",
            "x = [ # running",
            "  3,",
            "  6, # fine",
            "  -9,",
            "]",
            'name = """',
            "left = 3",
            '"""',
            'down = "x"',
        ),
        'line 8: piece "B1" → holes 1 → x: running dimension -9" is not beyond 6": give all from one start, rising',
        'line 13: piece "B1" → holes 1 → name: "left = 3\\u000a" holds the control sign U+000A: type it anew',
        'line 16: piece "B1" → holes 1 → down: "x" is not a length: write it like 18\'-7 1/4", 18-7 1/4, 7/8, 223.25in or 5670mm',
    ),
)


@pytest.mark.parametrize("broken", CASES, ids=lambda broken: broken.name)
def test_every_problem_is_said_with_its_place(broken: Broken) -> None:
    with pytest.raises(JobProblems) as refused:
        read_job(broken.text)
    assert tuple(problem.text() for problem in refused.value.problems) == broken.problems


def test_the_table_is_long_and_without_doubles() -> None:
    assert len({broken.name for broken in CASES}) == len(CASES) >= 100
