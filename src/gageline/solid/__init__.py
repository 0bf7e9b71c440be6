"""Bodies of parts: what they weigh, where they balance, what they run into."""

from gageline.solid.bodies import Body, Box, Mesh, bodies_of, body_of
from gageline.solid.clash import TOLERANCE, clashes
from gageline.solid.mass import Mass, mass_of, total, weigh

__all__ = [
    "TOLERANCE",
    "Body",
    "Box",
    "Mass",
    "Mesh",
    "bodies_of",
    "body_of",
    "clashes",
    "mass_of",
    "total",
    "weigh",
]
