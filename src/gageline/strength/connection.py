"""The end connection of a beam in the words of the trade, with plain numbers where the clauses need them.

Lengths are in inches, stresses in ksi, forces in kips. Heights are measured down from the beam's upper edge
as it is cut: from the top of steel, or from the edge of a top cope. Nothing here knows where a connection
came from; a drawing, a frame and a suggestion all write the same record.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from itertools import accumulate

from gageline.errors import ValueProblem
from gageline.strength.aisc360.j3_bolts import Hole
from gageline.strength.guard import not_negative, positive, steel_of, whole

__all__ = [
    "UNDER_RUN",
    "Beam",
    "Bolted",
    "Connection",
    "Fillet",
    "Fitting",
    "Holes",
    "Kind",
    "Leeway",
    "Material",
    "Notch",
    "Support",
    "SupportFace",
    "Tongue",
]

UNDER_RUN = 0.25
"""What a beam may be shorter than ordered, in: allowed for beside the setback in the Design Examples."""


class Kind(StrEnum):
    """The connections whose checks are known."""

    DOUBLE_ANGLES = "double angles"
    SINGLE_ANGLE = "single angle"
    SINGLE_PLATE = "single plate"
    EXTENDED_PLATE = "extended plate"
    END_PLATE = "end plate"
    SEAT = "seat"


class SupportFace(StrEnum):
    """What a connection stands on."""

    GIRDER_WEB = "girder web"
    COLUMN_FLANGE = "column flange"
    COLUMN_WEB = "column web"
    WALL = "wall of a hollow section"


@dataclass(frozen=True, slots=True)
class Material:
    """A steel.

    Args:
        grade: its name.
        F_y: yield stress, ksi.
        F_u: tensile strength, ksi.
    """

    grade: str
    F_y: float
    F_u: float

    def __post_init__(self) -> None:
        positive(F_y=self.F_y, F_u=self.F_u)
        steel_of(self.F_y, self.F_u)


@dataclass(frozen=True, slots=True)
class Notch:
    """A cope.

    Args:
        c: length from the end of the beam, in.
        d_c: depth from the outside of the flange, in.
    """

    c: float
    d_c: float

    def __post_init__(self) -> None:
        positive(c=self.c, d_c=self.d_c)


@dataclass(frozen=True, slots=True)
class Beam:
    """The end of the supported beam.

    Args:
        section: its designation.
        steel: its steel.
        d: depth, in.
        t_w: thickness of the web, in.
        b_f: width of the flange, in.
        t_f: thickness of the flange, in.
        k: outer face of the flange to the toe of the fillet, design value, in.
        rolled_i: whether it is a rolled I-shape.
        top: cope of the top flange, None without one.
        bottom: cope of the bottom flange, None without one.
        T: clear depth between the fillets as the tables of sections give it, in; zero where they do not.
    """

    section: str
    steel: Material
    d: float
    t_w: float
    b_f: float
    t_f: float
    k: float
    rolled_i: bool = True
    top: Notch | None = None
    bottom: Notch | None = None
    T: float = 0.0

    def __post_init__(self) -> None:
        positive(d=self.d, t_w=self.t_w, b_f=self.b_f, t_f=self.t_f, k=self.k)
        not_negative(T=self.T)
        if self.h_o <= 0:
            raise ValueProblem(
                f"the copes of {self.section} leave h_o = {self.h_o:g} in of a depth of {self.d:g} in: "
                "make them shallower"
            )

    @property
    def h_o(self) -> float:
        """Depth of web left at the end, in."""
        return self.d - sum(notch.d_c for notch in (self.top, self.bottom) if notch)

    @property
    def h_tw(self) -> float:
        """Slenderness of the web between fillets."""
        return (self.d - 2 * self.k) / self.t_w


@dataclass(frozen=True, slots=True)
class Holes:
    """The holes of one part.

    Args:
        kind: their kind, and how slots lie to the reaction.
        along: size along the reaction, in.
        across: size across it, in.
    """

    kind: Hole
    along: float
    across: float

    def __post_init__(self) -> None:
        positive(along=self.along, across=self.across)


@dataclass(frozen=True, slots=True)
class Bolted:
    """One joint with bolts: a fitting to the beam's web, or a fitting to its support.

    Args:
        size: of the bolts as written.
        d: their diameter, in.
        group: strength group of Table J3.2.
        threads: N or X.
        rows: number of rows, one above the other.
        pitch: between rows, in; of any value with one row, the least where they are uneven.
        gage: from the fitting's own line to the nearest column: from the heel of an angle, from the weld of
            a single plate, from the middle of the web in an end plate or a seat; in.
        edge_top: upper end of the fitting to the first row, in.
        edge_bottom: last row to the lower end of the fitting, in.
        edge_side: farthest column to the edge of the fitting beyond it, in.
        holes: in the fitting.
        other: in the web or the support that it is bolted to.
        columns: number of columns in one leg or plate; the two of an end plate, one on each side, are one.
        between: between columns, in.
        uneven: between each row and the next from the first down, in, where the pitches are not all one.
        surface: class of the faying surfaces of slip-critical bolts, A or B; empty where the bolts bear.
    """

    size: str
    d: float
    group: str
    threads: str
    rows: int
    pitch: float
    gage: float
    edge_top: float
    edge_bottom: float
    edge_side: float
    holes: Holes
    other: Holes
    columns: int = 1
    between: float = 0.0
    uneven: tuple[float, ...] = ()
    surface: str = ""

    def __post_init__(self) -> None:
        positive(d=self.d, rows=self.rows, pitch=self.pitch, gage=self.gage, columns=self.columns)
        positive(edge_top=self.edge_top, edge_bottom=self.edge_bottom, edge_side=self.edge_side)
        not_negative(between=self.between)
        whole(rows=self.rows, columns=self.columns)
        if self.columns > 1 and self.between <= 0:
            raise ValueProblem(
                f"{self.columns} columns of bolts are 0 in apart: give the distance between the columns"
            )
        if self.uneven and (len(self.uneven) != self.rows - 1 or min(self.uneven) <= 0):
            raise ValueProblem(
                f"{self.rows} rows have {self.rows - 1} distances between them, not {len(self.uneven)}: "
                "give one more than 0 from each row to the next"
            )

    @property
    def steps(self) -> tuple[float, ...]:
        """Each row to the next from the first down, in."""
        return self.uneven or (self.pitch,) * (self.rows - 1)

    @property
    def places(self) -> tuple[float, ...]:
        """First row to each row, in."""
        return tuple(accumulate(self.steps, initial=0.0))

    @property
    def span(self) -> float:
        """First row to last row, in."""
        return sum(self.steps)

    @property
    def width(self) -> float:
        """First column to last column, in."""
        return (self.columns - 1) * self.between


@dataclass(frozen=True, slots=True)
class Fillet:
    """One joint with fillet welds.

    Args:
        leg: in.
        F_EXX: strength of the filler metal, ksi.
    """

    leg: float
    F_EXX: float = 70.0

    def __post_init__(self) -> None:
        positive(leg=self.leg, F_EXX=self.F_EXX)


@dataclass(frozen=True, slots=True)
class Fitting:
    """The angle or plate between the beam and its support.

    Args:
        name: what it is, as printed: `2L5X3-1/2X5/16`.
        steel: its steel.
        t: thickness, in.
        length: along the reaction (of a seat: along the support), in.
        leg: the leg on the beam's web, or the width of a plate (of a seat: the upright leg), in.
        out: the other leg of an angle, in; zero for a plate.
    """

    name: str
    steel: Material
    t: float
    length: float
    leg: float
    out: float = 0.0

    def __post_init__(self) -> None:
        positive(t=self.t, length=self.length, leg=self.leg)
        not_negative(out=self.out)


@dataclass(frozen=True, slots=True)
class Tongue:
    """What the plate of the support is bolted to at the closed end of a hollow beam.

    Args:
        section: of the beam.
        plate: the tongue; its width is from its end to the cap.
        cap: the end cap, its length along the reaction.
        weld: on both sides of the tongue, to the cap.
        edge_top: upper end of the tongue to the first row, in.
        to_cap: the column of bolts nearest to the cap, to the cap, in.
    """

    section: str
    plate: Fitting
    cap: Fitting
    weld: Fillet
    edge_top: float
    to_cap: float

    def __post_init__(self) -> None:
        positive(edge_top=self.edge_top, to_cap=self.to_cap)


@dataclass(frozen=True, slots=True)
class Support:
    """What carries the connection.

    Args:
        section: its designation.
        steel: its steel.
        face: where the connection stands on it.
        t: thickness of steel there, in.
        opposite: reaction of a beam on the other side that the same bolts carry, kips.
        opposite_rows: rows of its bolts in the same holes.
        both_faces: whether another connection is welded to the other face of the same steel; None where that
            is not known.
    """

    section: str
    steel: Material
    face: SupportFace
    t: float
    opposite: float = 0.0
    opposite_rows: int = 0
    both_faces: bool | None = None

    def __post_init__(self) -> None:
        positive(t=self.t)
        not_negative(opposite=self.opposite, opposite_rows=self.opposite_rows)
        whole(opposite_rows=self.opposite_rows)

    @property
    def sides(self) -> int:
        """On how many faces of the same steel connections are welded."""
        return 2 if self.both_faces else 1


@dataclass(frozen=True, slots=True)
class Leeway:
    """What the place of an end in its frame leaves to change.

    Args:
        reach: how long the fitting may be between fillets and copes, in.
        lower: how far the beam may be lowered before it meets the support's bottom flange, in.
        rise: how far the rows come up as a cope over them gets shallower, in.
        step: that the depth of a cope is rounded up to, in.
        radius: of the corner of its copes, in.
    """

    reach: float
    lower: float
    rise: float
    step: float
    radius: float


@dataclass(frozen=True, slots=True)
class Connection:
    """One end of a beam with what joins it to its support, and what it must carry.

    Args:
        name: which end ("B1 left").
        kind: which connection.
        beam: the supported beam; None where the job does not say which it is.
        fitting: what is between.
        to_beam: how the fitting is joined to the beam.
        to_support: how it is joined to the support.
        setback: gap between the end of the fitting at the support and the end of the beam as drawn, in.
        drop: upper edge of the beam's web as cut down to the upper end of the fitting, in.
        V: required reaction by the method it is checked with, kips.
        N: required axial force, kips; counted as pulling the beam off.
        support: what carries it; None where that is not known.
        under_run: what the beam may be too short, in.
        load: where the reaction comes from, in words; empty where none is known and V is a unit.
        skew: in the plan from square to the support's face to the beam, degrees.
        leeway: what its place lets be changed; None where that is not known, as of a piece as drawn.
        play: gap between that end of the fitting and the support's face as drawn, in.
        tongue: at the closed end of a hollow beam, whose `beam` is None then; None for any other.
    """

    name: str
    kind: Kind
    beam: Beam | None
    fitting: Fitting
    to_beam: Bolted | Fillet
    to_support: Bolted | Fillet
    setback: float
    drop: float
    V: float
    N: float = 0.0
    support: Support | None = None
    under_run: float = UNDER_RUN
    load: str = "given"
    skew: float = 0.0
    leeway: Leeway | None = None
    play: float = 0.0
    tongue: Tongue | None = None

    def __post_init__(self) -> None:
        positive(V=self.V)
        not_negative(N=self.N, setback=self.setback, under_run=self.under_run, skew=self.skew)

    @property
    def end(self) -> Beam:
        """The supported beam.

        Raises:
            ValueProblem: it is not known.
        """
        if self.beam is None:
            raise ValueProblem(f"{self.name} has no beam, its checks need one: say which beam it carries")
        return self.beam

    @property
    def web_thickness(self) -> float | None:
        """Thickness of what the fitting is joined to at the beam, web or tongue, in; None if not known."""
        if self.tongue is not None:
            return self.tongue.plate.t
        return self.beam.t_w if self.beam else None

    @property
    def gap(self) -> float:
        """Setback with the under-run, in."""
        return self.setback + self.under_run
