"""Every address of the server."""

from django.urls import include, path, re_path

from kitchenlog.web import errors, views

handler400 = errors.unreadable
handler403 = errors.forbidden
handler404 = errors.not_found
handler500 = errors.broken

urlpatterns = [
    path("api/v1/", include("kitchenlog.sync.urls")),
    path("api/v1/", include("kitchenlog.api.urls")),
    re_path(r"^api(?:/.*)?$", errors.unknown_api_address),
    path("", include("kitchenlog.web.urls")),
    # Last: any other address is a screen of the app, which reads it itself.
    re_path(r"^.*$", views.app_shell, name="app"),
]
