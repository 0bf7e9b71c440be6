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


def missing() -> set[str]:
    """The modules without a test module, as paths from the package."""
    modules = (
        path
        for path in PACKAGE.rglob("*.py")
        if not path.name.startswith("__") and path.parent.name != "migrations"
    )
    return {
        path.relative_to(PACKAGE).as_posix()
        for path in modules
        if not (TESTS / path.relative_to(PACKAGE).parent / f"test_{path.name}").exists()
    }


def main() -> int:
    """Print what is wrong; the exit code is 1 when anything is."""
    lacking = sorted(missing())
    for name in lacking:
        print(f"no test: {name}: write tests/units/{Path(name).parent.as_posix()}/test_{Path(name).name}")
    return 1 if lacking else 0


if __name__ == "__main__":
    sys.exit(main())
