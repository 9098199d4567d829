"""The papers of a shade: which there are, each as a PDF, and which prints are superseded."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from foldwright.core.check.plan import ShadePlan
from foldwright.core.quantity.rounding import System
from foldwright.papers.sheets import Header, Paper, headrail_sheet, safety_sheet, table_sheet
from foldwright.web.opened import number_of, shades_of
from foldwright.work.book import Entry
from foldwright.work.document import Document

SetSheet = Callable[[ShadePlan, Header, Paper, System], bytes]

PAPERS = {"a4": Paper.A4, "letter": Paper.LETTER}
PAPER_WORDS = {"a4": "A4", "letter": "Letter"}


@dataclass(frozen=True, kw_only=True, slots=True)
class Sheet:
    """One kind of sheet."""

    name: str  # in addresses and file names
    title: str
    needs: str  # the room of the plan that it shows
    set_it: SetSheet


SHEETS = (
    Sheet(name="table-layout", title="Table layout", needs="layout", set_it=table_sheet),
    Sheet(name="headrail", title="Headrail", needs="headrail", set_it=headrail_sheet),
    Sheet(name="safety", title="Child safety and label", needs="safety", set_it=safety_sheet),
)


def sheets_of(plan: ShadePlan | None) -> tuple[Sheet, ...]:
    """Give the sheets for which a shade has come far enough."""
    if plan is None or plan.size is None:
        return ()
    return tuple(sheet for sheet in SHEETS if getattr(plan, sheet.needs) is not None)


@dataclass(frozen=True, kw_only=True, slots=True)
class Standing:
    """Since which version a shade is as it stands in one save, and what came of it later."""

    version: int
    since: int
    superseded_by: int | None = None

    @property
    def header_version(self) -> str:
        """Give the version as a sheet prints it."""
        if self.superseded_by is None:
            return str(self.version)
        return f"{self.version}, superseded by {self.superseded_by}"

    @property
    def header_replaces(self) -> str:
        """Give the versions that a print makes void."""
        before = self.since - 1
        return {0: "", 1: "1"}.get(before, f"{before} and earlier")

    @property
    def sentence(self) -> str:
        """Say which prints may still be used."""
        if self.superseded_by is not None:
            return f"Superseded: version {self.superseded_by} changed this shade."
        if self.since == 1:
            return "No print of this shade is superseded."
        return f"Prints of version {self.header_replaces} are superseded."


def standing_of(history: Sequence[Entry], version: int, number: int) -> Standing:
    """Tell since when a shade is as it is in one version, and whether it was changed after.

    `history` has the newest save first; saves kept aside never stood.
    """
    stood = [entry for entry in history if not entry.aside or entry.number == version]
    own = next(entry for entry in stood if entry.number == version)
    tag = str(shades_of(own.document)[number - 1].get("tag", ""))
    wanted = _what_is_printed(own.document, tag)
    since = version
    for entry in stood:
        if entry.number < version:
            if _what_is_printed(entry.document, tag) != wanted:
                break
            since = entry.number
    changed = [
        entry.number
        for entry in stood
        if entry.number > version and _what_is_printed(entry.document, tag) != wanted
    ]
    return Standing(version=version, since=since, superseded_by=min(changed, default=None))


def _what_is_printed(document: Document, tag: str) -> object:
    """Give all of a document that a shade's sheets depend on."""
    number = number_of(document, tag)
    shade = shades_of(document)[number - 1] if number else None
    return shade, document.get("job"), document.get("habits")


@dataclass(frozen=True, kw_only=True, slots=True)
class Papers:
    """What can be printed of one shade, and which prints may still be used."""

    sheets: tuple[Sheet, ...]
    standing: Standing
    sizes: tuple[tuple[str, str], ...] = tuple(PAPER_WORDS.items())


def papers_of(
    history: Sequence[Entry], version: int, number: int, plan: ShadePlan | None
) -> Papers:
    """Gather the papers of a shade as it stands in one version."""
    return Papers(sheets=sheets_of(plan), standing=standing_of(history, version, number))
