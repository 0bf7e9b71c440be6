"""Is it strong enough: clauses of the standards, eccentric groups, connections, and the checks they give."""

from gageline.strength.bases import CheckedColumn
from gageline.strength.beam_end import beam_of
from gageline.strength.beams import SimpleBeam, check_beam, largest_uniform_load
from gageline.strength.check import Check, Clause, Factors, Method, Step, Strength, figure, step
from gageline.strength.clause import clause_of, clauses_in
from gageline.strength.connection import (
    Beam,
    Bolted,
    Connection,
    Fillet,
    Fitting,
    Holes,
    Kind,
    Material,
    Notch,
    Support,
    SupportFace,
    Tongue,
)
from gageline.strength.connections import check_connection
from gageline.strength.demands import SUGGESTED, BelowLoads
from gageline.strength.drawn import Carried, Drawn, connections_of
from gageline.strength.groups import (
    BoltGroups,
    eccentric_bolts,
    elastic_bolts,
    share_of_full_strength,
    wrench,
)
from gageline.strength.handed import Handed, Rest, hand_down
from gageline.strength.jobs import CheckedBeam, CheckedConnection, JobStrength, check_strength
from gageline.strength.loads import Case, Combination, Load, combinations, reactions, worst
from gageline.strength.remedies import Suggestion, lighter, remedy
from gageline.strength.rows import strong_rows
from gageline.strength.steels import BoltSteel, bolt_steel, material_of, support_of
from gageline.strength.verdict import NotChecked, Verdict
from gageline.strength.weld_groups import WeldGroups, eccentric_welds, elastic_welds, manual_coefficient
from gageline.strength.wording import (
    amount_text,
    below_text,
    broken_text,
    force_text,
    percent,
    ratio,
    report_of,
    suggestion_text,
    summary_of,
)

__all__ = [
    "SUGGESTED",
    "Beam",
    "BelowLoads",
    "BoltGroups",
    "BoltSteel",
    "Bolted",
    "Carried",
    "Case",
    "Check",
    "CheckedBeam",
    "CheckedColumn",
    "CheckedConnection",
    "Clause",
    "Combination",
    "Connection",
    "Drawn",
    "Factors",
    "Fillet",
    "Fitting",
    "Handed",
    "Holes",
    "JobStrength",
    "Kind",
    "Load",
    "Material",
    "Method",
    "NotChecked",
    "Notch",
    "Rest",
    "SimpleBeam",
    "Step",
    "Strength",
    "Suggestion",
    "Support",
    "SupportFace",
    "Tongue",
    "Verdict",
    "WeldGroups",
    "amount_text",
    "beam_of",
    "below_text",
    "bolt_steel",
    "broken_text",
    "check_beam",
    "check_connection",
    "check_strength",
    "clause_of",
    "clauses_in",
    "combinations",
    "connections_of",
    "eccentric_bolts",
    "eccentric_welds",
    "elastic_bolts",
    "elastic_welds",
    "figure",
    "force_text",
    "hand_down",
    "largest_uniform_load",
    "lighter",
    "manual_coefficient",
    "material_of",
    "percent",
    "ratio",
    "reactions",
    "remedy",
    "report_of",
    "share_of_full_strength",
    "step",
    "strong_rows",
    "suggestion_text",
    "summary_of",
    "support_of",
    "worst",
    "wrench",
]
