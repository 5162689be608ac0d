"""Run in a server's environment: make a cooperative and print its devices as JSON.

`python -m tests.bench.people COUNT` says {"cooperative", "author", "devices": [[id, token]]}.
"""

from __future__ import annotations

import json
import sys

import django


def main(count: int) -> None:
    """One coordinator with `count` phones."""
    from tests.people import Kitchen  # noqa: PLC0415 its models load after django.setup

    kitchen = Kitchen("bench")
    phones = [kitchen.phone("coordinator") for _ in range(count)]
    print(
        json.dumps(
            {
                "cooperative": str(kitchen.cooperative.pk),
                "author": str(phones[0].member.pk),
                "devices": [[str(phone.device.pk), phone.token] for phone in phones],
            }
        )
    )


if __name__ == "__main__":
    django.setup()
    main(int(sys.argv[1]))
