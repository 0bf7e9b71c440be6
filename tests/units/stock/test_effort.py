"""How long a plan may take: what holds where nothing is said."""

from gageline.stock import Effort, Progress, Steel


def test_nothing_said_is_a_minute_without_a_stop() -> None:
    effort = Effort()
    assert effort.seconds == 60.0
    assert effort.stop() is False
    effort.tell(Steel("W12X26"), Progress("mix", None, 0, 0.0))


def test_what_is_told_names_the_steel() -> None:
    told: list[tuple[Steel, Progress]] = []
    effort = Effort(5.0, tell=lambda steel, progress: told.append((steel, progress)))
    effort.tell(Steel("PL1/2"), Progress("sheets", 3, 2, 0.1))
    assert told == [(Steel("PL1/2"), Progress("sheets", 3, 2, 0.1))]
