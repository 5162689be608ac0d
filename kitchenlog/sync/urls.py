"""Addresses phones speak to, under /api/v1/."""

from django.urls import path

from kitchenlog.sync import join, views

urlpatterns = [
    path("devices", join.DevicesView.as_view(), name="devices"),
    path("devices/<uuid:device>", join.DeviceView.as_view(), name="device"),
    path("session", join.SessionView.as_view(), name="session"),
    path("join-codes", join.JoinCodesView.as_view(), name="join_codes"),
    path("sync/push", views.PushView.as_view(), name="push"),
    path("sync/pull", views.PullView.as_view(), name="pull"),
    path("sync/have", views.HaveView.as_view(), name="have"),
]
