"""Django's settings. Nothing else in the project reads the environment."""

import os
from pathlib import Path
from typing import Any

from celery.schedules import crontab

from kitchenlog.config.environment import database_settings, is_on, secret_key

BASE_DIR = Path(__file__).resolve().parents[2]

# ---- where we run -------------------------------------------------------------------------

KITCHENLOG_DATA = BASE_DIR / os.environ.get("KITCHENLOG_DATA", "data")
KITCHENLOG_DATA.mkdir(parents=True, exist_ok=True)
# The name the public knows us by; empty on a machine of one's own, which answers itself only.
KITCHENLOG_HOST = os.environ.get("KITCHENLOG_HOST", "")
KITCHENLOG_PORT = int(os.environ.get("PORT", "8000"))
KITCHENLOG_BIND = os.environ.get("KITCHENLOG_BIND", "127.0.0.1")
# The built app. Another folder serves another build, as tests of updates do.
KITCHENLOG_DIST = BASE_DIR / os.environ.get("KITCHENLOG_DIST", "frontend/dist")
KITCHENLOG_BROKER = os.environ.get("KITCHENLOG_BROKER", "filesystem://")
# Exactly one worker of an installation owns the clock; with several, a beat process does.
KITCHENLOG_WORKER_HAS_CLOCK = is_on(os.environ, "KITCHENLOG_CLOCK", otherwise=True)

DEBUG = is_on(os.environ, "KITCHENLOG_DEBUG", otherwise=False)
SECRET_KEY = secret_key(os.environ, host=KITCHENLOG_HOST, data=KITCHENLOG_DATA)
LOOPBACK_NAMES = ["localhost", "127.0.0.1", "[::1]"]
ALLOWED_HOSTS = [KITCHENLOG_HOST, *LOOPBACK_NAMES] if KITCHENLOG_HOST else LOOPBACK_NAMES

# ---- limits (R32, R57, R76) ---------------------------------------------------------------

_LIMITS_ARE_ON = is_on(os.environ, "KITCHENLOG_LIMITS", otherwise=True)
SIGN_INS_PER_MINUTE: int | None = 5 if _LIMITS_ARE_ON else None
PUSHES_PER_MINUTE: int | None = 60 if _LIMITS_ARE_ON else None
PUSHED_ENTRIES_PER_DAY: int | None = 20_000 if _LIMITS_ARE_ON else None
PUSH_ENTRIES_MAX = 500
DATA_UPLOAD_MAX_MEMORY_SIZE = 1024 * 1024
DEVICE_QUIET_DAYS = 90
DEVICE_DAYS = 365
JOIN_CODE_MINUTES = 30

# ---- parts --------------------------------------------------------------------------------

INSTALLED_APPS = [
    "kitchenlog.members",
    "kitchenlog.logbook",
    "kitchenlog.instruments",
    "kitchenlog.recipes",
    "kitchenlog.batches",
    "kitchenlog.stock",
    "kitchenlog.market",
    "kitchenlog.training",
    "kitchenlog.tracing",
    "kitchenlog.sync",
    "kitchenlog.api",
    "kitchenlog.web",
    "django.contrib.staticfiles",
    "rest_framework",
    "drf_spectacular",
    "pwa",
]

MIDDLEWARE = [
    "kitchenlog.web.middleware.ReadToTheEnd",
    "kitchenlog.web.middleware.SafeAnswers",
    "kitchenlog.web.middleware.KnownHost",
    "django.middleware.security.SecurityMiddleware",
    "django.middleware.gzip.GZipMiddleware",
    "whitenoise.middleware.WhiteNoiseMiddleware",
    "django.middleware.clickjacking.XFrameOptionsMiddleware",
]

ROOT_URLCONF = "kitchenlog.config.urls"
WSGI_APPLICATION = "kitchenlog.config.wsgi.application"
APPEND_SLASH = False
TEMPLATES = [{"BACKEND": "django.template.backends.django.DjangoTemplates", "APP_DIRS": True}]

DATABASES = {
    "default": database_settings(
        os.environ.get(
            "KITCHENLOG_DATABASE", f"sqlite:///{KITCHENLOG_DATA}/kitchenlog.sqlite3"
        ),
        root=BASE_DIR,
    )
}
DEFAULT_AUTO_FIELD = "django.db.models.BigAutoField"

