"""The shop in the browser: what is kept, what is shown, and who may."""

from gageline.shop.keeping import backup, restore
from gageline.shop.serving import serve

__all__ = ["backup", "restore", "serve"]
