"""From framing to parts: the frame's members worked out, every dimension with its reason."""

from gageline.detail.agree import Shared
from gageline.detail.bolting import FieldBolts, bolt_length
from gageline.detail.carrier import AnchorRods, Served
from gageline.detail.choice import Asked, Named
from gageline.detail.detail import Progress, detail_frame
from gageline.detail.detailed import Detailed, Placed
from gageline.detail.full import FullJob, checked_full, full_job, open_full, read_full, with_rows
from gageline.detail.joint import Joint
from gageline.detail.line import Frame, Line, Opening
from gageline.detail.loads import MemberLoads
from gageline.detail.reason import Reason
from gageline.detail.rows import Ladder
from gageline.detail.site import FaceKind, Site, joint_of
from gageline.detail.supports import Bearing, Supports

__all__ = [
    "AnchorRods",
    "Asked",
    "Bearing",
    "Detailed",
    "FaceKind",
    "FieldBolts",
    "Frame",
    "FullJob",
    "Joint",
    "Ladder",
    "Line",
    "MemberLoads",
    "Named",
    "Opening",
    "Placed",
    "Progress",
    "Reason",
    "Served",
    "Shared",
    "Site",
    "Supports",
    "bolt_length",
    "checked_full",
    "detail_frame",
    "full_job",
    "joint_of",
    "open_full",
    "read_full",
    "with_rows",
]
