"""What is served beside the API. The catch-all for the app stands in config/urls.py."""

from django.urls import path, re_path

from kitchenlog.web import health, views

urlpatterns = [
    path("healthz", health.health, name="health"),
    path("robots.txt", views.robots, name="robots"),
    path("serviceworker.js", views.service_worker, name="service_worker"),
    path("manifest.json", views.manifest, name="manifest"),
    # WhiteNoise answers for files that exist, so whatever arrives here is missing.
    re_path(r"^static/.*$", views.missing_file, name="missing_file"),
    re_path(r"^(?:favicon\.ico|.*\.(?:js|css|map|png|svg|woff2|wasm))$", views.missing_file),
]
