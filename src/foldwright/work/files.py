"""Text files read and written whole: every trouble told in one sentence, nothing half written."""

from __future__ import annotations

import contextlib
import os
import tempfile
import tomllib
from pathlib import Path
from typing import Any

from foldwright.core.why.fault import Fault

LARGEST_FILE = 4 * 1024 * 1024


class CannotUse(Exception):  # noqa: N818 - it tells a person what to mend
    """What was given cannot be used; it carries every fault found."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        super().__init__("\n".join(fault.sentence for fault in faults))
        self.faults = faults


def _cannot(path: Path, what: str, remedy: str) -> CannotUse:
    return CannotUse((Fault(where=str(path), what=what, remedy=remedy),))


def read_text(path: Path) -> str:
    """Read a text file whole.

    Raises: CannotUse where it is missing, too large, no file, or no text.
    """
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise _cannot(path, "it is larger than any job file", "Choose another file.")
        return path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        raise _cannot(path, "there is no such file", "Check the name and the folder.") from None
    except UnicodeDecodeError:
        raise _cannot(path, "it is not plain text", "Save it as UTF-8 text.") from None
    except (OSError, ValueError) as trouble:
        reason = getattr(trouble, "strerror", None) or "the name cannot be used"
        raise _cannot(path, f"it cannot be read ({reason})", "Choose another file.") from None


def read_toml(path: Path) -> dict[str, Any]:
    """Read a TOML file into plain values; dates become text.

    Raises: CannotUse where it cannot be read or is no TOML.
    """
    return parse_toml(read_text(path), str(path))


def parse_toml(text: str, name: str) -> dict[str, Any]:
    """Read TOML text into plain values; dates become text.

    >>> parse_toml("date = 2026-05-04", "job.toml")
    {'date': '2026-05-04'}
    """
    try:
        return {key: _plain(value) for key, value in tomllib.loads(text).items()}
    except (ValueError, RecursionError) as trouble:
        fault = Fault(
            where=name,
            what=f"it is not written as TOML ({_trouble(trouble)})",
            remedy="Mend that place; the guide to the job file shows how one is written.",
        )
        raise CannotUse((fault,)) from None


def _trouble(trouble: Exception) -> str:
    return "its tables are nested too deep" if isinstance(trouble, RecursionError) else str(trouble)


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, list):
        return [_plain(item) for item in value]
    return value.isoformat() if hasattr(value, "isoformat") else value


def write_whole(path: Path, content: bytes) -> None:
    """Write a file so that a reader sees the old content or the new, never a part.

    Raises: CannotUse with the reason, such as a full disk; the old file then stands.
    """
    try:
        _write_beside_then_rename(path, content)
    except OSError as trouble:
        raise _cannot(
            path,
            f"it could not be written ({trouble.strerror or trouble})",
            "Nothing was changed. Make room or choose another folder, and write it again.",
        ) from None


def _write_beside_then_rename(path: Path, content: bytes) -> None:
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, beside = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        Path(beside).chmod(0o644)
        Path(beside).replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            Path(beside).unlink()
        raise
