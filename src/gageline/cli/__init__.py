"""The commands: thin, each a call into the rooms with what a person typed."""

from gageline.cli.main import main

__all__ = ["main"]
