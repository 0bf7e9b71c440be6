"""The cutting plan: which stick, which piece, which cut."""
