"""The door of the workroom: who may ask, how much may be sent, and what a page may do.

Three things are checked before any page is reached.

1. The Host header names this machine, so that a foreign name pointed at our address
   (rebinding) reaches nothing.
2. A POST carries an Origin equal to the address it was sent to, so that a page from
   elsewhere cannot save, change or restore anything here. Plain HTTP has no
   Sec-Fetch-Site, so the Origin is the one thing to go by.
3. A body is counted as it arrives, and refused beyond its limit.

Every answer then carries headers under which a page can load nothing from outside and
run no script or style written into it. The referrer policy is `same-origin`: under
`no-referrer` a browser sends `Origin: null` with an ordinary form, which would turn
rule 2 against our own forms; no other origin is told anything under either.

Source: Fetch standard, "append a request Origin header"; Content Security Policy
Level 3; Referrer Policy.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from starlette.datastructures import Headers, MutableHeaders
from starlette.exceptions import HTTPException
from starlette.responses import Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

LARGEST_BODY_BYTES = 1_000_000
THIS_MACHINE = ("127.0.0.1", "localhost", "[::1]")

CONTENT_RULES = (
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "img-src 'self'",
    "connect-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
)

HEADERS = {
    "Content-Security-Policy": "; ".join(CONTENT_RULES),
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
}


@dataclass(frozen=True, kw_only=True, slots=True)
class Refusal:
    """Why a request goes no further: its status and one sentence."""

    status: int
    sentence: str


TOO_LARGE = Refusal(
    status=413,
    sentence="That is more than one megabyte, and no job file is so large. "
    "Choose the job file itself, not a folder or a picture.",
)
FOREIGN_HOST = Refusal(
    status=421,
    sentence="This workroom answers only under its own address. "
    "Open the address that was printed when it started.",
)
FOREIGN_ORIGIN = Refusal(
    status=403,
    sentence="Nothing was changed, because the form did not come from this workroom's own page. "
    "Open the page again from its own address and send the form from there.",
)


class Guard:
    """Stands before the app; see the head of this module."""

    def __init__(
        self, app: ASGIApp, *, hosts: tuple[str, ...], refuse: Callable[[Refusal], Response]
    ) -> None:
        self.app = app
        self.hosts = hosts
        self.refuse = refuse

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let the request in, or answer it here."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        refusal = self._refusal(scope, Headers(scope=scope))
        app = self.refuse(refusal) if refusal else self.app
        await app(scope, _counted(receive), _with_headers(send))

    def _refusal(self, scope: Scope, headers: Headers) -> Refusal | None:
        host = headers.get("host", "")
        if _without_port(host) not in self.hosts:
            return FOREIGN_HOST
        if scope["method"] not in ("GET", "HEAD") and not _is_own(scope, headers, host):
            return FOREIGN_ORIGIN
        return TOO_LARGE if _announced(headers) > LARGEST_BODY_BYTES else None


def _without_port(host: str) -> str:
    name, _, port = host.rpartition(":")
    return name if name and port.isdigit() else host


def _is_own(scope: Scope, headers: Headers, host: str) -> bool:
    return headers.get("origin") == f"{scope['scheme']}://{host}"


def _announced(headers: Headers) -> int:
    length = headers.get("content-length", "0")
    return int(length) if length.isdigit() else LARGEST_BODY_BYTES + 1


def _counted(receive: Receive) -> Receive:
    arrived = 0

    async def receive_counted() -> Message:
        nonlocal arrived
        message = await receive()
        arrived += len(message.get("body", b""))
        if arrived > LARGEST_BODY_BYTES:
            raise HTTPException(TOO_LARGE.status, TOO_LARGE.sentence)
        return message

    return receive_counted


def _with_headers(send: Send) -> Send:
    async def send_with_headers(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            headers.update(HEADERS)
            headers.setdefault("Cache-Control", "no-cache")
        await send(message)

    return send_with_headers
