"""The head of a job as a form: what is true of all its shades."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from foldwright.work.document import Document

TEXTS = ("name", "client", "note")
SHOP_NOT_READ = (
    "The job file names “{}” as the shop's list; on screen that folder is not read, "
    "and the list the tool was started with is used instead."
)


def with_head(document: Document, fields: Mapping[str, str], markets: Sequence[object]) -> Document:
    """Lay a form into the head of a job; what the form does not ask stays as it is."""
    typed = {key: fields.get(key, "").strip() for key in TEXTS}
    head = document.get("job", {}) | typed | {"markets": [str(market) for market in markets]}
    return {**document, "job": {k: v for k, v in head.items() if v or k == "name"}}


def shop_not_read(document: Document) -> str:
    """Say that the folder named in a job file is not read here, or nothing where none is named.

    >>> shop_not_read({"job": {"name": "Mill house"}})
    ''
    """
    head = document.get("job")
    named = head.get("shop") if isinstance(head, dict) else None
    return SHOP_NOT_READ.format(named) if isinstance(named, str) and named.strip() else ""
