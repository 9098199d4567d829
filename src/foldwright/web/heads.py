"""The head of a job as a form: what is true of all its shades."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from foldwright.work.document import Document

TEXTS = ("name", "client", "note")


def with_head(document: Document, fields: Mapping[str, str], markets: Sequence[object]) -> Document:
    """Lay a form into the head of a job; what the form does not ask stays as it is."""
    typed = {key: fields.get(key, "").strip() for key in TEXTS}
    head = document.get("job", {}) | typed | {"markets": [str(market) for market in markets]}
    return {**document, "job": {k: v for k, v in head.items() if v or k == "name"}}
