"""The connections one by one: what is checked of each."""

from gageline.strength.kinds.beam_web import beam_web
from gageline.strength.kinds.double_angles import double_angles
from gageline.strength.kinds.end_plate import end_plate
from gageline.strength.kinds.extended_plate import extended_plate
from gageline.strength.kinds.rules import detail_rules
from gageline.strength.kinds.seat import seat
from gageline.strength.kinds.single_angle import single_angle
from gageline.strength.kinds.single_plate import single_plate
from gageline.strength.kinds.slip import slip_checks
from gageline.strength.kinds.support import support_left_out

__all__ = [
    "beam_web",
    "detail_rules",
    "double_angles",
    "end_plate",
    "extended_plate",
    "seat",
    "single_angle",
    "single_plate",
    "slip_checks",
    "support_left_out",
]
