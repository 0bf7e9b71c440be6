"""Quality: does the steel agree with the drawing, on receipt, when it is done, and when it goes up?"""

from gageline.quality.chances import exact, pair, uneven_pair, within
from gageline.quality.codes import CODES, own_limits
from gageline.quality.fabrication import Rules, rules_of
from gageline.quality.fit_up import Span, joints_of, span_of
from gageline.quality.inspection import Outcome, Report, Row, blank_report, inspect, records_of
from gageline.quality.items import Item, Remedy, items_of
from gageline.quality.joint import BoltPlace, Joint, Lot
from gageline.quality.limits import Judgement, Limit, Trust, Verdict, overridden
from gageline.quality.odds import CHECKED, Chance, Gain, Odds, odds_of
from gageline.quality.plausible import Slip, check_readings, slips_of
from gageline.quality.receipt import Receipt, length_limit, receive, usable
from gageline.quality.sampling import Sampled, enters, sample
from gageline.quality.spread import ASSUMED, Act, Estimate, Spread, estimated, spread_from

__all__ = [
    "ASSUMED", "CHECKED", "CODES", "Act", "BoltPlace", "Chance", "Estimate", "Gain", "Item", "Joint",
    "Judgement", "Limit", "Lot", "Odds", "Outcome", "Receipt", "Remedy", "Report", "Row", "Rules",
    "Sampled", "Slip", "Span", "Spread", "Trust", "Verdict", "blank_report", "check_readings", "enters",
    "estimated", "exact", "inspect", "items_of", "joints_of", "length_limit", "odds_of", "overridden",
    "own_limits", "pair", "receive", "records_of", "rules_of", "sample", "slips_of", "span_of", "spread_from",
    "uneven_pair", "usable", "within",
]  # fmt: skip
