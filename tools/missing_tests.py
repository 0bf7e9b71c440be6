"""Name every module of the package that has no test module of its own.

    python tools/missing_tests.py

`src/gageline/ROOM/name.py` is tested by `tests/units/ROOM/test_name.py`. A package's `__init__` only
names what the room hands out, and is left out, as are the database migrations that Django writes.
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "src" / "gageline"
TESTS = ROOT / "tests" / "units"


def missing() -> list[str]:
    """The modules without a test module, as paths from the root."""
    modules = (
        path
        for path in PACKAGE.rglob("*.py")
        if not path.name.startswith("__") and path.parent.name != "migrations"
    )
    return [
        path.relative_to(ROOT).as_posix()
        for path in sorted(modules)
        if not (TESTS / path.relative_to(PACKAGE).parent / f"test_{path.name}").exists()
    ]


if __name__ == "__main__":
    names = missing()
    for name in names:
        print(f"no test: {name}")
    sys.exit(1 if names else 0)
