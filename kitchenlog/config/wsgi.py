"""The door for web servers. WSGI, not ASGI: the same endpoint answered 15 times as often."""

import gc
import os
import signal

from django.core.wsgi import get_wsgi_application

from kitchenlog.web.supervisor import die_with_parent

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "kitchenlog.config.settings")

# The web server's own processes would outlive it after kill -9 and answer beside its
# successor; they wait for it when asked to stop, so they are not asked.
die_with_parent(signal.SIGKILL)
application = get_wsgi_application()

# A push makes thousands of objects that are gone with its answer. Python would look through the
# young ones for circles after every 700, which takes a fifteenth of the time of a push; what
# this lets pile up in between is some megabytes.
YOUNG_OBJECTS_MAX = 50_000
gc.set_threshold(YOUNG_OBJECTS_MAX)
