"""Permissible variations of rolled and formed steel, one module a standard."""

from gageline.quality.mill import astm_a6, en_10034
from gageline.quality.mill.mill_limits import MillLimits, mill_limits

__all__ = ["MillLimits", "astm_a6", "en_10034", "mill_limits"]
