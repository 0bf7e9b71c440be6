"""Permissible variations of rolled and formed steel, one module a standard."""

from gageline.quality.mill import astm_a6, astm_a500, en_10034, en_10056, en_10219

__all__ = ["astm_a6", "astm_a500", "en_10034", "en_10056", "en_10219"]
