#!/usr/bin/env python
"""Django's command line, with this project's settings."""

import os
import sys


def main() -> None:
    """Run the command that was named."""
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "kitchenlog.config.settings")
    from django.core.management import execute_from_command_line  # noqa: PLC0415 settings first

    execute_from_command_line(sys.argv)


if __name__ == "__main__":
    main()
