"""Set a sheet: a template of the package, its data, and one pinned font, to a PDF."""

from __future__ import annotations

import json
from collections.abc import Iterable
from datetime import datetime
from functools import cache
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any, Final

import typst

from foldwright.core.drawing.model import Drawing
from foldwright.write.svg import svg

FONT = "Inter"
# Sizes of the words on a sheet, the usual first; figures are 11 points in all of them.
WORDS_PT, *SMALLER_WORDS_PT = (9.0, 8.5, 8.25, 8.0)
LEAST_WORDS_PT = SMALLER_WORDS_PT[-1]
READABLE_BY_ALL: Final = "ua-1"  # PDF/UA: tagged, with titles and alternative texts


@cache
def _fonts(folder: Path) -> typst.Fonts:
    """Load the font once, and no other."""
    return typst.Fonts(
        include_system_fonts=False, include_embedded_fonts=False, font_paths=[folder / "fonts"]
    )


def typeset(template: str, drafts: Iterable[dict[str, Any]], printed_at: datetime) -> bytes:
    """Set the first draft that fits on one page, or else the last.

    Takes: the template's file name; its data, fit for JSON, in one draft or more, the
    roomiest first, each lettered; the time to write into the file.

    Gives: a tagged PDF.

    Source: derived here.
    """
    with as_file(files(__package__)) as folder:
        compiler = typst.Compiler(
            folder / "templates" / template, root=folder, font_paths=_fonts(folder)
        )
        pdf = b""
        for draft in drafts:
            pdf = _set(compiler, draft, printed_at)
            if compiler.query("<pages>", field="value", one=True) == "1":
                break
        return pdf


def lettered(draft: dict[str, Any], size_pt: float) -> dict[str, Any]:
    """Choose the size of the words of a draft; figures keep theirs.

    Takes: the draft; the size in points.

    Gives: the draft with its size, and whether it must save every line.

    Source: derived here.
    """
    return draft | {"words_size": size_pt, "crowded": size_pt == LEAST_WORDS_PT}


def _set(compiler: typst.Compiler, data: dict[str, Any], printed_at: datetime) -> bytes:
    """Set once."""
    pdf = compiler.compile(
        format="pdf",
        sys_inputs={"data": json.dumps(data, ensure_ascii=False)},
        pdf_standards=[READABLE_BY_ALL],
        timestamp=printed_at.replace(microsecond=0),  # a PDF dates itself to the second
    )
    assert isinstance(pdf, bytes)  # noqa: S101 - one PDF is one run of bytes
    return pdf


def picture(drawing: Drawing) -> dict[str, Any]:
    """Make a drawing ready for a template: the picture, its size on paper, and its words.

    Takes: the drawing.

    Gives: its SVG in the sheet's font, its width in millimetres, its description.

    Source: derived here.
    """
    return {
        "svg": svg(drawing, fonts=FONT),
        "width": drawing.extent.width / drawing.scale,
        "height": drawing.extent.height / drawing.scale,
        "alt": drawing.description,
        "scale": round(drawing.scale, 2),
    }
