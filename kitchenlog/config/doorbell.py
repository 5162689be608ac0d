"""The file broker, for which a message that is not there whole was never sent."""

from __future__ import annotations

from queue import Empty
from typing import Any

from kombu.transport import filesystem


class Channel(filesystem.Channel):
    """A message only rings; what is to be done stands in the database and is swept."""

    def _get(self, queue: str, timeout: float | None = None) -> Any:
        """The next message. Its file can be seen before it is written, and after a power cut it
        may be empty: read as it is, it would end the worker."""
        try:
            return super()._get(queue)
        except ValueError:
            raise Empty from None


class Transport(filesystem.Transport):
    """Files in one folder, read by `Channel`."""

    Channel = Channel
