"""Django made ready for the shop: settings, tables, and plain words where the machine says no."""

from __future__ import annotations

import os

import django
from django.core.management import call_command
from django.db import DatabaseError, connection

from gageline.errors import GagelineError
from gageline.shop.home import data_folder, ready_folder
from gageline.shop.sealing import seal

__all__ = ["start_up"]


def start_up() -> None:
    """Load the settings, try the data folder and bring the tables up to date.

    Raises:
        GagelineError: when the data folder or the database cannot be used.
    """
    ready_folder(data_folder())
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "gageline.shop.settings")
    django.setup()
    try:
        call_command("migrate", verbosity=0, interactive=False)
        seal(connection)  # a table that was made anew has lost its seal
    except DatabaseError as refused:
        name = connection.settings_dict["NAME"]
        reason = str(refused).strip().splitlines()[0]
        raise GagelineError(
            f"the database {name} cannot be used ({reason}): check DATABASE_URL, the disk and the data folder"
        ) from refused