# The default zone is a place, and workers would change the process's zone to it.
TIME_ZONE = "UTC"
USE_TZ = True
LANGUAGE_CODE = "en-gb"
USE_I18N = False

# ---- people -------------------------------------------------------------------------------

AUTH_USER_MODEL = "members.Member"
_VALIDATORS = "django.contrib.auth.password_validation"
AUTH_PASSWORD_VALIDATORS: list[dict[str, Any]] = [
    {"NAME": f"{_VALIDATORS}.MinimumLengthValidator", "OPTIONS": {"min_length": 10}},
    {
        "NAME": f"{_VALIDATORS}.UserAttributeSimilarityValidator",
        "OPTIONS": {"user_attributes": ("login", "name")},
    },
    {"NAME": f"{_VALIDATORS}.CommonPasswordValidator"},
    {"NAME": f"{_VALIDATORS}.NumericPasswordValidator"},
]

REST_FRAMEWORK = {
    "DEFAULT_AUTHENTICATION_CLASSES": ["kitchenlog.members.access.DeviceAuthentication"],
    "DEFAULT_PERMISSION_CLASSES": ["kitchenlog.members.access.Nobody"],
    "DEFAULT_RENDERER_CLASSES": ["kitchenlog.members.json_body.JsonRenderer"],
    "DEFAULT_PARSER_CLASSES": ["kitchenlog.members.json_body.JsonParser"],
    "DEFAULT_CONTENT_NEGOTIATION_CLASS": "kitchenlog.members.json_body.AlwaysJson",
    "DEFAULT_SCHEMA_CLASS": "drf_spectacular.openapi.AutoSchema",
    "EXCEPTION_HANDLER": "kitchenlog.members.refusals.answer_to",
    "UNAUTHENTICATED_USER": None,
}

SPECTACULAR_SETTINGS = {
    "TITLE": "kitchenlog",
    "DESCRIPTION": "What phones and tables speak with the kitchen's log.",
    "VERSION": "1",
    "OAS_VERSION": "3.1.0",
    "SERVE_INCLUDE_SCHEMA": False,
    "POSTPROCESSING_HOOKS": [
        "drf_spectacular.hooks.postprocess_schema_enums",
        "kitchenlog.members.schema.name_every_refusal",
    ],
}

# ---- worker -------------------------------------------------------------------------------

_QUEUE = KITCHENLOG_DATA / "queue"
if KITCHENLOG_BROKER.startswith("filesystem:"):
    (_QUEUE / "messages").mkdir(parents=True, exist_ok=True)
CELERY_BROKER_URL = KITCHENLOG_BROKER
CELERY_BROKER_TRANSPORT_OPTIONS: dict[str, Any] = (
    {
        "data_folder_in": str(_QUEUE / "messages"),
        "data_folder_out": str(_QUEUE / "messages"),
        "control_folder": str(_QUEUE / "control"),
        "polling_interval": 0.2,
    }
    if KITCHENLOG_BROKER.startswith("filesystem:")
    else {
        # Without these a task cut off by kill -9 comes back only after two minutes.
        "visibility_timeout": 120,
        "unacked_restore_interval": 5,
        "unacked_restore_throttle": 1,
        "global_keyprefix": "kitchenlog:",
    }
)
CELERY_TASK_IGNORE_RESULT = True
CELERY_TIMEZONE = "UTC"
CELERY_WORKER_HIJACK_ROOT_LOGGER = False
CELERY_BROKER_CONNECTION_RETRY_ON_STARTUP = True
STALE_SWEEP_S = 10
CELERY_BEAT_SCHEDULE = {
    "recompute stale sheets": {
        "task": "kitchenlog.logbook.tasks.recompute_stale",
        "schedule": STALE_SWEEP_S,
    },
    "close quiet sheets": {
        "task": "kitchenlog.logbook.tasks.close_quiet_sheets",
        "schedule": crontab(hour="2", minute="10"),
    },
    "count uses": {
        "task": "kitchenlog.instruments.tasks.count_uses",
        "schedule": crontab(hour="2", minute="25"),
    },
    "forget old attempts": {
        "task": "kitchenlog.members.tasks.forget_old_attempts",
        "schedule": crontab(hour="2", minute="40"),
    },
}
WORKER_SEEN_FILE = KITCHENLOG_DATA / "worker_seen"

