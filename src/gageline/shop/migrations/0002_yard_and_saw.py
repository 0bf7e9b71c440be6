"""The tables of the yard and the saw: sticks, the rack's facts, cutting plans and cuts."""

from typing import ClassVar

import django.db.models.deletion
from django.db import migrations, models
from django.db.migrations.operations.base import Operation


class Migration(migrations.Migration):
    """Makes the tables of the yard and the saw."""

    dependencies: ClassVar[list[tuple[str, str]]] = [("shop", "0001_initial")]

    operations: ClassVar[list[Operation]] = [
        migrations.CreateModel(
            name="Plan",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("asked", models.TextField()),
                ("seconds", models.PositiveIntegerField()),
                (
                    "state",
                    models.CharField(
                        choices=[
                            ("running", "being planned"),
                            ("ready", "ready to be chosen"),
                            ("chosen", "being cut"),
                            ("past", "put aside"),
                            ("failed", "no plan"),
                        ],
                        db_index=True,
                        default="running",
                        max_length=8,
                    ),
                ),
                ("stop", models.BooleanField(default=False)),
                ("said", models.CharField(blank=True, max_length=300)),
                ("trouble", models.TextField(blank=True)),
                ("answer", models.TextField(blank=True)),
                ("cents", models.BigIntegerField(null=True)),
                ("bound", models.BigIntegerField(null=True)),
                ("by", models.CharField(max_length=80)),
                ("at", models.DateTimeField(auto_now_add=True)),
                ("seen", models.DateTimeField(auto_now_add=True)),
            ],
            options={
                "ordering": ("-id",),
            },
        ),
        migrations.CreateModel(
            name="RackText",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("number", models.PositiveIntegerField(unique=True)),
                ("text", models.TextField()),
                ("by", models.CharField(max_length=80)),
                ("at", models.DateTimeField(auto_now_add=True)),
            ],
            options={
                "ordering": ("-number",),
            },
        ),
        migrations.CreateModel(
            name="Stick",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("mark", models.CharField(max_length=24)),
                ("stock", models.CharField(max_length=80)),
                ("grade", models.CharField(max_length=80)),
                ("length", models.CharField(max_length=40)),
                ("ticks", models.BigIntegerField()),
                ("heat", models.CharField(blank=True, max_length=80)),
                (
                    "where",
                    models.CharField(
                        choices=[
                            ("yard", "in the yard"),
                            ("saw", "at the saw"),
                            ("cut", "cut"),
                            ("gone", "taken out"),
                        ],
                        db_index=True,
                        default="yard",
                        max_length=8,
                    ),
                ),
                ("current", models.PositiveIntegerField(default=0)),
                (
                    "copy",
                    models.OneToOneField(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="stick",
                        to="shop.copy",
                    ),
                ),
            ],
            options={
                "ordering": ("stock", "grade", "-ticks", "mark"),
            },
        ),
        migrations.CreateModel(
            name="Cutting",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("steel", models.CharField(max_length=250)),
                ("number", models.PositiveIntegerField()),
                ("heat", models.CharField(blank=True, max_length=80)),
                ("done", models.BooleanField(default=False)),
                (
                    "plan",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="cuttings", to="shop.plan"
                    ),
                ),
                (
                    "drop",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="cut_from",
                        to="shop.stick",
                    ),
                ),
                (
                    "stick",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="cuttings",
                        to="shop.stick",
                    ),
                ),
            ],
            options={
                "ordering": ("id",),
            },
        ),
        migrations.CreateModel(
            name="StickRevision",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("number", models.PositiveIntegerField()),
                ("text", models.TextField()),
                ("what", models.CharField(max_length=300)),
                ("by", models.CharField(max_length=80)),
                ("at", models.DateTimeField(auto_now_add=True)),
                (
                    "stick",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="revisions", to="shop.stick"
                    ),
                ),
            ],
            options={
                "ordering": ("-number",),
            },
        ),
        migrations.CreateModel(
            name="Cut",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("task", models.CharField(max_length=24)),
                ("mark", models.CharField(blank=True, max_length=120)),
                ("blank", models.CharField(blank=True, max_length=16)),
                ("by", models.CharField(max_length=80)),
                ("at", models.DateTimeField()),
                (
                    "copy",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="cuts",
                        to="shop.copy",
                    ),
                ),
                (
                    "job",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="cuts",
                        to="shop.job",
                    ),
                ),
                (
                    "cutting",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="cuts", to="shop.cutting"
                    ),
                ),
            ],
            options={
                "ordering": ("id",),
                "constraints": [models.UniqueConstraint(fields=("cutting", "task"), name="cut_once")],
            },
        ),
        migrations.AddConstraint(
            model_name="stick",
            constraint=models.UniqueConstraint(
                condition=models.Q(("where__in", ("yard", "saw"))), fields=("mark",), name="one_stick_a_mark"
            ),
        ),
        migrations.AddConstraint(
            model_name="cutting",
            constraint=models.UniqueConstraint(
                fields=("plan", "steel", "number"), name="one_cutting_a_number"
            ),
        ),
        migrations.AddConstraint(
            model_name="stickrevision",
            constraint=models.UniqueConstraint(
                fields=("stick", "number"), name="one_revision_a_number_of_a_stick"
            ),
        ),
    ]
