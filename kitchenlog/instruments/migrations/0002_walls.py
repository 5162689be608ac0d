"""On PostgreSQL these rows are seen only in the scope of their cooperative."""

from django.db import migrations

from kitchenlog.logbook.walls import one_cooperative_at_a_time


class Migration(migrations.Migration):
    dependencies = [("instruments", "0001_initial")]

    operations = [one_cooperative_at_a_time("instruments_usecount")]
