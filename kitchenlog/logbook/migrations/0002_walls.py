"""What the database itself refuses: changes to entries, and rows of another cooperative."""

from django.db import migrations

from kitchenlog.logbook.walls import append_only, one_cooperative_at_a_time


class Migration(migrations.Migration):
    dependencies = [("logbook", "0001_initial")]

    operations = [
        append_only("logbook_entry"),
        one_cooperative_at_a_time(
            "logbook_entry",
            "logbook_entrysubject",
            "logbook_entrymention",
            "logbook_stalesubject",
            "logbook_sheet",
            "logbook_quarantined",
        ),
    ]
