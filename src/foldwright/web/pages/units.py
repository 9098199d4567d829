"""The units a reader sees: a switch that changes no job."""

from __future__ import annotations

from starlette.datastructures import FormData
from starlette.requests import Request
from starlette.responses import Response

from foldwright.core.quantity.rounding import System
from foldwright.web.desk import UNITS_COOKIE, see, text_of

A_YEAR_S = 365 * 24 * 3600


def choose_units(_request: Request, form: FormData) -> Response:
    """Remember in this reader's browser which units to show."""
    fields = text_of(form)
    answer = see(_own_address(fields.get("back", "/")))
    if fields.get("system") in {system.value for system in System}:
        answer.set_cookie(
            UNITS_COOKIE, fields["system"], A_YEAR_S, httponly=True, samesite="strict"
        )
    return answer


def _own_address(address: str) -> str:
    """Give an address on this machine only: one slash, no host."""
    return address if address.startswith("/") and not address.startswith(("//", "/\\")) else "/"
