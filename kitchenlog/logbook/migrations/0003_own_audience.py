"""One more audience: the member something is about, and coordinators.

Only Django is told: the tables stay as they are, and with them the walls around the log.
"""

from django.db import migrations, models

AUDIENCES = [
    ("member", "every member"),
    ("own", "the member it is about, and coordinators"),
    ("coordinator", "coordinators"),
]


class Migration(migrations.Migration):
    dependencies = [("logbook", "0002_walls")]

    operations = [
        migrations.SeparateDatabaseAndState(
            state_operations=[
                migrations.AlterField(
                    model_name=model,
                    name="audience",
                    field=models.CharField(choices=AUDIENCES, max_length=12),
                )
                for model in ("entry", "sheet")
            ]
        )
    ]
