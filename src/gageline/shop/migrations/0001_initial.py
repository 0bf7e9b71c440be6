"""The first tables of the shop."""

from typing import ClassVar

import django.db.models.deletion
from django.db import migrations, models
from django.db.migrations.operations.base import Operation


class Migration(migrations.Migration):
    """Makes every table."""

    initial = True

    dependencies: ClassVar[list[tuple[str, str]]] = []

    operations: ClassVar[list[Operation]] = [
        migrations.CreateModel(
            name="Person",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("password", models.CharField(max_length=128, verbose_name="password")),
                ("last_login", models.DateTimeField(blank=True, null=True, verbose_name="last login")),
                ("name", models.CharField(max_length=80, unique=True)),
                (
                    "role",
                    models.CharField(
                        choices=[
                            ("owner", "owner"),
                            ("office", "office"),
                            ("shop", "shop"),
                            ("look", "look"),
                        ],
                        max_length=8,
                    ),
                ),
                ("is_active", models.BooleanField(default=True)),
            ],
            options={
                "abstract": False,
            },
        ),
        migrations.CreateModel(
            name="Guess",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("key", models.CharField(max_length=120, unique=True)),
                ("failures", models.PositiveIntegerField(default=0)),
                ("closed_until", models.DateTimeField()),
            ],
        ),
        migrations.CreateModel(
            name="Job",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("name", models.CharField(max_length=80)),
                ("number", models.CharField(blank=True, max_length=80)),
                ("current", models.PositiveIntegerField(default=0)),
                ("made", models.DateTimeField(auto_now_add=True)),
            ],
        ),
        migrations.CreateModel(
            name="Sent",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("key", models.CharField(max_length=64, unique=True)),
                ("answer", models.CharField(max_length=300)),
                ("at", models.DateTimeField(auto_now_add=True)),
            ],
        ),
        migrations.CreateModel(
            name="Tablet",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("name", models.CharField(max_length=80, unique=True)),
                ("token", models.CharField(max_length=64, unique=True)),
                ("known_since", models.DateTimeField(auto_now_add=True)),
            ],
        ),
        migrations.CreateModel(
            name="Piece",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("mark", models.CharField(max_length=24)),
                ("position", models.PositiveIntegerField()),
                ("quantity", models.PositiveIntegerField()),
                ("stock", models.CharField(max_length=80)),
                ("length", models.CharField(max_length=40)),
                ("weight", models.FloatField(null=True)),
                ("card", models.CharField(max_length=16)),
                ("active", models.BooleanField(default=True)),
                (
                    "job",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="pieces", to="shop.job"
                    ),
                ),
            ],
            options={
                "ordering": ("position",),
            },
        ),
        migrations.CreateModel(
            name="LogEntry",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("revision", models.PositiveIntegerField(null=True)),
                ("by", models.CharField(max_length=80)),
                ("what", models.CharField(max_length=300)),
                ("at", models.DateTimeField(auto_now_add=True)),
                (
                    "job",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="log",
                        to="shop.job",
                    ),
                ),
                (
                    "piece",
                    models.ForeignKey(
                        null=True,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="log",
                        to="shop.piece",
                    ),
                ),
            ],
            options={
                "ordering": ("-id",),
            },
        ),
        migrations.CreateModel(
            name="Copy",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("number", models.PositiveIntegerField()),
                (
                    "stage",
                    models.CharField(
                        choices=[("bench", "Bench"), ("fit", "Fit"), ("gate", "Gate"), ("gone", "gone")],
                        db_index=True,
                        default="bench",
                        max_length=8,
                    ),
                ),
                ("active", models.BooleanField(default=True)),
                (
                    "piece",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="copies", to="shop.piece"
                    ),
                ),
            ],
            options={
                "ordering": ("piece__job_id", "piece__position", "number"),
            },
        ),
        migrations.CreateModel(
            name="Revision",
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
                    "job",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="revisions", to="shop.job"
                    ),
                ),
            ],
        ),
        migrations.CreateModel(
            name="Tick",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("card", models.CharField(max_length=16)),
                ("task", models.CharField(max_length=24)),
                ("by", models.CharField(max_length=80)),
                ("at", models.DateTimeField()),
                (
                    "copy",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT, related_name="ticks", to="shop.copy"
                    ),
                ),
            ],
        ),
        migrations.AddConstraint(
            model_name="piece",
            constraint=models.UniqueConstraint(fields=("job", "mark"), name="one_piece_a_mark"),
        ),
        migrations.AddConstraint(
            model_name="copy",
            constraint=models.UniqueConstraint(fields=("piece", "number"), name="one_copy_a_number"),
        ),
        migrations.AddConstraint(
            model_name="revision",
            constraint=models.UniqueConstraint(fields=("job", "number"), name="one_revision_a_number"),
        ),
        migrations.AddConstraint(
            model_name="tick",
            constraint=models.UniqueConstraint(fields=("copy", "card", "task"), name="ticked_once"),
        ),
    ]
