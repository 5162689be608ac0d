"""What the OpenAPI document says of every address: its header and its refusals."""

from typing import Any

from drf_spectacular.extensions import OpenApiAuthenticationExtension
from drf_spectacular.openapi import AutoSchema

from kitchenlog.members.refusals import CODES
from kitchenlog.members.sessions import DEVICE_HEADER

# Any address may answer these; a client that tests us by the document must know them.
REFUSED = ("400", "401", "403", "404", "405", "413", "429", "500")
_METHODS = ("get", "post", "put", "patch", "delete")


class DeviceScheme(OpenApiAuthenticationExtension):  # type: ignore[no-untyped-call] # registers itself by an untyped hook
    """A device's cookie goes with the header that names the device."""

    target_class = "kitchenlog.members.access.DeviceAuthentication"
    name = "device"

    def get_security_definition(self, auto_schema: AutoSchema) -> dict[str, Any]:
        """The header; the cookie's name holds the device's id, which OpenAPI cannot say."""
        return {
            "type": "apiKey",
            "in": "header",
            "name": DEVICE_HEADER,
            "description": "Id of this device; its cookie is __Host-device-<id>.",
        }


def name_every_refusal(
    result: dict[str, Any], generator: Any, request: Any, public: bool
) -> dict[str, Any]:
    """Add the shape of a refusal to each operation; a hook of drf-spectacular."""
    result.setdefault("components", {}).setdefault("schemas", {})["Refusal"] = {
        "type": "object",
        "required": ["protocol", "code", "detail"],
        "properties": {
            "protocol": {"type": "integer", "const": 1},
            "code": {"type": "string", "enum": list(CODES)},
            "detail": {"type": "string"},
            "field": {"type": "string"},
            "id": {"type": "string"},
        },
    }
    body = {"application/json": {"schema": {"$ref": "#/components/schemas/Refusal"}}}
    for operations in result["paths"].values():
        for method in _METHODS:
            responses = operations.get(method, {}).get("responses", {})
            for status in REFUSED if responses else ():
                responses.setdefault(status, {"description": "Refused.", "content": body})
    return result
