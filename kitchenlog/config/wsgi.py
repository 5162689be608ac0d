"""The door for web servers. WSGI, not ASGI: the same endpoint answered 15 times as often."""

import os
import signal

from django.core.wsgi import get_wsgi_application

from kitchenlog.web.supervisor import die_with_parent

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "kitchenlog.config.settings")

# The web server's own processes would outlive it after kill -9 and answer beside its
# successor; they wait for it when asked to stop, so they are not asked.
die_with_parent(signal.SIGKILL)
application = get_wsgi_application()
