"""What the shop keeps of its steel: sticks with their revisions, the rack's facts, cutting plans, cuts."""

from __future__ import annotations

from django.db import models

__all__ = ["Cut", "Cutting", "Plan", "RackText", "Search", "Stick", "StickRevision", "Where"]


class Where(models.TextChoices):
    """Where a stick is."""

    YARD = "yard", "in the yard"
    SAW = "saw", "at the saw"
    CUT = "cut", "cut"
    GONE = "gone", "taken out"


class Search(models.TextChoices):
    """How far a cutting plan is."""

    RUNNING = "running", "being planned"
    READY = "ready", "ready to be chosen"
    CHOSEN = "chosen", "being cut"
    PAST = "past", "put aside"
    FAILED = "failed", "no plan"


class Stick(models.Model):
    """One stick or drop; what it is and how it was measured stands in its revisions."""

    mark = models.CharField(max_length=24)
    stock = models.CharField(max_length=80)
    grade = models.CharField(max_length=80)
    length = models.CharField(max_length=40)
    ticks = models.BigIntegerField()  # its length in ticks, to put sticks in order
    heat = models.CharField(max_length=80, blank=True)
    where = models.CharField(max_length=8, choices=Where.choices, default=Where.YARD, db_index=True)
    current = models.PositiveIntegerField(default=0)
    copy = models.OneToOneField("shop.Copy", models.PROTECT, null=True, related_name="stick")

    class Meta:
        """A mark stands once among the sticks that are there."""

        constraints = (
            models.UniqueConstraint(
                fields=("mark",), condition=models.Q(where__in=("yard", "saw")), name="one_stick_a_mark"
            ),
        )
        ordering = ("stock", "grade", "-ticks", "mark")

    def __str__(self) -> str:
        return self.mark


class StickRevision(models.Model):
    """A stick as it was once saved, as JSON with `held`, `measured` and `way`; never changed afterwards."""

    stick = models.ForeignKey(Stick, models.PROTECT, related_name="revisions")
    number = models.PositiveIntegerField()
    text = models.TextField()
    what = models.CharField(max_length=300)
    by = models.CharField(max_length=80)
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """A number stands once for a stick."""

        constraints = (
            models.UniqueConstraint(fields=("stick", "number"), name="one_revision_a_number_of_a_stick"),
        )
        ordering = ("-number",)


class RackText(models.Model):
    """The rack document without the sticks in the yard: saw, prices, lengths to buy; never changed."""

    number = models.PositiveIntegerField(unique=True)
    text = models.TextField()
    by = models.CharField(max_length=80)
    at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """Newest first."""

        ordering = ("-number",)


class Plan(models.Model):
    """A cutting plan: what was asked, how far the search is, and what it found."""

    asked = models.TextField()  # JSON: jobs with their revisions, the rack document, the cuts counted
    seconds = models.PositiveIntegerField()
    state = models.CharField(max_length=8, choices=Search.choices, default=Search.RUNNING, db_index=True)
    stop = models.BooleanField(default=False)
    said = models.CharField(max_length=300, blank=True)  # bound and best while it runs
    trouble = models.TextField(blank=True)
    answer = models.TextField(blank=True)
    cents = models.BigIntegerField(null=True)
    bound = models.BigIntegerField(null=True)
    by = models.CharField(max_length=80)
    at = models.DateTimeField(auto_now_add=True)
    seen = models.DateTimeField(auto_now_add=True)  # when the search last said how far it is

    class Meta:
        """Newest first."""

        ordering = ("-id",)


class Cutting(models.Model):
    """One stick of a chosen plan at the saw."""

    plan = models.ForeignKey(Plan, models.PROTECT, related_name="cuttings")
    steel = models.CharField(max_length=250)
    number = models.PositiveIntegerField()
    stick = models.ForeignKey(Stick, models.PROTECT, null=True, related_name="cuttings")
    heat = models.CharField(max_length=80, blank=True)
    drop = models.ForeignKey(Stick, models.PROTECT, null=True, related_name="cut_from")
    done = models.BooleanField(default=False)

    class Meta:
        """A number stands once for a steel of a plan."""

        constraints = (
            models.UniqueConstraint(fields=("plan", "steel", "number"), name="one_cutting_a_number"),
        )
        ordering = ("id",)


class Cut(models.Model):
    """A task at the saw that is done: the stick taken, a piece cut, the rest put back."""

    cutting = models.ForeignKey(Cutting, models.PROTECT, related_name="cuts")
    task = models.CharField(max_length=24)
    job = models.ForeignKey("shop.Job", models.PROTECT, null=True, related_name="cuts")
    mark = models.CharField(max_length=120, blank=True)  # of the piece or the fitting in its job
    blank = models.CharField(max_length=16, blank=True)  # a short name of everything the saw cuts by
    copy = models.ForeignKey("shop.Copy", models.PROTECT, null=True, related_name="cuts")
    by = models.CharField(max_length=80)
    at = models.DateTimeField()

    class Meta:
        """A task is ticked once on a stick."""

        constraints = (models.UniqueConstraint(fields=("cutting", "task"), name="cut_once"),)
        ordering = ("id",)
