"""A rolled section as the tables give it."""

from __future__ import annotations

from dataclasses import dataclass

from gageline.steel.families import Family, Measure, Profile, profile_of
from gageline.steel.outline import (
    STEPS,
    Loop,
    angle_outline,
    box_outline,
    channel_outline,
    circle_outline,
    i_outline,
    tee_outline,
)
from gageline.units import ZERO, Length

__all__ = ["Section"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One line of the section tables: dimensions exact, properties in inch units, None where not given.

    The strong axis is x, the weak axis y, as in American tables (European tables say y and z). An
    angle stands on its shorter leg: d is the longer leg, upright, and bf the shorter one, lying.

    Args:
        designation: as printed: `W16X26`, `HSS6X6X3/8`, `HSS6.000X0.375`, `Pipe6STD`, `IPE 300`.
        family: the series.
        system: the tables it stands in.
        edition: the edition of those tables.
        d: depth; box: height; tube: outside diameter; angle: longer leg.
        bf: flange width; box: width; tube: outside diameter; angle: shorter leg.
        tw: web, stem, leg or design wall thickness.
        tf: flange, leg or design wall thickness; of a tapered flange the mean thickness.
        weight: lb/ft, the nominal weight that is bought and lifted.
        area: in2.
        Ix: second moment about the strong axis, in4; Zx plastic and Sx elastic modulus, in3; rx, in.
        Iy: the same four about the weak axis: Iy, Zy, Sy, ry.
        flange_slope: rise over run of the flange's inner face, 0 where parallel; 1/6 of S and C shapes;
            of MC shapes as the tabulated Iy implies.
        taper_run: distance from the flange's edge to where tf is measured, of a tapered flange.
        fillet: radius between web and flange, or between the legs; printed for European sections,
            derived from kdes for American ones.
        toe: radius of the inner edge of a flange or leg.
        d_det: depth as detailed, to a fraction; bf_det, tw_det and tf_det likewise.
        t_nominal: wall thickness a hollow section is ordered by.
        kdes: flange face to end of fillet for design; angle: heel face to end of fillet.
        kdet: the same for detailing (the largest a mill may roll).
        k1: web centre to end of fillet.
        T: clear depth between fillets for detailing.
        gage: workable gage of the flange, the inner pair of four holes where there are four.
        gage_outer: distance from an inner to an outer hole of four.
        x_bar: back of web or heel to centroid, in; y_bar: flange face or heel to centroid, in.
        eo: back of web to shear centre, in.
        Iz: about the weakest axis of an angle, in4; Sz, in3; rz, in; tan_alpha its slope.
        J: torsion constant, in4; Cw: warping constant, in6; C: torsion constant of a hollow section, in3.
        rts: effective radius of gyration for lateral buckling, in; ho: between flange centroids, in.
        PA: perimeter less one flange face (angle: less the longer leg's face), in; PA2: less the
            shorter leg's face; PB: all round; PC: boxed, less one flange face; PD: boxed, all round.
        note: what was mended or derived in this line.

    Source: the edition named in `edition`, by way of src/gageline/steel/data.
    """

    designation: str
    family: Family
    system: Measure
    edition: str
    d: Length
    bf: Length
    tw: Length
    tf: Length
    weight: float
    area: float
    Ix: float
    Zx: float
    Sx: float
    rx: float
    Iy: float
    Zy: float
    Sy: float
    ry: float
    flange_slope: float | None = None
    taper_run: Length | None = None
    fillet: Length | None = None
    toe: Length | None = None
    d_det: Length | None = None
    bf_det: Length | None = None
    tw_det: Length | None = None
    tf_det: Length | None = None
    t_nominal: Length | None = None
    kdes: Length | None = None
    kdet: Length | None = None
    k1: Length | None = None
    T: Length | None = None
    gage: Length | None = None
    gage_outer: Length | None = None
    x_bar: float | None = None
    y_bar: float | None = None
    eo: float | None = None
    xp: float | None = None
    yp: float | None = None
    Iz: float | None = None
    Sz: float | None = None
    rz: float | None = None
    tan_alpha: float | None = None
    J: float | None = None
    Cw: float | None = None
    C: float | None = None
    ro: float | None = None
    H: float | None = None
    rts: float | None = None
    ho: float | None = None
    PA: float | None = None
    PA2: float | None = None
    PB: float | None = None
    PC: float | None = None
    PD: float | None = None
    note: str = ""

    @property
    def profile(self) -> Profile:
        """The shape of the section."""
        return profile_of(self.family)

    @property
    def corner(self) -> Length | None:
        """Outside corner radius of a box section: twice the design wall (AISC Manual, Part 1, HSS)."""
        return self.tw * 2 if self.profile is Profile.BOX else None

    def outline(self, steps: int = STEPS) -> tuple[Loop, ...]:
        """The section's outline in inches: the outer line and, of a hollow section, the inner one.

        I-shapes, boxes and tubes are centred on the origin; a channel has the back of its web at
        z = 0, a tee its flange face at y = 0 with the stem downward, an angle its heel at the origin.

        Args:
            steps: chords to one fillet or corner.

        Returns:
            Closed lines of points (z, y), in.
        """
        d, bf, tw, tf = (length.inches for length in (self.d, self.bf, self.tw, self.tf))
        root, toe = (self.fillet or ZERO).inches, (self.toe or ZERO).inches
        slope = self.flange_slope or 0.0
        match self.profile:
            case Profile.CHANNEL:
                run = (self.taper_run or ZERO).inches
                return (channel_outline(d, bf, tw, (tf, run, slope), (root, toe), steps),)
            case Profile.ANGLE:
                return (angle_outline(d, bf, tw, (root, toe), steps),)
            case Profile.TEE:
                return (tee_outline(d, bf, tw, tf, root, slope, steps),)
            case Profile.BOX:
                inner = box_outline(d - 2 * tw, bf - 2 * tw, tw, steps)
                return box_outline(d, bf, 2 * tw, steps), inner
            case Profile.TUBE:
                return circle_outline(d, 4 * steps), circle_outline(d - 2 * tw, 4 * steps)
            case _:
                return (i_outline(d, bf, tw, tf, root, slope, steps),)
