"""JSON in and out: strict about size, lenient about what one bad line may spoil."""

import json
from collections.abc import Iterable, Mapping, Sequence
from typing import Any

from django.conf import settings
from rest_framework.negotiation import BaseContentNegotiation
from rest_framework.parsers import BaseParser
from rest_framework.renderers import BaseRenderer
from rest_framework.request import Request
from rest_framework.utils.encoders import JSONEncoder

from kitchenlog.entries.readable import Inexact
from kitchenlog.members.refusals import Refused

# A key no reader of entries knows, so that only the line that holds it is set aside (R32).
DUPLICATE_KEYS = "\x00duplicate_keys"
INTEGER_DIGITS_MAX = 18  # more would not fit a database's whole number


class JsonParser(BaseParser):
    """Reads one JSON body of at most DATA_UPLOAD_MAX_MEMORY_SIZE bytes."""

    media_type = "application/json"

    def parse(
        self,
        stream: Any,
        media_type: str | None = None,
        parser_context: Mapping[str, Any] | None = None,
    ) -> Any:
        """The body as plain values; raises `Refused` for one too large or not JSON."""
        return read_json(bytes_within_limit(stream))


def bytes_within_limit(stream: Any) -> bytes:
    """The whole stream; raises `Refused` past DATA_UPLOAD_MAX_MEMORY_SIZE (R32)."""
    most = settings.DATA_UPLOAD_MAX_MEMORY_SIZE
    raw: bytes = stream.read(most + 1)
    if len(raw) > most:
        raise Refused("too_large", 413, f"Send at most {most} bytes at once.")
    return raw


def read_json(raw: bytes) -> Any:
    """Plain values of a JSON text.

    Numbers with a point and NaN stay the text they were, marked as `Inexact`, and a
    repeated key leaves the mark DUPLICATE_KEYS beside it: what is wrong with one entry
    must not cost the whole push.
    """
    try:
        return json.loads(
            raw.decode("utf-8"),
            parse_float=Inexact,
            parse_constant=Inexact,
            parse_int=_whole_number,
            object_pairs_hook=_marked,
        )
    except (ValueError, RecursionError) as trouble:
        raise Refused("unreadable", 400, "The body is not JSON in UTF-8.") from trouble


def _whole_number(text: str) -> int | Inexact:
    return int(text) if len(text) <= INTEGER_DIGITS_MAX else Inexact(text)


def _marked(pairs: Sequence[tuple[str, Any]]) -> dict[str, Any]:
    found = dict(pairs)
    if len(found) < len(pairs):
        found[DUPLICATE_KEYS] = True
    return found


class JsonRenderer(BaseRenderer):
    """Writes compact JSON."""

    media_type = "application/json"
    format = "json"
    charset = None

    def render(
        self,
        data: Any,
        accepted_media_type: str | None = None,
        renderer_context: Mapping[str, Any] | None = None,
    ) -> bytes:
        """UTF-8; a lone half of a surrogate pair, which UTF-8 cannot hold, is escaped."""
        if data is None:
            return b""
        text = json.dumps(data, ensure_ascii=False, separators=(",", ":"), cls=JSONEncoder)
        try:
            return text.encode("utf-8")
        except UnicodeEncodeError:
            return json.dumps(data, separators=(",", ":"), cls=JSONEncoder).encode("ascii")


class AlwaysJson(BaseContentNegotiation):
    """Whatever was asked for, the answer is the view's first form, so an error is too (R4)."""

    def select_parser(self, request: Request, parsers: Iterable[BaseParser]) -> BaseParser:
        """The one parser; the content type was looked at before (R59)."""
        return next(iter(parsers))

    def select_renderer(
        self,
        request: Request,
        renderers: Iterable[BaseRenderer],
        format_suffix: str | None = None,
    ) -> tuple[BaseRenderer, str]:
        """The first renderer of the view."""
        first = next(iter(renderers))
        return first, first.media_type or "application/json"
