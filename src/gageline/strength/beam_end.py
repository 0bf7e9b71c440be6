"""The end of a beam as it is cut: its web at its middle, and its copes from there."""

from __future__ import annotations

from gageline.errors import ValueProblem
from gageline.part import End, Face, Part, face_point
from gageline.steel import Profile, Section
from gageline.strength.connection import Beam, Notch
from gageline.strength.steels import material_of
from gageline.units import ZERO, Length

__all__ = ["beam_of", "web_end"]


def beam_of(part: Part, end: End) -> Beam:
    """The end of a beam.

    Args:
        part: the beam.
        end: which end; of a skewed or sloped one the web as it is cut at its middle.

    Raises:
        ValueProblem: no I-shape or channel.
    """
    stock = part.stock
    if not isinstance(stock, Section) or stock.profile not in {Profile.I_SHAPE, Profile.CHANNEL}:
        raise ValueProblem(f"{stock.designation} is no I-shape or channel: its end is not covered")
    notches = {cope.edge: cope for cope in part.copes if cope.end is end}

    def notch(edge: Face) -> Notch | None:
        cope = notches.get(edge)
        if cope is None:
            return None
        y = stock.d - cope.depth if edge is Face.TOP else cope.depth
        back = web_end(part, end, y)
        return Notch(
            (cope.length - (back if end is End.LEFT else part.length - back)).inches, cope.depth.inches
        )

    return Beam(
        stock.designation,
        material_of(part),
        stock.d.inches,
        stock.tw.inches,
        stock.bf.inches,
        stock.tf.inches,
        (stock.kdes or stock.kdet or stock.tf).inches,
        stock.profile is Profile.I_SHAPE,
        notch(Face.TOP),
        notch(Face.BOTTOM),
        stock.T.inches if stock.T is not None else 0.0,
    )


def web_end(part: Part, end: End, y: Length) -> Length:
    """Where the web's middle is cut, from the left end.

    Args:
        part: the beam.
        end: which end.
        y: over the section's bottom.
    """
    near, far = (face_point(part.stock, face, ZERO, ZERO)[2] for face in (Face.NEAR, Face.FAR))
    return part.end_x(end, y, Length((near + far).ticks // 2))
