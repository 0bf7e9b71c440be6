"""Run the command line as `python -m gageline`."""

from gageline.cli import main

main()
