"""Gageline: from a drawing of a steel beam to the marks on the steel."""
