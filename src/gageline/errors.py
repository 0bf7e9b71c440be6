"""The errors that Gageline raises for bad input.

GagelineError
└── ValueProblem (also a ValueError): a value that cannot be right, with its name, limit and remedy
"""

from __future__ import annotations

__all__ = ["GagelineError", "ValueProblem"]


class GagelineError(Exception):
    """Anything that Gageline refuses, with a message for the person who typed it."""


class ValueProblem(GagelineError, ValueError):
    """A value that cannot be right; the message gives name, value, limit and remedy."""
