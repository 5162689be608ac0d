"""Addresses of the read API, under /api/v1/."""

from django.urls import path

from kitchenlog.api import views
from kitchenlog.api.description import DescriptionView

urlpatterns = [
    path("entries", views.EntriesView.as_view(), name="entries"),
    path("entries/<uuid:entry>", views.EntryView.as_view(), name="entry"),
    path("quarantine", views.QuarantineView.as_view(), name="quarantine"),
    path("batches/<str:batch>/cost", views.BatchCostView.as_view(), name="batch_cost"),
    path("lots/<str:code>", views.LotView.as_view(), name="lot"),
    path("lots/<str:code>/trace", views.LotTraceView.as_view(), name="lot_trace"),
    path("instruments/<str:instrument>/impact", views.ImpactView.as_view(), name="impact"),
    path(
        "instruments/<str:instrument>/impact/readings",
        views.ImpactReadingsView.as_view(),
        name="impact_readings",
    ),
    path("schema", DescriptionView.as_view(), name="schema"),
]
