"""The description of the API for other programs: OpenAPI 3."""

from __future__ import annotations

from typing import Any

from drf_spectacular.renderers import OpenApiJsonRenderer2
from drf_spectacular.utils import extend_schema
from drf_spectacular.views import SpectacularAPIView
from rest_framework.permissions import AllowAny
from rest_framework.request import Request
from rest_framework.response import Response


class DescriptionView(SpectacularAPIView):
    """The description itself; it names no one's goods, so anybody may read it."""

    permission_classes = (AllowAny,)
    authentication_classes = ()
    renderer_classes = [OpenApiJsonRenderer2]  # noqa: RUF012 its base class says list

    @extend_schema(exclude=True)
    def get(self, request: Request, *args: Any, **kwargs: Any) -> Response:
        """The OpenAPI document as JSON."""
        response: Response = super().get(request, *args, **kwargs)  # type: ignore[no-untyped-call] # theirs
        return response
