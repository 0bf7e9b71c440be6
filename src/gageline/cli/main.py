"""The command line itself: every command in the order the help shows it, and how a refusal is said."""

from __future__ import annotations

import sys
from importlib import import_module
from importlib.metadata import version
from typing import Annotated, Any, NamedTuple

import typer
from typer.core import TyperCommand, TyperGroup
from typer.main import get_command

from gageline.cli.screen import aside
from gageline.errors import GagelineError

__all__ = ["COMMANDS", "main"]


class Entry(NamedTuple):
    """A command: the module that has it, and the first line of its help."""

    module: str
    line: str


COMMANDS = {
    "cards": Entry(
        "pieces", "Bench cards, piece drawings, fitting templates and the parts list, as one PDF."
    ),
    "parts": Entry("pieces", "The parts list: quantities, sections, lengths, weights, bolts."),
    "marks": Entry("pieces", "What to mark on each piece, step by step, with the tape readings."),
    "dxf": Entry(
        "pieces", "Every piece and part as a DXF file one to one, in inches or millimetres as the job."
    ),
    "verify": Entry(
        "checking",
        "The problems of a job and the strength of its connections; exit code 1 when any is an error.",
    ),
    "checks": Entry(
        "checking",
        "The check sheet: every limit state of every connection with its working, as a PDF to sign.",
    ),
    "why": Entry(
        "framing",
        "Why each dimension of a piece of the frame is what it is: the rule, the numbers, the source.",
    ),
    "frame": Entry(
        "framing",
        "The sheets of a frame: plans, elevations, column schedule, field bolts, reasons, as one PDF.",
    ),
    "cut": Entry(
        "cutting",
        "The cutting plan: what to order, which piece from which stick, as sheets to tick off.",
    ),
    "receive": Entry(
        "received",
        "The sticks that came: judged by their standard, laid out as they are, each with its card, as a PDF.",
    ),
    "inspect": Entry(
        "received",
        "The finished piece: a blank sheet to walk around it with, or what was read judged, as a PDF.",
    ),
    "odds": Entry(
        "received",
        "The odds that each piece bolts up without reaming, and what would better them; a PDF with --out.",
    ),
    "section": Entry("tables", "What the tables say of a section or plate."),
    "length": Entry("tables", "Add, subtract, multiply and divide lengths as the trade writes them."),
    "demo": Entry(
        "pieces",
        "The demo jobs, an invented mezzanine: their documents, the rack's, and the PDF of the cards.",
    ),
    "serve": Entry("keeping", "The shop in the browser, on this machine; the first visit makes the owner."),
    "backup": Entry("keeping", "Everything the shop keeps, in one file; works while the shop runs."),
    "restore": Entry(
        "keeping",
        "The shop as it was in a backup; what it keeps now is replaced, and everybody signs in again.",
    ),
}


class Commands(TyperGroup):
    """Every command by name; the rooms that one needs are read only when it is run, as that takes seconds."""

    def __init__(self, **settings: Any) -> None:
        super().__init__(**settings)
        self.commands = {name: TyperCommand(name, help=entry.line) for name, entry in COMMANDS.items()}

    def resolve_command(self, ctx: Any, args: list[str]) -> Any:
        """The command that was typed, whole."""
        name, _, rest = super().resolve_command(ctx, args)
        return name, name and _whole(name), rest


def _whole(name: str) -> object:
    """A command with its arguments and options, from its function."""
    function = getattr(import_module(f"gageline.cli.{COMMANDS[name].module}"), name)
    minus_first = {"ignore_unknown_options": True}  # the terms of a sum may start with a minus
    alone = typer.Typer(add_completion=False, pretty_exceptions_enable=False)
    alone.command(context_settings=minus_first if name == "length" else None)(function)
    return get_command(alone)


app = typer.Typer(
    cls=Commands,
    help="From the drawing of a beam to the marks on the steel.",
    no_args_is_help=True,
    add_completion=False,
    pretty_exceptions_enable=False,
    context_settings={"help_option_names": ["-h", "--help"]},
)


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
