"""Set Gageline up in a private environment beside this file and run it.

python3 go.py              set up, run the demo job and say where its PDF is
python3 go.py test         set up for development and pass every check
python3 go.py ARGUMENTS    set up and run `gageline ARGUMENTS`

Needs Python 3.11 or later with pip and nothing else; runs on Windows, macOS and Linux. A second run
starts working at once: packages are installed again only when the locked list has changed.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
import time
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent
HOME = ROOT / ".venv"
PYTHON = HOME / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
LISTS = {"run": ROOT / "requirements" / "run.txt", "dev": ROOT / "requirements" / "dev.txt"}
_TWO = ("-n", "2", "--dist", "worksteal")  # who is done first takes tests from the other
CHECKS = (
    ("format", ["-m", "ruff", "format", "--check", "."]),
    ("lint", ["-m", "ruff", "check", "."]),
    ("types", ["-m", "mypy"]),
    (
        "order of the rooms",
        ["-c", "import sys; from importlinter.cli import lint_imports_command as run; run()"],
    ),
    ("every module has its test", ["tools/missing_tests.py"]),
    ("tests", ["-m", "pytest", *_TWO, "--hypothesis-profile=ci", "--ignore=tests/browser"]),
    ("programs for the browser tests", ["tools/services.py"]),
    ("tests in a browser", ["-m", "pytest", *_TWO, "tests/browser"]),
)


def wanted_stamp(kind: str) -> str:
    """What the environment was made from: this Python, the locked list and the package's own facts."""
    facts = [
        sys.version,
        str(HOME),
        LISTS[kind].read_text("utf8"),
        (ROOT / "pyproject.toml").read_text("utf8"),
    ]
    return hashlib.sha256("\n".join(facts).encode()).hexdigest()


def is_ready(kind: str) -> bool:
    """Whether the environment has what this kind of work needs; that for development has everything."""
    for has in {kind, "dev"}:
        stamp = HOME / f"{has}.stamp"
        if PYTHON.exists() and stamp.exists() and stamp.read_text("utf8") == wanted_stamp(has):
            return True
    return False


def set_up(kind: str) -> None:
    """Make the environment and install the locked packages and Gageline itself into it."""
    print(f"Setting up in {HOME} (once; this takes a minute or two) ...", flush=True)
    if not PYTHON.exists():
        venv.create(HOME, with_pip=True, clear=True)
    pip = [str(PYTHON), "-m", "pip", "--quiet", "--disable-pip-version-check", "install"]
    subprocess.run([*pip, "--require-hashes", "--requirement", str(LISTS[kind])], check=True, cwd=ROOT)
    subprocess.run([*pip, "--no-deps", "--no-build-isolation", "--editable", "."], check=True, cwd=ROOT)
    (HOME / f"{kind}.stamp").write_text(wanted_stamp(kind), "utf8")


def run_checks() -> int:
    """Run every check, say how long each took, and go on after a failure so that all are seen."""
    failed = []
    for name, command in CHECKS:
        print(f"== {name}", flush=True)
        start = time.monotonic()
        if subprocess.run([str(PYTHON), *command], cwd=ROOT, check=False).returncode:
            failed.append(name)
        print(f"== {name}: {time.monotonic() - start:.0f} s", flush=True)
    print(f"FAILED: {', '.join(failed)}" if failed else "All checks passed.")
    return 1 if failed else 0


def main(arguments: list[str]) -> int:
    """Set up what is missing, then do what was asked; the exit code is that of the work."""
    if sys.version_info < (3, 11):
        print(f"Python 3.11 or later is needed; this is {sys.version.split()[0]}.")
        return 2
    testing = arguments == ["test"]
    kind = "dev" if testing else "run"
    if not is_ready(kind):
        try:
            set_up(kind)
        except subprocess.CalledProcessError:
            print("The set-up stopped: pip says why above. Check the network and run this again.")
            return 2
    if testing:
        return run_checks()
    return subprocess.run([str(PYTHON), "-m", "gageline", *(arguments or ["demo"])], check=False).returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
