"""What is served beside the API. The catch-all for the app stands in config/urls.py."""

from django.urls import path, re_path

from kitchenlog.web import health, views

urlpatterns = [
    path("healthz", health.health, name="health"),
    path("robots.txt", views.robots, name="robots"),
    path("serviceworker.js", views.service_worker, name="service_worker"),
    path("manifest.json", views.manifest, name="manifest"),
    path("favicon.ico", views.icon, name="icon"),
    # WhiteNoise answers for files that exist, so whatever arrives here is missing.
    re_path(r"^static/.*$", views.missing_file, name="missing_file"),
    re_path(r"^.*\.(?:js|css|map|ico|png|svg|woff2|wasm)$", views.missing_file),
]
