"""The job file: TOML in and out, with what was typed kept as it was typed."""

from __future__ import annotations

from pathlib import Path

import tomli_w

from foldwright.work.document import Document, Reading, read_document, read_tables
from foldwright.work.files import CannotUse, read_toml, write_whole
from foldwright.work.shop import house_shop, load_shop

DEMO = Path(__file__).parent.parent / "demo"
DEMO_JOB = DEMO / "guesthouse.toml"
STYLES_JOB = DEMO / "styles.toml"
FINISHES_JOB = DEMO / "finishes.toml"


def load_job(path: Path, shop_folder: Path | None = None) -> Reading:
    """Read a job file, and the shop's list it is planned with.

    Takes: the file; a folder with the shop's list, which goes before the one the file names.
    Gives: a `Reading`; troubles with the file or the list are among its faults.
    """
    try:
        document = read_toml(path)
    except CannotUse as trouble:
        return Reading(document={}, job=None, faults=trouble.faults)
    return _read_with_shop(document, shop_folder or _named_folder(document, path.parent))


def _named_folder(document: Document, home: Path) -> Path | None:
    head = document.get("job")
    named = head.get("shop") if isinstance(head, dict) else None
    return home / named if isinstance(named, str) and named.strip() else None


def _read_with_shop(document: Document, folder: Path | None) -> Reading:
    try:
        shop = load_shop(folder) if folder else house_shop()
    except CannotUse as trouble:
        faults = (*trouble.faults, *read_tables(document).faults)
        return Reading(document=document, job=None, faults=faults)
    return read_document(document, shop)


def save_job_file(document: Document, path: Path) -> None:
    """Write a document as a job file, whole or not at all.

    Raises: CannotUse where the file cannot be written.
    """
    write_whole(path, job_text(document).encode())


def job_text(document: Document) -> str:
    r"""Give a document as TOML.

    >>> job_text({"job": {"name": "Mill house"}})
    '[job]\nname = "Mill house"\n'
    """
    return tomli_w.dumps(document)
