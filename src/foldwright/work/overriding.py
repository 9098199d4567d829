"""Put an override into a document, and take it back."""

from __future__ import annotations

from copy import deepcopy
from typing import Any

from foldwright.work.document import Document


def with_override(
    document: Document, index: int, *, finding: str, name: str, reason: str
) -> Document:
    """Give the document with a stop of one shade answered for; an older answer gives way.

    Takes: the document; which shade, counted from 0; the stop's id; who answers, and why.

    >>> changed = with_override(
    ...     {"shades": [{"tag": "A"}]}, 0, finding="check.no-screw", name="B", reason="Glued.")
    >>> changed["shades"][0]["overrides"]
    [{'finding': 'check.no-screw', 'name': 'B', 'reason': 'Glued.'}]
    """
    changed = without_override(document, index, finding)
    override = {"finding": finding, "name": name.strip(), "reason": reason.strip()}
    changed["shades"][index].setdefault("overrides", []).append(override)
    return changed


def without_override(document: Document, index: int, finding: str) -> Document:
    """Give the document with no answer for a finding of one shade.

    >>> without_override({"shades": [{"tag": "A", "overrides": [{"finding": "a"}]}]}, 0, "a")
    {'shades': [{'tag': 'A'}]}
    """
    changed = deepcopy(document)
    shade: dict[str, Any] = changed["shades"][index]
    kept = [each for each in shade.get("overrides", []) if each.get("finding") != finding]
    shade.pop("overrides", None)
    if kept:
        shade["overrides"] = kept
    return changed
