"""The tags that a shade has had: its bench record was begun under the one of that day."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from foldwright.work.book import Entry


def former_tags(history: Sequence[Entry], tag: str) -> tuple[str, ...]:
    """Give every tag that a shade has had, the present one first.

    Takes: the saves of the job, the newest first; the shade's present tag.

    A shade was called otherwise where, from one save to the next, its tag is the only one of
    the job that changed.
    """
    tags = [tag]
    stood = [save for save in history if not save.aside]
    for newer, older in pairwise(_tags(save) for save in stood):
        if tags[-1] in newer and tags[-1] not in older and len(newer) == len(older):
            changed = [one for one, other in zip(older, newer, strict=True) if one != other]
            if len(changed) == 1:
                tags.append(changed[0])
    return tuple(dict.fromkeys(tags))


def _tags(save: Entry) -> list[str]:
    shades = save.document.get("shades", [])
    return [str(shade.get("tag", "")) for shade in shades if isinstance(shade, dict)]
