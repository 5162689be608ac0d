"""What failed checks touch in one row a sheet, with its readings as JSON."""

import django.db.models.deletion
from django.db import migrations, models

from kitchenlog.logbook.walls import one_cooperative_at_a_time


class Migration(migrations.Migration):
    dependencies = [
        ("members", "0001_initial"),
        ("tracing", "0003_what_failed_checks_touch"),
    ]

    operations = [
        migrations.DeleteModel(name="DoubtfulReading"),
        migrations.DeleteModel(name="TouchedBatch"),
        migrations.CreateModel(
            name="ReadElsewhere",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("subject", models.CharField(max_length=120)),
                ("instrument", models.CharField(max_length=40)),
                ("entry", models.CharField(max_length=40)),
                ("happened_at", models.CharField(max_length=30)),
                ("author", models.CharField(max_length=40)),
                ("read", models.CharField(blank=True, max_length=40)),
                ("unit", models.CharField(blank=True, max_length=12)),
                (
                    "cooperative",
                    models.ForeignKey(
                        db_index=False,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="members.cooperative",
                    ),
                ),
            ],
        ),
        migrations.CreateModel(
            name="Touched",
            fields=[
                (
                    "id",
                    models.BigAutoField(
                        auto_created=True, primary_key=True, serialize=False, verbose_name="ID"
                    ),
                ),
                ("subject", models.CharField(max_length=120)),
                ("check_entry", models.CharField(max_length=40)),
                ("code", models.CharField(blank=True, max_length=40)),
                ("material", models.CharField(blank=True, max_length=40)),
                ("readings", models.IntegerField()),
                ("would_change", models.TextField(blank=True)),
                ("listed", models.TextField()),
                (
                    "cooperative",
                    models.ForeignKey(
                        db_index=False,
                        on_delete=django.db.models.deletion.PROTECT,
                        related_name="+",
                        to="members.cooperative",
                    ),
                ),
            ],
        ),
        migrations.AddIndex(
            model_name="readelsewhere",
            index=models.Index(fields=["cooperative", "subject"], name="elsewhere_of_subject"),
        ),
        migrations.AddIndex(
            model_name="readelsewhere",
            index=models.Index(
                fields=["cooperative", "instrument", "happened_at"], name="elsewhere_read_on"
            ),
        ),
        migrations.AddIndex(
            model_name="touched",
            index=models.Index(fields=["cooperative", "subject"], name="touched_subject"),
        ),
        migrations.AddIndex(
            model_name="touched",
            index=models.Index(
                fields=["cooperative", "check_entry", "subject"], name="touched_by_check"
            ),
        ),
        one_cooperative_at_a_time("tracing_touched", "tracing_readelsewhere"),
    ]
