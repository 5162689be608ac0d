"""Settings, addresses, the WSGI door and the worker: the only place that reads the environment."""

# Tasks find their application here, whichever process imports them.
from kitchenlog.config.celery import app as celery_app

__all__ = ["celery_app"]