# ---- the built app ------------------------------------------------------------------------

STATIC_URL = "/static/"
STATIC_ROOT = KITCHENLOG_DIST
# The build names its files by content; the default would ask again for each after a minute.
WHITENOISE_IMMUTABLE_FILE_TEST = r"^/static/assets/.+-[\w-]{8}\.\w+$"
STORAGES = {
    "default": {"BACKEND": "django.core.files.storage.FileSystemStorage"},
    "staticfiles": {"BACKEND": "django.contrib.staticfiles.storage.StaticFilesStorage"},
}

PWA_APP_NAME = "kitchenlog"
PWA_APP_DESCRIPTION = "One shared record for a cooperative of home food processors."
# --ground in frontend/src/look.css
PWA_APP_THEME_COLOR = "#f4f6f3"
PWA_APP_BACKGROUND_COLOR = "#f4f6f3"
PWA_APP_DISPLAY = "standalone"
PWA_APP_SCOPE = "/"
PWA_APP_START_URL = "/"
PWA_APP_ORIENTATION = "any"
PWA_APP_LANG = "en-GB"
PWA_APP_DIR = "ltr"
PWA_APP_STATUS_BAR_COLOR = "default"
PWA_APP_ICONS = [
    {"src": "/static/icons/icon-192.png", "sizes": "192x192", "type": "image/png"},
    {"src": "/static/icons/icon-512.png", "sizes": "512x512", "type": "image/png"},
    {
        "src": "/static/icons/icon-maskable-512.png",
        "sizes": "512x512",
        "type": "image/png",
        "purpose": "maskable",
    },
]
PWA_APP_ICONS_APPLE: list[dict[str, str]] = []
PWA_APP_SPLASH_SCREEN: list[dict[str, str]] = []
PWA_APP_SHORTCUTS: list[dict[str, str]] = []
PWA_APP_SCREENSHOTS: list[dict[str, str]] = []
PWA_APP_DEBUG_MODE = False

# ---- headers (R72 to R75) -----------------------------------------------------------------

CONTENT_SECURITY_POLICY = "; ".join(
    [
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "manifest-src 'self'",
        "worker-src 'self'",
        "form-action 'self'",
        "object-src 'none'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
        "require-trusted-types-for 'script'",
        "trusted-types kitchenlog",
    ]
)
SECURE_CONTENT_TYPE_NOSNIFF = True
SECURE_REFERRER_POLICY = "same-origin"
SECURE_CROSS_ORIGIN_OPENER_POLICY = "same-origin"
X_FRAME_OPTIONS = "DENY"
SECURE_HSTS_SECONDS = 365 * 24 * 60 * 60 if KITCHENLOG_HOST else 0
SECURE_SSL_REDIRECT = bool(KITCHENLOG_HOST)
SECURE_REDIRECT_EXEMPT = [r"^healthz$"]
# A public name is served behind the proxy in docker/, which alone writes these headers.
KITCHENLOG_BEHIND_PROXY = bool(KITCHENLOG_HOST)
SECURE_PROXY_SSL_HEADER = ("HTTP_X_FORWARDED_PROTO", "https") if KITCHENLOG_HOST else None
SILENCED_SYSTEM_CHECKS = [
    "security.W003",  # no CSRF token: the rule of members/origin.py cannot go stale in a drawer
    "security.W005",  # neighbouring names of the host are not ours to bind
    "security.W021",  # nor ours to put on a preload list
]

LOGGING = {
    "version": 1,
    "disable_existing_loggers": False,
    "formatters": {"line": {"format": "%(asctime)s %(levelname)s %(name)s: %(message)s"}},
    "handlers": {"console": {"class": "logging.StreamHandler", "formatter": "line"}},
    "root": {"handlers": ["console"], "level": "INFO"},
    "loggers": {
        # A refusal is an answer, not an event; the handler of members/refusals.py logs defects.
        "django.request": {"level": "ERROR"},
        "django.security": {"level": "ERROR"},
        # It misses a host name, which a folder has not.
        "kombu.connection": {"level": "ERROR"},
    },
}
