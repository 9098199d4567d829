"""Read a sheet as printed: its words with the size of their letters, its lines, its margins."""

from __future__ import annotations

from dataclasses import dataclass
from io import BytesIO
from typing import Any

import pdfplumber

POINTS_PER_MILLIMETRE = 72 / 25.4


@dataclass(frozen=True, kw_only=True)
class Word:
    text: str
    size_pt: float
    font: str
    left: float  # millimetres from the left edge of the sheet
    top: float
    right: float
    bottom: float


@dataclass(frozen=True, kw_only=True)
class Sheet:
    pages: int
    width: float
    height: float
    words: tuple[Word, ...]
    marks: tuple[dict[str, Any], ...]  # lines, curves and boxes as the reader finds them
    text: str
    title: str
    tagged: bool
    universal: bool  # says of itself that it keeps PDF/UA

    def said(self) -> str:
        """Give all words with one blank between them, however they are wrapped."""
        return " ".join(word.text for word in self.words)


def read(pdf: bytes) -> Sheet:
    with pdfplumber.open(BytesIO(pdf)) as document:
        page = document.pages[0]
        level = page.filter(_is_level)
        words = level.extract_words(
            extra_attrs=["size", "fontname"], x_tolerance_ratio=0.2, use_text_flow=True
        )
        marks = (*page.lines, *page.curves, *page.rects)
        catalog = document.doc.catalog
        return Sheet(
            pages=len(document.pages),
            width=float(page.width) / POINTS_PER_MILLIMETRE,
            height=float(page.height) / POINTS_PER_MILLIMETRE,
            words=tuple(_word(word) for word in words),
            marks=marks,
            text=page.extract_text(),
            title=str(document.metadata.get("Title", "")),
            tagged="StructTreeRoot" in catalog,
            universal=b"pdfuaid:part" in pdf,
        )


def _is_level(found: dict[str, Any]) -> bool:
    """Leave out letters that are turned: their size cannot be told from their box."""
    across, up = found.get("matrix", (1, 0))[:2]
    return abs(across) >= abs(up)


def _word(found: dict[str, Any]) -> Word:
    left, top, right, bottom = (
        float(found[key]) / POINTS_PER_MILLIMETRE for key in ("x0", "top", "x1", "bottom")
    )
    return Word(
        text=found["text"],
        size_pt=float(found["size"]),
        font=found["fontname"],
        left=left,
        top=top,
        right=right,
        bottom=bottom,
    )
