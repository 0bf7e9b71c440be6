"""Files and data for other programs."""

from gageline.exchange.plain import json_text, plain

__all__ = ["json_text", "plain"]
