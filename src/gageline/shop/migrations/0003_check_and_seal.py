"""The Check place with its readings, and the tables that are only added to sealed by the database itself."""

from typing import ClassVar

import django.db.models.deletion
from django.apps.registry import Apps
from django.db import migrations, models
from django.db.backends.base.schema import BaseDatabaseSchemaEditor
from django.db.migrations.operations.base import Operation

from gageline.shop.sealing import seal, unseal

_STAGES = [("bench", "Bench"), ("fit", "Fit"), ("check", "Check"), ("gate", "Gate"), ("gone", "gone")]


def _seal(_apps: Apps, editor: BaseDatabaseSchemaEditor) -> None:
    seal(editor.connection)


def _unseal(_apps: Apps, editor: BaseDatabaseSchemaEditor) -> None:
    unseal(editor.connection)


class Migration(migrations.Migration):
    """Adds the place and the readings, and seals what is only added to."""

    dependencies: ClassVar[list[tuple[str, str]]] = [("shop", "0002_yard_and_saw")]

    operations: ClassVar[list[Operation]] = [
        migrations.AlterField(
            model_name="copy",
            name="stage",
            field=models.CharField(choices=_STAGES, db_index=True, default="bench", max_length=8),
        ),
        migrations.CreateModel(
            name="Reading",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("place", models.CharField(max_length=8)),
                ("card", models.CharField(max_length=16)),
                ("name", models.CharField(max_length=120)),
                ("value", models.CharField(blank=True, max_length=60)),
                ("by", models.CharField(max_length=80)),
                ("at", models.DateTimeField()),
                (
                    "copy",
                    models.ForeignKey(
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="readings",
                        to="shop.copy",
                    ),
                ),
            ],
            options={"ordering": ("id",)},
        ),
        migrations.RunPython(_seal, _unseal),
    ]
