"""The command line itself."""

from typed import Run


def test_the_version(run: Run) -> None:
    code, out, _ = run("--version")
    assert (code, out.strip()) == (0, "0.1.0")


def test_help_is_short_and_names_every_command(run: Run) -> None:
    code, out, _ = run("--help")
    assert code == 0
    for command in (
        "cards", "parts", "marks", "dxf", "verify", "checks", "why", "frame", "cut", "receive", "inspect",
        "odds", "section", "length", "demo", "serve", "backup", "restore",
    ):  # fmt: skip
        assert command in out
