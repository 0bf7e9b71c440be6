"""The shop in the browser: started, and what it keeps written to a file and put back."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated

import typer

from gageline.cli.screen import say
from gageline.shop import backup as back_up
from gageline.shop import restore as put_back
from gageline.shop import serve as serve_shop


def serve(
    lan: Annotated[
        bool, typer.Option("--lan", help="let the shop's network in, not this machine alone")
    ] = False,
    port: Annotated[int, typer.Option("--port", min=1, max=65535, help="of the server")] = 8700,
) -> None:
    """The shop in the browser, on this machine; the first visit makes the owner."""
    serve_shop(lan=lan, port=port, say=lambda text: print(text, flush=True))


def backup(
    file: Annotated[Path, typer.Argument(help="to write", metavar="FILE")],
) -> None:
    """Everything the shop keeps, in one file; works while the shop runs."""
    say.print(f"{back_up(file)} records are in {file}", markup=False, soft_wrap=True)


def restore(
    file: Annotated[Path, typer.Argument(help="that backup wrote", metavar="FILE")],
) -> None:
    """The shop as it was in a backup; what it keeps now is replaced, and everybody signs in again."""
    say.print(f"{put_back(file)} records were put back from {file}", markup=False, soft_wrap=True)
