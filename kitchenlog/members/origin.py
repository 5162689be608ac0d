"""Which requests may change anything: from our own pages, as JSON (R59)."""

from urllib.parse import urlsplit

from django.http import HttpRequest

from kitchenlog.members.refusals import Refused

READING = ("GET", "HEAD", "OPTIONS")


def require_own_page(request: HttpRequest) -> None:
    """Refuse a change that a page of another origin, or a form, could have sent.

    Browsers write Sec-Fetch-Site and Origin themselves and no page can forge them; a token
    in the page would go stale in a phone that lay in a drawer.
    """
    if request.method in READING:
        return
    if not _comes_from_own_page(request):
        raise Refused("csrf", 403, "This must be sent by our own pages.")
    has_body = request.META.get("CONTENT_LENGTH", "") not in ("", "0")
    if (has_body or request.method != "DELETE") and request.content_type != "application/json":
        raise Refused("csrf", 403, "This must be sent as application/json.")


def _comes_from_own_page(request: HttpRequest) -> bool:
    site = request.headers.get("Sec-Fetch-Site")
    if site is not None:
        return site == "same-origin"
    try:
        origin = urlsplit(request.headers.get("Origin", ""))
    except ValueError:  # such as half of an address in brackets
        return False
    return (origin.scheme, origin.netloc) == (request.scheme, request.get_host())


def client_address(request: HttpRequest, *, is_behind_proxy: bool) -> str:
    """The address that asks. Behind our proxy it is the last one that the proxy wrote."""
    if is_behind_proxy:
        forwarded = request.headers.get("X-Forwarded-For", "").rsplit(",", 1)[-1].strip()
        if forwarded:
            return forwarded
    return str(request.META.get("REMOTE_ADDR", ""))
