"""Rebuild the hash-locked requirement files from pyproject.toml (run with uv on the path).

    python tools/lock.py            write requirements/run.txt and requirements/dev.txt

The files hold every package with its hashes for every platform and Python from 3.11 on; `go.py`
installs from them and from nothing else.
"""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
COMMON = [
    "uv",
    "pip",
    "compile",
    "pyproject.toml",
    "--universal",
    "--generate-hashes",
    "--python-version",
    "3.11",
    "--no-emit-index-url",
    "--no-emit-find-links",
    "--no-header",
    "--no-annotate",
    "--quiet",
]
FILES = {
    "requirements/run.txt": ["--group", "build"],
    "requirements/dev.txt": ["--group", "build", "--group", "dev"],
}


def main() -> int:
    """Write both files; the exit code is that of the first run of uv that fails."""
    for name, extra in FILES.items():
        done = subprocess.run([*COMMON, *extra, "--output-file", name], cwd=ROOT, check=False)
        if done.returncode:
            return done.returncode
    return 0


if __name__ == "__main__":
    sys.exit(main())
