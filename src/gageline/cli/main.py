"""The command line itself: every command in the order the help shows it, and how a refusal is said."""

from __future__ import annotations

import sys
from collections.abc import Callable
from importlib.metadata import version
from typing import Annotated

import typer

from gageline.cli.checking import checks, verify
from gageline.cli.cutting import cut
from gageline.cli.framing import frame, why
from gageline.cli.keeping import backup, restore, serve
from gageline.cli.pieces import cards, demo, dxf, marks, parts
from gageline.cli.received import inspect, odds, receive
from gageline.cli.screen import aside
from gageline.cli.tables import length, section
from gageline.errors import GagelineError

__all__ = ["main"]

app = typer.Typer(
    help="From the drawing of a beam to the marks on the steel.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)
MINUS_FIRST = {"ignore_unknown_options": True}  # the terms of a sum may start with a minus
COMMANDS: tuple[Callable[..., None], ...] = (
    cards, parts, marks, dxf, verify, checks, why, frame, cut, receive, inspect, odds, section, length, demo,
    serve, backup, restore,
)  # fmt: skip
for command in COMMANDS:
    app.command(context_settings=MINUS_FIRST if command is length else None)(command)


def main() -> None:
    """Run the command line; a refusal is said in plain words with exit code 2."""
    try:
        app()
    except GagelineError as refusal:
        aside.print(str(refusal), markup=False, soft_wrap=True, style="red")
        sys.exit(2)
    except SystemExit as ended:
        cause = ended.__context__ and ended.__context__.__cause__
        if isinstance(cause, KeyboardInterrupt):  # typer makes an exit of it
            aside.print("stopped")
        raise


@app.callback(invoke_without_command=True)
def _version(
    show: Annotated[
        bool, typer.Option("--version", help="the version, and nothing else", is_eager=True)
    ] = False,
) -> None:
    if show:
        print(version("gageline"))
        raise typer.Exit
