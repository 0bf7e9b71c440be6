"""The shop's server: on this machine alone, or on the shop's network where that is asked for."""

from __future__ import annotations

import logging
import os
import socket
from collections.abc import Callable

import segno
from django.conf import settings
from django.core.wsgi import get_wsgi_application
from waitress import create_server

from gageline.errors import GagelineError
from gageline.shop.home import data_folder
from gageline.shop.starting import start_up

__all__ = ["network_address", "serve"]

_LARGEST_BODY = 22_000_000  # bytes; what is larger is refused before it is read
_THREADS = 8


def network_address() -> str:
    """The address of this machine in its network; nothing is sent to find it out."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # an address of RFC 5737 that nobody has
            address: str = probe.getsockname()[0]
        except OSError:
            return "127.0.0.1"
    return address


def serve(*, lan: bool, port: int, say: Callable[[str], None]) -> None:
    """Serve the shop until it is stopped.

    Args:
        lan: reachable from the network; from this machine alone otherwise.
        port: of the server.
        say: prints a line for whoever started it.

    Raises:
        GagelineError: when the data folder, the database or the port cannot be used.
    """
    address = network_address() if lan else "127.0.0.1"
    if lan:
        hosts = os.environ.get("GAGELINE_HOSTS", "")
        os.environ["GAGELINE_HOSTS"] = f"{hosts} {address} {socket.gethostname()}".strip()
    start_up()
    logging.getLogger("waitress").setLevel(logging.ERROR)
    try:
        server = create_server(
            get_wsgi_application(),
            host="0.0.0.0" if lan else "127.0.0.1",  # noqa: S104 -- asked for with --lan
            port=port,
            threads=_THREADS,
            max_request_body_size=_LARGEST_BODY,
            ident="",
            channel_timeout=60,
        )
    except OSError as refused:
        reason = (refused.strerror or "it is in use").lower()
        raise GagelineError(
            f"port {port} cannot be opened ({reason}): choose another with --port"
        ) from refused
    url = f"http://{address}:{server.effective_port}/"
    say(f"The shop is open at {url}")
    say(f"Its data: {settings.DATABASES['default']['NAME']} ({data_folder()})")
    if lan:
        say("Everybody in this network can reach it. The owner is made at the first visit, on this machine.")
        say(_qr_text(url))
    say("Stop it with Ctrl+C.")
    server.run()


def _qr_text(url: str) -> str:
    """A QR code in characters, two modules high each; dark on light as ISO/IEC 18004 wants it."""
    rows = [list(row) for row in segno.make(url, error="m", micro=False).matrix_iter(border=2)]
    if len(rows) % 2:
        rows.append([0] * len(rows[0]))
    signs = {(0, 0): "█", (0, 1): "▀", (1, 0): "▄", (1, 1): " "}
    pairs = zip(rows[::2], rows[1::2], strict=True)
    return "\n".join("".join(signs[bool(a), bool(b)] for a, b in zip(*pair, strict=True)) for pair in pairs)
