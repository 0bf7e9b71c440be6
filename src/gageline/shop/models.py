"""What the shop keeps: people, tablets, jobs with their revisions, pieces, ticks and the log."""

from __future__ import annotations

from typing import Any

from django.contrib.auth.base_user import AbstractBaseUser, BaseUserManager
from django.db import models

from gageline.errors import GagelineError
from gageline.shop.roles import Role
from gageline.shop.stock_models import Cut, Cutting, Plan, RackText, Search, Stick, StickRevision, Where

__all__ = [
    "Copy",
    "Cut",
    "Cutting",
    "Guess",
    "Job",
    "LogEntry",
    "Person",
    "Piece",
    "Plan",
    "RackText",
    "Reading",
    "Revision",
    "Search",
    "Sent",
    "Stage",
    "Stick",
    "StickRevision",
    "Tablet",
    "Tick",
    "Where",
]


class Stage(models.TextChoices):
    """Where a piece waits on its way through the shop."""

    BENCH = "bench", "Bench"
    FIT = "fit", "Fit"
    CHECK = "check", "Check"
    GATE = "gate", "Gate"
    GONE = "gone", "gone"


class Person(AbstractBaseUser):
    """Somebody who may sign in; the secret is a password, of shop people a PIN."""

    name = models.CharField(max_length=80, unique=True)
    role = models.CharField(max_length=8, choices=[(role.value, role.value) for role in Role])
    is_active = models.BooleanField(default=True)

    objects = BaseUserManager["Person"]()
    USERNAME_FIELD = "name"

    def __str__(self) -> str:
        return self.name


class Tablet(models.Model):
    """A tablet on which shop people may sign in with their PIN."""

    name = models.CharField(max_length=80, unique=True)
    token = models.CharField(max_length=64, unique=True)  # SHA-256 of what the tablet holds
    known_since = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return self.name


class Guess(models.Model):
    """Wrong passwords and PINs for one name or from one address."""

    key = models.CharField(max_length=120, unique=True)
    failures = models.PositiveIntegerField(default=0)
    closed_until = models.DateTimeField()


class Job(models.Model):
    """A job; what it says stands in its revisions."""

    name = models.CharField(max_length=80)
    number = models.CharField(max_length=80, blank=True)
    current = models.PositiveIntegerField(default=0)
    made = models.DateTimeField(auto_now_add=True)

    def __str__(self) -> str:
        return self.name


class Revision(models.Model):
    """The whole document of a job as it was once saved; never changed afterwards."""

    job = models.ForeignKey(Job, models.PROTECT, related_name="revisions")
    number = models.PositiveIntegerField()
    text = models.TextField()
    what = models.CharField(max_length=300)
    by = models.CharField(max_length=80)
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """A number stands once in a job."""

        constraints = (models.UniqueConstraint(fields=("job", "number"), name="one_revision_a_number"),)


class Piece(models.Model):
    """A piece mark of a job; what it is stands in the job's document."""

    job = models.ForeignKey(Job, models.PROTECT, related_name="pieces")
    mark = models.CharField(max_length=24)
    position = models.PositiveIntegerField()
    quantity = models.PositiveIntegerField()
    stock = models.CharField(max_length=80)
    length = models.CharField(max_length=40)
    weight = models.FloatField(null=True)  # lb, of one; None until weighed
    card = models.CharField(max_length=16)
    active = models.BooleanField(default=True)

    class Meta:
        """A mark stands once in a job."""

        constraints = (models.UniqueConstraint(fields=("job", "mark"), name="one_piece_a_mark"),)
        ordering = ("position",)

    def __str__(self) -> str:
        return self.mark


class Copy(models.Model):
    """One of the pieces of a mark, the thing itself."""

    piece = models.ForeignKey(Piece, models.PROTECT, related_name="copies")
    number = models.PositiveIntegerField()
    stage = models.CharField(max_length=8, choices=Stage.choices, default=Stage.BENCH, db_index=True)
    active = models.BooleanField(default=True)

    class Meta:
        """A number stands once for a mark."""

        constraints = (models.UniqueConstraint(fields=("piece", "number"), name="one_copy_a_number"),)
        ordering = ("piece__job_id", "piece__position", "number")

    @property
    def name(self) -> str:
        """What it is called; not with a stroke, which stands beside lengths like a fraction of an inch."""
        return f"{self.piece.mark} ({self.number} of {self.piece.quantity})"


class Tick(models.Model):
    """A task of a card that is done on one piece."""

    copy = models.ForeignKey(Copy, models.PROTECT, related_name="ticks")
    card = models.CharField(max_length=16)
    task = models.CharField(max_length=24)
    by = models.CharField(max_length=80)
    at = models.DateTimeField()

    class Meta:
        """A task is ticked once on a card."""

        constraints = (models.UniqueConstraint(fields=("copy", "card", "task"), name="ticked_once"),)


class Reading(models.Model):
    """Something that was read on a piece or on its stick; only ever added to, and the newest counts."""

    copy = models.ForeignKey(Copy, models.PROTECT, related_name="readings")
    place = models.CharField(max_length=8)  # bench: of the stick; check: of the finished piece
    card = models.CharField(max_length=16)
    name = models.CharField(max_length=120)
    value = models.CharField(max_length=60, blank=True)  # with its unit; empty where it was taken back
    by = models.CharField(max_length=80)
    at = models.DateTimeField()

    class Meta:
        """In the order they came."""

        ordering = ("id",)


class Sent(models.Model):
    """A tick that came from a tablet, so that the same one sent again does nothing."""

    key = models.CharField(max_length=64, unique=True)
    answer = models.CharField(max_length=300)
    at = models.DateTimeField(auto_now_add=True)


class LogEntry(models.Model):
    """Who did what and when; only ever added to."""

    job = models.ForeignKey(Job, models.PROTECT, null=True, related_name="log")
    piece = models.ForeignKey(Piece, models.PROTECT, null=True, related_name="log")
    revision = models.PositiveIntegerField(null=True)
    by = models.CharField(max_length=80)
    what = models.CharField(max_length=300)
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """Newest first."""

        ordering = ("-id",)

    def save(self, **options: Any) -> None:
        """Add the entry; an entry that stands is never written over."""
        if not self._state.adding:
            raise GagelineError("an entry of the log is never changed: add another one")
        super().save(**options)
