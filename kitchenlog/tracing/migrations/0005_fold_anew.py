"""Sheets whose rows in the new tables are still missing are folded anew in the next round."""

from django.apps.registry import Apps
from django.db import migrations
from django.db.backends.base.schema import BaseDatabaseSchemaEditor

NEVER_FOLDED = 0
TYPES = ("batch", "skill")  # those of lots and instruments have a new fold anyway


def _fold_anew(apps: Apps, schema_editor: BaseDatabaseSchemaEditor) -> None:
    connection = schema_editor.connection
    sheets = apps.get_model("logbook", "Sheet").objects.using(connection.alias)
    cooperatives = apps.get_model("members", "Cooperative").objects.using(connection.alias)
    for cooperative in cooperatives.values_list("id", flat=True):
        if connection.vendor == "postgresql":
            with connection.cursor() as cursor:
                cursor.execute(
                    "SELECT set_config('kitchenlog.cooperative', %s, true)", [str(cooperative)]
                )
        for sort in TYPES:
            sheets.filter(cooperative_id=cooperative, subject__startswith=f"{sort}:").update(
                fold=NEVER_FOLDED
            )


class Migration(migrations.Migration):
    dependencies = [
        ("logbook", "0003_own_audience"),
        ("members", "0001_initial"),
        ("tracing", "0004_touched_by_sheet"),
    ]

    operations = [migrations.RunPython(_fold_anew, migrations.RunPython.noop)]
