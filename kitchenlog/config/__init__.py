"""Settings, addresses, the WSGI door and the worker; only here is the environment read."""

# Tasks find their application here, whichever process imports them.
from kitchenlog.config.celery import app as celery_app

__all__ = ["celery_app"]
